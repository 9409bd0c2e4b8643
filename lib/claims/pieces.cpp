#include <algorithm>
#include <array>
#include <charconv>
#include <string_view>

#include "claims/piece.h"
#include "claims/settle.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;
using vocabulary::Vocabulary;

namespace {

// A number as sellers write it: '1,200' and '1.4' and '1,4'. A comma before exactly three digits groups thousands.
double number_value(std::string_view text) {
    std::array<char, 32> plain{};
    std::size_t length = 0;
    for (std::size_t i = 0; i < text.size() && length + 1 < plain.size(); ++i) {
        if (text[i] == ',') {
            const std::size_t rest = text.size() - i - 1;
            const bool groups = rest >= 3 && (rest == 3 || text[i + 4] == ',' || text[i + 4] == '.');
            if (groups) continue;
            plain[length++] = '.';
        } else {
            plain[length++] = text[i];
        }
    }
    double value = 0;
    std::from_chars(plain.data(), plain.data() + length, value);
    return value;
}

}  // namespace

bool is_stuff(const Vocabulary& vocabulary, ConceptId id) noexcept {
    if (id == 0) return false;
    switch (vocabulary.concepts.kind(id)) {
        case Kind::material:
        case Kind::species:
        case Kind::grain:
            return true;
        case Kind::finish:  // patent leather is a leather, a matte finish is none
            return vocabulary.concepts.is_a(id, vocabulary.known.leather);
        default:
            return false;
    }
}

std::uint8_t family_of(const Piece& noun) noexcept {
    return noun.is(Role::part) ? static_cast<std::uint8_t>(noun.sense.concept_id) : std::uint8_t{0};
}

Inventory cut_pieces(const PieceSource& source, const text::Segment& segment, std::size_t& next_hit,
                     std::vector<Piece>& pieces) {
    pieces.clear();
    const text::Token* const tokens = source.tokens.list.data();
    const std::span<const vocabulary::Hit> hits = source.hits;
    while (next_hit < hits.size() && hits[next_hit].first < segment.first) ++next_hit;
    for (std::uint32_t at = segment.first; at < segment.last;) {
        const text::Token& token = tokens[at];
        Piece& piece = pieces.emplace_back();
        piece.first = at;
        piece.last = at + 1;
        piece.flags = token.flags;
        piece.token_kind = token.kind;
        piece.glued = at > segment.first && (token.flags & text::flag::kSpaceBefore) == 0;
        if (next_hit < hits.size() && hits[next_hit].first == at) {
            piece.kind = PieceKind::term;
            piece.hit = static_cast<std::uint32_t>(next_hit);
            piece.last = hits[next_hit].last;
            ++next_hit;
        } else if (token.kind == TokenKind::number) {
            piece.kind = PieceKind::number;
            piece.number = number_value(source.tokens.folded_text(token));
        } else if (token.kind != TokenKind::word) {
            piece.kind = PieceKind::mark;
        }
        at = piece.last;
    }
    settle_senses(source, pieces);
    // Counted in variables of its own: the compiler cannot tell an inventory in memory from the pieces.
    vocabulary::RoleSet roles;
    std::uint64_t marks = 0;
    bool numbers = false;
    bool teaches = false;
    bool serves = false;
    for (Piece& piece : pieces) {
        if (piece.is(Role::unit) && piece.sense.value == static_cast<std::uint8_t>(Unit::percent)) {
            piece.kind = PieceKind::mark;  // '100 percent' reads as '100 %'
            piece.token_kind = TokenKind::percent;
        }
        if (piece.kind == PieceKind::term) {
            roles.insert(piece.sense.role);
            teaches |= piece.teaches;
            serves |= piece.serves;
        } else if (piece.kind == PieceKind::mark) {
            marks |= std::uint64_t{1} << static_cast<unsigned>(piece.token_kind);
        } else if (piece.kind == PieceKind::number) {
            numbers = true;
        }
    }
    return {roles, marks, numbers, teaches, serves};
}

}  // namespace grainside::claims
