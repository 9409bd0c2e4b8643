#include "claims/teaching.h"

#include "claims/clauses.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;

namespace {

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
        if (before.is(Role::determiner) || before.is(Role::own) || before.is(Role::link) || is_with(before)) return cue;
    }
    return start;
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
    return end > predicate &&
           (end == pieces.size() || (ends_phrase(pieces[end]) && !pieces[end].is(Role::link) && !is_with(pieces[end])));
}

// Where what a cue at `cue` speaks of begins: behind the last comma that a statement of its own stands before ('brown
// leather, free if you carry it'), else at the beginning of the clause.
std::size_t behind_statement(std::span<const Piece> pieces, std::size_t cue) {
    const std::size_t start = clause_start(pieces, cue);
    std::size_t comma = cue;
    while (comma > start && !pieces[comma - 1].is_mark(TokenKind::comma)) --comma;
    return comma > start ? comma : start;
}

bool is_share(std::span<const Piece> pieces, std::size_t at) {
    return at + 1 < pieces.size() && pieces[at].kind == PieceKind::number && pieces[at + 1].is_mark(TokenKind::percent);
}

}  // namespace

void silence_teaching(std::span<Piece> pieces) {
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const bool opens = pieces[i].is(Role::crowd_opener) && (i == 0 || ends_clause(pieces[i - 1]));
        if (pieces[i].is(Role::crowd) || opens) {
            const std::size_t end = clause_end(pieces, i);
            silence(pieces, behind_statement(pieces, i), end);
            i = end;
            continue;
        }
        if (!pieces[i].teaches) continue;
        const std::size_t start = bare_subject(pieces, i);
        if (start < i) silence(pieces, start, clause_end(pieces, i));
    }
}

void silence_definitions(std::span<Piece> pieces) {
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (!pieces[i].is(Role::copula) || !defines(pieces, i + 1)) continue;
        const std::size_t start = bare_subject(pieces, i);
        const bool listed = start > 0 && start < i && pieces[start - 1].is(Role::conjunction);
        if (start < i && !listed) silence(pieces, start, clause_end(pieces, i));
    }
}

void silence_subjects(const vocabulary::Vocabulary& vocabulary, std::span<Piece> pieces) {
    // 'The full grain leather is sanded' says again which leather it is.
    const auto is_class = [&](ConceptId id) {
        return vocabulary.concepts[id].kind == Kind::grain || vocabulary.concepts[id].kind == Kind::species;
    };
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
        const bool generic = subject.is(Role::meaning) && is_stuff(vocabulary, subject.sense.concept_id) &&
                             ((taken_up && !is_class(subject.sense.concept_id)) ||
                              subject.sense.concept_id == vocabulary.known.leather ||
                              subject.sense.concept_id == vocabulary.known.fabric ||
                              subject.sense.concept_id == vocabulary.known.metal ||
                              (labels && !is_share(pieces, i + 1) &&
                               vocabulary.concepts.is_a(subject.sense.concept_id, vocabulary.known.textile)));
        const bool alone =
            i == 1 || pieces[i - 2].is(Role::determiner) || pieces[i - 2].is(Role::own) || ends_clause(pieces[i - 2]);
        const bool named = taken_up || last_stuff > i;
        if (generic && alone && named && (labels || i > 1)) subject.silent = true;
    }
}

void silence_taken_up(const vocabulary::Vocabulary& vocabulary, std::span<Piece> pieces) {
    for (std::size_t i = 0; i + 2 < pieces.size(); ++i) {
        if (!pieces[i].is(Role::determiner) || !pieces[i + 1].is(Role::meaning) ||
            !is_stuff(vocabulary, pieces[i + 1].sense.concept_id)) {
            continue;
        }
        const bool begins = i == 0 || pieces[i - 1].kind == PieceKind::mark || pieces[i - 1].is(Role::conjunction);
        // A word that we do not know may be a verb or a thing: 'the silver concho'.
        const bool acts = pieces[i + 2].is(Role::breaks) || pieces[i + 2].teaches ||
                          (pieces[i + 1].sense.concept_id == vocabulary.known.leather &&
                           pieces[i + 2].kind == PieceKind::word && !pieces[i + 2].hyphenated());
        if (begins && acts) pieces[i + 1].silent = true;
    }
}

}  // namespace grainside::claims
