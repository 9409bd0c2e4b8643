// Tokens as one line of text, so that an expectation is a line and a difference reads itself.
//
// Words are their folded form, numbers have a '#' before it, marks are their kind in angle brackets. Before it stand
// '_' (space_before) and '-' (hyphen_before); after it '^' (capital), '^^' (all_capitals) and '!' (look_alike). A
// line_end with blank_line is <blank>.
#ifndef GRAINSIDE_TESTS_UNIT_TEXT_TOKEN_DUMP_H
#define GRAINSIDE_TESTS_UNIT_TEXT_TOKEN_DUMP_H

#include <array>
#include <cstddef>
#include <string>
#include <string_view>

#include "text/token.h"

namespace grainside::text {

inline std::string dump_token(const Tokens& tokens, const Token& token) {
    static constexpr std::array<std::string_view, 21> kNames = {
        "word",    "number",  "<comma>",    "<stop>",      "<question>", "<exclamation>", "<semicolon>",
        "<colon>", "<slash>", "<plus>",     "<ampersand>", "<percent>",  "<open>",        "<close>",
        "<dash>",  "<pipe>",  "<asterisk>", "<bullet>",    "<quote>",    "<line>",        "<heading>"};
    const auto has = [&](std::uint8_t flag) { return (token.flags & flag) != 0; };
    std::string out;
    if (has(flag::kSpaceBefore)) out += '_';
    if (has(flag::kHyphenBefore)) out += '-';
    if (token.kind == TokenKind::number) out += '#';
    if (token.kind == TokenKind::word || token.kind == TokenKind::number) {
        out += tokens.folded_text(token);
    } else if (has(flag::kBlankLine)) {
        out += "<blank>";
    } else {
        out += kNames[static_cast<std::size_t>(token.kind)];
    }
    if (has(flag::kCapital)) out += '^';
    if (has(flag::kAllCapitals)) out += '^';
    if (has(flag::kLookAlike)) out += '!';
    return out;
}

inline std::string dump_tokens(const Tokens& tokens) {
    std::string out;
    for (const Token& token : tokens.list) {
        if (!out.empty()) out += ' ';
        out += dump_token(tokens, token);
    }
    return out;
}

// The bytes of the text that each token stands for, each between bars.
inline std::string dump_spans(const Tokens& tokens, std::string_view text) {
    std::string out = "|";
    for (const Token& token : tokens.list) {
        out += text.substr(token.start, token.end - token.start);
        out += '|';
    }
    return out;
}

}  // namespace grainside::text

#endif  // GRAINSIDE_TESTS_UNIT_TEXT_TOKEN_DUMP_H
