#include "text/words_key.h"

#include <cstdint>

#include "text/tokenizer.h"

namespace grainside::text {
namespace {

// What a mark adds; '\0' for those that are only spacing or layout.
char sign_of(TokenKind kind) {
    switch (kind) {
        case TokenKind::comma:
            return ',';
        case TokenKind::stop:
            return '.';
        case TokenKind::question:
            return '?';
        case TokenKind::exclamation:
            return '!';
        case TokenKind::semicolon:
            return ';';
        case TokenKind::colon:
            return ':';
        case TokenKind::slash:
            return '/';
        case TokenKind::plus:
            return '+';
        case TokenKind::ampersand:
            return '&';
        case TokenKind::percent:
            return '%';
        case TokenKind::open:
            return '(';
        case TokenKind::close:
            return ')';
        case TokenKind::pipe:
            return '|';
        case TokenKind::asterisk:
            return '*';
        default:
            return '\0';
    }
}

}  // namespace

void make_words_key(std::string_view words, Tokens& tokens, std::string& key) {
    key.clear();
    tokenize(words, tokens);
    bool any = false;
    bool after_number = false;
    for (const Token& token : tokens.list) {
        const bool number = token.kind == TokenKind::number;
        if (!number && token.kind != TokenKind::word) {
            if (const char sign = sign_of(token.kind); sign != '\0') key += sign;
            continue;
        }
        if (number && after_number) key += ' ';
        key += tokens.folded_text(token);
        // The fold keeps no more of a word, and two long words may begin alike.
        if (token.folded_length == UINT16_MAX) key += words.substr(token.start, token.end - token.start);
        any = true;
        after_number = number;
    }
    if (!any) key.clear();
}

}  // namespace grainside::text
