#include "report/grade_colour.h"

#include <array>
#include <cstddef>

namespace grainside::report {
namespace {

// By grade, worst first: bold red, red, yellow, cyan, magenta, green.
constexpr std::array<std::string_view, 6> kGrade = {"\x1B[1;31m", "\x1B[31m", "\x1B[33m",
                                                    "\x1B[36m",   "\x1B[35m", "\x1B[32m"};
constexpr std::array<std::string_view, 6> kMarked = {"\x1B[1;4;31m", "\x1B[4;31m", "\x1B[4;33m",
                                                     "\x1B[4;36m",   "\x1B[4;35m", "\x1B[4;32m"};

}  // namespace

std::string_view Colours::grade(Grade grade) const noexcept {
    return on_ ? kGrade[static_cast<std::size_t>(grade)] : std::string_view();
}

std::string_view Colours::marked(Grade grade) const noexcept {
    return on_ ? kMarked[static_cast<std::size_t>(grade)] : std::string_view();
}

}  // namespace grainside::report
