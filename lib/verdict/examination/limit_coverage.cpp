#include "verdict/examination/limit_coverage.h"

#include <set>
#include <string_view>
#include <utility>

#include "evidence/evidence_data.h"
#include "rules/book_data.h"
#include "rules/references.h"
#include "verdict/examination/entry_places.h"

namespace grainside::verdict {

namespace {

// Which limits hold in a market, one bit a limit.
std::vector<bool> limits_in(const RuleBook& book, const EvidenceBook& evidence, const std::string& market) {
    const std::vector<std::string_view> reach = rules::reach_of({&market, 1}, book.data().markets);
    std::vector<bool> hold;
    for (const evidence::Limit& limit : evidence.data().limits) hold.push_back(rules::holds_in(limit.markets, reach));
    return hold;
}

}  // namespace

LimitCoverage::LimitCoverage(const RuleBook& book, const EvidenceBook& evidence) : book_(book), evidence_(evidence) {}

void LimitCoverage::add(const Dossier& dossier) {
    if (judges_.empty()) {
        judges_.emplace_back(book_, evidence_, JudgeOptions{});
        std::set<std::vector<bool>> known;
        for (std::string& market : book_.markets()) {
            if (!known.insert(limits_in(book_, evidence_, market)).second) continue;
            JudgeOptions options;
            options.check.markets.push_back(std::move(market));
            judges_.emplace_back(book_, evidence_, std::move(options));
        }
    }
    ++dossiers_;
    if (dossier.listing() == nullptr) return;
    for (Judge& judge : judges_) take_down(judge.judge(dossier));
}

void LimitCoverage::take_down(const Judgement& judgement) {
    for (const Verdict& verdict : judgement.verdicts) {
        for (const LimitResult& limit : verdict.limits) {
            Seen& seen = seen_[limit.limit];
            seen.contradicts = seen.contradicts || limit.says == LimitVerdict::contradicts;
            seen.supports = seen.supports || limit.says == LimitVerdict::supports;
            seen.met = seen.met || limit.says == LimitVerdict::met;
            seen.undecided = seen.undecided || limit.says == LimitVerdict::undecided;
            seen.unread = seen.unread || limit.says == LimitVerdict::unread;
        }
    }
}

std::vector<ClauseCoverage> LimitCoverage::clauses() const {
    const EntryPlaces places(book_.data().documents, "limit");
    std::vector<ClauseCoverage> clauses;
    for (const evidence::Limit& limit : evidence_.data().limits) {
        const auto found = seen_.find(limit.id);
        const Seen seen = found == seen_.end() ? Seen{} : found->second;
        const EntryPlace place = places.of(limit.id);
        const bool stated = limit.stated_tolerance.has_value();
        const auto add = [&](const char* clause, bool seen_true, bool seen_false) {
            ClauseCoverage coverage;
            coverage.owner = limit.id;
            coverage.file = place.file;
            coverage.line = place.line;
            coverage.clause = clause;
            coverage.of_a_limit = true;
            coverage.seen_true = seen_true;
            coverage.seen_false = seen_false;
            coverage.seen_unknown = seen.undecided || seen.unread;
            clauses.push_back(std::move(coverage));
        };
        if (stated || limit.contradicts || !limit.no_part_is.empty()) {
            add("contradicts", seen.contradicts, seen.supports || seen.met);
        }
        // A value that reaches neither end leaves a limit that can only support undecided: it does not support.
        if (stated || limit.supports) {
            const bool can_contradict = stated || limit.contradicts.has_value();
            add("supports", seen.supports, can_contradict ? seen.contradicts : seen.undecided);
        }
    }
    return clauses;
}

}  // namespace grainside::verdict
