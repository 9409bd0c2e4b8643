// What a phrase says a part is made of: materials, species, grain classes, alone or composed.
//
// English puts the head last: in 'textile leather' the head says leather and the word before it says otherwise; in
// 'leather-look polyurethane' the head is the plastic. Pieces are read from left to right; each material is composed
// with the one before it as long as no noun for a part or product stands between them.
#include <algorithm>
#include <array>
#include <optional>

#include "claims/segment.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;
using vocabulary::Vocabulary;

namespace {

// A material under composition. Positions are pieces. Without initial values, which would be written sixteen times for
// every phrase: begin with `Stuff stuff{}`.
struct Stuff {
    std::uint32_t first;
    std::uint32_t last;
    ConceptId says;
    ConceptId called;
    std::uint32_t marks;
    std::optional<Quantity> quantity;
    bool finished;  // composed into the one after it: not a claim of its own
    bool negated;
    bool likened;
};

class MaterialParser {
public:
    MaterialParser(const SegmentContext& segment, const Phrase& phrase, const PartFinder& parts,
                   std::vector<Claim>& claims)
        : segment_(segment), phrase_(phrase), parts_(parts), claims_(claims) {}

    void parse() {
        for (std::uint32_t i = phrase_.first; i < phrase_.last; ++i) {
            const Piece& piece = segment_.pieces[i];
            if (piece.silent) {
                close();
                continue;
            }
            if (piece.kind == PieceKind::number) {
                read_number(i);
            } else if (piece.kind == PieceKind::term) {
                read_term(i, piece);
            }
        }
        close();
    }

private:
    const Vocabulary& vocabulary() const { return segment_.vocabulary; }
    bool is_a(ConceptId id, ConceptId ancestor) const { return vocabulary().concepts.is_a(id, ancestor); }

    void read_number(std::uint32_t i) {
        const bool percent = i + 1 < phrase_.last && segment_.pieces[i + 1].is_mark(TokenKind::percent);
        if (!percent) return;
        const double value = segment_.pieces[i].number;
        const bool range = i > phrase_.first && segment_.pieces[i].hyphenated() &&
                           segment_.pieces[i - 1].kind == PieceKind::number && segment_.pieces[i - 1].number < value;
        const double low = range ? segment_.pieces[i - 1].number : value;
        const bool closes = i + 2 >= phrase_.last || !opens_material(i + 2);
        if (count_ > 0 && !last().quantity && last().last == i && !share_is_pending_ &&
            (closes || ends_with_number()) && !numbers_lead_) {
            last().quantity = Quantity{low, value, Unit::percent};
            last().last = i + 2;
            return;
        }
        share_ = Quantity{low, value, Unit::percent};
        share_at_ = range ? i - 1 : i;
        share_is_pending_ = true;
    }

    bool is_material(std::uint32_t i) const {
        return segment_.pieces[i].is(Role::meaning) && is_stuff(vocabulary(), segment_.pieces[i].sense.concept_id);
    }

    // A word that a material can begin with: '30% genuine leather'.
    bool opens_material(std::uint32_t i) const {
        const Piece& piece = segment_.pieces[i];
        return piece.is(Role::meaning) || piece.is(Role::genuine) || piece.is(Role::pure) || piece.is(Role::all);
    }

    // 'cotton 70% polyester 30%': numbers stand behind their materials throughout the phrase.
    bool ends_with_number() const {
        return phrase_.last >= phrase_.first + 2 && segment_.pieces[phrase_.last - 1].is_mark(TokenKind::percent);
    }

