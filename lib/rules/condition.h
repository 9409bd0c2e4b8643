// A rule's condition on one claim, compiled to sets and masks.
#ifndef GRAINSIDE_RULES_CONDITION_H
#define GRAINSIDE_RULES_CONDITION_H

#include <cstdint>
#include <optional>

#include "document/document.h"
#include "document/faults.h"
#include "grainside/claim.h"
#include "vocabulary/vocabulary.h"

namespace grainside::rules {

// What a condition may ask of the listing as a whole.
struct ListingFacts {
    std::uint8_t category = 0;    // index into Vocabulary::categories
    Part main_part = Part::body;  // of that category
};

// Both ends included.
struct Range {
    double from = 0;
    double to = 0;

    bool holds(double low, double high) const noexcept { return low >= from && high <= to; }
};

// What every condition of a claim may ask. All that is asked must hold.
struct ClaimCondition {
    vocabulary::ConceptSet says;    // with all descendants; every concept where the rule asks for none
    vocabulary::ConceptSet called;  // empty: not asked
    vocabulary::ConceptSet not_called;
    vocabulary::ConceptSet in_place;  // of an origin: these places and all that lies within; asked by in_place_asked
    std::uint32_t kinds = (1U << kKindCount) - 1;
    std::uint32_t parts = (1U << kPartCount) - 1;
    bool main_part = false;                 // the main outside part of the listing's category counts too
    bool not_main_part = false;             // and here never
    std::uint32_t categories = 0xffffffff;  // bit = index into Vocabulary::categories
    std::uint32_t marked = 0;               // at least one of these; 0 = not asked
    std::uint32_t marked_all = 0;           // all of these
    std::uint32_t unmarked = 0;             // none of these
    std::optional<bool> negated = false;
    std::optional<bool> hedged;
    std::optional<bool> quantity;
    std::optional<bool> borrowed;  // whether it borrows a noun (Claim::called)
    std::optional<bool> look_alike;
    std::optional<Range> share;        // of a percentage
    std::optional<Range> of_total;     // of a coat: its percentage of the part's thickness
    std::optional<Range> millimetres;  // of a thickness, whichever unit it is stated in

    // What fails most often, and costs least to ask, comes first; whoever asks has seen kind, part and denial (Gate).
    bool holds(const Claim& claim, const ListingFacts& listing) const noexcept {
        const std::uint32_t marks = claim.marks;
        return says.contains(claim.says) && (kinds >> static_cast<unsigned>(claim.kind) & 1U) != 0 &&
               ((parts >> static_cast<unsigned>(claim.part) & 1U) != 0 ||
                (main_part && claim.part == listing.main_part)) &&
               (!negated || *negated == claim.negated) && !(not_main_part && claim.part == listing.main_part) &&
               (categories >> listing.category & 1U) != 0 && (marked == 0 || (marks & marked) != 0) &&
               (marks & marked_all) == marked_all && (marks & unmarked) == 0 && (plain || holds_rest(claim));
    }

    bool called_asked = false;
    bool in_place_asked = false;
    bool plain = false;  // known to ask nothing that holds_rest() looks at

    // Whether it asks nothing of the noun that a claim borrows, its place, its numbers or how it is worded.
    bool is_plain() const noexcept {
        return !hedged && !quantity && !borrowed && !look_alike && !share && !of_total && !millimetres &&
               !called_asked && !in_place_asked && not_called.empty();
    }

private:
    bool holds_rest(const Claim& claim) const noexcept {
        return (!hedged || *hedged == claim.hedged) && (!quantity || *quantity == claim.quantity.has_value()) &&
               (!borrowed || *borrowed == (claim.called != 0)) && (!look_alike || *look_alike == claim.look_alike) &&
               (called_asked == false || called.contains(claim.called)) && !not_called.contains(claim.called) &&
               (in_place_asked == false || in_place.contains(claim.place)) && (!share || has_share(claim)) &&
               (!of_total || (claim.of_total > 0 && of_total->holds(claim.of_total, claim.of_total))) &&
               (!millimetres || has_millimetres(claim));
    }
    bool has_share(const Claim& claim) const noexcept {
        return claim.quantity && claim.quantity->unit == Unit::percent &&
               share->holds(claim.quantity->low, claim.quantity->high);
    }
    bool has_millimetres(const Claim& claim) const noexcept {
        const auto value = in_millimetres(claim.quantity);
        return value && millimetres->holds(value->low, value->high);
    }
};

// How far from the graded claim another statement is looked for.
// `part` and `elsewhere` leave out what another family of nouns names: rings beside a buckle. `noun` wants the family
// of both known and the same. `part_in_sentence` asks for what both `part` and `sentence` ask for.
enum class Reach : std::uint8_t { phrase, sentence, part, anywhere, elsewhere, noun, part_in_sentence };

// A condition on another statement of the same listing.
struct BesideCondition {
    ClaimCondition claim;
    Reach reach = Reach::part;
    std::optional<bool> same_place;  // of origin claims: the same country, or another
    std::optional<bool> differs;     // neither says what the other says, nor a kind of it
    bool later = false;              // it stands after the graded claim
};

// Reads a mapping of condition keys. Faults: "unknown-key", "wrong-type", "unknown-concept", "unknown-kind",
// "unknown-part", "unknown-category", "unknown-mark", "unknown-place", "out-of-range".
ClaimCondition read_condition(const document::Document& document, document::Node node,
                              const vocabulary::Vocabulary& vocabulary, document::Faults& faults);
// The same with reach, place, differs and later. Fault also: "unknown-reach".
BesideCondition read_beside(const document::Document& document, document::Node node,
                            const vocabulary::Vocabulary& vocabulary, document::Faults& faults);

}  // namespace grainside::rules

#endif  // GRAINSIDE_RULES_CONDITION_H
