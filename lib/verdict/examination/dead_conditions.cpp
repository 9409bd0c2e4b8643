#include <fmt/format.h>

#include <algorithm>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "verdict/examination/condition_keys.h"
#include "verdict/examination/findings.h"
#include "verdict/examination/spoken_concepts.h"

namespace grainside::verdict {

namespace {

using rules::ClaimCondition;
using vocabulary::ConceptSet;

bool meet(const ConceptSet& a, const ConceptSet& b, std::size_t count) {
    for (std::size_t id = 1; id < count; ++id) {
        const auto one = static_cast<ConceptId>(id);
        if (a.contains(one) && b.contains(one)) return true;
    }
    return false;
}

class DeadConditions {
public:
    explicit DeadConditions(const rules::BookData& book)
        : vocabulary_(book.vocabulary), spoken_(spoken_concepts(book)), count_(book.vocabulary.concepts.size()) {}

    // Why no claim can meet `condition`; empty where one can.
    std::string why(const ClaimCondition& condition) const {
        if (!meet(condition.says, condition.says, count_)) return "`not_says` takes away all that `says` asks for";
        if (!meet(condition.says, spoken_, count_)) return "no word stands for what it asks for in `says`";
        if (!any_kind(condition)) return "nothing that it asks for in `says` is of a `kind` that it asks for";
        if (condition.parts == 0 && (!condition.main_part || condition.not_main_part)) {
            return "`not_part` takes away all that `part` asks for";
        }
        if (condition.categories == 0) return "`not_category` takes away all that `category` asks for";
        if ((condition.marked_all & condition.unmarked) != 0) return "`unmarked` has a mark of `marked_all`";
        if (condition.marked != 0 && (condition.marked & ~condition.unmarked) == 0) {
            return "`unmarked` takes away all that `marked` asks for";
        }
        return why_called(condition);
    }

private:
    bool any_kind(const ClaimCondition& condition) const {
        for (std::size_t id = 1; id < count_; ++id) {
            const auto one = static_cast<ConceptId>(id);
            if (condition.says.contains(one) && (kinds_of_claims(vocabulary_, one) & condition.kinds) != 0) return true;
        }
        return false;
    }

    std::string why_called(const ClaimCondition& condition) const {
        if (!condition.called_asked) return {};
        if (condition.borrowed && !*condition.borrowed) return "it asks for a noun in `called`, and for none borrowed";
        const bool left = [&] {
            for (std::size_t id = 1; id < count_; ++id) {
                const auto one = static_cast<ConceptId>(id);
                if (condition.called.contains(one) && !condition.not_called.contains(one)) return true;
            }
            return false;
        }();
        return left ? std::string() : "`not_called` takes away all that `called` asks for";
    }

    const vocabulary::Vocabulary& vocabulary_;
    ConceptSet spoken_;
    std::size_t count_;
};

constexpr const char* kHint = "mend the condition, or take it out";

// One rule's lists. In `when` and `beside` one clause must hold for the rule to speak.
class OneRule {
public:
    OneRule(const DeadConditions& dead, const RuleInfo& rule, Remarks& remarks)
        : dead_(dead), rule_(rule), remarks_(remarks) {}

    template <typename Conditions>
    void look(std::string_view key, const Conditions& conditions, std::size_t inherited, bool needed) {
        std::size_t dead = 0;
        for (std::size_t i = 0; i < conditions.size(); ++i) {
            const std::string why = dead_.why(asked_claim(conditions[i]));
            if (why.empty()) continue;
            ++dead;
            if (i < inherited || (needed && conditions.size() == 1)) continue;
            remarks_.add(Issue::Severity::error, "dead-condition", rule_,
                         fmt::format("rule '{}': {} can hold for no claim: {}", rule_.id,
                                     clause_name(key, i, conditions.size()), why),
                         kHint);
        }
        if (!needed || conditions.empty() || dead < conditions.size()) return;
        is_dead_ = true;
        if (inherited != 0) return;  // told of its model
        const std::string why =
            conditions.size() == 1 ? ": " + dead_.why(asked_claim(conditions[0])) : " in any of its conditions";
        remarks_.add(Issue::Severity::error, "dead-rule", rule_,
                     fmt::format("rule '{}' can never speak: `{}` can hold for no claim{}", rule_.id, key, why), kHint);
    }

    bool is_dead() const noexcept { return is_dead_; }

private:
    const DeadConditions& dead_;
    bool is_dead_ = false;
    const RuleInfo& rule_;
    Remarks& remarks_;
};

}  // namespace

std::vector<char> find_dead_conditions(const rules::BookData& book, std::span<const std::uint32_t> models,
                                       Remarks& remarks) {
    const DeadConditions conditions(book);
    std::vector<char> dead(book.rules.size());
    for (std::size_t i = 0; i < book.rules.size(); ++i) {
        const rules::CompiledRule& rule = book.compiled[i];
        const rules::CompiledRule none;
        const rules::CompiledRule& model = models[i] == kNoModel ? none : book.compiled[models[i]];
        OneRule one(conditions, book.rules[i], remarks);
        one.look("when", rule.when, model.when.size(), true);
        one.look("beside", rule.beside, model.beside.size(), true);
        one.look("unless", rule.unless, model.unless.size(), false);
        one.look("unless_beside", rule.unless_beside, model.unless_beside.size(), false);
        dead[i] = one.is_dead() ? 1 : 0;
    }
    return dead;
}

}  // namespace grainside::verdict