    void read_term(std::uint32_t i, const Piece& piece) {
        switch (piece.sense.role) {
            case Role::genuine:
                add_modifier(i, Mark::genuine);
                break;
            case Role::solid:
                add_modifier(i, Mark::solid);
                break;
            case Role::pure:
                add_modifier(i, Mark::pure);
                break;
            case Role::all:
                add_modifier(i, Mark::all);
                break;
            case Role::imitation:
                add_modifier(i, Mark::imitation);
                break;
            case Role::coated:
                if (count_ > 0 && last().last == i) {
                    last().marks |= bit(Mark::coated);
                    coat_ends_at_ = i + 1;
                }
                break;
            case Role::look:
                read_look(i);
                break;
            case Role::free_suffix:
                if (count_ > 0 && last().last == i && piece.hyphenated()) {
                    last().negated = true;
                    last().last = i + 1;
                }
                break;
            case Role::comparison_suffix:
                if (count_ > 0 && last().last == i && piece.hyphenated()) {
                    last().likened = true;
                    last().last = i + 1;
                }
                break;
            case Role::tone_word:
                read_tone(i);
                break;
            case Role::colour:
                read_colour(i, piece);
                break;
            case Role::blend:
                for (std::size_t k = 0; k < count_; ++k) chain_[k].marks |= bit(Mark::blend);
                break;
            case Role::part:
            case Role::product:
            case Role::accessory:
            case Role::part_after:
                close();
                break;
            case Role::meaning:
                read_meaning(i, piece);
                break;
            default:
                break;
        }
    }

    void add_modifier(std::uint32_t i, Mark mark) {
        if (modifier_marks_ == 0 || modifiers_end_ != i) modifiers_start_ = i;
        modifier_marks_ |= bit(mark);
        modifiers_end_ = i + 1;
    }

    void read_meaning(std::uint32_t i, const Piece& piece) {
        const ConceptId id = piece.sense.concept_id;
        const Kind kind = vocabulary().concepts[id].kind;
        if (kind == Kind::quality) {
            add_modifier(i, Mark::praised);
            return;
        }
        if (!is_stuff(vocabulary(), id)) {
            // A percentage before a statement is the material's too: '80% recycled polyester'.
            if (share_is_pending_ && share_at_ + 2 == i && !(i + 1 < phrase_.last && is_material(i + 1)))
                share_is_pending_ = false;
            return;
        }
        Stuff stuff{};
        stuff.first = i;
        stuff.last = i + 1;
        stuff.says = id;
        stuff.called = piece.sense.called;
        if (modifier_marks_ != 0) {
            if (modifiers_end_ == i) stuff.first = modifiers_start_;
            stuff.marks = modifier_marks_;
            modifier_marks_ = 0;
        }
        if (share_is_pending_) {
            const std::uint32_t between = stuff.first - share_at_;
            if (between <= kShareReach) {
                stuff.quantity = share_;
                stuff.first = share_at_;
                if (share_.low >= 100) stuff.marks |= bit(Mark::all);
                numbers_lead_ = true;
            }
            share_is_pending_ = false;
        }
        if ((stuff.marks & bit(Mark::imitation)) != 0) become_imitation(stuff);
        if (look_is_pending_) {
            stuff.first = look_first_;
            // 'linen-look canvas' borrows the fibre; 'leather-look polyurethane' admits what it is not.
            if (stuff.called == 0 && is_a(look_called_, vocabulary().known.textile)) stuff.called = look_called_;
            stuff.marks |= bit(Mark::look);
            look_is_pending_ = false;
        }
        push(stuff);
    }

    // 'imitation crocodile leather' says imitation leather, called crocodile leather.
    void become_imitation(Stuff& stuff) const {
        const auto& known = vocabulary().known;
        const ConceptId said = stuff.says;
        if (!vocabulary().concepts.is_a(said, known.hide_word)) return;
        stuff.called = said;
        stuff.says = is_a(said, known.suede) ? known.imitation_suede : known.imitation_leather;
    }

    void read_look(std::uint32_t i) {
        if (count_ == 0 || last().last != i) return;
        look_first_ = last().first;
        look_called_ = last().says;
        look_last_ = i + 1;
        look_marks_ = last().marks;
        look_is_pending_ = true;
        --count_;
    }

