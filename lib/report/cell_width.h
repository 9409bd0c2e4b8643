// How many terminal cells text takes: combining marks none, East Asian wide characters two, others one.
// Source: Unicode Standard Annex #11 as utf8proc has it, taken over while building. Thread-safe.
#ifndef GRAINSIDE_REPORT_CELL_WIDTH_H
#define GRAINSIDE_REPORT_CELL_WIDTH_H

#include <cstddef>
#include <string_view>

namespace grainside::report {

// 0, 1 or 2.
std::size_t cells_of(char32_t point) noexcept;

// A byte that is no part of a well-formed character counts as one cell.
std::size_t cells_of(std::string_view text) noexcept;

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_CELL_WIDTH_H
