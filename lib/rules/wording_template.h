// Suggested wordings: a rule's template filled with what the claim says.
#ifndef GRAINSIDE_RULES_WORDING_TEMPLATE_H
#define GRAINSIDE_RULES_WORDING_TEMPLATE_H

#include <string>
#include <string_view>

namespace grainside::rules {

// What a template may hold in braces.
struct TemplateValues {
    std::string_view says;    // {says}: how to write what the claim says
    std::string_view called;  // {called}: the noun that it borrows
    std::string_view other;   // {other}: what the statement beside it says
    std::string_view part;    // {part}
    std::string_view words;   // {words}: the flagged words
    std::string_view place;   // {place}: the country of the statement beside it, else of the claim
    std::string_view share;   // {share}: the percentage, as a number
    // {bare}: the longest tail of the words that says the same without 'solid', 'genuine' and the like
    std::string_view bare = {};
};

// Empty where `text` is a template; else what is wrong with it.
std::string template_fault(std::string_view text);

// REQUIRES: template_fault(text) is empty. Gives "" where a value that the template needs is empty.
std::string fill_template(std::string_view text, const TemplateValues& values);

}  // namespace grainside::rules

#endif  // GRAINSIDE_RULES_WORDING_TEMPLATE_H
