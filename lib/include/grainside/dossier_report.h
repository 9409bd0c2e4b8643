// Writing what a dossier came to: a view for people, JSON Lines for programs.
//
//     const auto dossier = grainside::Dossier::parse("tote.yaml",
//                                                    "sample: {what: Tote}\n"
//                                                    "listing: {name: Full grain leather tote}\n"
//                                                    "parts:\n"
//                                                    "  body:\n"
//                                                    "    readings:\n"
//                                                    "      - {method: cut-edge, outcome: yarns-under-coat}\n",
//                                                    ".", evidence);
//     if (!dossier) return 2;
//     const grainside::DossierContext context{book, evidence, dossier.value()};
//     grainside::Judge judge(book, evidence);
//     std::string view;
//     grainside::write_judgement_view(context, judge.judge(dossier.value()), judge.options(), {.width = 100}, view);
//     grainside::write_view_end(book, view);
//     std::string records;
//     grainside::write_judgement_records(context, judge.judge(dossier.value()), judge.options(), records);
//     std::cout << records.substr(0, records.find(",\"part\"")) << "}\n";
//     // prints: {"dossier":"tote","listing":"tote","field":"name","start":0,"end":18,"words":"Full grain leather"}
//
// Output is appended to a string that the caller writes and clears; nothing here prints. Text from a dossier or its
// listing comes out inert, as in report.h. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_DOSSIER_REPORT_H
#define GRAINSIDE_DOSSIER_REPORT_H

#include <string>
#include <vector>

#include "grainside/concessions.h"
#include "grainside/dossier.h"
#include "grainside/judge.h"
#include "grainside/learn.h"
#include "grainside/report.h"

namespace grainside {
inline namespace v0 {

// A dossier with the books that it was judged by; all outlive it.
struct DossierContext {
    const RuleBook& book;
    const EvidenceBook& evidence;
    const Dossier& dossier;
};

// Each claim with its grade, belief, the readings and limits that decided, sources, and what would change the verdict;
// then what each part is, the readings that no claim asked about, and the cautions and sources of the methods named.
// With `conceded`, which must be of `judgement`, each verdict says under which concession it stands.
void write_judgement_view(const DossierContext& context, const Judgement& judgement, const JudgeOptions& judged,
                          const ViewOptions& options, std::string& out, const Conceded* conceded = nullptr);
// What each part may be, and what each reading weighs.
void write_identity_view(const DossierContext& context, const Judgement& judgement, const ViewOptions& options,
                         std::string& out);
// The tests to make, in order, with their cautions.
void write_plan_view(const DossierContext& context, const TestPlan& plan, const ViewOptions& options, std::string& out);

// One line a verdict:
// {"dossier","listing","field","start","end","words","part","kind","says","negated","grade","basis",
// "rule"?,"because","say_instead"?,"remedy"?,"sources","markets","from_memory"?,"probability","probability_false",
// "probability_open","contradictory"?,"readings","limits","would_change","next_test"?}; then one closing line
// {"dossier", "claims","verdicts","unasked","worst","decision_rule","methods","rule_book"}. With `conceded`, which must
// be of `judgement`, a verdict may have "concession" or "expired_concession", and the closing line has "conceded".
void write_judgement_records(const DossierContext& context, const Judgement& judgement, const JudgeOptions& judged,
                             std::string& out, const Conceded* conceded = nullptr);
// One line a part and question: {"dossier","part","frame","asks","candidates","conflict","contradictory",
// "own_priors"?,"odd_ones","readings"};
// then {"dossier","parts","methods","rule_book"}.
void write_identity_records(const DossierContext& context, const Judgement& judgement, std::string& out);
// One line a test: {"dossier","step","method","title","part","harm","who","bits","minutes","cost","about","cautions",
// "next"?}; then
// {"dossier","tests","questions","share_decided_now","share_decided_after","minutes","cost","rule_book"}.
void write_plan_records(const DossierContext& context, const TestPlan& plan, std::string& out);

// Likelihoods before and after, and three tables of predicted against observed.
void write_learning_view(const Learning& learning, const ViewOptions& options, std::string& out);
// One line a method and material: {"method","frame","candidate","seen","outcomes"}; then {"dossiers",
// "before_any_reading","by_the_book","as_learnt","rule_book"}.
void write_learning_records(const RuleBook& book, const Learning& learning, std::string& out);

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_DOSSIER_REPORT_H
