#include "text/wrapped_lines.h"

#include <algorithm>
#include <bit>
#include <cstddef>

namespace grainside::text {
namespace {

constexpr std::uint32_t kLongLine = 40;  // folded bytes, spaces and marks

// One comparison a token finds both.
static_assert(TokenKind::heading > TokenKind::line_end && TokenKind::line_end > TokenKind::quote);

bool can_wrap(const Token& token) {
    return token.kind == TokenKind::word || token.kind == TokenKind::number || token.kind == TokenKind::comma;
}

// A word that begins with a small letter. Scripts without case begin at U+0590 and are told by their first byte.
bool begins_small(const Tokens& tokens, const Token& token) {
    constexpr std::uint8_t kFirstCaselessLead = 0xD7;
    if (token.kind != TokenKind::word || (token.flags & flag::kCapital) != 0 || token.folded_length == 0) return false;
    return static_cast<std::uint8_t>(tokens.folded[token.folded_offset]) < kFirstCaselessLead;
}

// A small word that no line ends with: 'Made in', 'a strap of'. Units stand behind a number ('55 cm').
bool leads_on(const Tokens& tokens, std::size_t kept) {
    constexpr std::size_t kLongest = 2;
    const Token& last = tokens.list[kept - 1];
    const bool behind_number = kept > 1 && tokens.list[kept - 2].kind == TokenKind::number;
    return last.kind == TokenKind::word && last.folded_length <= kLongest && begins_small(tokens, last) &&
           !behind_number;
}

// As long as it reads: references, tags, runs of spaces and wide letters make no line longer. Never more than the
// bytes.
bool is_long(const Token* first, const Token* last) {
    std::uint32_t length = 0;
    for (; first != last && length <= kLongLine; ++first) {
        constexpr unsigned kSigns = flag::kSpaceBefore | flag::kHyphenBefore | flag::kApostrophe;
        length += static_cast<std::uint32_t>(std::popcount(first->flags & kSigns));
        length += std::max<std::uint32_t>(first->folded_length, 1);
    }
    return length > kLongLine;
}

}  // namespace

void join_wrapped_lines(Tokens& tokens) {
    Token* const list = tokens.list.data();
    const std::size_t count = tokens.list.size();
    std::uint32_t line_start = 0;
    bool heading = false;
    bool joined = false;
    std::size_t kept = 0;
    // Line by line; until one is joined to the next, every token stays where it is.
    for (std::size_t first = 0;;) {
        std::size_t end = first;
        for (;; ++end) {
            while (end < count && list[end].kind < TokenKind::line_end) ++end;
            if (end == count || list[end].kind == TokenKind::line_end) break;
            heading = true;
        }
        if (kept != first) std::copy(list + first, list + end, list + kept);
        if (joined) list[kept].flags |= flag::kSpaceBefore;
        kept += end - first;
        if (end == count) break;
        const Token line_end = list[end];
        joined =
            !heading && (line_end.flags & flag::kBlankLine) == 0 && line_end.start - line_start > kLongLine &&
            kept > 0 && can_wrap(list[kept - 1]) && end + 1 < count &&
            is_long(list + kept - (end - first), list + kept) &&
            (begins_small(tokens, list[end + 1]) || (list[end + 1].kind == TokenKind::word && leads_on(tokens, kept)));
        line_start = line_end.end;
        first = end + 1;
        if (joined) continue;  // a word follows
        heading = false;
        list[kept++] = line_end;
    }
    tokens.list.resize(kept);
}

}  // namespace grainside::text
