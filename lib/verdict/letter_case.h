// The case of words, carried over to others.
#ifndef GRAINSIDE_VERDICT_LETTER_CASE_H
#define GRAINSIDE_VERDICT_LETTER_CASE_H

#include <cstddef>
#include <string>
#include <string_view>

namespace grainside::verdict {

// `wording` in the case of text[start, end). ASCII letters only: wordings of the book are English.
std::string in_case_of(std::string_view text, std::size_t start, std::size_t end, std::string wording);

// Whether a sentence, item or line begins at `at`.
bool begins_sentence(std::string_view text, std::size_t at);

bool is_upper(char c) noexcept;
bool is_lower(char c) noexcept;
char to_upper(char c) noexcept;
char to_lower(char c) noexcept;
// In any case of letters.
bool same_letters(std::string_view a, std::string_view b) noexcept;
// Letters, digits and all bytes beyond ASCII.
bool is_word_byte(char c) noexcept;

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_LETTER_CASE_H
