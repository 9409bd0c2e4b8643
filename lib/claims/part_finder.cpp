#include "claims/segment.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;

PartFinder::Owner PartFinder::owner_by(const Piece& noun) const {
    if (noun.is(Role::product)) return {segment_.main_part, false, true, true};
    const auto part = static_cast<Part>(noun.sense.value);
    // 'outer', 'face' and 'shell' are the main part whatever the product: of a shoe the upper, of a belt the strap.
    return {part == Part::body ? segment_.main_part : part, true, false, true, family_of(noun)};
}

// 'Leather Bag Adjustable Strap': in a title, whatever stands behind the goods and is no noun begins something else.
bool PartFinder::ends_goods_of_a_title(const Piece& head) const {
    return head.is(Role::product) && in_title();
}

// 'Suede Lining Slim Soft Pouch'
bool PartFinder::ends_part_of_keywords(const Piece& head, std::uint32_t from, const Piece& next) const {
    return head.is(Role::part) && &head == &segment_.pieces[from] && next.kind == PieceKind::word && in_keyword_title();
}

// The head of the noun group to the right: 'leather bag strap' is a strap. A material in between starts a group of its
// own: 'leather bag canvas lining'.
const Piece* PartFinder::noun_right(std::uint32_t from) const {
    const Piece* head = nullptr;
    for (std::uint32_t i = from; i < phrase_->last; ++i) {
        const Piece& piece = segment_.pieces[i];
        if (piece.is(Role::part_after) && i == from)
            return &piece;  // 'leather-lined': only what stands right before it
        if (is_noun(piece) && !piece.is(Role::part_after)) {
            head = &piece;
            continue;
        }
        if (head == nullptr) continue;
        if (ends_goods_of_a_title(*head) || ends_part_of_keywords(*head, from, piece)) break;
        if (piece.is(Role::meaning) || piece.kind == PieceKind::number) break;
    }
    return head;
}

// A part named before its material: 'Lining 100% cotton'.
const Piece* PartFinder::noun_left(std::uint32_t before) const {
    for (std::uint32_t i = before; i-- > phrase_->first;) {
        if (is_noun(segment_.pieces[i])) return &segment_.pieces[i];
    }
    return nullptr;
}

// 'calfskin on the reverse', 'suede at the soft inner collar': the part that stands behind the phrase.
const Piece* PartFinder::noun_behind(std::uint32_t end) const {
    constexpr std::uint32_t kReach = 3;
    if (end != phrase_->last || end >= segment_.pieces.size() || !segment_.pieces[end].is(Role::at_part) ||
        segment_.regions[phrase_->first].kind == RegionKind::part)
        return nullptr;
    for (std::uint32_t i = end + 1; i < segment_.pieces.size() && i <= end + kReach; ++i) {
        const Piece& piece = segment_.pieces[i];
        if (piece.is(Role::part)) return &piece;
        if (piece.kind != PieceKind::word) return nullptr;
    }
    return nullptr;
}

PartFinder::Owner PartFinder::lent(Owner owner) {
    owner.own = false;
    return owner;
}

bool PartFinder::goes_on_with_a_number() const {
    return segment_.pieces[phrase_->first].kind == PieceKind::number && index_ > 0;
}

PartFinder::Owner PartFinder::inherited(std::uint32_t at) const {
    const Region& region = segment_.regions[at];
    switch (phrase_->before) {
        case Connector::part_before:
            return {phrase_->part_before, true, false, true};
        case Connector::link:
        case Connector::copula:
            if (has_subject_) return lent(subject_);
            break;
        case Connector::with:
            // 'saddle stitched at 8 per inch with polyester': the part stands in the verb.
            if (has_subject_ && subject_is_verb_) return lent(subject_);
            // 'the body is 80% wool with 20% polyamide'
            if (goes_on_with_a_number() && list_.by_part) return lent(list_);
            break;
        case Connector::coordinated:
        case Connector::comma:
            // '70% cotton, 30% polyester': the list goes on.
            if (goes_on_with_a_number()) return lent(list_);
            if (has_previous_ && phrase_->before == Connector::coordinated) return lent(previous_);
            break;
        default:
            break;
    }
    // 'leather and canvas tote': the noun stands behind the last of the list.
    const bool labelled = region.kind == RegionKind::main || region.kind == RegionKind::part;
    if (!labelled && phrase_->followed_by_coordination && index_ + 1 < segment_.phrases.size() &&
        phrase_->before != Connector::link) {
        const Phrase& next = segment_.phrases[index_ + 1];
        for (std::uint32_t i = next.last; i-- > next.first;) {
            if (is_noun(segment_.pieces[i])) return lent(owner_by(segment_.pieces[i]));
        }
    }
    if (region.kind == RegionKind::part)
        return {region.part == Part::body ? segment_.main_part : region.part, true, false, false, region.family};
    // '(100% polyester)' explains what stands before the bracket.
    if (phrase_->first > 0 && segment_.pieces[phrase_->first - 1].is_mark(TokenKind::open) && has_subject_)
        return lent(subject_);
    return {segment_.main_part, false, false, false};
}

