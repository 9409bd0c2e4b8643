// What must hold for the tokens of any text; shared by the unit tests and the fuzz target.
#ifndef GRAINSIDE_TESTS_UNIT_TEXT_TOKEN_CHECKS_H
#define GRAINSIDE_TESTS_UNIT_TEXT_TOKEN_CHECKS_H

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "text/token.h"
#include "text/utf8.h"

namespace grainside::text {

// Places where a character begins, and the end. A byte that is no UTF-8 is a character of its own.
inline std::vector<bool> character_borders(std::string_view text) {
    std::vector<bool> borders(text.size() + 1, false);
    for (std::size_t at = 0; at < text.size();) {
        borders[at] = true;
        at += std::max<std::size_t>(decode_utf8(text, at).length, 1);
    }
    borders[text.size()] = true;
    return borders;
}

// "" if the spans are in order, apart, within the text and on character borders, and the folded forms within their
// buffer; otherwise what is wrong.
inline std::string first_fault(std::string_view text, const Tokens& tokens) {
    const std::vector<bool> borders = character_borders(text);
    std::size_t past = 0;
    for (std::size_t i = 0; i < tokens.list.size(); ++i) {
        const Token& token = tokens.list[i];
        const auto fault = [i](const char* what) {
            return std::string("token ").append(std::to_string(i)).append(": ").append(what);
        };
        if (token.start < past || token.end < token.start) return fault("out of order");
        if (token.end > text.size()) return fault("past the end");
        if (!borders[token.start] || !borders[token.end]) return fault("within a character");
        if (token.start == token.end && token.kind != TokenKind::line_end) return fault("empty");
        const bool has_form = token.kind == TokenKind::word || token.kind == TokenKind::number;
        if (has_form != (token.folded_length != 0)) return fault("folded form missing or too many");
        if (has_form && std::size_t{token.folded_offset} + token.folded_length + 16 > tokens.folded.size()) {
            return fault("folded form out of bounds");
        }
        past = token.end;
    }
    return "";
}

inline bool same_tokens(const Tokens& a, const Tokens& b) {
    return std::equal(a.list.begin(), a.list.end(), b.list.begin(), b.list.end(), [&](const Token& x, const Token& y) {
        return x.start == y.start && x.end == y.end && x.kind == y.kind && x.flags == y.flags &&
               a.folded_text(x) == b.folded_text(y);
    });
}

}  // namespace grainside::text

#endif  // GRAINSIDE_TESTS_UNIT_TEXT_TOKEN_CHECKS_H
