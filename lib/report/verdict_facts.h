// What stands behind a verdict, in words that every report for people shares. Not inert: text of a dossier or listing
// comes out as it is, and the writer of each format escapes it. Thread-safe.
#ifndef GRAINSIDE_REPORT_VERDICT_FACTS_H
#define GRAINSIDE_REPORT_VERDICT_FACTS_H

#include <cstdint>
#include <string>
#include <vector>

#include "grainside/dossier_report.h"

namespace grainside::report {

// "true 2 %, false 97 %, not told apart 1 %"; "" where nothing was read.
std::string belief_text(const Verdict& verdict);

// "Coat of leather (eu, uk): body coat 0.210 mm; contradicts (above 0.15 mm); by Coat thickness on a section,
// 2026-09-11"
std::string limit_text(const DossierContext& context, const LimitResult& limit);

// Of the rule on its words and of the limits that were read, each once, as indices into RuleBook::sources().
std::vector<std::uint32_t> sources_of(const DossierContext& context, const Judgement& judgement,
                                      const Verdict& verdict);

// "16 CFR 24.2(a) (from memory)"
std::string cited(const SourceInfo& source);

// The markets whose rules applied: those asked for, else what the listing names and the book knows; "" for none.
std::string markets_judged_for(const DossierContext& context, const JudgeOptions& judged);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_VERDICT_FACTS_H
