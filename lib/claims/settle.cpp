#include "claims/settle.h"

#include <algorithm>

#include "claims/place_behind.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Condition;
using vocabulary::Role;
using vocabulary::Sense;

namespace {

// How far a condition looks, in pieces. Noun phrases are shorter; a bound keeps a hostile text linear.
constexpr std::size_t kSettleReach = 16;

class Settler {
public:
    Settler(const PieceSource& source, std::vector<Piece>& pieces) : source_(source), pieces_(pieces) {}

    // Right to left, so that what stands to the right is settled when it is asked for.
    void settle() {
        for (std::size_t i = pieces_.size(); i-- > 0;) {
            Piece& piece = pieces_[i];
            if (piece.kind != PieceKind::term) continue;
            const vocabulary::RoleSet roles = roles_of(i);
            // Few words teach, make, serve or name; for the others the piece stays as it was made.
            if (roles.any({Role::teaching, Role::making, Role::purpose, Role::naming})) {
                piece.teaches = roles.has(Role::teaching);
                piece.makes = roles.has(Role::making);
                piece.serves = roles.has(Role::purpose);
                piece.names = roles.has(Role::naming);
            }
            if (const Sense* sense = choose(i); sense != nullptr) {
                piece.sense = *sense;
                if (sense->role == Role::determiner && has_apostrophe(piece)) piece.sense.role = Role::copula;
                // The 'upper' of a bag is its outside, whatever part that is.
                if (sense->role == Role::part && sense->main_elsewhere) {
                    piece.sense.value = static_cast<std::uint8_t>(source_.main_part);
                }
            } else {
                piece.kind = PieceKind::word;
            }
        }
    }

private:
    // "it's" folds to the word 'its', which has no apostrophe.
    bool has_apostrophe(const Piece& piece) const {
        return (source_.tokens.list[piece.first].flags & text::flag::kApostrophe) != 0;
    }

    std::span<const Sense> senses(std::size_t at) const {
        return source_.vocabulary.terms.senses(source_.hits[pieces_[at].hit].end);
    }

    vocabulary::RoleSet roles_of(std::size_t at) const {
        return source_.vocabulary.terms.roles(source_.hits[pieces_[at].hit].end);
    }

    // What stands to the left is not settled yet, so any sense of it counts.
    bool may_be(std::size_t at, vocabulary::RoleSet wanted) const {
        return pieces_[at].kind == PieceKind::term && roles_of(at).any(wanted);
    }

    const Sense* choose(std::size_t at) const {
        const auto all = senses(at);
        constexpr vocabulary::RoleSet kAskAround = {
            Role::look,         Role::silent_label, Role::main_label,     Role::colour_label,
            Role::origin_label, Role::answer_label, Role::question_label, Role::leather_origin_label,
            Role::plain_label,  Role::title_label};
        if (all.size() == 1 && all.front().condition == Condition::always && !kAskAround.has(all.front().role))
            return &all.front();
        for (const Sense& sense : all) {
            if (sense.condition != Condition::always && holds(sense, at)) return &sense;
        }
        if (roles_of(at).any(kLabels)) {
            for (const Sense& sense : all) {
                if (names_label(sense.role) && stands_as_label(at, sense.role)) return &sense;
            }
        }
        const Sense* fallback = nullptr;
        for (const Sense& sense : all) {
            if (sense.condition != Condition::always) continue;
            if (names_label(sense.role) && (all.size() > 1 || only_before_a_colon(sense.role))) continue;
            if (sense.role == Role::look && (!stuff_precedes(at) || compares_with_its_kind(at))) continue;
            if (sense.role == Role::meaning) {
                // 'handcrafted in' tells the place where a place follows and the material elsewhere.
                if (all.size() > 1 && is_origin(sense.concept_id) && !place_follows(at)) continue;
                if (all.size() > 1 && ends_list_of_colours(at)) continue;
                return &sense;
            }
            if (fallback == nullptr) fallback = &sense;
        }
        return fallback;
    }

    // 'in black or bronze': a colour word that closes a list of colours.
    bool ends_list_of_colours(std::size_t at) const {
        if (at < 2 || !may_be(at, {Role::colour}) || !may_be(at - 2, {Role::colour})) return false;
        const Piece& joint = pieces_[at - 1];
        const bool joined = joint.is_mark(TokenKind::comma) || joint.is_mark(TokenKind::slash) ||
                            may_be(at - 1, {Role::alternative, Role::conjunction});
        return joined && (at + 1 == pieces_.size() || pieces_[at + 1].kind == PieceKind::mark);
    }

    static constexpr vocabulary::RoleSet kLabels = {
        Role::silent_label,   Role::main_label,  Role::colour_label,         Role::origin_label, Role::answer_label,
        Role::question_label, Role::plain_label, Role::leather_origin_label, Role::title_label};
    static bool names_label(Role role) { return kLabels.has(role); }

