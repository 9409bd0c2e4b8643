// Changes to a text that must not change its claims, character by character, so that the words of a claim change in the
// same way as the text around them.
#ifndef GRAINSIDE_TESTS_UNIT_CLAIMS_TRANSFORM_H
#define GRAINSIDE_TESTS_UNIT_CLAIMS_TRANSFORM_H

#include <string>
#include <string_view>

namespace grainside::claims {

enum class Transform {
    none,
    capitals,    // a-z to A-Z
    crlf,        // line feed to carriage return and line feed
    nbsp,        // space to no-break space
    curly,       // straight quotes to typographic ones
    hyphens,     // hyphen to the hyphen character U+2010
    soft,        // a soft hyphen behind every 'e' inside a word
    decomposed,  // letters with accents to letter and combining mark
    entities,    // spaces, 'e' and all that is not ASCII to character references
};
inline constexpr Transform kTransforms[] = {Transform::none, Transform::capitals,   Transform::crlf,
                                            Transform::nbsp, Transform::curly,      Transform::hyphens,
                                            Transform::soft, Transform::decomposed, Transform::entities};

std::string_view name_of(Transform transform);
// REQUIRES: `text` is UTF-8.
std::string apply(Transform transform, std::string_view text);
// A dump of claims whose words are changed: what stands between the first and the last apostrophe of each line.
std::string apply_to_dump(Transform transform, std::string_view dump);

}  // namespace grainside::claims

#endif  // GRAINSIDE_TESTS_UNIT_CLAIMS_TRANSFORM_H
