// One segment while it is being parsed: what the stages of the grammar hand to one another.
#ifndef GRAINSIDE_CLAIMS_SEGMENT_H
#define GRAINSIDE_CLAIMS_SEGMENT_H

#include <cstdint>
#include <span>
#include <vector>

#include "claims/piece.h"
#include "claims/regions.h"
#include "grainside/claim.h"
#include "text/token.h"
#include "vocabulary/vocabulary.h"

namespace grainside::claims {

constexpr std::uint32_t bit(Mark mark) {
    return static_cast<std::uint32_t>(mark);
}

// How a phrase hangs on what stands before it, the weakest tie first.
enum class Connector : std::uint8_t {
    none,  // it begins the segment, or follows a mark
    other,
    comma,
    coordinated,  // 'and', 'or', '/', '+', '&'
    copula,       // 'is', 'are'
    with,
    link,         // 'in', 'of', 'made from'
    part_before,  // 'lined with'
};

// A noun phrase: pieces [first, last) without a breaker among them.
struct Phrase {
    std::uint32_t first = 0;
    std::uint32_t last = 0;
    std::uint32_t number = 0;  // in the listing
    Connector before = Connector::none;
    Part part_before = Part::whole;  // of Connector::part_before
    bool followed_by_coordination = false;
    vocabulary::RoleSet roles;  // of its pieces
};

// Evidence named in a segment, by the piece on which it ends; it speaks for what stands before it. 0 = none.
struct Evidence {
    std::uint32_t method = 0;  // a standard with its number
    std::uint32_t result = 0;
    std::uint32_t document = 0;  // a certificate or report with its number
};

struct SegmentContext {
    const vocabulary::Vocabulary& vocabulary;
    const text::Tokens& tokens;
    std::span<Piece> pieces;
    std::span<const Region> regions;  // one a piece
    std::span<const Phrase> phrases;
    Part main_part = Part::body;
    std::uint32_t field = 0;
    std::uint32_t sentence = 0;
    std::uint32_t marks = 0;  // what the field gives each of its claims; a title's label changes them
    Evidence evidence{};
};

// A claim that begins at piece `first` and ends before piece `last`; part, kind and marks are left to the caller.
Claim claim_over(const SegmentContext& segment, std::uint32_t first, std::uint32_t last);

// Cuts the phrases of a segment. `next_number` numbers them through the listing.
void cut_phrases(std::span<const Piece> pieces, std::uint32_t& next_number, std::vector<Phrase>& phrases);

Evidence find_evidence(const text::Tokens& tokens, std::span<const Piece> pieces);

// Finds the part of each piece of a phrase, phrase by phrase from the left.
class PartFinder {
public:
    explicit PartFinder(const SegmentContext& segment) : segment_(segment) {}

    // Moves on to the next phrase. Call for every phrase in order, silent ones too.
    void enter(std::size_t phrase);

    struct Owner {
        Part part = Part::whole;
        bool by_part = false;     // a part noun of the phrase, or one it is linked to, names it
        bool by_product = false;  // the phrase's head is the product
        bool own = false;         // the noun stands in the phrase itself
        std::uint8_t family = 0;  // of the part noun
    };
    // Of a material, finish or plating that ends before piece `end`; `says` may be left out.
    Owner owner_of_identity(std::uint32_t begin, std::uint32_t end, ConceptId says = 0) const;
    // Of a statement (performance, environment, origin, certification); `on_material` = its phrase's head is a
    // material.
    Owner owner_of_statement(std::uint32_t begin, std::uint32_t end, bool on_material) const;

    // A title that strings keywords together: what stands side by side there need not belong together.
    bool in_keyword_title() const;

    // The owner's part; where the phrase gives none, the part that the concept itself belongs to (a metal is hardware).
    Part part_of(const Owner& owner, ConceptId says) const;

private:
    bool ends_goods_of_a_title(const Piece& head) const;
    bool ends_part_of_keywords(const Piece& head, std::uint32_t from, const Piece& next) const;
    const Piece* noun_right(std::uint32_t from) const;
    bool another_noun_is_joined() const;
    bool in_title() const;
    bool fits_by_keyword(const Piece& noun, ConceptId says) const;
    const Piece* noun_left(std::uint32_t before) const;
    const Piece* noun_behind(std::uint32_t end) const;
    bool goes_on_with_a_number() const;
    Owner inherited(std::uint32_t at) const;
    static Owner lent(Owner owner);
    Owner owner_by(const Piece& noun) const;

    const SegmentContext& segment_;
    const Phrase* phrase_ = nullptr;
    std::size_t index_ = 0;
    Owner subject_{};  // the last part or product that was named, for what is linked to it
    bool has_subject_ = false;
    bool subject_is_verb_ = false;
    Owner previous_{};  // what the last phrase without a noun of its own was given
    bool has_previous_ = false;
    Owner given_{};  // the owner of a phrase without a noun
    Owner list_{};   // of the last phrase, for a list of percentages that goes on
    bool has_noun_ = false;
};

// The claims of one phrase, appended in the order of their words.
void parse_materials(const SegmentContext& segment, const Phrase& phrase, const PartFinder& parts,
                     std::vector<Claim>& claims);
void parse_statements(const SegmentContext& segment, const Phrase& phrase, const PartFinder& parts,
                      std::vector<Claim>& claims);
void parse_measures(const SegmentContext& segment, const Phrase& phrase, const PartFinder& parts,
                    std::vector<Claim>& claims);

// Joins the percentages of one part that stand in one segment: the first is marked first_share, and shares_off with a
// span over the whole list if they do not add up. `first` is where the segment's claims begin in `claims`.
void check_shares(const SegmentContext& segment, std::size_t first, std::vector<Claim>& claims);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_SEGMENT_H