    // Labels that are nothing elsewhere: 'Q&A' asks no question.
    static bool only_before_a_colon(Role role) {
        return role == Role::question_label || role == Role::answer_label || role == Role::plain_label ||
               role == Role::title_label;
    }

    // 'Colour: walnut' labels; 'walnut colour' does not.
    bool stands_as_label(std::size_t at, Role role) const {
        if (role == Role::answer_label || role == Role::question_label)
            return at == 0 && pieces_.size() > 1 && pieces_[1].is_mark(TokenKind::colon);
        if (role == Role::title_label) return stands_alone_as_label(at);
        if (source_.is_label) return true;
        // 'composition calf leather': machine-made copy leaves the colon out.
        // 'leather origin India'; 'made in India' is a statement of its own.
        if ((role == Role::origin_label || role == Role::leather_origin_label) && at + 1 < pieces_.size() &&
            pieces_[at + 1].is(Role::place_name) && !may_be(at, {Role::meaning})) {
            return true;
        }
        if (role == Role::main_label && at + 1 < pieces_.size() &&
            (pieces_[at + 1].kind == PieceKind::number ||
             (at > 0 && pieces_[at - 1].kind == PieceKind::mark && pieces_[at + 1].is(Role::meaning)))) {
            return true;
        }
        constexpr std::size_t kLabelReach = 2;
        constexpr std::size_t kNameReach = 6;
        // 'Name of the dye: cordovan' is no title, and no claim either.
        const std::size_t reach = at == 0 && may_be(at, {Role::title_label}) ? kNameReach : kLabelReach;
        for (std::size_t i = at + 1; i < pieces_.size() && i <= at + reach; ++i) {
            if (pieces_[i].is_mark(TokenKind::colon)) return true;
            if (pieces_[i].is_mark(TokenKind::close)) return at <= kLabelReach && pieces_[0].is_mark(TokenKind::open);
            if (pieces_[i].kind == PieceKind::mark) return pieces_[i].token_kind == TokenKind::dash && at < kLabelReach;
        }
        // 'Not included' heads a list, 'leather not included' is no label.
        return at + 1 == pieces_.size() && at < kLabelReach && (at == 0 || !may_be(at, {Role::other_product_after}));
    }

    // 'Item: leather wallet', and not 'Item weight: 90 g' or 'the product: leather'. The mark may be missing where the
    // next cell or line has the title.
    bool stands_alone_as_label(std::size_t at) const {
        if (at > 0) {
            const Piece& left = pieces_[at - 1];
            const bool begins = left.is_mark(TokenKind::comma) || left.is_mark(TokenKind::semicolon) ||
                                left.is_mark(TokenKind::asterisk) || (at == 1 && left.is_mark(TokenKind::open));
            if (!begins) return false;
        }
        if (at + 1 == pieces_.size()) return at == 0;
        const Piece& right = pieces_[at + 1];
        return right.is_mark(TokenKind::colon) || (at == 0 && right.is_mark(TokenKind::dash)) ||
               (at == 1 && right.is_mark(TokenKind::close));
    }

    bool is_origin(ConceptId id) const { return source_.vocabulary.concepts[id].kind == Kind::origin; }

    bool place_follows(std::size_t at) const { return place_behind(source_.vocabulary, pieces_, at) < pieces_.size(); }

    template <typename Test>
    bool any_sense(std::size_t at, Test test) const {
        if (pieces_[at].kind != PieceKind::term) return false;
        const auto all = senses(at);
        return std::any_of(all.begin(), all.end(), test);
    }

    // 'gold like 18k gold' compares two of a kind; 'leather like polyurethane' says what the polyurethane looks like.
    bool compares_with_its_kind(std::size_t at) const {
        if (pieces_[at].hyphenated() || at + 1 >= pieces_.size() || !pieces_[at + 1].is(Role::meaning)) return false;
        const ConceptId next = pieces_[at + 1].sense.concept_id;
        return may_be(at, {Role::comparison}) && any_sense(at - 1, [&](const Sense& sense) {
                   return sense.role == Role::meaning && source_.vocabulary.concepts.related(sense.concept_id, next);
               });
    }

    bool stuff_precedes(std::size_t at) const {
        return at > 0 && any_sense(at - 1, [&](const Sense& sense) {
                   return (sense.role == Role::meaning && is_stuff(source_.vocabulary, sense.concept_id)) ||
                          sense.role == Role::colour;
               });
    }

