#include "report/condition_text.h"

#include <algorithm>
#include <cstddef>
#include <iterator>

#include "report/claim_condition_text.h"
#include "rules/book_data.h"

namespace grainside::report {

using document::Node;

namespace {

struct ReachText {
    std::string_view reach, text;
};
constexpr ReachText kReaches[] = {{"phrase", "in the same phrase, "},
                                  {"sentence", "in the same sentence, "},
                                  {"part", "on the same part, "},
                                  {"part-in-sentence", "in the same sentence and on the same part, "},
                                  {"noun", "on the same part and on the same thing there, as both on a buckle, "},
                                  {"elsewhere", "in another field and on the same part, "},
                                  {"anywhere", "anywhere in the listing, "}};

class StepWriter {
public:
    StepWriter(const rules::BookData& book, const MarkTexts& marks, const rules::CompiledRule& rule)
        : book_(book), marks_(marks), rule_(rule) {}

    std::vector<ConditionStep> write() {
        add("It flags", "when", false);
        add("Only where there is also,", "beside", true);
        add("It is silent on", "unless", false);
        add("It is silent where there is also,", "unless_beside", true);
        return std::move(steps_);
    }

private:
    void add(std::string_view lead, std::string_view key, bool beside) {
        ConditionStep step{lead, {}};
        for (const Node entry : {rule_.model_entry, rule_.entry}) {
            const Node conditions = entry.find(key);
            if (conditions.is_mapping()) step.items.push_back(told(conditions, beside));
            if (!conditions.is_sequence()) continue;
            for (const Node one : conditions) step.items.push_back(told(one, beside));
        }
        if (!step.items.empty()) steps_.push_back(std::move(step));
    }

    std::string told(Node condition, bool beside) const {
        if (!beside) return claim_condition_text(book_, marks_, condition, "a");
        const Node reach = condition.find("reach");
        return std::string(reach_text(reach.exists() ? reach.text() : "part")) +
               claim_condition_text(book_, marks_, condition, "another");
    }

    const rules::BookData& book_;
    const MarkTexts& marks_;
    const rules::CompiledRule& rule_;
    std::vector<ConditionStep> steps_;
};

}  // namespace

std::string_view reach_text(std::string_view reach) noexcept {
    const auto* found = std::find_if(std::begin(kReaches), std::end(kReaches),
                                     [&](const ReachText& one) { return one.reach == reach; });
    return found == std::end(kReaches) ? std::string_view() : found->text;
}

std::vector<ConditionStep> ConditionTexts::steps_of(const RuleInfo& rule) const {
    const auto index = static_cast<std::size_t>(&rule - book_.rules().data());
    return StepWriter(book_.data(), marks_, book_.data().compiled[index]).write();
}

std::string sentence_of(const ConditionStep& step) {
    std::string text(step.lead);
    for (std::size_t i = 0; i < step.items.size(); ++i) text.append(i == 0 ? " " : "; or ").append(step.items[i]);
    return text + '.';
}

}  // namespace grainside::report
