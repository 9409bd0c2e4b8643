#include "report/cell_width.h"

#include <algorithm>
#include <cstdint>
#include <iterator>

#include "document/utf8.h"

namespace grainside::report {
namespace {

struct WidthRange {
    std::uint32_t first, last;
    std::uint8_t cells;
};

constexpr WidthRange kWidths[] = {
#include "width_table.inc"
};

}  // namespace

std::size_t cells_of(char32_t point) noexcept {
    if (point < 0x80) return 1;
    const auto* found = std::lower_bound(std::begin(kWidths), std::end(kWidths), point,
                                         [](const WidthRange& range, char32_t p) { return range.last < p; });
    return found == std::end(kWidths) || point < found->first ? 1 : found->cells;
}

std::size_t cells_of(std::string_view text) noexcept {
    std::size_t cells = 0;
    for (std::size_t at = 0; at < text.size();) {
        const document::DecodedChar decoded = document::decode_utf8(text, at);
        cells += decoded.valid ? cells_of(decoded.point) : 1;
        at += decoded.length;
    }
    return cells;
}

}  // namespace grainside::report
