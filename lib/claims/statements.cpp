// What a phrase states beside its materials: finishes, platings, tannages, performance, environment, certification,
// origin; and the mentions (praise, craft) that rules ask for.
#include "claims/clauses.h"
#include "claims/place_behind.h"
#include "claims/segment.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;
using vocabulary::Vocabulary;

namespace {

bool is_identity(Kind kind) {
    return kind == Kind::finish || kind == Kind::plating || kind == Kind::tanning;
}

bool is_material(const Vocabulary& vocabulary, const Piece& piece) {
    return piece.is(Role::meaning) && is_stuff(vocabulary, piece.sense.concept_id);
}

class StatementParser {
public:
    StatementParser(const SegmentContext& segment, const Phrase& phrase, const PartFinder& parts,
                    std::vector<Claim>& claims)
        : segment_(segment), phrase_(phrase), parts_(parts), claims_(claims) {}

    void parse() {
        for (std::uint32_t i = phrase_.first; i < phrase_.last; ++i) {
            const Piece& piece = segment_.pieces[i];
            if (piece.kind != PieceKind::term) continue;
            switch (piece.sense.role) {
                case Role::genuine:
                    modify(i, Mark::genuine);
                    break;
                case Role::solid:
                    modify(i, Mark::solid);
                    break;
                case Role::pure:
                    modify(i, Mark::pure);
                    break;
                case Role::all:
                    modify(i, Mark::all);
                    break;
                case Role::more_than:
                    modify(i, Mark::more_than);
                    break;
                case Role::meaning:
                    read_meaning(i);
                    break;
                case Role::place_adjective:
                    read_place_adjective(i);
                    break;
                case Role::place_name:
                    read_place_name(i);
                    break;
                default:
                    break;
            }
        }
    }

private:
    const Vocabulary& vocabulary() const { return segment_.vocabulary; }

    void modify(std::uint32_t i, Mark mark) {
        if (modifier_marks_ == 0 || modifiers_end_ != i) modifiers_start_ = i;
        modifier_marks_ |= bit(mark);
        modifiers_end_ = i + 1;
    }

    void read_meaning(std::uint32_t i) {
        const Piece& piece = segment_.pieces[i];
        const ConceptId id = piece.sense.concept_id;
        const Kind kind = vocabulary().concepts[id].kind;
        if (is_stuff(vocabulary(), id)) {
            modifier_marks_ = 0;
            return;
        }
        if (is_mention(kind)) {
            mention(i, kind);
            return;
        }
        if (piece.silent) return;
        const bool place_follows = i + 1 < segment_.pieces.size() && segment_.pieces[i + 1].is(Role::place_name);
        if (vocabulary().concepts.is_a(id, vocabulary().known.needs_place) || (kind == Kind::origin && place_follows)) {
            origin_with_place(i);
            return;
        }
        std::uint32_t first = i;
        std::uint32_t marks = modifier_marks_;
        if (modifier_marks_ != 0 && modifiers_end_ == i) first = modifiers_start_;
        Claim claim = claim_over(segment_, first, i + 1);
        if (first >= phrase_.first + 2 && segment_.pieces[first - 1].is_mark(TokenKind::percent) &&
            segment_.pieces[first - 2].kind == PieceKind::number) {
            const double share = segment_.pieces[first - 2].number;
            claim = claim_over(segment_, first - 2, i + 1);
            claim.quantity = Quantity{share, share, Unit::percent};
        }
        claim.marks |= marks;
        finish(claim, first, i + 1, id, kind);
        if (!is_identity(kind)) modifier_marks_ = 0;
    }

