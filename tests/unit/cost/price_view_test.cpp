// The view of a sample's costs: hostile text comes out inert, lines keep to the width, sums stand once.
#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "grainside/cost_report.h"
#include "support/built_in_evidence.h"

namespace grainside {
namespace {

constexpr std::string_view kHostile =
    "sample: {what: \"a\\e]0;b\\a\", seller: \"\\e[31mred\\u202E\", price: 60 EUR}\n"
    "costs:\n  materials: [{item: \"x\\e[2J\\u202E\\nINJECTED \\\"<b>\", amount: 1-3 EUR}]\n"
    "  hardware: {item: y, share: 5 %, of: \"x\\e[2J\\u202E\\nINJECTED \\\"<b>\"}\n";

struct Written {
    std::string view, records;
};
Written written(std::string_view yaml, std::vector<CostChange> changes = {}) {
    const EvidenceBook& evidence = support::built_in_evidence();
    const Dossier dossier = support::dossier_of(std::string(yaml));
    WhatIf what_if{std::move(changes), estimate_cost(evidence, dossier)};
    CostEstimate cost = what_if.before;
    if (!what_if.changes.empty()) {
        auto changed = estimate_cost(evidence, dossier, what_if.changes);
        EXPECT_TRUE(changed);
        if (changed) cost = std::move(changed).value();
    }
    const WhatIf* const with = what_if.changes.empty() ? nullptr : &what_if;
    const DossierContext context{support::built_in_book(), evidence, dossier};
    Written result;
    write_price_view(context, cost, with, {}, result.view);
    write_price_records(context, cost, with, result.records);
    const PricedSample samples[] = {{"one", "\x1B[31mseller\xE2\x80\xAE", cost}, {"two", "", cost}};
    write_price_comparison(evidence, samples, {}, result.view);
    write_comparison_records(samples, result.records);
    return result;
}

TEST(PriceView, KeepsHostileTextInert) {
    const Written text = written(kHostile, {{"x\x1B[2J\xE2\x80\xAE\nINJECTED \"<b>", "amount", "2 EUR"}});
    for (const std::string* const one : {&text.view, &text.records}) {
        EXPECT_NE(one->find("INJECTED"), std::string::npos);
        EXPECT_EQ(one->find('\x1B'), std::string::npos);
        EXPECT_EQ(one->find('\a'), std::string::npos);
        EXPECT_EQ(one->find("\xE2\x80\xAE"), std::string::npos);
        EXPECT_EQ(one->find("\nINJECTED"), std::string::npos);
    }
    EXPECT_NE(text.records.find("INJECTED \\\"<b>\""), std::string::npos) << text.records;
}

TEST(PriceView, KeepsToTheWidth) {
    const Written text = written(
        "sample: {what: Tote, category: bag, price: 60 EUR}\ncosts:\n  materials: [{item: a very long name of an item "
        "that nobody would write but somebody will, area: 5-6 sq ft, price: 4-5 EUR/sq ft}]\n  labour: {rate: 15 "
        "EUR/h}\n");
    std::size_t start = 0;
    while (start < text.view.size()) {
        const std::size_t end = text.view.find('\n', start);
        EXPECT_LE(end - start, 80U) << text.view.substr(start, end - start);
        start = end + 1;
    }
}

TEST(PriceView, ShowsBeforeAndAfter) {
    const Written text = written("sample: {price: 60 EUR}\ncosts:\n  materials: 10 EUR\n  packing: 2 EUR\n",
                                 {{"packing", "amount", "5 EUR"}});
    EXPECT_NE(text.view.find("\n  packing                                       2.00                        5.00\n"),
              std::string::npos)
        << text.view;
    EXPECT_NE(text.view.find("\n  total                                        12.00                       15.00\n"),
              std::string::npos);
    EXPECT_NE(text.records.find("\"total_before\":{\"value\":12,"), std::string::npos) << text.records;
    EXPECT_NE(text.records.find("\"total\":{\"value\":15,"), std::string::npos);
}

TEST(PriceView, SaysWhereNothingIsOnRecord) {
    const Written text = written("sample: {what: Tote, price: 60 EUR}\n");
    EXPECT_NE(text.view.find("No costs on record.\n"), std::string::npos);
    EXPECT_NE(text.records.find("\"on_record\":false"), std::string::npos);
}

TEST(PriceView, EndsWithItsCautions) {
    std::string out;
    write_price_end(support::built_in_book(), out);
    EXPECT_NE(out.find("contradicts nothing"), std::string::npos);
    EXPECT_NE(out.find("not legal advice"), std::string::npos);
}

}  // namespace
}  // namespace grainside
