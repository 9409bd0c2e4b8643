#include "claims/offers.h"

#include <algorithm>

#include "claims/clauses.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;

namespace {

// Whether a list of nouns reaches from the clause's start to the 'and' at `joint`: 'a belt and a pouch are shown'.
bool only_nouns_before(std::span<const Piece> pieces, std::size_t joint, std::size_t limit) {
    constexpr std::size_t kReach = 32;
    for (std::size_t i = joint; i-- > limit;) {
        const Piece& piece = pieces[i];
        if (joint - i > kReach) return false;
        if (ends_clause(piece) || piece.is_mark(TokenKind::comma)) return true;
        if (ends_phrase(piece) && !piece.is(Role::article) && !piece.is(Role::determiner) && !piece.is(Role::own))
            return false;
    }
    return true;
}

// Where that which a cue like 'sold separately' at `cue` speaks of begins: behind a comma or an 'and' that joins two
// statements, brackets left out, and not before `limit`.
std::size_t start_of_offer(std::span<const Piece> pieces, std::size_t cue, std::size_t limit, bool tied) {
    std::size_t start = cue;
    std::size_t depth = 0;
    for (; start > limit; --start) {
        const Piece& before = pieces[start - 1];
        if (before.is_mark(TokenKind::close)) {
            ++depth;
        } else if (depth > 0) {
            if (before.is_mark(TokenKind::open)) --depth;
        } else if (ends_clause(before) || before.is_mark(TokenKind::comma) ||
                   (before.is(Role::conjunction) && !tied && !only_nouns_before(pieces, start - 1, limit))) {
            break;
        }
    }
    return start;
}

// The piece behind the last product or part from `first` to `head`; `first` where there is none.
std::size_t behind_last_noun(std::span<const Piece> pieces, std::size_t first, std::size_t head) {
    for (std::size_t i = head; i-- > first;) {
        if (is_noun(pieces[i])) return i + 1;
    }
    return first;
}

// Behind the bracket that opens at `open`; `open` where it does not close soon: 'buckles on request (zinc alloy)'.
std::size_t behind_bracket(std::span<const Piece> pieces, std::size_t open) {
    constexpr std::size_t kReach = 64;
    for (std::size_t i = open; i < pieces.size() && i <= open + kReach; ++i) {
        if (pieces[i].is_mark(TokenKind::close)) return i;
    }
    return open;
}

// 'with a wooden lid', and not 'with its mark of approval'.
bool phrase_holds_stuff(const vocabulary::Vocabulary& vocabulary, std::span<const Piece> pieces, std::size_t from) {
    while (from < pieces.size() && pieces[from].is(Role::article)) ++from;
    for (std::size_t i = from; i < pieces.size() && !ends_phrase(pieces[i]); ++i) {
        if (pieces[i].is(Role::meaning) && is_stuff(vocabulary, pieces[i].sense.concept_id)) return true;
    }
    return false;
}

// 'Top layer cowhide +0.80 USD', 'with a wooden lid +3': what costs more is no part of what is sold.
bool asks_a_surcharge(std::span<const Piece> pieces, std::size_t plus) {
    if (plus == 0 || plus + 1 >= pieces.size() || !pieces[plus].is_mark(TokenKind::plus) ||
        pieces[plus + 1].kind != PieceKind::number || (pieces[plus + 1].flags & text::flag::kSpaceBefore) != 0) {
        return false;
    }
    if (plus + 2 == pieces.size()) return true;
    const Piece& behind = pieces[plus + 2];
    return behind.is(Role::currency) || (behind.kind == PieceKind::mark && !behind.is_mark(TokenKind::percent));
}

}  // namespace