    void finish(Claim& claim, std::uint32_t first, std::uint32_t last, ConceptId id, Kind kind) {
        const bool before_material = material_follows(last);
        const PartFinder::Owner owner = is_identity(kind)
                                            ? parts_.owner_of_identity(first, last)
                                            : parts_.owner_of_statement(first, last, head_is_material(last));
        claim.says = id;
        claim.kind = kind;
        claim.part = parts_.part_of(owner, id);
        claim.family = owner.family;
        claim.phrase = phrase_.number;
        if (owner.by_part && owner.own) claim.marks |= bit(Mark::on_part);
        if (owner.by_product && owner.own) claim.marks |= bit(Mark::on_product);
        const bool of_product = kind == Kind::origin && (speaks_of_the_titled(id) || product_precedes(first));
        const bool of_material = before_material && !of_product;
        if (of_material || (kind == Kind::origin && said_of_a_material())) claim.marks |= bit(Mark::on_material);
        claims_.push_back(claim);
    }

    // 'The leather is imported.', and not 'The dye on the leather is imported.'
    bool said_of_a_material() const {
        if (phrase_.before != Connector::copula || phrase_.first < 2) return false;
        std::uint32_t start = phrase_.first - 1;
        while (start > 0 && is_material(vocabulary(), segment_.pieces[start - 1])) --start;
        if (start + 1 == phrase_.first) return false;
        if (start > 0 && (segment_.pieces[start - 1].is(Role::determiner) || segment_.pieces[start - 1].is(Role::own)))
            --start;
        return start == 0 || ends_clause(segment_.pieces[start - 1]) ||
               segment_.pieces[start - 1].is_mark(TokenKind::comma);
    }

    // 'Giolina made in Italy leather tote': a title speaks of the product.
    bool speaks_of_the_titled(ConceptId id) const {
        return (segment_.marks & bit(Mark::title)) != 0 && vocabulary().concepts.is_a(id, vocabulary().known.made_in);
    }

    // 'Hobo bag made in Italy soft leather' makes the bag there.
    bool product_precedes(std::uint32_t from) const {
        return from > phrase_.first && segment_.pieces[from - 1].is(Role::product);
    }

    bool material_follows(std::uint32_t from) const {
        for (std::uint32_t i = from; i < phrase_.last; ++i) {
            if (is_material(vocabulary(), segment_.pieces[i])) return true;
        }
        return false;
    }

    // The last noun of the phrase is a material, a finish or a colour, and no product: 'waterproof leather'.
    bool head_is_material(std::uint32_t from) const {
        bool material = false;
        for (std::uint32_t i = from; i < phrase_.last; ++i) {
            const Piece& piece = segment_.pieces[i];
            if (piece.is(Role::product) || piece.is(Role::part)) return false;
            material = material || is_material(vocabulary(), piece) || piece.is(Role::tone_word);
        }
        return material;
    }

    // Praise and craft: neighbours become one mention. They count wherever they stand, care advice above all.
    void mention(std::uint32_t i, Kind kind) {
        if (segment_.pieces[i].silent && kind != Kind::craft) return;
        if (!claims_.empty() && kind == Kind::quality) {
            Claim& last = claims_.back();
            const std::uint32_t token = segment_.pieces[i].first;
            if (last.kind == kind && last.field == segment_.field && token > 0 && !last.has(Mark::likened) &&
                segment_.tokens.list[token - 1].end == last.end) {
                last.end = segment_.tokens.list[segment_.pieces[i].last - 1].end;
                return;
            }
        }
        Claim claim = claim_over(segment_, i, i + 1);
        finish(claim, i, i + 1, segment_.pieces[i].sense.concept_id, kind);
    }

