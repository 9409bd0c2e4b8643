#include "claims/single_quotes.h"

#include <cstdint>

#include "text/character_reader.h"

namespace grainside::claims {
namespace {

using text::CharacterKind;
using text::Token;
using text::TokenKind;

bool is_word(const Token& token) {
    return token.kind == TokenKind::word || token.kind == TokenKind::number;
}

bool parts_words(CharacterKind kind) {
    return kind == CharacterKind::space || kind == CharacterKind::newline || kind == CharacterKind::dot ||
           kind == CharacterKind::inline_tag;
}

}  // namespace

bool opens_single_quote(std::string_view text, const text::Tokens& tokens, std::size_t at) {
    const std::uint32_t from = at == 0 ? 0 : tokens.list[at - 1].end;
    const std::uint32_t to = tokens.list[at].start;
    // Nearly every word stands behind a space.
    if (from == to || text[to - 1] == ' ') return false;
    text::CharacterReader reader(text.substr(from, to - from));
    bool is_free = at == 0 || !is_word(tokens.list[at - 1]);  // whether a word may begin here
    bool opens = false;
    for (std::uint32_t i = 0; i < reader.size();) {
        const text::Character character = reader.read(i);
        i = character.end;
        if (character.kind == CharacterKind::drop) continue;
        opens = character.kind == CharacterKind::apostrophe && is_free;
        is_free = parts_words(character.kind);
    }
    return opens;
}

bool closes_single_quote(std::string_view text, const text::Tokens& tokens, std::size_t at) {
    const std::uint32_t from = tokens.list[at].end;
    const bool is_last = at + 1 == tokens.list.size();
    const auto to = is_last ? static_cast<std::uint32_t>(text.size()) : tokens.list[at + 1].start;
    if (from == to || text[from] == ' ') return false;
    text::CharacterReader reader(text.substr(from, to - from));
    bool closes = false;
    for (std::uint32_t i = 0; i < reader.size();) {
        const text::Character character = reader.read(i);
        i = character.end;
        if (character.kind == CharacterKind::drop) continue;
        if (closes) return parts_words(character.kind);
        if (character.kind != CharacterKind::apostrophe) return false;
        closes = true;
    }
    return closes && (is_last || !is_word(tokens.list[at + 1]));
}

}  // namespace grainside::claims
