// What a rewording leaves for a person, as text.
#ifndef GRAINSIDE_TOOLS_LEFT_OVER_VIEW_H
#define GRAINSIDE_TOOLS_LEFT_OVER_VIEW_H

#include <cstdint>
#include <string>

#include "grainside/listing.h"
#include "grainside/reword.h"
#include "grainside/rule_book.h"

namespace grainside::tools {

// Which statements the edits follow, where the listing disagrees with itself; nothing where no edit does. Inert; lines
// of 80 cells.
void append_taken_as_true(const Listing& listing, const Rewording& rewording, std::string& out);

// A heading for the listing, then for each finding its words, why there is no edit and what can be done. Nothing where
// nothing is left. Inert; lines of 80 cells.
void append_left_over(const RuleBook& book, const Listing& listing, const Rewording& rewording, std::string& out);

struct RewordTotals {
    std::uint64_t listings = 0;
    std::uint64_t edits = 0;
    std::uint64_t left[6] = {};  // by grade
    void add(const Rewording& rewording);
    // "3 edits; 2 findings left for a person: 1 misleading, 1 unsupported"
    std::string text() const;
    Grade worst() const noexcept;
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_LEFT_OVER_VIEW_H