    // 'bronze tone' is a finish; 'brown leather colour' only a colour. In 'leather colour brown' the colour follows.
    void read_tone(std::uint32_t i) {
        if (count_ == 0 || last().last != i) return;
        if (is_a(last().says, vocabulary().known.metal)) {
            last().says = vocabulary().known.tone_finish;
            last().last = i + 1;
        } else if (last().marks == 0 && !last().quantity &&
                   (i + 1 == phrase_.last || !segment_.pieces[i + 1].is(Role::colour))) {
            --count_;
        }
    }

    // 'leather-brown' and 'leather brown lining' name a colour; 'genuine leather brown wallet' names a material.
    void read_colour(std::uint32_t i, const Piece& piece) {
        if (count_ == 0 || last().last != i || last().quantity) return;
        const bool linked = last().marks == 0 && phrase_.before == Connector::link && i + 1 == phrase_.last;
        if (linked && is_a(last().says, vocabulary().known.metal)) --count_;  // 'shown in brass yellow'
        if (count_ == 0 || last().says != vocabulary().known.leather) return;
        bool is_colour = piece.hyphenated();
        if (!is_colour && last().marks == 0) {
            is_colour = linked;
            for (std::uint32_t k = i + 1; k < phrase_.last && !is_colour; ++k) {
                const Piece& next = segment_.pieces[k];
                if (next.is(Role::product)) break;
                is_colour =
                    next.is(Role::part) || (next.is(Role::meaning) && is_stuff(vocabulary(), next.sense.concept_id));
            }
        }
        if (is_colour) --count_;
    }

    void push(const Stuff& stuff) {
        if (count_ > 0 && compose(last(), stuff)) return;
        if (count_ > 0 && last().last == stuff.first) last().marks |= bit(Mark::before_material);
        if (count_ == chain_.size()) close();
        chain_[count_++] = stuff;
    }

    // Composes `next` into `before` where the two name one material. Returns whether it did.
    bool compose(Stuff& before, const Stuff& next) {
        const auto& known = vocabulary().known;
        const auto& concepts = vocabulary().concepts;
        const ConceptId a = before.says;
        const ConceptId b = next.says;
        if (before.likened || before.negated != next.negated) return false;
        const bool adjacent = before.last == next.first;
        const auto join = [&](ConceptId says, ConceptId called) {
            before.says = says;
            before.called = called != 0 ? called : before.called;
            before.last = next.last;
            before.marks |= next.marks;
            if (!before.quantity) before.quantity = next.quantity;
            return true;
        };
        if ((before.marks & bit(Mark::coated)) != 0 && coat_ends_at_ == next.first) {
            return is_a(a, known.leather) ? false : join(coated(a, b), 0);
        }
        if (next.quantity && before.quantity) return false;
        if (is_a(a, known.plastic) && b == known.coated_leather && adjacent) return join(b, 0);  // 'PU coated'
        if (before.called != 0 && is_a(b, known.hide_word) && adjacent) return join(a, before.called);
        // 'PU leather fabric': by the metre, sold under the noun.
        if (b == known.fabric && adjacent && (before.called != 0 || is_a(a, known.leather))) return join(a, 0);
        if (a == known.fabric && is_a(b, known.textile) && adjacent) return join(b, 0);
        if (is_a(a, known.borrows_hide) && is_a(b, known.hide_word) && next.first - before.last <= kBorrowReach) {
            return join(a, before.called != 0 ? before.called : b);
        }
        if (is_a(a, known.coated_fabric) && is_a(b, known.fabric) && adjacent) return join(a, 0);
        const bool asserts_anew = (next.marks & (bit(Mark::genuine) | bit(Mark::pure) | bit(Mark::all))) != 0;
        if (asserts_anew && a != b) return false;  // 'cowhide genuine leather' says two things
        if (concepts.is_a(a, b)) {
            if (adjacent) return join(a, 0);
            before.marks |= next.marks & ~bit(Mark::look);
            return !next.quantity;
        }
        if (!adjacent) return false;
        if (concepts.is_a(b, a)) return join(b, 0);
        if (is_a(a, known.plastic) && (is_a(b, known.coated_fabric) || is_a(b, known.coated_leather)))
            return join(coated(a, b), 0);
        if (is_a(a, known.textile) && !is_a(a, known.fabric) && is_a(b, known.fabric)) return join(a, 0);
        if (is_a(a, known.textile) && is_a(b, known.microfibre)) return join(b, 0);
        if (is_a(a, known.fabric) && is_a(b, known.fabric)) return join(b, 0);
        if (is_a(a, known.borrowed_fibre) && is_a(b, known.textile) && !next.quantity) return join(b, a);
        if (is_a(a, known.metal) && is_a(b, known.metal)) return join(b, a);
        return false;
    }