    // 'Made in Italy': the place may stand behind an article, so behind the phrase.
    void origin_with_place(std::uint32_t i) {
        const ConceptId deed = segment_.pieces[i].sense.concept_id;
        const ConceptId says = place_of_making(deed);
        if (says != deed) mention_of_handwork(i);
        const auto place = static_cast<std::uint32_t>(place_behind(vocabulary(), segment_.pieces, i));
        if (place == segment_.pieces.size()) return;
        const ConceptId country = segment_.pieces[place].sense.concept_id;
        // 'near Venice, Italy': a town and its country are one place.
        const std::uint32_t last = same_country(place, 2) ? place + 3 : place + 1;
        std::uint32_t first = i;
        if (i >= phrase_.first + 2 && segment_.pieces[i - 1].is_mark(TokenKind::percent) &&
            segment_.pieces[i - 2].number >= 100) {
            first = i - 2;  // '100% made in Italy'
            modifier_marks_ |= bit(Mark::all);
        }
        Claim claim = claim_over(segment_, first, last);
        claim.marks |= modifier_marks_;
        claim.place = country;
        claim.negated = segment_.pieces[i].negated;
        // 'of leather made in Italy' speaks of the leather, the title 'Solid leather made in Italy' of the product
        const bool title = (segment_.marks & bit(Mark::title)) != 0;
        if (!title && i > 0 && is_material(vocabulary(), segment_.pieces[i - 1])) claim.marks |= bit(Mark::on_material);
        finish(claim, i, place + 1, says, Kind::origin);
        // 'Made in USA Hide Stitched Laces', 'Hobo bag made in Italy soft leather'
        if (parts_.in_keyword_title() || product_precedes(first)) claims_.back().part = Part::whole;
        modifier_marks_ = 0;
    }

    // What is handmade in a place is made there.
    ConceptId place_of_making(ConceptId deed) const {
        return deed == vocabulary().known.handmade_in ? vocabulary().known.made_in : deed;
    }

    // 'Handmade' of 'handmade in', which a rule may ask for as it does for 'handmade' alone.
    void mention_of_handwork(std::uint32_t i) {
        Claim claim = claim_over(segment_, i, i + 1);
        const std::uint32_t last = segment_.pieces[i].last;
        if (last > segment_.pieces[i].first + 1) claim.end = segment_.tokens.list[last - 2].end;
        finish(claim, i, i + 1, vocabulary().known.handmade, Kind::craft);
    }

    // 'Italian leather' says where the leather was made.
    void read_place_adjective(std::uint32_t i) {
        constexpr std::uint32_t kReach = 5;
        if (segment_.pieces[i].silent) return;
        const bool wholly = (modifier_marks_ & bit(Mark::all)) != 0 && modifiers_end_ == i;
        if (i + 1 < segment_.pieces.size() && segment_.pieces[i + 1].makes) {
            Claim claim = claim_over(segment_, i, i + 2);  // 'French made'
            claim.place = segment_.pieces[i].sense.concept_id;
            claim.negated = segment_.pieces[i].negated;
            finish(claim, i, i + 1, vocabulary().known.made_in, Kind::origin);
            return;
        }
        std::uint32_t words = 0;
        for (std::uint32_t k = i + 1; k < phrase_.last && k <= i + kReach; ++k) {
            const Piece& piece = segment_.pieces[k];
            if (piece.is(Role::product) || piece.is(Role::part)) break;
            if (piece.kind == PieceKind::word && ++words > 1) break;  // 'Nordic living room sofa in leather'
            if (piece.is(Role::meaning) && piece.sense.concept_id == vocabulary().known.tanned_in) {
                Claim claim = claim_over(segment_, i, k + 1);  // 'from a British tannery'
                claim.place = segment_.pieces[i].sense.concept_id;
                finish(claim, i, k + 1, vocabulary().known.tanned_in, Kind::origin);
                return;
            }
            if (!is_material(vocabulary(), piece)) continue;
            Claim claim = claim_over(segment_, i, k == i + 1 ? k + 1 : i + 1);
            claim.place = segment_.pieces[i].sense.concept_id;
            finish(claim, i, k + 1, vocabulary().known.national_material, Kind::origin);
            const PartFinder::Owner owner = parts_.owner_of_identity(i, k + 1);
            claims_.back().part = owner.part;
            return;
        }
        if (said_of_a_material()) {  // 'The leather is Italian'
            Claim claim = claim_over(segment_, i, i + 1);
            claim.place = segment_.pieces[i].sense.concept_id;
            finish(claim, i, i + 1, vocabulary().known.national_material, Kind::origin);
            claims_.back().part = parts_.owner_of_identity(i, i + 1).part;
            return;
        }
        if (wholly) {  // 'all Italian'
            Claim claim = claim_over(segment_, modifiers_start_, i + 1);
            claim.place = segment_.pieces[i].sense.concept_id;
            finish(claim, modifiers_start_, i + 1, vocabulary().known.wholly_made_in, Kind::origin);
        }
    }

