// Everything that is known of a dossier, gathered for its report. Thread-safe for distinct judges.
#ifndef GRAINSIDE_REPORT_GATHER_CONTENT_H
#define GRAINSIDE_REPORT_GATHER_CONTENT_H

#include "grainside/dossier_report.h"
#include "grainside/judge.h"
#include "report/report_content.h"

namespace grainside::report {

// Judges and plans with `judge`, whose books are those of `context`, and reads the pictures that the dossier names.
ReportContent gather_content(const DossierContext& context, Judge& judge);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_GATHER_CONTENT_H
