// Uses what an installed copy gives: every public header, the built-in books, a check, a judgement and their reports.
#include <grainside/checker.h>
#include <grainside/claim.h>
#include <grainside/concessions.h>
#include <grainside/cost.h>
#include <grainside/cost_report.h>
#include <grainside/dossier.h>
#include <grainside/dossier_report.h>
#include <grainside/evidence_book.h>
#include <grainside/filed_proofs.h>
#include <grainside/finding.h>
#include <grainside/full_report.h>
#include <grainside/grainside.h>
#include <grainside/grainside_c.h>
#include <grainside/judge.h>
#include <grainside/learn.h>
#include <grainside/line_partitions.h>
#include <grainside/listing.h>
#include <grainside/listing_reader.h>
#include <grainside/market_check.h>
#include <grainside/market_report.h>
#include <grainside/report.h>
#include <grainside/result.h>
#include <grainside/reword.h>
#include <grainside/rule_book.h>
#include <grainside/sarif.h>
#include <grainside/source_place.h>
#include <grainside/survey.h>
#include <grainside/survey_report.h>
#include <grainside/version.h>

#include <iostream>
#include <string>
#include <vector>

namespace {

int fail(const std::vector<grainside::Issue>& issues) {
    for (const grainside::Issue& issue : issues) std::cerr << grainside::to_text(issue);
    return 2;
}

bool flags_the_title(const grainside::RuleBook& book) {
    grainside::Listing listing;
    listing.id = "example";
    listing.fields = {{"name", "Genuine PU leather tote"}};
    grainside::Checker checker(book);
    const grainside::CheckResult& result = checker.check(listing);
    std::string out;
    grainside::RecordWriter(book).write_findings(listing, result, checker, out);
    std::cout << out;
    return result.findings.size() == 1;
}

// The section shows yarns under a coat, and the back a weave: no leather.
constexpr const char* kDossier =
    "sample: {what: Tote}\n"
    "listing: {name: Full grain leather tote}\n"
    "parts:\n"
    "  body:\n"
    "    readings:\n"
    "      - {method: cut-edge, outcome: yarns-under-coat}\n"
    "      - {method: back-side, outcome: woven-back}\n";

bool contradicts_the_claim(const grainside::RuleBook& book, const grainside::EvidenceBook& evidence,
                           const grainside::Dossier& dossier) {
    grainside::Judge judge(book, evidence);
    const grainside::Judgement& result = judge.judge(dossier);
    std::string out;
    grainside::write_judgement_records({book, evidence, dossier}, result, judge.options(), out);
    std::cout << out;
    return result.worst == grainside::Grade::contradicted;
}

}  // namespace

int main() {
    std::cout << "grainside " << grainside::kVersion << '\n';
    const auto book = grainside::RuleBook::built_in();
    if (!book) return fail(book.issues());
    const auto evidence = grainside::EvidenceBook::load(book.value());
    if (!evidence) return fail(evidence.issues());
    const auto dossier = grainside::Dossier::parse("tote.yaml", kDossier, ".", evidence.value());
    if (!dossier) return fail(dossier.issues());
    const bool flagged = flags_the_title(book.value());
    const bool contradicted = contradicts_the_claim(book.value(), evidence.value(), dossier.value());
    const grainside::Learning learning = grainside::learn(evidence.value(), {&dossier.value(), 1}, 20);
    return flagged && contradicted && learning.dossiers == 0 ? 0 : 1;
}
