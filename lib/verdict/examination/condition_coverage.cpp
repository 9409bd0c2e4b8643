#include "verdict/examination/condition_coverage.h"

#include <string>
#include <string_view>
#include <utility>

#include "rules/rule_matcher.h"
#include "verdict/examination/condition_keys.h"
#include "verdict/examination/spoken_concepts.h"

namespace grainside::verdict {

namespace {

using rules::BesideCondition;
using rules::ClaimCondition;
using rules::CompiledRule;

class RuleCoverage {
public:
    RuleCoverage(const rules::BookData& book, const RuleInfo& info, std::span<const ReadText> texts)
        : vocabulary_(book.vocabulary), info_(info), texts_(texts), matcher_(book) {}

    void look(const CompiledRule& rule, const CompiledRule& inherited) {
        keys("when", rule.when, inherited.when.size());
        keys("unless", rule.unless, inherited.unless.size());
        keys("beside", rule.beside, inherited.beside.size());
        keys("unless_beside", rule.unless_beside, inherited.unless_beside.size());
        CompiledRule only_when;
        only_when.when = rule.when;
        const std::size_t let_through = count(only_when);
        for (std::size_t i = inherited.unless.size(); i < rule.unless.size(); ++i) {
            CompiledRule passes = only_when;
            passes.unless = {rule.unless[i]};
            const std::size_t left = count(passes);
            note(clause_name("unless", i, rule.unless.size()), left<let_through, left> 0);
        }
        wholes("beside", only_when, rule.beside, inherited.beside.size());
        wholes("unless_beside", only_when, rule.unless_beside, inherited.unless_beside.size());
    }

    std::vector<ClauseCoverage> take() { return std::move(clauses_); }

private:
    void wholes(std::string_view key, const CompiledRule& only_when, const std::vector<BesideCondition>& conditions,
                std::size_t inherited) {
        for (std::size_t i = inherited; i < conditions.size(); ++i) {
            CompiledRule is_true = only_when;
            is_true.beside = {conditions[i]};
            CompiledRule is_false = only_when;
            is_false.unless_beside = {conditions[i]};
            note(clause_name(key, i, conditions.size()), count(is_true) > 0, count(is_false) > 0);
        }
    }

    template <typename Conditions>
    void keys(std::string_view where, const Conditions& conditions, std::size_t inherited) {
        for (std::size_t i = inherited; i < conditions.size(); ++i) {
            const ClaimCondition& condition = asked_claim(conditions[i]);
            for (const Key& key : keys_of(condition, vocabulary_.concepts.size())) {
                if (key.name == "kind" && is_always_of_kind(condition)) continue;
                bool seen[2] = {false, false};
                for (const ReadText& text : texts_) {
                    for (const Claim& claim : text.claims) {
                        if (key.name == "says" || condition.says.contains(claim.says))
                            seen[key.alone.holds(claim, text.facts) ? 1 : 0] = true;
                    }
                }
                note(clause_name(where, i, conditions.size()) + ' ' + std::string(key.name), seen[1], seen[0]);
            }
        }
    }

    bool is_always_of_kind(const ClaimCondition& condition) const {
        bool always = true;
        condition.says.for_each(
            [&](ConceptId id) { always = always && (kinds_of_claims(vocabulary_, id) & ~condition.kinds) == 0; });
        return always;
    }

    std::size_t count(const CompiledRule& rule) {
        std::size_t sum = 0;
        for (const ReadText& text : texts_) sum += matcher_.count_alone(rule, text.claims, text.facts);
        return sum;
    }

    void note(std::string clause, bool seen_true, bool seen_false) {
        ClauseCoverage coverage;
        coverage.owner = info_.id;
        coverage.file = info_.file;
        coverage.line = info_.line;
        coverage.clause = std::move(clause);
        coverage.seen_true = seen_true;
        coverage.seen_false = seen_false;
        clauses_.push_back(std::move(coverage));
    }

    const vocabulary::Vocabulary& vocabulary_;
    const RuleInfo& info_;
    std::span<const ReadText> texts_;
    rules::RuleMatcher matcher_;
    std::vector<ClauseCoverage> clauses_;
};

}  // namespace

std::vector<ClauseCoverage> coverage_of_rule(const rules::BookData& book, std::uint32_t rule, std::uint32_t model,
                                             std::span<const ReadText> texts) {
    RuleCoverage coverage(book, book.rules[rule], texts);
    coverage.look(book.compiled[rule], model == kNoModel ? CompiledRule{} : book.compiled[model]);
    return coverage.take();
}

}  // namespace grainside::verdict
