#include "claims/regions.h"

#include <algorithm>

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;

namespace {

constexpr std::size_t kLongestLabel = 6;  // pieces; a longer stretch before a colon is a sentence

bool separates_labels(const Piece& piece) {
    if (piece.kind != PieceKind::mark) return false;
    switch (piece.token_kind) {
        case TokenKind::comma:
        case TokenKind::semicolon:
        case TokenKind::colon:
        case TokenKind::open:
        case TokenKind::close:
        case TokenKind::dash:
        case TokenKind::pipe:
            return true;
        default:
            return false;
    }
}

bool asks_origin(const Piece& piece) {
    return piece.is(Role::origin_label) || piece.is(Role::leather_origin_label);
}

// 'Tanned in: Spain', 'Cut and sewn in: Wales'
bool asks_for_a_place(const vocabulary::Vocabulary& vocabulary, const Piece& piece) {
    return piece.is(Role::meaning) && vocabulary.concepts.is_a(piece.sense.concept_id, vocabulary.known.needs_place);
}

bool names_label(const Piece& piece) {
    return piece.is(Role::part) || piece.is(Role::silent_label) || piece.is(Role::main_label) ||
           piece.is(Role::colour_label) || asks_origin(piece);
}

bool is_of(const Piece& noun, Part part) {
    return static_cast<Part>(noun.sense.value) == part;
}

// Words that label by themselves, and the marks behind which a label ends.
bool may_hold_label(const Inventory& inventory) {
    return inventory.any({Role::main_label, Role::origin_label, Role::leather_origin_label}) ||
           inventory.has(TokenKind::colon) || inventory.has(TokenKind::dash) || inventory.has(TokenKind::close);
}

// Whether what stands before a slash says something by itself: 'leather / Lining: textile', 'Leather upper / lining:
// textile'. 'Lining / insole: textile' is said of both.
bool ends_value(std::span<const Piece> before) {
    if (before.empty()) return false;
    if (!names_label(before.back())) return true;
    for (std::size_t i = before.size(); i > 0 && !separates_labels(before[i - 1]); --i) {
        if (before[i - 1].is(Role::meaning)) return true;
    }
    return false;
}

// Where the label that ends before `colon` begins; `colon` itself where there is none.
std::size_t label_start(std::span<const Piece> pieces, std::size_t colon) {
    std::size_t start = colon;
    while (start > 0 && !separates_labels(pieces[start - 1])) {
        if (start < colon && pieces[start - 1].is_mark(TokenKind::slash) && ends_value(pieces.first(start - 1))) break;
        --start;
    }
    if (colon - start <= kLongestLabel) return start;
    // 'Soft and roomy Lining: cotton': machine-made copy forgets the stop, so the words next to the colon count alone.
    return names_label(pieces[colon - 1]) ? colon - 1 : colon;
}

}  // namespace

Region region_of_label(const vocabulary::Vocabulary& vocabulary, std::span<const Piece> pieces) {
    Region region;
    const Piece* part = nullptr;
    const Piece* main = nullptr;
    bool several = false;         // parts of different families
    bool one_of_several = false;  // of such a part
    for (const Piece& piece : pieces) {
        if (piece.is(Role::silent_label) && main != nullptr) break;  // 'Material & care'
        if (piece.is(Role::question_label) || piece.is(Role::silent_label) || piece.is(Role::colour_label) ||
            piece.is(Role::tone_word) || piece.is(Role::accessory)) {
            region.kind = RegionKind::silent;
            return region;
        }
        if (piece.is(Role::title_label)) {
            region.kind = RegionKind::title;
            return region;
        }
        if (asks_origin(piece)) region.kind = RegionKind::origin;
        if (piece.is(Role::leather_origin_label)) region.of_leather = true;
        if (piece.is(Role::main_label)) main = &piece;
        if (piece.is(Role::thickness_word)) region.thickness = true;
        if (piece.is(Role::tannage_label)) region.tannage = true;
        // 'Straps and base: cowhide' is said of the first, 'Body lining' of the last of a compound.
        // 'The sticker under the heel says upper' of what stands behind the verb.
        const Piece* before = &piece - 1;
        const bool anew =
            part != nullptr && before > part && (before->kind == PieceKind::word || before->is(Role::breaks));
        if (piece.is(Role::part) && part != nullptr && part != before)
            several = several || family_of(*part) != family_of(piece);
        // 'Lining front' and 'lining sleeves' are linings, one of several.
        if (piece.is(Role::part) && part == before && is_of(piece, Part::body) && !is_of(*part, Part::body)) {
            one_of_several = true;
            continue;
        }
        if (piece.is(Role::part) && (part == nullptr || part == before || anew)) part = &piece;
    }
    if (region.kind == RegionKind::origin) return region;
    if (part != nullptr) {
        region.kind = RegionKind::part;
        region.part = static_cast<Part>(part->sense.value);
        if (!several) region.family = family_of(*part);  // 'Buckle and rings: brass' is said of both
        if (one_of_several) region.family = kOneOfSeveral;
    } else if (main != nullptr) {
        region.kind = RegionKind::main;
    }
    if (!pieces.empty() && asks_for_a_place(vocabulary, pieces.back())) {
        region.kind = RegionKind::origin;
        region.deed = pieces.back().sense.concept_id;
    }
    return region;
}

