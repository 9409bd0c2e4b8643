// Listings of the labelled corpus, changed, with the way back from each byte to the original text.
#ifndef GRAINSIDE_TESTS_METAMORPHIC_CHANGED_LISTING_H
#define GRAINSIDE_TESTS_METAMORPHIC_CHANGED_LISTING_H

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/checker.h"
#include "labelled_file.h"
#include "support/transform.h"

namespace grainside::metamorphic {

// All listings of corpus/open_*.jsonl in order of their files; under sanitizers a part of them.
const std::vector<scoring::LabelledListing>& corpus();
const RuleBook& book();
// With the rules of us, eu and uk together, as of 2026-11-26.
Checker make_checker();

struct ChangedField {
    std::string name;
    support::ChangedText changed;
};

// Origins of bytes that no character of the original text was made into.
inline constexpr std::uint32_t kAdded = 0xffffffff;

struct ChangedListing {
    std::string id;
    std::string language;
    std::string region;
    std::vector<ChangedField> fields;

    Listing view() const;  // lives as long as this object
};

ChangedListing unchanged(const scoring::LabelledListing& listing);
ChangedListing transformed(const scoring::LabelledListing& listing, support::Transform transform);
bool has_other_text(const ChangedListing& changed, const scoring::LabelledListing& listing);

// Puts `added` before the byte `at` of a field's new text.
void insert(ChangedField& field, std::size_t at, std::string_view added);

// Where words of the new text stood in the original one, half open; {kAdded, kAdded} where any of them is added.
struct Origin {
    std::uint32_t start = 0;
    std::uint32_t end = 0;
};
Origin origin_of(const ChangedField& field, std::uint32_t start, std::uint32_t end);

// "rule grade part field@start 'words' [mended]" of each finding, the last where a wording is offered instead, and
// "kind concept part [denied] [hedged] [LOW-HIGH unit] field@start 'words'" of each claim, sorted; places and words are
// those of the original listing.
std::vector<std::string> statements_of(Checker& checker, const ChangedListing& changed,
                                       const scoring::LabelledListing& original);

}  // namespace grainside::metamorphic

#endif  // GRAINSIDE_TESTS_METAMORPHIC_CHANGED_LISTING_H
