// What views of the rule book say of a rule and of a source in few words. Thread-safe.
#ifndef GRAINSIDE_REPORT_RULE_FACTS_H
#define GRAINSIDE_REPORT_RULE_FACTS_H

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/rule_book.h"

namespace grainside::report {

// "us, eu"; "all" of a rule that holds everywhere.
std::string markets_text(const RuleInfo& rule);
// "from 2020-10-24 until 2030-12-31", "always".
std::string days_text(const RuleInfo& rule);

// How the book knows what a source says: "seen", "from memory", "practice".
std::string_view standing_of(const SourceInfo& source);
// "16 CFR 24.2(b) (from memory)".
std::string cite_of(const SourceInfo& source);
// Those of a rule, each once: two entries of the book may cite one text.
std::vector<std::string> cites_of(const RuleBook& book, const RuleInfo& rule);

// A template for people: "(the part) of plastic sheet" of "{part} of plastic sheet".
std::string readable_template(std::string_view wording);

// Whether `market`, or a larger one that it lies within, is among those that an entry names; never of an entry that
// holds everywhere.
bool is_made_for(const RuleBook& book, const std::vector<std::string>& named, const std::string& market);
// The same of one of several; true where none are asked for.
bool is_made_for_any(const RuleBook& book, const std::vector<std::string>& named,
                     const std::vector<std::string>& markets);

// Rules about one subject, in the order of the book.
struct RuleGroup {
    std::string_view name;
    std::vector<const RuleInfo*> rules;
};
// In the order of their names.
std::vector<RuleGroup> rule_groups(const RuleBook& book);

// Which rules share one condition. Immutable once made; the book must outlive it.
class RuleFamilies {
public:
    explicit RuleFamilies(const RuleBook& book);
    // The others that share the condition of `rule`, its model among them, in the order of the book.
    std::vector<const RuleInfo*> twins_of(const RuleInfo& rule) const;

private:
    std::map<std::string_view, std::vector<const RuleInfo*>> by_model_;
};

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_RULE_FACTS_H