    // What a base becomes under a coat: split leather, leather, or a fabric.
    ConceptId coated(ConceptId coat, ConceptId base) const {
        const auto& known = vocabulary().known;
        if (is_a(base, known.coated_leather)) return base;
        if (is_a(base, known.split_leather)) return known.coated_split;
        if (is_a(base, known.leather)) return known.coated_leather;
        if (!is_a(base, known.textile) && !is_a(base, known.trait_synthetic)) return base;
        if (!is_a(coat, known.plastic)) return base;
        const auto& concepts = vocabulary().concepts;
        for (std::size_t id = 1; id < concepts.size(); ++id) {
            const auto candidate = static_cast<ConceptId>(id);
            if (concepts.is_a(candidate, known.coated_fabric) && candidate != known.coated_fabric &&
                concepts.related(candidate, coat))
                return candidate;
        }
        return known.coated_fabric;
    }

    // Ends the chain: a noun, the phrase's end, or something that claims nothing.
    void close() {
        if (look_is_pending_) emit_look();
        for (std::size_t k = 0; k < count_; ++k) emit(chain_[k]);
        count_ = 0;
        look_is_pending_ = false;
        modifier_marks_ = 0;
        share_is_pending_ = false;
        numbers_lead_ = false;
    }

    void emit_look() {
        // 'a soft rubber feel' is for the hand; of a hide, a fibre or a metal it tells what the eye shall take it for.
        if (!is_a(look_called_, vocabulary().known.hide_word) && !is_a(look_called_, vocabulary().known.textile) &&
            !is_a(look_called_, vocabulary().known.metal))
            return;
        Stuff stuff{};
        stuff.first = look_first_;
        stuff.last = look_last_;
        stuff.says = is_a(look_called_, vocabulary().known.metal) ? vocabulary().known.tone_finish
                                                                  : vocabulary().known.look_material;
        stuff.called = look_called_;
        stuff.marks = look_marks_ | bit(Mark::look);
        emit(stuff);
    }

    void emit(const Stuff& stuff) {
        Claim claim = claim_over(segment_, stuff.first, stuff.last);
        const PartFinder::Owner owner = parts_.owner_of_identity(stuff.first, stuff.last, stuff.says);
        claim.says = stuff.says;
        // 'split leather, PU-coated': the coat of what was named before it.
        const auto& known = vocabulary().known;
        const bool bare_coat = (stuff.marks & bit(Mark::coated)) != 0 && is_a(stuff.says, known.plastic) &&
                               stuff.last < phrase_.last && segment_.pieces[stuff.last].is(Role::coated) && !owner.own;
        if (bare_coat) claim.says = known.coated_leather;
        claim.called = stuff.called;
        claim.quantity = stuff.quantity;
        claim.kind = stuff.quantity ? Kind::composition : vocabulary().concepts[claim.says].kind;
        claim.part = parts_.part_of(owner, stuff.says);
        claim.family = owner.family;
        claim.phrase = phrase_.number;
        claim.marks |= stuff.marks;
        claim.negated = claim.negated || stuff.negated;
        if (stuff.last < segment_.pieces.size() && segment_.pieces[stuff.last].is(Role::all_after))
            claim.marks |= bit(Mark::all);
        if (owner.by_product && owner.own) claim.marks |= bit(Mark::on_product);
        if (owner.by_part && owner.own) claim.marks |= bit(Mark::on_part);
        const bool backing = phrase_.first > 0 && segment_.pieces[phrase_.first - 1].is(Role::backing);
        if (owner.by_part || backing) claim.marks |= bit(Mark::part_named);
        if ((phrase_.followed_by_coordination && has_stuff(1)) ||
            (phrase_.before == Connector::coordinated && has_stuff(-1)))
            claim.marks |= bit(Mark::listed);
        if (begins_bracket(phrase_, stuff.first) && has_stuff(-1)) claim.marks |= bit(Mark::bracketed);
        if (is_explained()) claim.marks |= bit(Mark::explained);
        const bool prose = (claim.marks & (bit(Mark::title) | bit(Mark::specification))) == 0;
        if (prose && stuff.first > 0 && !owner.own && stuff.last < phrase_.last &&
            segment_.pieces[stuff.last].kind == PieceKind::word)
            claim.marks |= bit(Mark::before_word);
        if (stuff.likened) {
            claim.kind = Kind::quality;
            claim.marks |= bit(Mark::likened);
        }
        claims_.push_back(claim);
    }

