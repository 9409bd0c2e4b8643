// The markets and days in which a book's rules differ.
#ifndef GRAINSIDE_VERDICT_EXAMINATION_SETTINGS_H
#define GRAINSIDE_VERDICT_EXAMINATION_SETTINGS_H

#include <cstdint>
#include <string>
#include <vector>

#include "rules/book_data.h"

namespace grainside::verdict {

// Days on which the same rules are in force.
struct Span {
    std::string begins;          // "since 2012-10-11" or "after 2025-12-31"; empty for the first
    std::vector<char> in_force;  // by rule
};

struct MarketSetting {
    std::string market;       // empty: none is asked for
    std::vector<Span> spans;  // in the order of days, which they cover; neighbours differ
    // By rule: the last span in which it is in force, behind which it never is again; kNever where it is in none.
    std::vector<std::uint32_t> last_span;
};
inline constexpr std::uint32_t kNever = 0xffffffff;

// No market first, then those of the book in its order.
std::vector<MarketSetting> settings_of(const rules::BookData& book);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_EXAMINATION_SETTINGS_H