    // 'Country of manufacture: China', 'Tanned in: Spain', and 'leather from Tuscany'.
    void read_place_name(std::uint32_t i) {
        const Piece& piece = segment_.pieces[i];
        if (piece.silent) return;
        const Region& region = segment_.regions[i];
        // Behind 'Sewn in:' stands its place, and others further on have nothing to do with it.
        const bool labelled = region.kind == RegionKind::origin &&
                              (region.deed == 0 || i == 0 || segment_.pieces[i - 1].is_mark(TokenKind::colon));
        const bool linked = !labelled && i == phrase_.first && phrase_.before == Connector::link;
        const bool of_tanning = linked && follows([](Kind kind, bool) { return kind == Kind::tanning; });
        const bool of_material = linked && follows([](Kind, bool stuff) { return stuff; });
        if (!labelled && !of_material && !of_tanning) return;
        if (i > 0 && segment_.pieces[i - 1].is(Role::meaning)) return;  // 'made in Italy' was read as a whole
        if (same_country(i, -2)) return;                                // 'Guangdong, China' was read with Guangdong
        const auto says_it_again = [&](const Claim& before) {           // 'Made in Portugal, in Porto'
            return before.kind == Kind::origin && before.field == segment_.field &&
                   before.sentence == segment_.sentence && before.place == piece.sense.concept_id;
        };
        if (labelled && !claims_.empty() && says_it_again(claims_.back())) return;
        const std::uint32_t last = same_country(i, 2) ? i + 3 : i + 1;
        Claim claim = claim_over(segment_, i, last);
        claim.place = piece.sense.concept_id;
        const bool of_leather = labelled && region.of_leather;
        const bool of_deed = labelled && region.deed != 0;
        finish(claim, i, last,
               of_leather   ? vocabulary().known.sourced_from
               : of_deed    ? place_of_making(region.deed)
               : labelled   ? vocabulary().known.made_in
               : of_tanning ? vocabulary().known.tanned_in
                            : vocabulary().known.national_material,
               Kind::origin);
        if (of_leather) claims_.back().part = parts_.owner_of_identity(i, last).part;
        if (of_deed && region.part != Part::whole) {  // 'Lining sewn in: China'
            claims_.back().part = region.part;
            claims_.back().family = region.family;
            claims_.back().marks |= bit(Mark::on_part);
        }
    }

    // Whether beyond a comma, `step` pieces away, the same country is named: 'Venice, Italy'.
    bool same_country(std::uint32_t i, int step) const {
        const std::int64_t other = std::int64_t{i} + step;
        if (other < 0 || other >= static_cast<std::int64_t>(segment_.pieces.size())) return false;
        const Piece& there = segment_.pieces[static_cast<std::size_t>(other)];
        return segment_.pieces[static_cast<std::size_t>(i + other) / 2].is_mark(TokenKind::comma) &&
               there.is(Role::place_name) && there.sense.concept_id == segment_.pieces[i].sense.concept_id;
    }

    // Whether what stands before the 'in' or 'from' of this phrase is a meaning that passes `test`.
    template <typename Test>
    bool follows(Test test) const {
        if (phrase_.first < 2 || !segment_.pieces[phrase_.first - 2].is(Role::meaning)) return false;
        const ConceptId id = segment_.pieces[phrase_.first - 2].sense.concept_id;
        return test(vocabulary().concepts[id].kind, is_stuff(vocabulary(), id));
    }

    const SegmentContext& segment_;
    const Phrase& phrase_;
    const PartFinder& parts_;
    std::vector<Claim>& claims_;
    std::uint32_t modifiers_start_ = 0;
    std::uint32_t modifiers_end_ = 0;
    std::uint32_t modifier_marks_ = 0;
};

}  // namespace

void parse_statements(const SegmentContext& segment, const Phrase& phrase, const PartFinder& parts,
                      std::vector<Claim>& claims) {
    StatementParser(segment, phrase, parts, claims).parse();
}

}  // namespace grainside::claims
