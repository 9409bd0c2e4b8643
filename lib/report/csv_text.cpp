#include "report/csv_text.h"

#include <algorithm>
#include <cstddef>

#include "document/inert_text.h"
#include "document/utf8.h"

namespace grainside::report {
namespace {

// '=', '+', '-', '@' and their full-width forms, and the minus sign.
bool begins_formula(std::string_view cell) {
    constexpr char32_t kBeginnings[] = {U'=', U'+', U'-', U'@', 0xFF1D, 0xFF0B, 0xFF0D, 0xFF20, 0x2212};
    const std::size_t first = cell.find_first_not_of(' ');
    if (first == std::string_view::npos) return false;
    const char32_t point = document::decode_utf8(cell, first).point;
    return std::find(std::begin(kBeginnings), std::end(kBeginnings), point) != std::end(kBeginnings);
}

std::string inert_cell(std::string_view text) {
    std::string cell = document::printable_text(text);
    std::replace(cell.begin(), cell.end(), '\n', ' ');
    return begins_formula(cell) ? '\'' + cell : cell;
}

void append_cell(std::string& out, std::string_view text) {
    const std::string cell = inert_cell(text);
    if (cell.find_first_of("\",;") == std::string::npos) {
        out += cell;
        return;
    }
    out += '"';
    for (const char c : cell) {
        if (c == '"') out += '"';
        out += c;
    }
    out += '"';
}

}  // namespace

void append_csv_record(std::string& out, const std::vector<std::string>& cells) {
    for (std::size_t i = 0; i < cells.size(); ++i) {
        if (i > 0) out += ',';
        append_cell(out, cells[i]);
    }
    out += "\r\n";
}

}  // namespace grainside::report
