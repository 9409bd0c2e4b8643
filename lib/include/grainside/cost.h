// What a sample costs to make and to land, and how the price paid stands to that.
//
//     const auto dossier = grainside::Dossier::parse(
//         "tote.yaml",
//         "sample: {what: Tote, seller: Lowmere Everyday, price: 120.00 EUR}\n"
//         "costs:\n"
//         "  sales_tax: 20 %\n"
//         "  materials:\n"
//         "    - {item: body leather, part: body, area: 5 sq ft, cutting_yield: 80 %, price: 3.00 EUR/sq ft}\n"
//         "  labour: {item: sewing, time: 75 min, rate: 12 EUR/h}\n",
//         ".", evidence);
//     if (!dossier) return 2;
//     const grainside::CostEstimate cost = grainside::estimate_cost(evidence, dossier.value());
//     for (const grainside::CostLine& line : cost.lines) {
//         std::cout << line.item << ": " << line.amount.value << ' ' << cost.currency << '\n';
//     }
//     // prints: body leather: 18.75 EUR
//     // prints: sewing: 15 EUR
//     if (cost.multiple) {
//         const double times = std::round(10 * cost.multiple->multiple.value) / 10;
//         std::cout << (cost.multiple->floor_only ? "at most " : "") << times << " times\n";
//     }
//     // prints: at most 3 times
//     for (const grainside::CostGap& gap : cost.gaps) std::cout << gap.what << " is missing\n";
//     // prints: hardware is missing
//     // prints: overhead is missing
//     // prints: packing is missing
//     const grainside::CostChange change{.item = "body leather", .key = "price", .value = "6.00 EUR/sq ft"};
//     const auto dearer = grainside::estimate_cost(evidence, dossier.value(), {change});
//     if (dearer) std::cout << dearer.value().total.value << '\n';
//     // prints: 52.5
//     const auto wrong = grainside::estimate_cost(evidence, dossier.value(), {{"lining", "price", "3.00 EUR/m2"}});
//     if (!wrong) std::cout << wrong.issues().front().code << '\n';
//     // prints: unknown-item
//
// The dossier's `costs` are added up as they stand: each value exact or a range, with its spread by the law of
// propagation (JCGM 100) and by drawing (JCGM 101). What is missing stays missing: it is named, with the usual range of
// the book beside it, and the total is then a floor. Money stands in `currency`. A price raises a question; it never
// contradicts a claim. A pure function: same dossier, book and options, same result; thread-safe.
#ifndef GRAINSIDE_COST_H
#define GRAINSIDE_COST_H

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/dossier.h"
#include "grainside/evidence_book.h"
#include "grainside/result.h"

namespace grainside {
inline namespace v0 {

// An amount with its standard uncertainty and the interval that holds 95 % (as much probability below as above).
struct CostAmount {
    double value = 0;
    double u = 0;
    double low = 0;
    double high = 0;
};

// The groups of a build-up, in the order in which they are added.
enum class CostGroup : std::uint8_t {
    materials,
    hardware,
    labour,
    overhead,
    packing,
    margin,
    freight,
    insurance,
    duty,
    fees,
    other
};
std::string_view name_of(CostGroup group) noexcept;

// A range that is usual in the trade, from rules/costs.
struct UsualRange {
    std::string id;
    std::string title;
    std::string range;                   // "65-75 %", as the book writes it
    std::vector<std::uint32_t> sources;  // indices into RuleBook::sources()
};

struct CostLine {
    CostGroup group{};
    std::string item;  // as the dossier names it; the group's name where it has none
    std::string part;  // "body"; empty where not stated
    CostAmount amount;
    std::string basis;              // "6.2-6.8 sq ft at 4.50-6.00 EUR/sq ft, cutting yield 65-75 %"
    std::vector<UsualRange> usual;  // taken from the book because the dossier asked for it by name
    std::uint32_t line = 0;         // in the dossier
};

// Which input makes the total uncertain.
struct CostDriver {
    std::string item;
    std::string input;  // "price", "cutting yield", "area", ...
    double share = 0;   // of the total's variance, 0 to 1
};

// What the dossier does not say, and what would be usual.
struct CostGap {
    std::string what;  // "labour", "body leather: cutting yield"
    std::vector<UsualRange> usual;
};

// A value on record that lies outside of what is usual for it.
struct UnusualCost {
    std::string item;
    std::string input;
    std::string value;  // as written
    UsualRange usual;
};

struct PriceMultiple {
    std::string paid;         // "189.00 EUR", as written
    double net = 0;           // in `currency`, without sales tax
    std::string sales_tax;    // "22 %" as written; empty: not on record, and the price counts as it stands
    CostAmount multiple;      // net price over total
    bool floor_only = false;  // costs are missing, so that the true multiple is smaller
};

struct CostEstimate {
    bool on_record = false;  // the dossier has costs
    std::string currency;    // ISO 4217
    std::vector<CostLine> lines;
    // Sums up to and with a group. Where nothing follows a sum it is the same as the next.
    CostAmount materials;    // materials and hardware
    CostAmount making;       // with labour, overhead, packing
    CostAmount maker_price;  // with the maker's margin for development and profit: the price free on board
    CostAmount total;        // with freight, insurance, duty, fees and other: landed
    std::string duty_base;   // "maker's price" or "maker's price, freight and insurance", and why; each that differs
    std::vector<std::uint32_t> duty_sources;  // why that base; indices into RuleBook::sources()
    // The law of propagation beside drawing, for the total (JCGM 101:2008, 8.1).
    CostAmount by_propagation;
    double tolerance = 0;  // half a unit of the first significant digit of u
    bool methods_agree = true;
    std::size_t trials = 0;
    std::vector<CostDriver> drivers;  // largest share first; those of at least one percent
    std::vector<CostGap> gaps;
    std::vector<UnusualCost> unusual;
    std::optional<PriceMultiple> multiple;  // where a price is on record in a currency that can be compared
    std::vector<UsualRange> usual_multiples;
    std::vector<std::string> remarks;  // one sentence each: what was converted, left out, not comparable
};

// One value of the dossier put in place of another: "body leather", "price", "9.00 EUR/sq ft".
struct CostChange {
    std::string item;
    std::string key;
    std::string value;
};

CostEstimate estimate_cost(const EvidenceBook& book, const Dossier& dossier);
// With a change; its faults ("unknown-item", "unknown-key" and those of a quantity) as issues.
Result<CostEstimate> estimate_cost(const EvidenceBook& book, const Dossier& dossier,
                                   const std::vector<CostChange>& changes);

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_COST_H
