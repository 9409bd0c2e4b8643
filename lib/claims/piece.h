// Pieces: a segment as the grammar sees it.
#ifndef GRAINSIDE_CLAIMS_PIECE_H
#define GRAINSIDE_CLAIMS_PIECE_H

#include <cstdint>
#include <span>
#include <vector>

#include "text/segments.h"
#include "text/token.h"
#include "vocabulary/matcher.h"
#include "vocabulary/role_set.h"
#include "vocabulary/vocabulary.h"

namespace grainside::claims {

enum class PieceKind : std::uint8_t {
    term,    // a term of the vocabulary; `sense` says which
    word,    // a word of no term
    number,  // `number` holds its value
    mark,    // punctuation; `token_kind` says which
};

struct Piece {
    std::uint32_t first = 0;  // half-open range of tokens
    std::uint32_t last = 0;
    std::uint32_t hit = 0;  // of a term: index into PieceSource::hits
    double number = 0;
    vocabulary::Sense sense{};
    PieceKind kind = PieceKind::word;
    text::TokenKind token_kind = text::TokenKind::word;
    std::uint8_t flags = 0;  // those of the first token
    bool glued = false;      // no white space and no mark between this piece and the last
    bool silent = false;     // stands in something that claims nothing of the product
    bool negated = false;
    bool teaches = false;  // one of its senses begins general teaching: 'is made from'
    bool makes = false;    // one of its senses says that it was made: 'made'
    bool serves = false;   // one of its senses takes a purpose or a tool behind it: 'burnished with'
    bool names = false;    // one of its senses gives a name: 'is called'

    bool is(vocabulary::Role role) const noexcept { return kind == PieceKind::term && sense.role == role; }
    bool is_mark(text::TokenKind mark) const noexcept { return kind == PieceKind::mark && token_kind == mark; }
    bool hyphenated() const noexcept { return (flags & text::flag::kHyphenBefore) != 0; }
};

// What pieces are cut from.
struct PieceSource {
    const vocabulary::Vocabulary& vocabulary;
    const text::Tokens& tokens;
    std::span<const vocabulary::Hit> hits;  // of the whole text
    bool is_specification = false;          // the text is an attribute's value: a word can stand alone in it
    Part part = Part::whole;                // that the attribute's name gives
    Part main_part = Part::body;            // of the product
    bool is_tannage = false;                // the attribute's name asks for the tannage
    bool is_label = false;                  // the text is itself a label: an attribute's name
};

// Which word classes and marks a segment holds, as bits, so that a stage with nothing to do costs nothing.
struct Inventory {
    vocabulary::RoleSet roles;
    std::uint64_t marks = 0;
    bool numbers = false;
    bool teaches = false;
    bool serves = false;

    bool any(vocabulary::RoleSet wanted) const noexcept { return roles.any(wanted); }
    bool has(text::TokenKind mark) const noexcept { return (marks >> static_cast<unsigned>(mark) & 1U) != 0; }
};

// Fills `pieces` from one segment and settles what each ambiguous term means there: a conditional meaning where its
// condition holds (looking to the right over words already settled), else the first other sense in the order of the
// vocabulary files. `next_hit` is the first hit that may belong to the segment; it is moved behind the last that does.
Inventory cut_pieces(const PieceSource& source, const text::Segment& segment, std::size_t& next_hit,
                     std::vector<Piece>& pieces);

// Whether a concept is a material in the grammar's eyes: something a part can be made of.
bool is_stuff(const vocabulary::Vocabulary& vocabulary, ConceptId id) noexcept;

// Praise and craft: no claims, but rules ask for them.
inline bool is_mention(Kind kind) noexcept {
    return kind == Kind::quality || kind == Kind::craft;
}

// Words that end a noun phrase.
inline bool ends_phrase(const Piece& piece) noexcept {
    using vocabulary::Role;
    constexpr vocabulary::RoleSet kEnding = {
        Role::link,         Role::at_part,        Role::backing,      Role::all_after,     Role::with,
        Role::comes_along,  Role::copula,         Role::conjunction,  Role::alternative,   Role::negator,
        Role::negation_end, Role::exception,      Role::comparison,   Role::other_product, Role::accessory_before,
        Role::teaching,     Role::crowd,          Role::crowd_opener, Role::care,          Role::breaks,
        Role::part_before,  Role::determiner,     Role::article,      Role::own,           Role::purpose,
        Role::silent_label, Role::main_label,     Role::colour_label, Role::origin_label,  Role::leather_origin_label,
        Role::answer_label, Role::question_label, Role::plain_label,  Role::title_label};
    if (piece.kind == PieceKind::mark) {
        return piece.token_kind != text::TokenKind::percent && piece.token_kind != text::TokenKind::asterisk &&
               piece.token_kind != text::TokenKind::quote;
    }
    return piece.kind == PieceKind::term && kEnding.has(piece.sense.role);
}

// The head noun of a phrase: a part or a product.
inline bool is_noun(const Piece& piece) noexcept {
    using vocabulary::Role;
    constexpr vocabulary::RoleSet kNouns = {Role::part, Role::product, Role::part_after};
    return piece.kind == PieceKind::term && kNouns.has(piece.sense.role);
}

// Joins what stands by itself: 'tote with leather trim'.
inline bool is_with(const Piece& piece) noexcept {
    return piece.is(vocabulary::Role::with) || piece.is(vocabulary::Role::comes_along);
}

// Of a part's noun, as Claim::family tells it.
std::uint8_t family_of(const Piece& noun) noexcept;

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_PIECE_H
