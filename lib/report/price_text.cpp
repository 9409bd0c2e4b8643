// The lines of a report that speak of cost and price.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <string>
#include <vector>

#include "report/content_text.h"
#include "report/cost_facts.h"

namespace grainside::report {
namespace {

// "Such a multiple is usual: Sold by the maker to the buyer (2.5 to 5)."
std::string place_among(const CostEstimate& cost) {
    // The true multiple lies below: where among the usual ones cannot be told.
    if (cost.multiple->floor_only) return {};
    const double multiple = cost.multiple->multiple.value;
    const std::vector<MultipleBand> bands = usual_bands(cost);
    std::vector<std::string> within;
    double low = 0;
    double high = 0;
    for (const MultipleBand& band : bands) {
        low = low == 0 ? band.low : std::min(low, band.low);
        high = std::max(high, band.high);
        if (multiple < band.low || multiple > band.high) continue;
        within.push_back(fmt::format("{} ({:g} to {:g})", band.title, band.low, band.high));
    }
    if (bands.empty()) return {};
    if (!within.empty()) return fmt::format("Such a multiple is usual: {}.", fmt::join(within, "; "));
    if (multiple > high) return fmt::format("Above all multiples that the book calls usual (up to {:g}).", high);
    if (multiple < low) return fmt::format("Below all multiples that the book calls usual (from {:g}).", low);
    return "Between the multiples that the book calls usual.";
}

std::string usual_text(const UsualRange& usual) {
    return fmt::format("{} ({})", usual.range, usual.title);
}

}  // namespace

ShortAnswer price_answer(const ReportContent& content) {
    const CostEstimate& cost = content.cost.estimate;
    if (!cost.on_record) return {"Not worked out", "The dossier holds no costs."};
    if (!cost.multiple) {
        return {"Not compared", "The total on record is " + spread_text(content.cost.style, cost.total) + "."};
    }
    ShortAnswer answer;
    const PriceMultiple& price = *cost.multiple;
    const std::string times = multiple_text(price);
    answer.reply = price.floor_only ? capitalised(times) + " times the cost on record"
                                    : fmt::format("{:.2f} times the cost", price.multiple.value);
    answer.more = fmt::format("{} {} {}, against {}. {}", money_text(content.cost.style, price.net), cost.currency,
                              price.sales_tax.empty() ? "as paid (sales tax not on record)" : "without sales tax",
                              spread_text(content.cost.style, cost.total), place_among(cost));
    return answer;
}

std::vector<std::string> price_lines(const CostEstimate& cost, const MoneyStyle& style) {
    std::vector<std::string> lines;
    if (cost.multiple) {
        const PriceMultiple& price = *cost.multiple;
        const std::string net = price.sales_tax.empty()
                                    ? fmt::format("whether sales tax is in it is not on record, and {} {} count",
                                                  money_text(style, price.net), cost.currency)
                                    : fmt::format("without sales tax of {}: {} {}", price.sales_tax,
                                                  money_text(style, price.net), cost.currency);
        lines.push_back(fmt::format("Paid: {}; {}. That is {} times the total of {}.", price.paid, net,
                                    multiple_text(price), spread_text(style, cost.total)));
        if (const std::string place = place_among(cost); !place.empty()) lines.push_back(place);
    } else {
        lines.push_back("The total on record is " + spread_text(style, cost.total) + ".");
    }
    if (!cost.duty_base.empty()) lines.push_back("Duty is taken of: " + cost.duty_base + ".");
    return lines;
}

std::vector<std::string> driver_lines(const CostEstimate& cost) {
    std::vector<std::string> lines;
    for (const CostDriver& driver : cost.drivers) {
        lines.push_back(fmt::format("{:.0f} % {}: {}", 100 * driver.share, driver.item, driver.input));
    }
    return lines;
}

std::vector<std::string> gap_lines(const CostEstimate& cost) {
    std::vector<std::string> lines;
    for (const CostGap& gap : cost.gaps) {
        std::string line = gap.what;
        for (std::size_t i = 0; i < gap.usual.size(); ++i) {
            line += (i == 0 ? "; usual: " : "; ") + usual_text(gap.usual[i]);
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

std::vector<std::string> unusual_lines(const CostEstimate& cost) {
    std::vector<std::string> lines;
    for (const UnusualCost& one : cost.unusual) {
        lines.push_back(
            fmt::format("{}: {} {}, where {} is usual", one.item, one.input, one.value, usual_text(one.usual)));
    }
    return lines;
}

}  // namespace grainside::report
