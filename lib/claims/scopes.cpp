#include "claims/scopes.h"

#include "claims/answers.h"
#include "claims/clauses.h"
#include "claims/denial.h"
#include "claims/offers.h"
#include "claims/teaching.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;

namespace {

// 'The colour is raw silk', 'in a shade that we call Leather Moon': a colour's name, up to the next comma.
void silence_colour_names(const vocabulary::Vocabulary& vocabulary, std::span<Piece> pieces) {
    // 'The colour is fade-resistant' names none.
    const auto behaves = [&](const Piece& piece) {
        return piece.is(Role::meaning) && vocabulary.concepts[piece.sense.concept_id].kind == Kind::performance;
    };
    constexpr std::size_t kReach = 5;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (!pieces[i].is(Role::tone_word) && !pieces[i].is(Role::colour_label)) continue;
        for (std::size_t k = i + 1; k < pieces.size() && k <= i + kReach; ++k) {
            if (pieces[k].kind == PieceKind::mark || pieces[k].is(Role::meaning) || is_noun(pieces[k])) break;
            if (!pieces[k].is(Role::copula) && !pieces[k].names) continue;
            if (k + 1 < pieces.size() && behaves(pieces[k + 1])) break;
            std::size_t end = k + 1;
            while (end < pieces.size() && !ends_clause(pieces[end]) && !pieces[end].is_mark(TokenKind::comma) &&
                   !pieces[end].is(Role::conjunction)) {
                ++end;
            }
            silence(pieces, k, end);
            i = end - 1;
            break;
        }
    }
}

void silence_care(std::span<Piece> pieces) {
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (pieces[i].is(Role::care)) {
            // 'Leather sofa need avoid sun': its subject too, where nothing else stands before it.
            std::size_t start = i;
            while (start > 0 && !ends_phrase(pieces[start - 1])) --start;
            if (start > 0 && !ends_clause(pieces[start - 1])) start = i;
            silence(pieces, start, clause_end(pieces, i));
            return;
        }
    }
}

// 'softer than leather or suede': the phrase after the cue, and those coordinated with it.
void silence_comparisons(bool title, std::span<Piece> pieces) {
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        // 'for nylon coils' is a purpose; in 'wallet for men genuine leather' somebody stands between.
        const bool purpose = pieces[i].serves && i + 1 < pieces.size() && pieces[i + 1].kind != PieceKind::word;
        if (!pieces[i].is(Role::comparison) && !purpose) continue;
        std::size_t end = i + 1;
        // 'case for 6.7 inch carbon leather': in a title of keywords a size is all that it is for.
        const bool sized = title && end + 1 < pieces.size() && pieces[end].kind == PieceKind::number;
        while (!sized) {
            while (end < pieces.size() &&
                   (pieces[end].is(Role::determiner) || pieces[end].is(Role::article) || pieces[end].is(Role::own)))
                ++end;
            while (end < pieces.size() && !ends_phrase(pieces[end])) ++end;
            if (end < pieces.size() && (pieces[end].is(Role::alternative) || pieces[end].is(Role::conjunction)) &&
                end + 1 < pieces.size() && !ends_phrase(pieces[end + 1])) {
                ++end;
                continue;
            }
            break;
        }
        // 'Edges burnished with beeswax' claims the burnish, not the wax.
        silence(pieces, pieces[i].is(Role::meaning) ? i + 1 : i, end);
    }
}

}  // namespace

void mark_scopes(const vocabulary::Vocabulary& vocabulary, text::SegmentKind kind, bool title,
                 const Inventory& inventory, std::span<Piece> pieces) {
    if (kind == text::SegmentKind::question) {
        silence(pieces, 0, pieces.size());
        return;
    }
    if (inventory.teaches || inventory.any({Role::crowd, Role::crowd_opener})) silence_teaching(pieces);
    if (inventory.any({Role::copula})) silence_definitions(pieces);
    if (inventory.any({Role::copula}) || inventory.has(TokenKind::colon)) silence_subjects(vocabulary, pieces);
    if (inventory.any({Role::determiner})) silence_taken_up(vocabulary, pieces);
    if (inventory.any({Role::tone_word, Role::colour_label})) silence_colour_names(vocabulary, pieces);
    if (inventory.any({Role::care})) silence_care(pieces);
    if (inventory.any({Role::other_product, Role::other_product_after, Role::accessory_before}) ||
        (inventory.numbers && inventory.has(TokenKind::plus))) {
        silence_offers(pieces);
    }
    if (inventory.any({Role::accessory, Role::meaning})) silence_accessories(vocabulary, title, pieces);
    if (inventory.serves || inventory.any({Role::comparison})) silence_comparisons(title, pieces);
    if (inventory.any({Role::negator})) mark_negation(pieces);
    if (inventory.any({Role::negator, Role::deny})) deny_answered_labels(pieces);
}

}  // namespace grainside::claims
