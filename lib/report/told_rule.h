// Everything that a reader wants to know of one rule, gathered once for the views in words, in HTML and as a manual
// page.
#ifndef GRAINSIDE_REPORT_TOLD_RULE_H
#define GRAINSIDE_REPORT_TOLD_RULE_H

#include <cstddef>
#include <string>
#include <vector>

#include "grainside/listing.h"
#include "grainside/rule_book.h"
#include "report/condition_text.h"
#include "report/rule_facts.h"

namespace grainside::report {

// A text of a rule's proof as the listing that it stands for, with the flagged words.
struct ToldExample {
    static constexpr std::size_t kNothing = static_cast<std::size_t>(-1);

    const ProofText* proof = nullptr;
    Listing listing;
    std::size_t field = kNothing;  // index into listing.fields: where the flagged words stand
    std::size_t start = 0;         // half-open byte span in that field
    std::size_t end = 0;
};

struct ToldRule {
    const RuleInfo* rule = nullptr;
    std::string markets;  // "us, eu"; "all"
    std::string days;     // "from 2020-10-24"; "always"
    std::vector<ConditionStep> condition;
    std::vector<std::string> instead;  // what to write or do instead, one sentence each; empty: nothing is known
    std::vector<const SourceInfo*> sources;
    std::vector<const RuleInfo*> twins;
    std::vector<ToldExample> flags, passes;
};

// The book must outlive the teller, and what it tells. Not thread-safe.
class RuleTeller {
public:
    explicit RuleTeller(const RuleBook& book) : book_(book), conditions_(book), families_(book) {}

    // REQUIRES: `rule` is an element of book.rules().
    ToldRule tell(const RuleInfo& rule) const;

private:
    const RuleBook& book_;
    ConditionTexts conditions_;
    RuleFamilies families_;
};

// How an example's field is named before its text: "" of the description.
std::string_view label_of_field(std::string_view field);

// "misleading, it, from 2020-10-24: Italy, D.Lgs. 68/2020, Art. 3".
std::string twin_text(const RuleBook& book, const RuleInfo& twin);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_TOLD_RULE_H
