// Finding the end of the HTML tag, comment or passed-over element that begins at a '<', and what it does to the text.
#ifndef GRAINSIDE_TEXT_TAG_SCANNER_H
#define GRAINSIDE_TEXT_TAG_SCANNER_H

#include <cstddef>
#include <cstdint>
#include <string_view>

#include "text/character.h"

namespace grainside::text {

struct Tag {
    CharacterKind kind = CharacterKind::gap;  // one of the tags; gap = the '<' begins none and stands for itself
    std::uint32_t end = 0;                    // one past its last byte
};

// One scanner a text, asked for places in ascending order; asking twice for the same '<' may give two answers.
//
// The whole of a text costs linear time whatever it holds: what a search did not find is remembered, and a '<' within
// the bytes that a failed attempt has read begins no tag either. A quote hides '>' and '<' only as an attribute's
// value, that is after '=', and only if it is closed; any other '<' before the '>' ends the attempt.
class TagScanner {
public:
    explicit TagScanner(std::string_view text) : text_(text) {}

    // REQUIRES: text[at] == '<'.
    Tag scan(std::uint32_t at);

private:
    Tag scan_declaration(std::uint32_t at);
    Tag scan_element(std::uint32_t at);
    std::size_t tag_end(std::size_t from);
    std::size_t closing_quote(std::size_t opening);
    std::size_t raw_element_end(std::string_view name, std::size_t from, bool& missing);

    std::string_view text_;
    std::size_t failed_until_ = 0;
    bool no_comment_end_ = false;
    bool no_script_end_ = false;
    bool no_style_end_ = false;
    bool no_single_quote_ = false;
    bool no_double_quote_ = false;
};

}  // namespace grainside::text

#endif  // GRAINSIDE_TEXT_TAG_SCANNER_H
