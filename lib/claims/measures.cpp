// Numbers with a unit that say how thick, heavy or fine a material is. Sizes of the finished product are no claims.
#include <algorithm>

#include "claims/segment.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;

namespace {

constexpr double kThickestMaterialMm = 12;  // sole bends end there; beyond it a number is a size
constexpr double kThickestUnsaidMm = 6;     // without the word 'thick' (lt-dim-07: hides before splitting reach 6 mm)

class MeasureParser {
public:
    MeasureParser(const SegmentContext& segment, const Phrase& phrase, const PartFinder& parts,
                  std::vector<Claim>& claims)
        : segment_(segment), phrase_(phrase), parts_(parts), claims_(claims) {}

    void parse() {
        for (std::uint32_t i = phrase_.first; i < phrase_.last; ++i) {
            if (segment_.pieces[i].kind == PieceKind::number && !segment_.pieces[i].silent) read(i);
        }
    }

private:
    void read(std::uint32_t i) {
        // A range is one quantity: read it from its second number.
        const std::uint32_t next = i + 1;
        if (next < segment_.pieces.size() && segment_.pieces[next].kind == PieceKind::number &&
            segment_.pieces[next].hyphenated()) {
            return;
        }
        std::uint32_t first = i;
        double low = segment_.pieces[i].number;
        const double high = low;
        if (i > 0 && segment_.pieces[i].hyphenated() && segment_.pieces[i - 1].kind == PieceKind::number) {
            first = i - 1;
            low = segment_.pieces[first].number;
        } else if (i > 1 && segment_.pieces[i - 2].kind == PieceKind::number && ends_phrase(segment_.pieces[i - 1]) &&
                   segment_.pieces[i - 1].kind == PieceKind::term) {
            first = i - 2;  // '4.5 to 5 mm'
            low = segment_.pieces[first].number;
        }
        std::uint32_t last = next;
        Unit unit = Unit::none;
        if (next < segment_.pieces.size() && segment_.pieces[next].is(Role::unit)) {
            unit = static_cast<Unit>(segment_.pieces[next].sense.value);
            last = next + 1;
        } else if (first > 0 && segment_.pieces[first - 1].is(Role::unit) &&
                   static_cast<Unit>(segment_.pieces[first - 1].sense.value) == Unit::tex) {
            unit = Unit::tex;  // yarn is sold as 'Tex 70'
            --first;
        } else {
            unit = compound_unit(next, last);
        }
        if (unit == Unit::none) return;
        const ConceptId says = concept_of(unit, first, last, high);
        if (says == 0) return;
        const bool thick_word = last < segment_.pieces.size() && segment_.pieces[last].is(Role::thickness_word);
        Claim claim = claim_over(segment_, first, thick_word ? last + 1 : last);
        claim.says = says;
        claim.kind = Kind::measure;
        claim.quantity = Quantity{low, high, unit};
        claim.part = parts_.part_of(parts_.owner_of_identity(first, last), says);
        claim.phrase = phrase_.number;
        claims_.push_back(claim);
    }

    // 'g/m2' and 'kg/m3' have a mark inside, so they are no terms. Moves `last` behind the unit.
    Unit compound_unit(std::uint32_t i, std::uint32_t& last) const {
        if (i + 2 >= segment_.pieces.size() || !segment_.pieces[i + 1].is_mark(TokenKind::slash)) return Unit::none;
        const auto text = [&](std::uint32_t k) {
            return segment_.tokens.folded_text(segment_.tokens.list[segment_.pieces[k].first]);
        };
        const bool gram = text(i) == "g" || text(i) == "gr";
        Unit unit = Unit::none;
        if (gram && (text(i + 2) == "m2" || text(i + 2) == "sqm")) unit = Unit::gram_per_square_metre;
        if (text(i) == "kg" && (text(i + 2) == "m3" || text(i + 2) == "cbm")) unit = Unit::kilogram_per_cubic_metre;
        if (unit != Unit::none) last = i + 3;
        return unit;
    }

