// Changes to a text that must not change its claims, character by character, so that the words of a claim change in the
// same way as the text around them, and each byte of the new text knows the character that it was made of. HTML tags
// stay as they are.
#ifndef GRAINSIDE_TESTS_SUPPORT_TRANSFORM_H
#define GRAINSIDE_TESTS_SUPPORT_TRANSFORM_H

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace grainside::support {

enum class Transform {
    none,
    capitals,  // small letters of ASCII and Latin-1 to capital ones; not the sharp s and the micro sign
    small,     // capital letters to small ones
    crlf,      // line feed to carriage return and line feed
    trailing,  // two spaces before each line feed
    emoji,     // the variation selector U+FE0F behind arrows, signs and pictures, as keyboards of telephones write it
    nbsp,      // space to no-break space
    narrow_nbsp,   // space to narrow no-break space U+202F
    thin,          // space to thin space U+2009
    doubled,       // each space twice
    curly,         // straight quotes to typographic ones
    hyphens,       // hyphen to the hyphen character U+2010
    bound,         // hyphen to the non-breaking hyphen U+2011
    soft,          // a soft hyphen behind every 'e' inside a word
    zero_width,    // a zero-width non-joiner U+200C behind every 'e' inside a word
    decomposed,    // letters with accents to letter and combining mark
    wide,          // letters of ASCII to their full-width forms
    tagged,        // an empty inline tag behind each space
    entities,      // spaces, 'e' and all that is not ASCII to decimal character references
    hex_entities,  // the same, hexadecimal
    named,         // signs and letters that HTML has a name for
};
inline constexpr Transform kTransforms[] = {
    Transform::none,       Transform::capitals, Transform::small,       Transform::crlf,     Transform::trailing,
    Transform::emoji,      Transform::nbsp,     Transform::narrow_nbsp, Transform::thin,     Transform::doubled,
    Transform::curly,      Transform::hyphens,  Transform::bound,       Transform::soft,     Transform::zero_width,
    Transform::decomposed, Transform::wide,     Transform::tagged,      Transform::entities, Transform::hex_entities,
    Transform::named};

std::string_view name_of(Transform transform);

struct ChangedText {
    std::string text;
    // For each byte of `text` and its end: where the character that it was made of begins in the original text.
    std::vector<std::uint32_t> origin;
};

// REQUIRES: `text` is UTF-8.
ChangedText change(Transform transform, std::string_view text);
std::string apply(Transform transform, std::string_view text);
// A dump of claims whose words are changed: what stands between the first and the last apostrophe of each line.
std::string apply_to_dump(Transform transform, std::string_view dump);

}  // namespace grainside::support

#endif  // GRAINSIDE_TESTS_SUPPORT_TRANSFORM_H
