#include "report/price_table.h"

#include <algorithm>
#include <numeric>

#include "report/cell_width.h"
#include "report/plain_lines.h"

namespace grainside::report {

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
