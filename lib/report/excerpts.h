// Which stretches of a field a view shows: all of a short one, else the sentences around the marked words. Thread-safe.
#ifndef GRAINSIDE_REPORT_EXCERPTS_H
#define GRAINSIDE_REPORT_EXCERPTS_H

#include <cstddef>
#include <span>
#include <string_view>
#include <vector>

#include "grainside/finding.h"

namespace grainside::report {

// Half-open byte span of a field's text.
struct MarkedSpan {
    std::size_t start = 0;
    std::size_t end = 0;
    Grade grade = Grade::vague;
};

struct Excerpt {
    std::size_t start = 0;
    std::size_t end = 0;
    // The marks that may touch it, as half-open range of indices.
    std::size_t first_mark = 0;
    std::size_t last_mark = 0;
};

// A field up to this many bytes is shown whole.
inline constexpr std::size_t kWholeFieldBytes = 400;
// Of a longer field at most so many bytes before and behind marked words, and of very long marked words themselves the
// beginning and the end.
inline constexpr std::size_t kContextBytes = 160;
inline constexpr std::size_t kMarkHeadBytes = 200;
inline constexpr std::size_t kMarkTailBytes = 80;

// Sorted, apart from one another, on character borders; every mark touches one of them. The time does not grow with the
// length of the field.
// REQUIRES: `marks` is sorted by start and lies in `text`.
std::vector<Excerpt> cut_excerpts(std::string_view text, std::span<const MarkedSpan> marks);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_EXCERPTS_H