    ConceptId concept_of(Unit unit, std::uint32_t first, std::uint32_t last, double high) const {
        const auto& known = segment_.vocabulary.known;
        switch (unit) {
            case Unit::millimetre:
                if (beside_coat(first, last)) return known.coating_thickness;
                return is_thickness(first, last, high) ? known.thickness : ConceptId{0};
            case Unit::micrometre:
                return near([&](ConceptId id) {
                    return segment_.vocabulary.concepts.is_a(id, known.metal) ||
                           segment_.vocabulary.concepts.is_a(id, known.plating);
                })
                           ? known.plating_thickness
                           : known.coating_thickness;
            case Unit::ounce_leather:
                // '2.0-2.4 mm (5-6 oz)' says the thickness twice.
                if (first > 1 && segment_.pieces[first - 1].is_mark(TokenKind::open) &&
                    segment_.pieces[first - 2].is(Role::unit) &&
                    static_cast<Unit>(segment_.pieces[first - 2].sense.value) == Unit::millimetre)
                    return known.thickness;
                // '16 oz canvas, leather trim': what stands behind the number in its phrase decides.
                for (std::uint32_t k = last; k < phrase_.last; ++k) {
                    const Piece& piece = segment_.pieces[k];
                    if (piece.is(Role::meaning) &&
                        segment_.vocabulary.concepts.is_a(piece.sense.concept_id, known.textile))
                        return known.cloth_weight;
                    if (is_sheet(piece)) return known.thickness;
                }
                if (near([&](ConceptId id) { return segment_.vocabulary.concepts.is_a(id, known.leather); }))
                    return known.thickness;
                return near([&](ConceptId id) { return segment_.vocabulary.concepts.is_a(id, known.textile); })
                           ? known.cloth_weight
                           : ConceptId{0};
            case Unit::iron:
                return known.thickness;
            case Unit::gram_per_square_metre:
                return known.cloth_weight;
            case Unit::denier:
            case Unit::tex:
                return known.yarn_size;
            case Unit::kilogram_per_cubic_metre:
                return known.foam_density;
            case Unit::thread_count:
                return known.thread_count;
            case Unit::fill_power:
                return known.fill_power;
            default:
                return 0;
        }
    }

    // 'a polyurethane coating of 0.20 mm', 'coating 0.2 mm', '0.2 mm coating'
    bool beside_coat(std::uint32_t first, std::uint32_t last) const {
        constexpr std::uint32_t kReach = 3;
        const auto is_coat = [&](const Piece& piece) {
            return piece.is(Role::coat_word) ||
                   (piece.is(Role::meaning) &&
                    segment_.vocabulary.concepts.is_a(piece.sense.concept_id, segment_.vocabulary.known.trait_coat));
        };
        for (std::uint32_t k = first; k > 0 && first - k < kReach; --k) {
            const Piece& piece = segment_.pieces[k - 1];
            if (is_coat(piece)) return true;
            if (piece.kind == PieceKind::mark && !piece.is_mark(TokenKind::colon)) break;
        }
        return last < segment_.pieces.size() && is_coat(segment_.pieces[last]);
    }

    bool is_thickness(std::uint32_t first, std::uint32_t last, double high) const {
        const auto size_word = [&](std::uint32_t k) {
            return k < segment_.pieces.size() && segment_.pieces[k].is(Role::size_word);
        };
        const auto thickness_word = [&](std::uint32_t k) {
            return k < segment_.pieces.size() && segment_.pieces[k].is(Role::thickness_word);
        };
        const bool said = segment_.regions[first].thickness || thickness_word(last) ||
                          (first > 0 && thickness_word(first - 1)) || (first > 1 && thickness_word(first - 2)) ||
                          (first > 2 && thickness_word(first - 3));
        if (said) return high <= kThickestMaterialMm;
        if (size_word(last) || (first > 0 && size_word(first - 1)) || high > kThickestUnsaidMm) return false;
        // '5 mm ring' and '4 mm pitch' are sizes; '1.4 mm calf', 'calf, 1.4 mm' and 'leather 1.4 mm' are thicknesses.
        for (std::uint32_t k = last; k < phrase_.last; ++k) {
            const Piece& piece = segment_.pieces[k];
            if (is_sheet(piece)) return true;
            if (piece.is(Role::part) || piece.is(Role::product)) return false;
        }
        // '2 mm.' as a sentence of its own follows the material that it measures.
        constexpr std::size_t kAlone = 3;
        return segment_.pieces.size() <= kAlone || near([&](ConceptId id) {
                   return is_sheet_concept(id) || segment_.vocabulary.concepts[id].kind == Kind::tanning;
               });
    }

    bool is_sheet_concept(ConceptId id) const {
        return is_stuff(segment_.vocabulary, id) &&
               !segment_.vocabulary.concepts.is_a(id, segment_.vocabulary.known.metal);
    }
    bool is_sheet(const Piece& piece) const {
        return piece.is(Role::meaning) && is_sheet_concept(piece.sense.concept_id);
    }

    // Whether a meaning that passes `test` stands in the phrase or in one of its neighbours.
    template <typename Test>
    bool near(Test test) const {
        constexpr std::uint32_t kReach = 8;
        const std::uint32_t from = phrase_.first > kReach ? phrase_.first - kReach : 0;
        const auto to =
            static_cast<std::uint32_t>(std::min<std::size_t>(phrase_.last + kReach, segment_.pieces.size()));
        for (std::uint32_t i = from; i < to; ++i) {
            if (segment_.pieces[i].is(Role::meaning) && test(segment_.pieces[i].sense.concept_id)) return true;
        }
        return false;
    }

    const SegmentContext& segment_;
    const Phrase& phrase_;
    const PartFinder& parts_;
    std::vector<Claim>& claims_;
};

}  // namespace

void parse_measures(const SegmentContext& segment, const Phrase& phrase, const PartFinder& parts,
                    std::vector<Claim>& claims) {
    MeasureParser(segment, phrase, parts, claims).parse();
}

}  // namespace grainside::claims
