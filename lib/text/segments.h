// Cutting the tokens of a text into segments: sentences, list items, headings, labelled values.
#ifndef GRAINSIDE_TEXT_SEGMENTS_H
#define GRAINSIDE_TEXT_SEGMENTS_H

#include <cstdint>
#include <vector>

#include "text/token.h"

namespace grainside::text {

enum class SegmentKind : std::uint8_t { sentence, question, item, heading };

// Half-open range of tokens. Segments come in order and leave out only marks (line_end, stop, bullet, heading, ...).
struct Segment {
    std::uint32_t first = 0;
    std::uint32_t last = 0;  // one past the last token
    SegmentKind kind = SegmentKind::sentence;
    std::uint8_t starts_line = 0;   // 1: nothing of the same line stands before it
    std::uint8_t starts_block = 0;  // 1: first of its paragraph, item or heading
    std::uint32_t kinds = 0;        // of its tokens, as bits

    bool has(TokenKind wanted) const noexcept { return (kinds >> static_cast<unsigned>(wanted) & 1U) != 0; }
};

// Fills `segments`. A segment ends at stop, question, exclamation, line_end and pipe; not at semicolon or colon. A
// segment that ends in '?' is a question. No allocation once grown. Wrapped lines are joined before
// (wrapped_lines.h).
void cut_segments(const Tokens& tokens, std::vector<Segment>& segments);

}  // namespace grainside::text

#endif  // GRAINSIDE_TEXT_SEGMENTS_H
