#include <algorithm>

#include "claims/segment.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;

namespace {

Connector connector_of(const Piece& piece) {
    if (piece.kind == PieceKind::mark) {
        switch (piece.token_kind) {
            case TokenKind::comma:
                return Connector::comma;
            case TokenKind::slash:
            case TokenKind::plus:
            case TokenKind::ampersand:
                return Connector::coordinated;
            default:
                return Connector::none;
        }
    }
    switch (piece.sense.role) {
        case Role::part_before:
            return Connector::part_before;
        case Role::link:
        case Role::at_part:
        case Role::backing:
            return Connector::link;
        case Role::with:
        case Role::comes_along:
            return Connector::with;
        case Role::copula:
            return Connector::copula;
        case Role::conjunction:
        case Role::alternative:
            return Connector::coordinated;
        default:
            return Connector::other;
    }
}

// No seller's noun phrase is as long, keyword titles included; whatever looks through a phrase stays linear by it.
constexpr std::uint32_t kLongestPhrase = 64;

// Marks that cut every tie to what stands before.
bool cuts_tie(const Piece& piece) {
    return piece.is_mark(TokenKind::semicolon) || piece.is_mark(TokenKind::colon) || piece.is_mark(TokenKind::dash);
}

// Evidence speaks for what stands before it, and in a running sentence for what follows too; in a list of attributes
// ('spray grade 4 (ISO 4920), PFAS-free') not for the next item.
void add_evidence(const SegmentContext& segment, std::uint32_t first, std::uint32_t& marks) {
    const auto covers = [&](std::uint32_t place) {
        if (place == 0) return false;
        if (first < place) return true;
        for (std::uint32_t i = place; i < first; ++i) {
            if (segment.pieces[i].is(Role::copula) || segment.pieces[i].is(Role::breaks) ||
                segment.pieces[i].is(Role::link))
                return true;
        }
        return false;
    };
    if (covers(segment.evidence.method)) marks |= bit(Mark::method);
    if (covers(segment.evidence.result)) marks |= bit(Mark::result);
    if (covers(segment.evidence.document)) marks |= bit(Mark::document);
}

}  // namespace

void cut_phrases(std::span<const Piece> pieces, std::uint32_t& next_number, std::vector<Phrase>& phrases) {
    phrases.clear();
    Phrase phrase;
    bool open = false;
    for (std::uint32_t i = 0; i <= pieces.size(); ++i) {
        const bool breaks = i == pieces.size() || ends_phrase(pieces[i]);
        if (!breaks) {
            if (open && i - phrase.first == kLongestPhrase) {
                phrase.last = i;
                phrase.number = next_number++;
                phrases.push_back(phrase);
                phrase = Phrase{};
                phrase.before = Connector::other;
                phrase.first = i;
            }
            if (!open) {
                open = true;
                phrase.first = i;
            }
            if (pieces[i].kind == PieceKind::term) phrase.roles.insert(pieces[i].sense.role);
            continue;
        }
        if (open) {
            phrase.last = i;
            phrase.number = next_number++;
            phrases.push_back(phrase);
            phrase = Phrase{};
            open = false;
        }
        if (i == pieces.size()) break;
        if (cuts_tie(pieces[i])) {
            phrase.before = Connector::none;
            continue;
        }
        Connector connector = connector_of(pieces[i]);
        // 'the lining is not leather': a denial right behind the noun ties like 'is'.
        if (pieces[i].is(Role::negator) && phrase.before == Connector::none && !phrases.empty() &&
            phrases.back().last == i) {
            connector = Connector::copula;
        }
        if (connector == Connector::part_before) phrase.part_before = static_cast<Part>(pieces[i].sense.value);
        // The stronger word wins where several stand between two phrases: 'and lined with' is part_before.
        phrase.before = std::max(connector, phrase.before);
        if (connector == Connector::coordinated && !phrases.empty() && phrases.back().last == i) {
            phrases.back().followed_by_coordination = true;
        }
    }
}

