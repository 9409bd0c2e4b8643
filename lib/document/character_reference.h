// HTML character references: "&eacute;", "&#233;", "&#xE9;".
#ifndef GRAINSIDE_DOCUMENT_CHARACTER_REFERENCE_H
#define GRAINSIDE_DOCUMENT_CHARACTER_REFERENCE_H

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace grainside::document {

struct CharacterReference {
    char32_t code = 0;
    std::uint32_t length = 0;  // bytes with '&' and ';'; 0 = there is no reference at this place
};

// Reads the reference that begins at `at`. Known are the names of Latin-1, general punctuation, currency and the signs
// that product texts use, always with their semicolon. Numbers that are no character give U+FFFD; 128 to 159 are read
// as windows-1252, as browsers do (HTML standard, "numeric character reference end state"). Looks at no more than 12
// bytes, so that a text full of '&' costs no more than any other. REQUIRES: text[at] == '&'.
CharacterReference read_character_reference(std::string_view text, std::size_t at);

// What a byte of windows-1252 stands for; the five that stand for nothing give U+FFFD. Source: Encoding standard.
char32_t windows_1252_character(unsigned char byte);

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_CHARACTER_REFERENCE_H