    // '(polyurethane', '(100% polyester'
    bool begins_bracket(const Phrase& phrase, std::uint32_t first) const {
        while (first > phrase.first && (segment_.pieces[first - 1].kind == PieceKind::number ||
                                        segment_.pieces[first - 1].is_mark(TokenKind::percent))) {
            --first;
        }
        return first == phrase.first && first > 0 && segment_.pieces[first - 1].is_mark(TokenKind::open);
    }

    bool is_explained() const {
        const Phrase* const next = &phrase_ + 1;
        if (next == segment_.phrases.data() + segment_.phrases.size() || next->first != phrase_.last + 1) return false;
        for (std::uint32_t i = next->first; i < next->last; ++i) {
            const Piece& piece = segment_.pieces[i];
            if (piece.is(Role::meaning) && is_stuff(vocabulary(), piece.sense.concept_id))
                return begins_bracket(*next, i);
        }
        return false;
    }

    // Whether the phrase before (-1) or behind (1) names a material: 'is made of PU and feels lovely' lists nothing.
    bool has_stuff(int step) const {
        const auto at = &phrase_ - segment_.phrases.data() + step;
        if (at < 0 || at >= static_cast<std::ptrdiff_t>(segment_.phrases.size())) return false;
        const Phrase& other = segment_.phrases[static_cast<std::size_t>(at)];
        for (std::uint32_t i = other.first; i < other.last; ++i) {
            const Piece& piece = segment_.pieces[i];
            if (piece.is(Role::meaning) && is_stuff(vocabulary(), piece.sense.concept_id)) return true;
        }
        return false;
    }

    Stuff& last() { return chain_[count_ - 1]; }

    static constexpr std::uint32_t kShareReach = 4;   // '100% genuine full grain': words between number and material
    static constexpr std::uint32_t kBorrowReach = 2;  // 'PU soft leather'

    const SegmentContext& segment_;
    const Phrase& phrase_;
    const PartFinder& parts_;
    std::vector<Claim>& claims_;
    std::array<Stuff, 16> chain_;  // the first count_ of them
    std::size_t count_ = 0;
    std::uint32_t modifiers_start_ = 0;
    std::uint32_t modifiers_end_ = 0;
    std::uint32_t modifier_marks_ = 0;
    Quantity share_{};
    std::uint32_t share_at_ = 0;
    bool share_is_pending_ = false;
    bool numbers_lead_ = false;
    std::uint32_t coat_ends_at_ = 0;
    std::uint32_t look_first_ = 0;
    std::uint32_t look_last_ = 0;
    std::uint32_t look_marks_ = 0;
    ConceptId look_called_ = 0;
    bool look_is_pending_ = false;
};

}  // namespace

void parse_materials(const SegmentContext& segment, const Phrase& phrase, const PartFinder& parts,
                     std::vector<Claim>& claims) {
    MaterialParser(segment, phrase, parts, claims).parse();
}

}  // namespace grainside::claims
