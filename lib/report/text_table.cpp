#include "report/text_table.h"

#include <algorithm>
#include <utility>

#include "report/cell_width.h"
#include "report/plain_lines.h"

namespace grainside::report {
namespace {

constexpr std::size_t kTableIndent = 2;
constexpr std::size_t kColumnGap = 2;
constexpr std::size_t kFewestNameCells = 12;
constexpr std::size_t kMostNameCells = 44;

}  // namespace

TextTable::TextTable(std::vector<std::string> titles) {
    rows_.push_back(std::move(titles));
}

void TextTable::write(Colours colours, std::size_t width, std::string& out) const {
    std::vector<std::size_t> cells(rows_.front().size());
    for (const std::vector<std::string>& row : rows_) {
        for (std::size_t at = 0; at < row.size(); ++at) cells[at] = std::max(cells[at], cells_of(row[at]));
    }
    // How many columns fit beside a name.
    std::size_t used = kTableIndent;
    std::size_t columns = 1;
    while (columns < cells.size() && used + kColumnGap + cells[columns] + kFewestNameCells <= width) {
        used += kColumnGap + cells[columns++];
    }
    const std::size_t room = width > used + kFewestNameCells ? width - used : kFewestNameCells;
    const std::size_t name_cells = std::min({cells.front(), room, kMostNameCells});
    for (std::size_t at = 0; at < rows_.size(); ++at) {
        const std::vector<std::string>& row = rows_[at];
        std::string line(kTableIndent, ' ');
        const std::string name = one_line(row.front(), std::max(name_cells, kFewestNameCells));
        line += name;
        std::size_t gap = name_cells - std::min(name_cells, cells_of(name));
        for (std::size_t column = 1; column < columns; ++column) {
            line.append(gap + kColumnGap + cells[column] - cells_of(row[column]), ' ');
            line += row[column];
            gap = 0;
        }
        line.erase(line.find_last_not_of(' ') + 1);
        if (at == 0) out += colours.quiet();
        out += line;
        if (at == 0) out += colours.plain();
        out += '\n';
    }
}

}  // namespace grainside::report
