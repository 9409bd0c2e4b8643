#include "claims/scopes.h"

#include <algorithm>

#include "claims/answers.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;

namespace {

void silence(std::span<Piece> pieces, std::size_t first, std::size_t last) {
    for (std::size_t i = first; i < last && i < pieces.size(); ++i) pieces[i].silent = true;
}

bool ends_clause(const Piece& piece) {
    return piece.is_mark(TokenKind::semicolon) || piece.is_mark(TokenKind::colon) || piece.is_mark(TokenKind::dash);
}

std::size_t clause_end(std::span<const Piece> pieces, std::size_t from) {
    while (from < pieces.size() && !ends_clause(pieces[from])) ++from;
    return from;
}

std::size_t clause_start(std::span<const Piece> pieces, std::size_t from) {
    while (from > 0 && !ends_clause(pieces[from - 1])) --from;
    return from;
}

// 'Bonded leather is made from shredded fibres': a bare material is the subject, so the sentence is about the material
// and not about the product. 'Our leather is made from', 'The lining is made from' are about the product.
bool teaches(std::span<const Piece> pieces, std::size_t start, std::size_t teaching) {
    bool has_meaning = false;
    constexpr std::size_t kLongestSubject = 6;
    if (teaching - start > kLongestSubject) return false;
    for (std::size_t i = start; i < teaching; ++i) {
        const Piece& piece = pieces[i];
        if (ends_phrase(piece) && !piece.is(Role::article)) return false;
        if (piece.is(Role::own) || piece.is(Role::part) || piece.is(Role::product) || piece.is(Role::determiner))
            return false;
        has_meaning = has_meaning || piece.is(Role::meaning);
    }
    return has_meaning;
}

// Where the phrase that ends before `cue` begins; `cue` itself where it is about the product: 'our leather', 'the
// lining'.
std::size_t bare_subject(std::span<const Piece> pieces, std::size_t cue) {
    std::size_t start = cue;
    while (start > 0 && !ends_phrase(pieces[start - 1])) --start;
    if (start == cue || !teaches(pieces, start, cue)) return cue;
    if (start > 0) {
        const Piece& before = pieces[start - 1];
        if (before.is(Role::determiner) || before.is(Role::own) || before.is(Role::link) || before.is(Role::with))
            return cue;
    }
    return start;
}

void silence_teaching(std::span<Piece> pieces) {
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (pieces[i].is(Role::crowd)) {
            const std::size_t end = clause_end(pieces, i);
            silence(pieces, clause_start(pieces, i), end);
            i = end;
            continue;
        }
        if (!pieces[i].teaches) continue;
        const std::size_t start = bare_subject(pieces, i);
        if (start < i) silence(pieces, start, clause_end(pieces, i));
    }
}

// Whether what stands behind an 'is' says what a thing is by nature: 'the outside of the hide', 'ground-up scrap'; and
// not how it was worked: 'drawn over a frame'.
bool defines(std::span<const Piece> pieces, std::size_t predicate) {
    if (predicate >= pieces.size()) return false;
    const Piece& first = pieces[predicate];
    if (first.is(Role::article) || first.is(Role::determiner) || first.is(Role::comparison) || first.is(Role::breaks))
        return true;
    std::size_t end = predicate;
    while (end < pieces.size() && pieces[end].kind == PieceKind::word) ++end;
    return end > predicate && (end == pieces.size() || (ends_phrase(pieces[end]) && !pieces[end].is(Role::link) &&
                                                        !pieces[end].is(Role::with)));
}

// 'Full grain leather is the outside of the hide': a bare material, 'is', and what it is; 'Leather is full grain' and
// 'The leather is 2 mm' describe the product.
void silence_definitions(std::span<Piece> pieces) {
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (!pieces[i].is(Role::copula) || !defines(pieces, i + 1)) continue;
        const std::size_t start = bare_subject(pieces, i);
        const bool listed = start > 0 && start < i && pieces[start - 1].is(Role::conjunction);
        if (start < i && !listed) silence(pieces, start, clause_end(pieces, i));
    }
}

bool is_share(std::span<const Piece> pieces, std::size_t at) {
    return at + 1 < pieces.size() && pieces[at].kind == PieceKind::number && pieces[at + 1].is_mark(TokenKind::percent);
}

