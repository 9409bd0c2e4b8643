// A table for people, in lines of a terminal. Cells come out inert (plain_lines.h). Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_TEXT_TABLE_H
#define GRAINSIDE_REPORT_TEXT_TABLE_H

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "report/grade_colour.h"

namespace grainside::report {

// The first column takes names, shortened to the room that is there; the others hold numbers and stand to the right.
// Where the lines are too narrow for them beside `name_cells` of a name, columns are left out, those at the end first.
class TextTable {
public:
    // REQUIRES: name_cells >= 4.
    explicit TextTable(std::vector<std::string> titles, std::size_t name_cells = 12);
    // REQUIRES: as many cells as titles.
    void add(std::vector<std::string> row) { rows_.push_back(std::move(row)); }
    void write(Colours colours, std::size_t width, std::string& out) const;

private:
    std::size_t fewest_name_cells_;
    std::vector<std::vector<std::string>> rows_;  // the titles first
};

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_TEXT_TABLE_H
