// Writing what a sample costs: a view for people, JSON Lines for programs.
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
//     std::string view;
//     grainside::write_price_view({book, evidence, dossier.value()}, cost, nullptr, {}, view);
//     grainside::write_price_end(book, view);
//     std::string records;
//     grainside::write_price_records({book, evidence, dossier.value()}, cost, nullptr, records);
//     std::cout << records.substr(0, records.find(",\"part\"")) << "}\n";
//     // prints: {"dossier":"tote","group":"materials","item":"body leather"}
//
// Output is appended to a string that the caller writes and clears; nothing here prints. Text from a dossier comes out
// inert, as in report.h. Money is never added or compared across currencies. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_COST_REPORT_H
#define GRAINSIDE_COST_REPORT_H

#include <span>
#include <string>
#include <vector>

#include "grainside/cost.h"
#include "grainside/dossier_report.h"

namespace grainside {
inline namespace v0 {

// The changes of a what-if, and what came out without them.
struct WhatIf {
    std::vector<CostChange> changes;
    CostEstimate before;
};

// One sample of a comparison.
struct PricedSample {
    std::string id;
    std::string seller;  // as the dossier names it; may be empty
    CostEstimate cost;
};

// The lines as a table with their sums, the price paid and its multiple, what drives the spread, what is missing and
// unusual, remarks, and what the ranges of the book stand on. With `what_if`, before and after stand side by side below
// the table, which is the one after.
void write_price_view(const DossierContext& context, const CostEstimate& cost, const WhatIf* what_if,
                      const ViewOptions& options, std::string& out);
// Seller by seller, each sample with its total, net price and multiple; nothing for fewer than two samples.
void write_price_comparison(const EvidenceBook& evidence, std::span<const PricedSample> samples,
                            const ViewOptions& options, std::string& out);
// What the view ends with, once: a price is no verdict; then write_view_end.
void write_price_end(const RuleBook& book, std::string& out);

// One line a cost: {"dossier","group","item","part"?,"currency","amount","basis","usual","line"?}; then one closing
// line
// {"dossier","on_record","currency"?,"lines","materials"?,"making"?,"maker_price"?,"total"?,"by_propagation"?,
// "tolerance"?,"methods_agree"?,"trials"?,"duty_base"?,"drivers"?,"gaps"?,"unusual"?,"price"?,"usual_multiples"?,
// "remarks"?,"what_if"?,"rule_book"}. An amount is {"value","u","low","high"}.
void write_price_records(const DossierContext& context, const CostEstimate& cost, const WhatIf* what_if,
                         std::string& out);
// For two samples and more, one line a seller: {"seller","samples":[{"dossier","currency"?,"total"?,"net"?,"multiple"?,
// "floor_only"?}]}.
void write_comparison_records(std::span<const PricedSample> samples, std::string& out);

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_COST_REPORT_H