    bool holds(const Sense& sense, std::size_t at) const {
        switch (sense.condition) {
            case Condition::before_hide:
                return phrase_goes_on_with(at, [&](const Piece& piece) {
                    return piece.is(Role::meaning) &&
                           source_.vocabulary.concepts.is_a(piece.sense.concept_id, source_.vocabulary.known.hide_word);
                });
            case Condition::before_material:
                return phrase_goes_on_with(at, [&](const Piece& piece) {
                    return piece.is(Role::part) || piece.is(Role::product) ||
                           (piece.is(Role::meaning) && is_stuff(source_.vocabulary, piece.sense.concept_id));
                });
            case Condition::before_product:
                return phrase_goes_on_with(at, [](const Piece& piece) { return piece.is(Role::product); });
            case Condition::before_hardware:
                return phrase_goes_on_with(at, [](const Piece& piece) {
                    return piece.is(Role::part) && piece.sense.value == static_cast<std::uint8_t>(Part::hardware);
                });
            case Condition::after_genuine:
                return follows_genuine(at);
            case Condition::after_borrower:
                return at > 0 && any_sense(at - 1, [&](const Sense& left) {
                           return left.role == Role::imitation ||
                                  (left.role == Role::meaning &&
                                   source_.vocabulary.concepts.is_a(left.concept_id,
                                                                    source_.vocabulary.known.borrows_hide));
                       });
            case Condition::as_value:
                return stands_as_value(at);
            case Condition::with_edge:
                return stands_near(at, Part::edge, [](const Piece&) { return false; });
            case Condition::with_hardware:
                return stands_near(at, Part::hardware, [&](const Piece& piece) {
                    return piece.is(Role::meaning) &&
                           source_.vocabulary.concepts.is_a(piece.sense.concept_id, source_.vocabulary.known.metal);
                });
            case Condition::as_label:
                // 'Inside: suede', 'inside, suede', 'interior dressed in suede'
                return source_.is_label || at + 1 == pieces_.size() || ends_phrase(pieces_[at + 1]) ||
                       (pieces_[at + 1].kind == PieceKind::word && at + 2 < pieces_.size() &&
                        pieces_[at + 2].is(Role::link)) ||
                       stands_before_its_material(at);
            case Condition::after_share:
                for (std::size_t i = at; i-- > 0 && at - i <= 3;) {
                    if (pieces_[i].is_mark(TokenKind::percent)) return true;
                }
                return false;
            case Condition::after_own:
                for (std::size_t i = at; i-- > 0 && at - i <= 4;) {
                    if (may_be(i, {Role::own})) return true;
                    if (pieces_[i].kind == PieceKind::mark) break;
                }
                for (std::size_t i = at + 1; i < pieces_.size() && i <= at + kSettleReach; ++i) {
                    if (pieces_[i].is(Role::own)) return true;  // 'the Blue Leaf seal, which our own team awards'
                }
                return false;
            case Condition::on_strap:
                return source_.main_part == Part::strap;
            case Condition::as_tannage:
                return source_.is_tannage || follows_tannage_label(at);
            case Condition::likened:
                return at + 1 < pieces_.size() && pieces_[at + 1].is(Role::comparison_suffix) &&
                       pieces_[at + 1].hyphenated();
            case Condition::always:
                break;
        }
        return true;
    }

    // 'outside leather, inside cotton': a part's label that begins a clause, and nothing behind it but a material.
    bool stands_before_its_material(std::size_t at) const {
        if (at > 0 && !pieces_[at - 1].is_mark(TokenKind::comma) && !pieces_[at - 1].is_mark(TokenKind::semicolon)) {
            return false;
        }
        const auto is_share_or_meaning = [](const Piece& piece) {
            return piece.is(Role::meaning) || piece.kind == PieceKind::number || piece.is_mark(TokenKind::percent);
        };
        std::size_t end = at + 1;
        while (end < pieces_.size() && end <= at + kSettleReach && is_share_or_meaning(pieces_[end])) ++end;
        return end > at + 1 && (end == pieces_.size() || pieces_[end].kind == PieceKind::mark) &&
               pieces_[end - 1].is(Role::meaning) && is_stuff(source_.vocabulary, pieces_[end - 1].sense.concept_id);
    }

    // 'Tannage: chrome', 'tanning: semi vegetable'
    bool follows_tannage_label(std::size_t at) const {
        constexpr std::size_t kLabelReach = 4;
        bool colon = false;
        for (std::size_t i = at; i-- > 0 && at - i <= kLabelReach;) {
            if (pieces_[i].is_mark(TokenKind::colon) || pieces_[i].is_mark(TokenKind::dash)) {
                colon = true;
            } else if (may_be(i, {Role::tannage_label})) {
                return colon || i + 1 == at;
            }
        }
        return false;
    }

    template <typename Test>
    bool phrase_goes_on_with(std::size_t at, Test test) const {
        for (std::size_t i = at + 1; i < pieces_.size() && i <= at + kSettleReach; ++i) {
            if (ends_phrase(pieces_[i])) return false;
            if (test(pieces_[i])) return true;
        }
        return false;
    }