void PartFinder::enter(std::size_t phrase) {
    if (phrase_ != nullptr) {
        if (has_noun_) {
            const Piece* head = nullptr;
            for (std::uint32_t i = phrase_->first; i < phrase_->last; ++i) {
                if (is_noun(segment_.pieces[i])) head = &segment_.pieces[i];
            }
            // 'rings and buckle in solid brass' is said of both; 'sweatband in leather and lining in viscose' is not.
            const bool of_both = phrase_->before == Connector::coordinated && has_subject_ && !has_previous_;
            const std::uint8_t before = of_both ? subject_.family : std::uint8_t{0};
            subject_ = owner_by(*head);
            if (of_both && before != subject_.family) subject_.family = 0;
            subject_is_verb_ = head->is(Role::part_after);
            has_subject_ = true;
        } else if (phrase_->before == Connector::part_before) {
            subject_ = given_;
            has_subject_ = true;
        }
        list_ = has_noun_ ? subject_ : given_;
        previous_ = given_;
        has_previous_ = !has_noun_;
    }
    index_ = phrase;
    phrase_ = &segment_.phrases[phrase];
    if (phrase_->before == Connector::none) {
        has_previous_ = false;
        const bool bracket = phrase_->first > 0 && segment_.pieces[phrase_->first - 1].is_mark(TokenKind::open);
        if (!bracket) has_subject_ = false;
    }
    has_noun_ = phrase_->roles.any({Role::part, Role::product, Role::part_after});
    given_ = inherited(phrase_->first);
}

// 'solid brass buckle and rings': said of the rings too.
bool PartFinder::another_noun_is_joined() const {
    if (!phrase_->followed_by_coordination || index_ + 1 >= segment_.phrases.size()) return false;
    return segment_.pieces[segment_.phrases[index_ + 1].first].is(Role::part);
}

bool PartFinder::in_title() const {
    return (segment_.marks & bit(Mark::title)) != 0 || segment_.regions[phrase_->first].kind == RegionKind::title;
}

bool PartFinder::in_keyword_title() const {
    constexpr std::uint32_t kKeywords = 7;
    return in_title() && phrase_->last - phrase_->first >= kKeywords;
}

// In a title of keywords ('Belt Full Grain Leather Automatic Buckle Solid Brass Click Belt') the next noun may have
// nothing to do with a material: hides and fabrics are no buckles, and a metal is no belt.
bool PartFinder::fits_by_keyword(const Piece& noun, ConceptId says) const {
    if (!in_keyword_title()) return true;
    const auto& concepts = segment_.vocabulary.concepts;
    const bool sheet = concepts.is_a(says, segment_.vocabulary.known.leather) ||
                       concepts.is_a(says, segment_.vocabulary.known.textile);
    if (noun.is(Role::part) && static_cast<Part>(noun.sense.value) == Part::hardware) return !sheet;
    return !(noun.is(Role::product) && concepts.is_a(says, segment_.vocabulary.known.metal));
}

PartFinder::Owner PartFinder::owner_of_identity(std::uint32_t begin, std::uint32_t end, ConceptId says) const {
    if (const Piece* noun = noun_right(end); noun != nullptr) {
        if (!fits_by_keyword(*noun, says)) return {segment_.main_part, false, false, false};
        Owner owner = owner_by(*noun);
        if (another_noun_is_joined()) owner.family = 0;
        return owner;
    }
    if (phrase_->before == Connector::part_before) return given_;
    if (const Piece* noun = noun_left(begin); noun != nullptr && !in_keyword_title()) return owner_by(*noun);
    if (const Piece* noun = noun_behind(end); noun != nullptr) return lent(owner_by(*noun));
    return given_;
}

PartFinder::Owner PartFinder::owner_of_statement(std::uint32_t begin, std::uint32_t end, bool on_material) const {
    Owner owner = owner_of_identity(begin, end);
    const bool component = segment_.main_part == Part::hardware;
    if (!owner.by_part && !on_material && !component) owner.part = Part::whole;
    return owner;
}

Part PartFinder::part_of(const Owner& owner, ConceptId says) const {
    if (owner.by_part || (owner.by_product && owner.own)) return owner.part;
    return segment_.vocabulary.concepts[says].part.value_or(owner.part);
}

}  // namespace grainside::claims
