#include "csv_file.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <limits>
#include <sstream>

namespace grainside::published {
namespace {

CsvRow cells_of(const std::string& line) {
    CsvRow cells;
    std::istringstream stream(line);
    for (std::string cell; std::getline(stream, cell, ',');) cells.push_back(cell);
    return cells;
}

}  // namespace

std::vector<CsvRow> read_csv(const std::string& path, const std::string& header) {
    std::ifstream file(path);
    std::string line;
    if (!std::getline(file, line) || line != header) {
        ADD_FAILURE() << path << ": cannot be opened, or its header is '" << line << "' and not '" << header << "'";
        return {};
    }
    const std::size_t width = cells_of(header).size();
    std::vector<CsvRow> rows;
    while (std::getline(file, line)) {
        rows.push_back(cells_of(line));
        if (rows.back().size() != width) {
            ADD_FAILURE() << path << ": row " << rows.size() << " has " << rows.back().size() << " cells";
            return {};
        }
    }
    return rows;
}

double number_in(const std::string& text) {
    char* end = nullptr;
    const double value = std::strtod(text.c_str(), &end);
    if (text.empty() || *end != '\0') {
        ADD_FAILURE() << "'" << text << "' is no number";
        return std::numeric_limits<double>::quiet_NaN();
    }
    return value;
}

}  // namespace grainside::published