    // What a part is said to be of: nothing but words of the same kind between it and the 'in', 'is', label or bracket
    // before it, and no other noun after it; or a part's noun right behind it ('calf lining').
    bool stands_as_value(std::size_t at) const {
        if (pieces_[at].hyphenated() || ends_list_of_colours(at)) return false;
        // 'nubuck calf', 'full grain buffalo'
        if (at > 0 && any_sense(at - 1, [&](const Sense& sense) {
                return sense.role == Role::meaning && sense.condition == Condition::always &&
                       source_.vocabulary.concepts.is_a(sense.concept_id, source_.vocabulary.known.hide_word);
            })) {
            return true;
        }
        if (at + 1 < pieces_.size() && (pieces_[at + 1].is(Role::part) || pieces_[at + 1].is(Role::part_after)))
            return true;
        if (phrase_goes_on_with(at, [&](const Piece& piece) {
                return is_noun(piece) || piece.is(Role::accessory) ||
                       (piece.is(Role::meaning) && is_stuff(source_.vocabulary, piece.sense.concept_id));
            })) {
            return false;
        }
        // 'kid sizes': a word behind it means that it is not the value itself.
        if (at + 1 < pieces_.size() && (pieces_[at + 1].kind == PieceKind::word || pieces_[at + 1].is(Role::colour) ||
                                        pieces_[at + 1].is(Role::comparison))) {
            return false;
        }
        constexpr std::size_t kWordsBefore = 3;
        std::size_t words = 0;
        const bool is_colour_too = may_be(at, {Role::colour});
        for (std::size_t i = at; i > 0 && at - i <= kSettleReach; --i) {
            const Piece& left = pieces_[i - 1];
            if (left.kind == PieceKind::number || left.is_mark(TokenKind::percent)) continue;
            if (left.kind == PieceKind::word && ++words <= kWordsBefore) continue;  // 'in soft, supple calf'
            if (left.kind == PieceKind::mark) {
                // In prose a colour stands between commas too: 'hat, bone, wool felt'; a list of colours is none of
                // materials.
                if (left.token_kind == TokenKind::comma) {
                    if (words > 0) continue;
                    return (source_.is_specification || !is_colour_too) && !(i > 1 && may_be(i - 2, {Role::colour}));
                }
                // A house may be called 'Quillford & Ash'.
                if (left.token_kind == TokenKind::ampersand) {
                    return i < 2 || pieces_[i - 2].kind != PieceKind::word;
                }
                return left.token_kind == TokenKind::colon || left.token_kind == TokenKind::open ||
                       left.token_kind == TokenKind::plus || left.token_kind == TokenKind::slash;
            }
            if (any_sense(i - 1, [&](const Sense& sense) {
                    return (sense.role == Role::determiner && has_apostrophe(left)) || sense.role == Role::link ||
                           sense.role == Role::backing || sense.role == Role::copula ||
                           sense.role == Role::part_before || (sense.role == Role::conjunction && words == 0) ||
                           sense.role == Role::negator || (sense.role == Role::part && i == 1);
                })) {
                return true;
            }
            if (left.kind != PieceKind::term || may_be(i - 1, {Role::breaks, Role::tone_word, Role::colour_label,
                                                               Role::article, Role::determiner, Role::comparison})) {
                return false;
            }
        }
        return source_.is_specification && words == 0;
    }

    template <typename Test>
    bool stands_near(std::size_t at, Part part, Test test) const {
        constexpr std::size_t kNear = 5;
        if (source_.part == part) return true;
        const std::size_t from = at > kNear ? at - kNear : 0;
        for (std::size_t i = from; i < pieces_.size() && i <= at + kNear; ++i) {
            if (i == at) continue;
            if (any_sense(i,
                          [&](const Sense& sense) {
                              return sense.role == Role::part && sense.value == static_cast<std::uint8_t>(part);
                          }) ||
                test(pieces_[i])) {
                return true;
            }
        }
        return false;
    }

    bool follows_genuine(std::size_t at) const {
        for (std::size_t i = at; i-- > 0 && at - i <= kSettleReach;) {
            if (pieces_[i].is_mark(TokenKind::percent)) return i > 0 && pieces_[i - 1].number >= 100;
            if (may_be(i, {Role::genuine, Role::solid, Role::pure})) return true;
            if (!may_be(i, {Role::meaning})) return false;
        }
        return false;
    }

    const PieceSource& source_;
    std::vector<Piece>& pieces_;
};

}  // namespace

void settle_senses(const PieceSource& source, std::vector<Piece>& pieces) {
    Settler(source, pieces).settle();
}

}  // namespace grainside::claims