void silence_offers(std::span<Piece> pieces) {
    std::size_t done = 0;       // what stands before it was silenced as far back as a cue reaches
    std::size_t packed = 0;     // what stands before it was silenced by an accessory's cue
    std::size_t tied_done = 0;  // the same for a tied cue, which reaches further
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (pieces[i].is(Role::other_product)) {
            // 'Also selling the case; the bag is calf leather.'
            std::size_t end = i;
            while (end < pieces.size() && !pieces[end].is_mark(TokenKind::semicolon)) ++end;
            silence(pieces, i, end);
            i = end;
            continue;
        }
        if (pieces[i].is(Role::other_product_after)) {
            // 'is upholstered in wool and priced separately': the 'and' right before the cue ties it to the whole
            // clause.
            const bool tied = i > 0 && pieces[i - 1].is(Role::conjunction);
            const std::size_t limit = tied ? tied_done : std::max(done, tied_done);
            const std::size_t start = start_of_offer(pieces, i, limit, tied);
            std::size_t end = i + 1;
            if (end < pieces.size() && pieces[end].is_mark(TokenKind::open)) end = behind_bracket(pieces, end);
            // 'the rope on the picture is nylon'
            if (end < pieces.size() && pieces[end].is(Role::copula)) {
                while (end < pieces.size() && !ends_clause(pieces[end]) && !pieces[end].is_mark(TokenKind::comma))
                    ++end;
            }
            silence(pieces, start, end);
            (tied ? tied_done : done) = end;
        }
        if (asks_a_surcharge(pieces, i)) {
            silence(pieces, start_of_offer(pieces, i, std::max(done, tied_done), false), i);
            done = i;
        }
        if (pieces[i].is(Role::accessory_before) && i >= packed) {
            std::size_t end = i;
            // A comma ends it, unless a denial goes on: 'in a cardboard sleeve, not in plastic'.
            while (end < pieces.size() && !ends_clause(pieces[end]) &&
                   (!pieces[end].is_mark(TokenKind::comma) ||
                    (end + 1 < pieces.size() && pieces[end + 1].is(Role::negator)))) {
                ++end;
            }
            silence(pieces, i, end);
            packed = end;
        }
    }
}

void silence_accessories(const vocabulary::Vocabulary& vocabulary, bool title, std::span<Piece> pieces) {
    const auto is_accessory = [&](const Piece& piece) {
        return piece.is(Role::accessory) ||
               (piece.is(Role::meaning) && piece.sense.concept_id == vocabulary.known.only_packaging);
    };
    if (std::none_of(pieces.begin(), pieces.end(), is_accessory)) return;
    for (std::size_t first = 0; first < pieces.size();) {
        if (ends_phrase(pieces[first])) {
            ++first;
            continue;
        }
        std::size_t last = first;
        const Piece* head = nullptr;
        while (last < pieces.size() && !ends_phrase(pieces[last])) {
            const Piece& piece = pieces[last];
            if (is_accessory(piece) || is_noun(piece)) head = &piece;
            ++last;
        }
        if (head != nullptr && is_accessory(*head)) {
            // 'real leather wallet card holder gift box': in a title of keywords, only what stands behind the last
            // noun.
            const std::size_t begin =
                title ? behind_last_noun(pieces, first, static_cast<std::size_t>(head - pieces.data())) : first;
            silence(pieces, begin, last);
            const bool of_stuff =
                last < pieces.size() && pieces[last].is(Role::with) && phrase_holds_stuff(vocabulary, pieces, last + 1);
            const bool linked =
                of_stuff || (last < pieces.size() && (pieces[last].is(Role::link) || pieces[last].is(Role::copula) ||
                                                      pieces[last].is_mark(TokenKind::open)));
            if (linked) {
                std::size_t end = last + 1;
                if (pieces[last].is_mark(TokenKind::open)) {
                    end = behind_bracket(pieces, last);
                } else {
                    while (end < pieces.size() && ends_phrase(pieces[end])) ++end;
                    while (end < pieces.size() && !ends_phrase(pieces[end])) ++end;
                }
                silence(pieces, last, end);
                last = end;
            }
            // 'leather cleaner and cloth': a list of accessories, its coordinated materials included.
            std::size_t back = first;
            if (back > 1 && (pieces[back - 1].is(Role::conjunction) || pieces[back - 1].is(Role::alternative))) {
                std::size_t start = back - 1;
                bool has_noun = false;
                while (start > 0 && !ends_phrase(pieces[start - 1])) {
                    --start;
                    has_noun = has_noun || pieces[start].is(Role::part) || pieces[start].is(Role::product);
                }
                if (!has_noun && start + 3 >= back - 1) silence(pieces, start, back);
            }
        }
        first = last;
    }
}

}  // namespace grainside::claims
