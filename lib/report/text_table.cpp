#include "report/text_table.h"

#include <algorithm>
#include <utility>

#include "report/cell_width.h"
#include "report/plain_lines.h"

namespace grainside::report {
namespace {

constexpr std::size_t kTableIndent = 2;
constexpr std::size_t kColumnGap = 2;
constexpr std::size_t kShortestName = 4;
constexpr std::size_t kMostNameCells = 44;

}  // namespace

TextTable::TextTable(std::vector<std::string> titles, std::size_t name_cells) : fewest_name_cells_(name_cells) {
    rows_.push_back(std::move(titles));
}

void TextTable::write(Colours colours, std::size_t width, std::string& out) const {
    std::vector<std::size_t> cells(rows_.front().size());
    for (const std::vector<std::string>& row : rows_) {
        for (std::size_t at = 0; at < row.size(); ++at) cells[at] = std::max(cells[at], cells_of(row[at]));
    }
    // A name of one cell is shortened to "..." as one of four is.
    const std::size_t longest = std::clamp<std::size_t>(cells.front(), kShortestName, kMostNameCells);
    const std::size_t wanted = std::min(longest, fewest_name_cells_);
    std::size_t used = kTableIndent;
    std::size_t columns = 1;
    while (columns < cells.size() && used + kColumnGap + cells[columns] + wanted <= width) {
        used += kColumnGap + cells[columns++];
    }
    const std::size_t name_cells = std::min(longest, std::max(wanted, width - std::min(width, used)));
    for (std::size_t at = 0; at < rows_.size(); ++at) {
        const std::vector<std::string>& row = rows_[at];
        std::string line(kTableIndent, ' ');
        const std::string name = one_line(row.front(), name_cells);
        line += name;
        line.append(name_cells - cells_of(name), ' ');
        for (std::size_t column = 1; column < columns; ++column) {
            line.append(kColumnGap + cells[column] - cells_of(row[column]), ' ');
            line += row[column];
        }
        line.erase(line.find_last_not_of(' ') + 1);
        if (at == 0) out += colours.quiet();
        out += line;
        if (at == 0) out += colours.plain();
        out += '\n';
    }
}

}  // namespace grainside::report