namespace {

// 'certificate AB1234': a number that letters begin is a word.
bool has_digit(const text::Tokens& tokens, const Piece& piece) {
    const std::string_view text = tokens.folded_text(tokens.list[piece.first]);
    return piece.kind == PieceKind::word &&
           std::any_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

// 'certificate no. 8812': the stop of the abbreviation has ended the segment.
bool number_behind_stop(const text::Tokens& tokens, const Piece& piece) {
    return piece.last + 1 < tokens.list.size() && tokens.list[piece.last].kind == TokenKind::stop &&
           tokens.list[piece.last + 1].kind == TokenKind::number;
}

}  // namespace

Evidence find_evidence(const text::Tokens& tokens, std::span<const Piece> pieces) {
    Evidence evidence;
    std::uint32_t number = 0;
    std::size_t standard = pieces.size();  // the last one named
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const Piece& piece = pieces[i];
        const auto number_near = [&](std::size_t reach) {
            for (std::size_t k = i + 1; k < pieces.size() && k <= i + reach; ++k) {
                if (pieces[k].kind == PieceKind::number) return true;
            }
            return false;
        };
        const auto place = static_cast<std::uint32_t>(i + 1);
        if (piece.is(Role::standard) && number_near(3)) {
            evidence.method = place;
            standard = i;
        }
        // A number beside a named method is its result, whatever its unit; the standard's own number is none.
        if (piece.kind == PieceKind::number && (standard >= i || i - standard > 3)) number = place;
        if (piece.is(Role::document) &&
            (number_near(4) || (i + 1 < pieces.size() && has_digit(tokens, pieces[i + 1])) ||
             (i + 1 == pieces.size() && number_behind_stop(tokens, piece))))
            evidence.document = place;
        if (piece.is(Role::result)) evidence.result = place;
        if (piece.kind == PieceKind::number && i + 1 < pieces.size() &&
            (pieces[i + 1].is(Role::result) || pieces[i + 1].is(Role::unit))) {
            evidence.result = place;
        }
    }
    if (evidence.method != 0 && number != 0) evidence.result = std::max(evidence.result, number);
    return evidence;
}

Claim claim_over(const SegmentContext& segment, std::uint32_t first, std::uint32_t last) {
    Claim claim;
    const std::uint32_t first_token = segment.pieces[first].first;
    const std::uint32_t last_token = segment.pieces[last - 1].last;
    claim.field = segment.field;
    claim.start = segment.tokens.list[first_token].start;
    claim.end = segment.tokens.list[last_token - 1].end;
    claim.sentence = segment.sentence;
    claim.marks = segment.marks;
    claim.negated = segment.pieces[last - 1].negated;
    const Region& region = segment.regions[first];
    if (region.kind == RegionKind::title) {
        claim.marks = (claim.marks & ~bit(Mark::specification)) | bit(Mark::title);
    } else if (region.labelled) {
        claim.marks |= bit(Mark::specification);
    }
    if (region.kind == RegionKind::part || region.kind == RegionKind::main) claim.marks |= bit(Mark::labelled_part);
    add_evidence(segment, first, claim.marks);
    for (std::uint32_t token = first_token; token < last_token; ++token) {
        claim.look_alike = claim.look_alike || (segment.tokens.list[token].flags & text::flag::kLookAlike) != 0;
    }
    constexpr std::uint32_t kAsteriskReach = 3;  // 'leather shoes*'
    for (std::uint32_t i = last;
         i < segment.pieces.size() && i < last + kAsteriskReach && !ends_phrase(segment.pieces[i]); ++i) {
        if (segment.pieces[i].is_mark(TokenKind::asterisk)) claim.marks |= bit(Mark::asterisk);
    }
    constexpr std::uint32_t kHedgeReach = 3;
    for (std::uint32_t i = first; i > 0 && first - i < kHedgeReach; --i) {
        if (segment.pieces[i - 1].is(Role::hedge)) claim.hedged = true;
    }
    return claim;
}

}  // namespace grainside::claims