Region region_of_question(std::span<const Piece> pieces) {
    Region region;
    if (pieces.size() > 2 && pieces.front().is(Role::question_label)) pieces = pieces.subspan(2);  // behind 'Q:'
    // 'What is cordovan?'
    if (pieces.size() > 2 && pieces[0].is(Role::breaks) && pieces[1].is(Role::copula) &&
        std::all_of(pieces.begin() + 2, pieces.end(), [](const Piece& piece) {
            return piece.is(Role::meaning) || piece.is(Role::article) || piece.kind == PieceKind::mark;
        })) {
        region.kind = RegionKind::silent;
        region.teaching = true;
        return region;
    }
    const bool yes_or_no = !pieces.empty() && pieces.front().is(Role::copula);  // 'Is it real leather?'
    for (const Piece& piece : pieces) {
        if (yes_or_no && piece.is(Role::meaning)) region.asks = piece.sense.concept_id;
        if (piece.is(Role::other_product) || piece.is(Role::care)) {
            region.kind = RegionKind::silent;
            return region;
        }
        if (asks_origin(piece)) {
            region.kind = RegionKind::origin;
            return region;
        }
        if (!piece.is(Role::part)) continue;
        region.kind = RegionKind::part;
        region.part = static_cast<Part>(piece.sense.value);
    }
    return region;
}

Region label_regions(const vocabulary::Vocabulary& vocabulary, const Inventory& inventory, std::span<Piece> pieces,
                     const Region& outer, std::vector<Region>& regions) {
    regions.assign(pieces.size(), outer);
    if (!may_hold_label(inventory)) {
        if (outer.kind == RegionKind::silent) {
            for (Piece& piece : pieces) piece.silent = true;
        }
        return {};
    }
    Region current = outer;
    std::size_t done = 0;
    std::size_t bare_until = 0;  // behind the last label without a colon
    bool ends_in_label = false;
    bool dashed = false;  // the last label ended in a dash
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        // 'composition calf leather': a label whose colon was left out.
        const bool bare = (pieces[i].is(Role::main_label) || asks_origin(pieces[i])) && i + 1 < pieces.size() &&
                          !pieces[i + 1].is_mark(TokenKind::colon) && !ends_phrase(pieces[i + 1]);
        if (bare) {
            std::fill(regions.begin() + static_cast<std::ptrdiff_t>(done),
                      regions.begin() + static_cast<std::ptrdiff_t>(i), current);
            if (current.kind != RegionKind::part) current = region_of_label(vocabulary, pieces.subspan(i, 1));
            current.labelled = true;
            done = i + 1;
            bare_until = done;
            continue;
        }
        const bool colon = pieces[i].is_mark(TokenKind::colon);
        // 'Upper - leather; lining - textile, sole - rubber', 'Materials: outer - PVC, inner - neoprene'
        const bool dash = pieces[i].is_mark(TokenKind::dash) && i > 0 && i - done <= 3 &&
                          (done == 0 || dashed || (i - done == 1 && pieces[done].is(Role::part)));
        // '[Lining] cotton'
        const bool bracket =
            pieces[i].is_mark(TokenKind::close) && i > 1 && i <= 4 && done == 0 && pieces[0].is_mark(TokenKind::open);
        if (!colon && !dash && !bracket) continue;
        const std::size_t start = std::max(label_start(pieces, i), done);
        if (start == i) continue;
        if (dash && done > 0 && !pieces[start - 1].is_mark(TokenKind::semicolon) &&
            !(i - start == 1 && pieces[start].is(Role::part)))
            continue;
        if (colon && i == 1 && pieces[0].is(Role::answer_label)) continue;  // 'A:' names no part itself
        Region region = region_of_label(vocabulary, pieces.subspan(start, i - start));
        if (region.deed != 0 && i + 1 < pieces.size() && !pieces[i + 1].is(Role::place_name)) {
            region = region_of_label(vocabulary, pieces.subspan(start, i - start - 1));  // 'From a tannery: soft.'
        }
        if (region.kind == RegionKind::open && bare_until == start && start > 0) region = current;  // 'Tag reads: ...'
        if (!colon && region.kind == RegionKind::open) continue;
        region.labelled = region.kind != RegionKind::title && (region.kind != RegionKind::open || outer.labelled);
        if (region.kind == RegionKind::open && outer.kind == RegionKind::silent) region = outer;
        std::fill(regions.begin() + static_cast<std::ptrdiff_t>(done),
                  regions.begin() + static_cast<std::ptrdiff_t>(start), current);
        // 'Leather tanned in: Spain' asks of the leather, and does not say that it is.
        if (region.deed != 0 && start + 2 == i && pieces[start].is(Role::meaning) &&
            pieces[start].sense.concept_id == vocabulary.known.leather)
            pieces[start].silent = true;
        if (region.kind == RegionKind::silent) {
            for (std::size_t k = start; k < i; ++k) pieces[k].silent = true;
        }
        current = region;
        dashed = dash;
        done = i + 1;
        ends_in_label = i + 1 == pieces.size();
    }
    std::fill(regions.begin() + static_cast<std::ptrdiff_t>(done), regions.end(), current);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (regions[i].kind == RegionKind::silent) pieces[i].silent = true;
    }
    return ends_in_label ? current : Region{};
}

}  // namespace grainside::claims
