// Names and flagged words as a survey keeps and compares them. Not thread-safe: keeps working memory.
#ifndef GRAINSIDE_SURVEY_NAME_KEYS_H
#define GRAINSIDE_SURVEY_NAME_KEYS_H

#include <string>
#include <string_view>

#include "text/token.h"

namespace grainside::survey {

// The first kMostNameBytes of `text`, on a character's border, white space around them left out.
std::string_view name_in(std::string_view text) noexcept;

class NameKeys {
public:
    // Equal for names that differ in capitals, accents, spaces, hyphens and Unicode's form only; a company's form
    // ('Ltd.') and a word for '&' are part of the name, since to leave them out would be a guess. Without letters and
    // digits the name itself. Lives until the next call. REQUIRES: name.size() <= kMostNameBytes.
    std::string_view key_of(std::string_view name);

private:
    text::Tokens tokens_;
    std::string key_;
};

}  // namespace grainside::survey

#endif  // GRAINSIDE_SURVEY_NAME_KEYS_H
