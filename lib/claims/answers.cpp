#include "claims/answers.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;

namespace {

bool denies(const Piece& piece) {
    return piece.is(Role::deny) || piece.is(Role::negator);
}

// Whether nothing but a mark or a number follows: 'no slip' is no answer.
bool stands_alone(std::span<const Piece> pieces, std::size_t at) {
    return at + 1 == pieces.size() || pieces[at + 1].kind == PieceKind::mark ||
           pieces[at + 1].kind == PieceKind::number;
}

bool joins(const Piece& piece) {
    return piece.is(Role::conjunction) || piece.is(Role::alternative) || piece.is_mark(TokenKind::slash) ||
           piece.is_mark(TokenKind::ampersand);
}

}  // namespace

ConceptId asked_by_label(const vocabulary::Vocabulary& vocabulary, std::span<const Piece> label) {
    ConceptId asked = 0;
    for (const Piece& piece : label) {
        if (piece.is(Role::genuine)) continue;
        if (!piece.is(Role::meaning)) return 0;
        const Kind kind = vocabulary.concepts[piece.sense.concept_id].kind;
        if (is_mention(kind) || kind == Kind::origin) return 0;
        asked = piece.sense.concept_id;
    }
    return asked;
}

void deny_answered_labels(std::span<Piece> pieces) {
    for (std::size_t i = 1; i + 1 < pieces.size(); ++i) {
        if (!pieces[i].is_mark(TokenKind::colon) || !denies(pieces[i + 1]) || !stands_alone(pieces, i + 1)) continue;
        // 'Waterproof and vegan: no' denies both.
        for (std::size_t k = i; k-- > 0 && (pieces[k].is(Role::meaning) || joins(pieces[k]));) pieces[k].negated = true;
    }
}

void parse_answer(const SegmentContext& segment, ConceptId asked, std::vector<Claim>& claims) {
    if (asked == 0 || segment.pieces.empty()) return;
    const Piece& answer = segment.pieces.front();
    if ((!answer.is(Role::affirm) && !denies(answer)) || !stands_alone(segment.pieces, 0)) return;
    const auto& concepts = segment.vocabulary.concepts;
    Claim claim = claim_over(segment, 0, 1);
    claim.says = asked;
    claim.kind = concepts[asked].kind;
    claim.negated = denies(answer);
    const bool of_stuff = is_stuff(segment.vocabulary, asked) || claim.kind == Kind::finish ||
                          claim.kind == Kind::plating || claim.kind == Kind::tanning;
    claim.part = concepts[asked].part.value_or(of_stuff ? segment.main_part : Part::whole);
    claims.push_back(claim);
}

void parse_yes(const SegmentContext& segment, const Region& question, std::vector<Claim>& claims) {
    const std::span<const Piece> pieces = segment.pieces;
    const std::uint32_t at = !pieces.empty() && pieces.front().is(Role::answer_label) ? 2 : 0;
    if (question.asks == 0 || at >= pieces.size() || !pieces[at].is(Role::affirm)) return;
    const auto& asked = segment.vocabulary.concepts[question.asks];
    if (is_mention(asked.kind) || asked.kind == Kind::origin) return;
    Claim claim = claim_over(segment, at, at + 1);
    claim.says = question.asks;
    claim.kind = asked.kind;
    claim.part =
        question.kind == RegionKind::part
            ? question.part
            : asked.part.value_or(is_stuff(segment.vocabulary, question.asks) ? segment.main_part : Part::whole);
    claims.push_back(claim);
}

}  // namespace grainside::claims
