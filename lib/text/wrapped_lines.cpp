#include "text/wrapped_lines.h"

#include <cstddef>

namespace grainside::text {
namespace {

constexpr std::uint32_t kLongLine = 40;  // bytes

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

}  // namespace

void join_wrapped_lines(Tokens& tokens) {
    std::vector<Token>& list = tokens.list;
    std::uint32_t line_start = 0;
    bool heading = false;
    bool joined = false;
    // Up to the first line end every token stays where it is.
    std::size_t kept = 0;
    for (; kept < list.size() && list[kept].kind != TokenKind::line_end; ++kept)
        heading = heading || list[kept].kind == TokenKind::heading;
    for (std::size_t i = kept; i < list.size(); ++i) {
        const Token token = list[i];
        if (token.kind == TokenKind::heading) heading = true;
        if (token.kind == TokenKind::line_end) {
            const bool wraps =
                !heading && (token.flags & flag::kBlankLine) == 0 && token.start - line_start > kLongLine && kept > 0 &&
                can_wrap(list[kept - 1]) && i + 1 < list.size() &&
                (begins_small(tokens, list[i + 1]) || (list[i + 1].kind == TokenKind::word && leads_on(tokens, kept)));
            line_start = token.end;
            if (wraps) {
                joined = true;
                continue;
            }
            heading = false;
        }
        list[kept] = token;
        if (joined) list[kept].flags |= flag::kSpaceBefore;
        joined = false;
        ++kept;
    }
    list.resize(kept);
}

}  // namespace grainside::text
