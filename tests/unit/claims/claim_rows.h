// The tables of texts and the claims that they hold, by group.
#ifndef GRAINSIDE_TESTS_UNIT_CLAIMS_CLAIM_ROWS_H
#define GRAINSIDE_TESTS_UNIT_CLAIMS_CLAIM_ROWS_H

#include <ostream>
#include <span>
#include <string_view>

namespace grainside::claims {

// `text` is the listing's description, or "Name | value" is an attribute of that name, "name | value" its title and
// "material | value" its material field. `want`: support::dump_claims, "" = no claim.
struct Row {
    std::string_view name, text, want;
};
inline void PrintTo(const Row& row, std::ostream* out) {
    *out << row.name;
}

std::span<const Row> identity_rows();     // heads and modifiers, coating, imitation and look
std::span<const Row> part_rows();         // parts, labels and attributes
std::span<const Row> denial_rows();       // negation and hedge
std::span<const Row> not_a_claim_rows();  // design.md 4.5
std::span<const Row> number_rows();       // numbers, measures, percentages
std::span<const Row> statement_rows();    // performance, environment, certification, origin, tanning, plating
std::span<const Row> border_rows();       // first and last words, and both sides of each bound
// Rows whose `want` design.md asks for and the parser does not give yet. Each must fail, so that mending it is noticed.
std::span<const Row> known_gap_rows();

}  // namespace grainside::claims

#endif  // GRAINSIDE_TESTS_UNIT_CLAIMS_CLAIM_ROWS_H