// 'The leather is full grain cowhide', 'Leather: cowhide': the subject only takes up what the predicate names.
void silence_subjects(const vocabulary::Vocabulary& vocabulary, std::span<Piece> pieces) {
    std::size_t last_stuff = pieces.size();
    while (last_stuff > 0 && !(pieces[last_stuff - 1].is(Role::meaning) &&
                               is_stuff(vocabulary, pieces[last_stuff - 1].sense.concept_id))) {
        --last_stuff;
    }
    for (std::size_t i = 1; i < pieces.size(); ++i) {
        const bool labels = pieces[i].is_mark(TokenKind::colon);
        if (!labels && !pieces[i].is(Role::copula)) continue;
        Piece& subject = pieces[i - 1];
        const bool taken_up = i > 1 && pieces[i - 2].is(Role::determiner) && !labels;
        const bool generic =
            subject.is(Role::meaning) && is_stuff(vocabulary, subject.sense.concept_id) &&
            (taken_up || subject.sense.concept_id == vocabulary.known.leather ||
             subject.sense.concept_id == vocabulary.known.fabric ||
             subject.sense.concept_id == vocabulary.known.metal || (labels && !is_share(pieces, i + 1)));
        const bool alone =
            i == 1 || pieces[i - 2].is(Role::determiner) || pieces[i - 2].is(Role::own) || ends_clause(pieces[i - 2]);
        const bool named = taken_up || last_stuff > i;
        if (generic && alone && named && (labels || i > 1)) subject.silent = true;
    }
}

// 'The colour is raw silk', 'in a shade that we call Leather Moon': a colour's name, up to the next comma.
void silence_colour_names(std::span<Piece> pieces) {
    constexpr std::size_t kReach = 5;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (!pieces[i].is(Role::tone_word) && !pieces[i].is(Role::colour_label)) continue;
        for (std::size_t k = i + 1; k < pieces.size() && k <= i + kReach; ++k) {
            if (pieces[k].kind == PieceKind::mark || pieces[k].is(Role::meaning) || is_noun(pieces[k])) break;
            if (!pieces[k].is(Role::copula) && !pieces[k].names) continue;
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
            silence(pieces, i, clause_end(pieces, i));
            return;
        }
    }
}

