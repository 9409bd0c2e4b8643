#include "grainside/judge.h"

#include <algorithm>
#include <memory>
#include <string>
#include <string_view>
#include <utility>

#include "measure/conformity.h"
#include "rules/book_data.h"
#include "rules/references.h"
#include "verdict/asked_markets.h"
#include "verdict/claim_evidence.h"
#include "verdict/claim_verdicts.h"
#include "verdict/part_judgements.h"
#include "verdict/test_plan.h"

namespace grainside {
inline namespace v0 {

namespace {

using verdict::Bench;

measure::DecisionRule of_measure(DecisionRule rule) {
    switch (rule) {
        case DecisionRule::both_guarded:
            return measure::DecisionRule::both_guarded;
        case DecisionRule::simple_acceptance:
            return measure::DecisionRule::simple_acceptance;
        case DecisionRule::guarded_acceptance:
            return measure::DecisionRule::guarded_acceptance;
        case DecisionRule::guarded_rejection:
            return measure::DecisionRule::guarded_rejection;
    }
    return measure::DecisionRule::both_guarded;
}

constexpr DecisionRule kRules[] = {DecisionRule::both_guarded, DecisionRule::simple_acceptance,
                                   DecisionRule::guarded_acceptance, DecisionRule::guarded_rejection};

}  // namespace

std::string_view name_of(DecisionRule rule) noexcept {
    return measure::name_of(of_measure(rule));
}

std::optional<DecisionRule> decision_rule_named(std::string_view name) noexcept {
    for (const DecisionRule rule : kRules) {
        if (name_of(rule) == name) return rule;
    }
    return std::nullopt;
}

std::string_view name_of(LimitVerdict verdict) noexcept {
    switch (verdict) {
        case LimitVerdict::contradicts:
            return "contradicts";
        case LimitVerdict::supports:
            return "supports";
        case LimitVerdict::met:
            return "met";
        case LimitVerdict::undecided:
            return "undecided";
        case LimitVerdict::unread:
            return "unread";
    }
    return {};
}

struct Judge::Workspace {
    Workspace(const RuleBook& rule_book, const EvidenceBook& evidence_book, JudgeOptions judge_options)
        : book(rule_book),
          data(evidence_book.data()),
          options(std::move(judge_options)),
          checker(rule_book, options.check),
          checked_day(options.check.on) {
        if (options.check.proofs_on.empty()) {
            options.check.proofs_on = options.check.on.empty() ? options.today : options.check.on;
        }
    }

    // The day whose rules and limits apply: the one asked for; else that on which the listing was captured; else today.
    const std::string& day_of(const evidence::DossierData& dossier) const {
        if (!options.check.on.empty()) return options.check.on;
        return dossier.captured.empty() ? options.today : dossier.captured;
    }

    Bench bench_of(const evidence::DossierData& dossier) const {
        Bench bench{book.data().vocabulary.concepts,
                    data,
                    dossier,
                    {},
                    {},
                    Part::body,
                    {of_measure(options.decision_rule), data.judging.guard}};
        for (const evidence::PartRecord& record : dossier.parts) add_part(record, bench);
        return bench;
    }

    void add_part(const evidence::PartRecord& record, Bench& bench) const {
        bench.parts.push_back(identify::evidence_of(data, bench.dossier, record));
    }

    // Parts that the listing speaks of and nobody has tested.
    void add_claimed_parts(const CheckResult& check, Bench& bench) const {
        for (const Claim& claim : check.mentions) {
            if (!is_claim_kind(claim.kind)) continue;
            const Part part = claim.part == Part::whole ? check.main_part : claim.part;
            if (bench.part(part) != nullptr) continue;
            evidence::PartRecord unread;
            unread.part = part;
            add_part(unread, bench);
        }
    }

    void choose_limits(const Listing& listing, const CheckResult& check, Bench& bench) const {
        std::vector<std::string> region;
        const auto markets = verdict::markets_of(listing, options.check.markets, region);
        const std::vector<std::string_view> asked(markets.begin(), markets.end());
        const auto reach = rules::reach_of(markets, book.data().markets);
        for (const evidence::Limit& limit : data.limits) {
            const bool category = limit.categories == 0 || (limit.categories >> check.category & 1U) != 0;
            if (!category || !rules::holds_in(limit.markets, reach) || !limit.in_force.on(checked_day)) continue;
            // A market's own limit takes the place of that of the larger market, unless that was asked for too.
            std::erase_if(bench.limits, [&](const evidence::Limit* other) {
                const auto index = static_cast<std::size_t>(other - data.limits.data());
                const auto& replaced = limit.instead_of;
                return std::find(replaced.begin(), replaced.end(), index) != replaced.end() &&
                       (other->markets.empty() || !rules::holds_in(other->markets, asked));
            });
            bench.limits.push_back(&limit);
        }
    }

    // Nothing where the dossier has no listing.
    const CheckResult* check_listing(const evidence::DossierData& dossier, const Listing& listing, Bench& bench) {
        if (!dossier.has_listing) return nullptr;
        if (const std::string& day = day_of(dossier); day != checked_day || dossier.proofs != own_proofs) {
            CheckOptions of_dossier = options.check;
            of_dossier.on = day;
            if (dossier.proofs && options.check.proofs) {
                of_dossier.proofs =
                    std::make_shared<const FiledProofs>(options.check.proofs->joined_by(*dossier.proofs));
            } else if (dossier.proofs) {
                of_dossier.proofs = dossier.proofs;
            }
            checker = Checker(book, std::move(of_dossier));
            checked_day = day;
            own_proofs = dossier.proofs;
        }
        const CheckResult& check = checker.check(listing);
        bench.main_part = check.main_part;
        add_claimed_parts(check, bench);
        choose_limits(listing, check, bench);
        return &check;
    }

    const RuleBook& book;
    const evidence::EvidenceData& data;
    JudgeOptions options;
    Checker checker;
    std::string checked_day;                        // that `checker` was made for
    std::shared_ptr<const FiledProofs> own_proofs;  // of the dossier that it was made for
    Judgement result;
};

Judge::Judge(const RuleBook& rules, const EvidenceBook& evidence, JudgeOptions options)
    : work_(std::make_unique<Workspace>(rules, evidence, std::move(options))) {}
Judge::Judge(Judge&&) noexcept = default;
Judge& Judge::operator=(Judge&&) noexcept = default;
Judge::~Judge() = default;

const Judgement& Judge::judge(const Dossier& dossier) {
    return judge(dossier, dossier.data().listing);
}

const Judgement& Judge::judge(const Dossier& dossier, const Listing& listing) {
    Workspace& work = *work_;
    Judgement& result = work.result;
    result = Judgement{};
    Bench bench = work.bench_of(dossier.data());
    result.check = work.check_listing(dossier.data(), listing, bench);
    if (result.check != nullptr) {
        verdict::ListingVerdicts on_listing =
            verdict::verdicts_on(bench, work.book, listing, *result.check, work.checker);
        result.verdicts = std::move(on_listing.verdicts);
        result.unasked = std::move(on_listing.unasked);
    }
    result.parts = verdict::parts_of(bench);
    result.methods = verdict::methods_of(bench, result.verdicts);
    for (const Verdict& verdict : result.verdicts) result.worst = std::min(result.worst, verdict.grade);
    return result;
}

const Judgement& Judge::identify(const Dossier& dossier) {
    Judgement& result = work_->result;
    result = Judgement{};
    const Bench bench = work_->bench_of(dossier.data());
    result.parts = verdict::parts_of(bench);
    result.methods = verdict::methods_of(bench, {});
    return result;
}

TestPlan Judge::plan(const Dossier& dossier) {
    Bench bench = work_->bench_of(dossier.data());
    const CheckResult* check = work_->check_listing(dossier.data(), dossier.data().listing, bench);
    return verdict::plan_tests(bench, work_->book, check);
}

const JudgeOptions& Judge::options() const noexcept {
    return work_->options;
}

}  // namespace v0
}  // namespace grainside
