#include "verdict/examination/examiner.h"

#include <optional>
#include <utility>

#include "claims/claim_parser.h"
#include "rules/book_data.h"
#include "verdict/examination/condition_coverage.h"
#include "verdict/examination/findings.h"
#include "verdict/examination/limit_coverage.h"
#include "verdict/examination/proof_texts.h"
#include "verdict/examination/rule_tally.h"

namespace grainside {
inline namespace v0 {

struct Examiner::Workspace {
    Workspace(const RuleBook& rule_book, const EvidenceBook* evidence)
        : book(rule_book.data()),
          models(verdict::models_of(book.rules)),
          proofs(verdict::read_proof_texts(book, models)),
          tally(book),
          parser(book.vocabulary) {
        if (evidence != nullptr) limits.emplace(rule_book, *evidence);
        for (const verdict::ReadText& text : proofs) tally.add(text);
    }

    const rules::BookData& book;
    std::vector<std::uint32_t> models;
    std::vector<verdict::ReadText> proofs;
    verdict::RuleTally tally;
    std::optional<verdict::LimitCoverage> limits;
    claims::ClaimParser parser;
    verdict::ReadText listing;
    std::uint32_t listings = 0;
};

Examiner::Examiner(const RuleBook& book, const EvidenceBook* evidence)
    : work_(std::make_unique<Workspace>(book, evidence)) {}
Examiner::Examiner(Examiner&&) noexcept = default;
Examiner& Examiner::operator=(Examiner&&) noexcept = default;
Examiner::~Examiner() = default;

void Examiner::add(const Listing& listing) {
    Workspace& work = *work_;
    ++work.listings;
    work.parser.parse(listing, work.listing.claims);
    const std::uint8_t category = work.parser.category();
    work.listing.facts = {category, work.book.vocabulary.categories[category].main_part};
    work.tally.add(work.listing);
}

void Examiner::add(const Dossier& dossier) {
    if (dossier.listing() != nullptr) add(*dossier.listing());
    if (work_->limits) work_->limits->add(dossier);
}

ExaminationReport Examiner::report(std::string_view rule) const {
    const Workspace& work = *work_;
    verdict::Remarks remarks(rule);
    const std::vector<char> dead = verdict::find_dead_conditions(work.book, work.models, remarks);
    verdict::find_shadowed_rules(work.book, work.models, work.tally, dead, remarks);
    verdict::find_unasked_concepts(work.book, remarks);
    verdict::find_uncited_sources(work.book, remarks);
    verdict::find_alike_examples(work.book, work.models, remarks);
    verdict::find_unusual_entries(work.book, work.models, remarks);
    ExaminationReport report;
    report.rules = static_cast<std::uint32_t>(work.book.rules.size());
    report.texts = static_cast<std::uint32_t>(work.proofs.size()) + work.listings;
    report.remarks = remarks.take();
    for (const BookRemark& remark : report.remarks) {
        ++(remark.issue.severity == Issue::Severity::error ? report.errors : report.notes);
    }
    return report;
}

CoverageReport Examiner::coverage(std::string_view rule) const {
    const Workspace& work = *work_;
    CoverageReport report;
    report.texts = static_cast<std::uint32_t>(work.proofs.size());
    for (std::uint32_t i = 0; i < work.book.rules.size(); ++i) {
        if (!rule.empty() && work.book.rules[i].id != rule) continue;
        for (ClauseCoverage& clause : verdict::coverage_of_rule(work.book, i, work.models[i], work.proofs)) {
            report.clauses.push_back(std::move(clause));
        }
    }
    if (work.limits && rule.empty()) {
        report.dossiers = work.limits->dossiers();
        for (ClauseCoverage& clause : work.limits->clauses()) report.clauses.push_back(std::move(clause));
    }
    for (const ClauseCoverage& clause : report.clauses) {
        report.gaps += (clause.seen_true ? 0U : 1U) + (clause.seen_false ? 0U : 1U) +
                       (clause.of_a_limit && !clause.seen_unknown ? 1U : 0U);
    }
    return report;
}

}  // namespace v0
}  // namespace grainside
