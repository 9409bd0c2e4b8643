#include "report/price_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "report/cell_width.h"
#include "report/plain_lines.h"

namespace grainside::report {

std::string money(double value, std::string_view currency, const evidence::CostBook& book) {
    constexpr int kUsualDigits = 2;
    const auto known = std::find_if(book.currencies.begin(), book.currencies.end(),
                                    [&](const evidence::Currency& one) { return one.id == currency; });
    return fmt::format("{:.{}f}", value, known == book.currencies.end() ? kUsualDigits : known->digits);
}

std::string spread(const CostAmount& amount, std::string_view currency, const evidence::CostBook& book) {
    std::string text = fmt::format("{} {}", money(amount.value, currency, book), currency);
    if (amount.u > 0) {
        text += fmt::format(" ({} to {})", money(amount.low, currency, book), money(amount.high, currency, book));
    }
    return text;
}

std::string multiple_text(const PriceMultiple& multiple) {
    const CostAmount& times = multiple.multiple;
    std::string text = fmt::format("{}{:.2f}", multiple.floor_only ? "at most " : "", times.value);
    if (times.u > 0) text += fmt::format(" ({:.2f} to {:.2f})", times.low, times.high);
    return text;
}

void append_row(std::string& out, std::size_t indent, std::string_view text, std::span<const std::string> cells,
                std::span<const std::size_t> columns, std::size_t width) {
    constexpr std::size_t kLeastText = 8;
    const std::size_t taken = std::accumulate(columns.begin(), columns.end(), indent);
    const std::size_t room = width > taken + kLeastText ? width - taken : kLeastText;
    const std::string shown = one_line(text, room);
    out.append(indent, ' ');
    out += shown;
    std::size_t gap = room - std::min(room, cells_of(shown));
    for (std::size_t i = 0; i < columns.size(); ++i) {
        const std::string_view cell = i < cells.size() ? std::string_view(cells[i]) : std::string_view();
        gap += columns[i] > cell.size() ? columns[i] - cell.size() : 1;
        if (cell.empty()) continue;
        out.append(gap, ' ');
        out += cell;
        gap = 0;
    }
    out += '\n';
}

std::vector<SellerSamples> by_seller(std::span<const PricedSample> samples) {
    std::vector<SellerSamples> sellers;
    for (const PricedSample& sample : samples) {
        auto known = std::find_if(sellers.begin(), sellers.end(),
                                  [&](const SellerSamples& seller) { return seller.seller == sample.seller; });
        if (known == sellers.end()) known = sellers.insert(sellers.end(), {sample.seller, {}});
        known->samples.push_back(&sample);
    }
    return sellers;
}

}  // namespace grainside::report
