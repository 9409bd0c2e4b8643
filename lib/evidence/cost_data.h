// What the price side reads: usual ranges, currencies and duties of the book, and the costs of one dossier (rules/
// EVIDENCE.md, sections 8 and 9). Plain data.
#ifndef GRAINSIDE_EVIDENCE_COST_DATA_H
#define GRAINSIDE_EVIDENCE_COST_DATA_H

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/claim.h"
#include "grainside/cost.h"
#include "measure/distribution.h"
#include "measure/measured.h"
#include "measure/unit.h"

namespace grainside::evidence {

inline constexpr std::size_t kNoCostIndex = static_cast<std::size_t>(-1);
inline constexpr std::size_t kCostGroupCount = 11;

// What a line of a build-up may state; the words stand in cost_value.cpp. `duty_rate` is a share and written `rate`;
// `exchange`, `sales_tax` and `multiple` stand outside of lines.
enum class CostInput : std::uint8_t {
    area,
    hides,
    hide,
    length,
    width,
    count,
    mass,
    time,
    cutting_yield,
    waste,
    allowance,
    price,
    rate,
    amount,
    share,
    duty_rate,
    exchange,
    sales_tax,
    multiple
};
inline constexpr std::size_t kCostInputCount = 19;

// A value as it counts: exact, or with its spread. Quantities stand in the working unit of their dimension, money in
// its own currency per working unit of `per`.
struct CostValue {
    CostInput input{};
    measure::Measured measured;
    measure::Distribution distribution = measure::Distribution::normal;
    std::string written;   // as the dossier or the book has it
    std::string currency;  // ISO 4217, of money
    // What the money is paid for one unit of: an area, a length, a mass, a time, a hide, or a piece (number); nothing
    // for a plain amount.
    std::optional<measure::Dimension> per;
    double per_factor = 1;             // of the unit as written, in working units; for printing in it again
    std::size_t usual = kNoCostIndex;  // index into CostBook::usual, where it was asked for by name
    std::size_t duty = kNoCostIndex;   // index into CostBook::duties, where it was asked for by name
    // Index into DossierCosts::entries of the line whose value of this input it is: one unknown, and not two alike.
    std::size_t same_as = kNoCostIndex;
    std::uint32_t line = 0;
};

// The ends of what a value may be: of a range its own, of others two standard uncertainties away.
struct CostBounds {
    double low = 0;
    double high = 0;
};
CostBounds bounds_of(const CostValue& value) noexcept;

// --- the book
// ---------------------------------------------------------------------------------------------------------

struct Currency {
    std::string id;  // ISO 4217
    std::string name;
    int digits = 2;
    std::string symbol;  // may be shared with others; then it is refused
};

struct UsualCost {
    std::string id, title;
    CostValue range;
    std::vector<CostGroup> groups;     // where it is asked for; empty: everywhere
    std::vector<ConceptId> materials;  // empty: all
    std::uint32_t categories = 0;      // bits of category numbers; 0: all
    std::vector<std::string> named;    // words of the sample that single it out: "tote"
    bool whole_product = false;        // of all lines together, not of one
    std::vector<std::uint32_t> sources;
};

// Which value a duty is a share of.
enum class DutyBase : std::uint8_t { maker_price, with_freight };
// How rule files and dossiers write them, in their order.
inline constexpr std::string_view kDutyBases[] = {"maker-price", "with-freight"};

struct DutyBracket {
    std::optional<double> up_to;  // in Duty::currency, the end included; none: all above
    double rate = 0;              // percent
};
struct Duty {
    std::string id, title, market;
    std::string currency;  // of the brackets' ends; empty where there is one bracket
    std::vector<DutyBracket> brackets;
    std::vector<std::uint32_t> sources;
};
struct CustomsBase {
    std::string market, because;
    DutyBase base{};
    std::vector<std::uint32_t> sources;
};

struct CostBook {
    std::vector<Currency> currencies;
    std::vector<UsualCost> usual;
    std::vector<Duty> duties;
    std::vector<CustomsBase> bases;
    std::vector<CostGroup> expected;  // groups that every build-up has; their lack makes the total a floor
};

// --- the dossier
// ------------------------------------------------------------------------------------------------------

enum class CostSum : std::uint8_t { making, maker_price, with_freight };
// What a share is a share of: a group, a sum, or one line.
struct ShareBase {
    enum class Kind : std::uint8_t { group, sum, entry } kind{};
    CostGroup group{};
    CostSum sum{};
    std::size_t entry = 0;  // index into DossierCosts::entries
    std::string name;
};

struct CostEntry {
    CostGroup group{};
    std::string item;  // unique in the dossier; the group's name where none is written
    std::optional<Part> part;
    ConceptId material = 0;         // 0: not stated
    std::vector<CostValue> values;  // at most one of each input
    std::vector<ShareBase> of;      // with `share`
    DutyBase duty_base{};           // with `duty_rate`
    std::string duty_because;       // why that base
    std::vector<std::uint32_t> duty_sources;
    std::uint32_t line = 0;
};

struct ExchangeRate {
    std::string currency;
    CostValue worth;  // of one, in DossierCosts::currency
};

struct DossierCosts {
    bool on_record = false;
    std::string currency;
    std::vector<ExchangeRate> exchange;
    std::optional<CostValue> sales_tax;
    std::string market;              // where it is sold; empty where not known
    std::vector<std::string> reach;  // that market and those that it lies within; empty where the book lacks it
    std::vector<CostEntry> entries;  // group by group, in the order in which they are added
    std::uint16_t stated = 0;        // bits of the groups that stand in the dossier, `none` included
};

// nullptr where it does not stand.
const CostValue* find_value(const CostEntry& entry, CostInput input) noexcept;
const ExchangeRate* find_exchange(const DossierCosts& costs, std::string_view currency) noexcept;

constexpr std::uint16_t group_bit(CostGroup group) noexcept {
    return static_cast<std::uint16_t>(1U << static_cast<unsigned>(group));
}

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_COST_DATA_H