// Whether a list of nouns reaches from the clause's start to the 'and' at `joint`: 'a belt and a pouch are shown'.
bool only_nouns_before(std::span<const Piece> pieces, std::size_t joint, std::size_t limit) {
    for (std::size_t i = joint; i-- > limit;) {
        const Piece& piece = pieces[i];
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

// From the cue to the end of the sentence; the words before 'sold separately' back to the clause's start.
void silence_others(std::span<Piece> pieces) {
    std::size_t done = 0;       // what stands before it was silenced as far back as a cue reaches
    std::size_t packed = 0;     // what stands before it was silenced by an accessory's cue
    std::size_t tied_done = 0;  // the same for a tied cue, which reaches further
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (pieces[i].is(Role::other_product)) {
            silence(pieces, i, pieces.size());
            return;
        }
        if (pieces[i].is(Role::other_product_after)) {
            // 'is upholstered in wool and priced separately': the 'and' right before the cue ties it to the whole
            // clause.
            const bool tied = i > 0 && pieces[i - 1].is(Role::conjunction);
            const std::size_t limit = tied ? tied_done : std::max(done, tied_done);
            const std::size_t start = start_of_offer(pieces, i, limit, tied);
            std::size_t end = i + 1;
            // 'buckles on request (zinc alloy or brass)'
            if (end < pieces.size() && pieces[end].is_mark(TokenKind::open)) {
                while (end < pieces.size() && !pieces[end].is_mark(TokenKind::close)) ++end;
            }
            silence(pieces, start, end);
            (tied ? tied_done : done) = end;
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

// A noun phrase whose head is an accessory, and what that accessory is said to be made of.
void silence_accessories(const vocabulary::Vocabulary& vocabulary, std::span<Piece> pieces) {
    const auto is_accessory = [&](const Piece& piece) {
        return piece.is(Role::accessory) ||
               (piece.is(Role::meaning) && piece.sense.concept_id == vocabulary.known.only_packaging);
    };
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
            silence(pieces, first, last);
            const bool linked = last < pieces.size() && (pieces[last].is(Role::link) || pieces[last].is(Role::copula) ||
                                                         pieces[last].is_mark(TokenKind::open));
            if (linked) {
                std::size_t end = last + 1;
                if (pieces[last].is_mark(TokenKind::open)) {
                    while (end < pieces.size() && !pieces[end].is_mark(TokenKind::close)) ++end;
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

// 'softer than leather or suede': the phrase after the cue, and those coordinated with it.
void silence_comparisons(std::span<Piece> pieces) {
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        // 'for nylon coils' is a purpose; in 'wallet for men genuine leather' somebody stands between.
        const bool purpose =
            pieces[i].is(Role::purpose) && i + 1 < pieces.size() && pieces[i + 1].kind != PieceKind::word;
        if (!pieces[i].is(Role::comparison) && !purpose) continue;
        std::size_t end = i + 1;
        while (true) {
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
        silence(pieces, i, end);
    }
}

// Whether a list goes on behind this comma up to an 'or' or 'nor': 'no leather, fur or wool'.
bool list_goes_on(std::span<const Piece> pieces, std::size_t comma) {
    constexpr std::size_t kReach = 16;
    for (std::size_t i = comma + 1; i < pieces.size() && i <= comma + kReach; ++i) {
        if (pieces[i].is(Role::alternative)) return true;
        if (pieces[i].is_mark(TokenKind::comma) || !ends_phrase(pieces[i])) continue;
        return false;
    }
    return false;
}

bool has_noun(std::span<const Piece> pieces, std::size_t from) {
    for (std::size_t i = from; i < pieces.size() && !ends_phrase(pieces[i]); ++i) {
        if (pieces[i].is(Role::part) || pieces[i].is(Role::product)) return true;
    }
    return false;
}

void mark_negation(std::span<Piece> pieces) {
    bool negated = false;
    bool covers_something = false;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        Piece& piece = pieces[i];
        if (piece.is(Role::negator)) {
            // 'No, it is cotton' answers a question and denies nothing behind the comma.
            const bool answers = i + 1 < pieces.size() && pieces[i + 1].is_mark(TokenKind::comma) &&
                                 (i == 0 || pieces[i - 1].kind == PieceKind::mark);
            if (answers) continue;
            negated = true;
            covers_something = false;
            continue;
        }
        if (!negated) continue;
        if (piece.is(Role::negation_end) || ends_clause(piece) || piece.is_mark(TokenKind::close) ||
            piece.is(Role::with) || (piece.is(Role::link) && covers_something) ||
            (piece.is_mark(TokenKind::comma) && covers_something && !list_goes_on(pieces, i)) ||
            (piece.is(Role::conjunction) && covers_something &&
             (i + 1 >= pieces.size() || ends_phrase(pieces[i + 1]) || has_noun(pieces, i + 1)))) {
            negated = false;
            continue;
        }
        if (!ends_phrase(piece)) covers_something = true;
        piece.negated = true;
    }
}

}  // namespace

void mark_scopes(const vocabulary::Vocabulary& vocabulary, text::SegmentKind kind, const Inventory& inventory,
                 std::span<Piece> pieces) {
    if (kind == text::SegmentKind::question) {
        silence(pieces, 0, pieces.size());
        return;
    }
    if (inventory.teaches || inventory.any({Role::crowd})) silence_teaching(pieces);
    if (inventory.any({Role::copula})) silence_definitions(pieces);
    if (inventory.any({Role::copula}) || inventory.has(TokenKind::colon)) silence_subjects(vocabulary, pieces);
    if (inventory.any({Role::tone_word, Role::colour_label})) silence_colour_names(pieces);
    if (inventory.any({Role::care})) silence_care(pieces);
    if (inventory.any({Role::other_product, Role::other_product_after, Role::accessory_before})) silence_others(pieces);
    if (inventory.any({Role::accessory, Role::meaning})) silence_accessories(vocabulary, pieces);
    if (inventory.any({Role::comparison, Role::purpose})) silence_comparisons(pieces);
    if (inventory.any({Role::negator})) mark_negation(pieces);
    if (inventory.any({Role::negator, Role::deny})) deny_answered_labels(pieces);
}

}  // namespace grainside::claims
