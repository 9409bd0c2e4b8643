// What each part of a dossier may be, as lines of a view. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_IDENTITY_LINES_H
#define GRAINSIDE_REPORT_IDENTITY_LINES_H

#include <cstddef>
#include <string>
#include <vector>

#include "grainside/dossier_report.h"
#include "report/grade_colour.h"

namespace grainside::report {

// Per part and question the likely candidates, one line each, and an alarm where readings contradict one another.
void append_identity(const DossierContext& context, const std::vector<PartJudgement>& parts, Colours colours,
                     std::size_t width, std::string& out);

// The same with what each reading weighs for the likeliest candidate.
void append_identity_with_weights(const DossierContext& context, const std::vector<PartJudgement>& parts,
                                  Colours colours, std::size_t width, std::string& out);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_IDENTITY_LINES_H
