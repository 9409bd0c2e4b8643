// A field's text with its flagged words marked in place. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_MARKED_TEXT_H
#define GRAINSIDE_REPORT_MARKED_TEXT_H

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

#include "report/excerpts.h"
#include "report/grade_colour.h"

namespace grainside::report {

// The excerpts of `text` wrapped to `width` cells and indented by `indent`, inert. With colours the marked words are
// coloured by grade and underlined; without, a line of '^' stands below them. "..." stands where text was left out.
// REQUIRES: `marks` is sorted by start and lies in `text`; width >= indent + 8.
void append_marked_text(std::string& out, std::string_view text, std::span<const MarkedSpan> marks,
                        const Colours& colours, std::size_t indent, std::size_t width);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_MARKED_TEXT_H
