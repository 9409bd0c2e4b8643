// The terminal colours of the human view, or nothing where colours are off. Thread-safe.
#ifndef GRAINSIDE_REPORT_GRADE_COLOUR_H
#define GRAINSIDE_REPORT_GRADE_COLOUR_H

#include <string_view>

#include "grainside/finding.h"

namespace grainside::report {

// ECMA-48 SGR sequences. Each begins a colour and ends with `plain`.
class Colours {
public:
    explicit Colours(bool on) : on_(on) {}

    bool on() const noexcept { return on_; }
    std::string_view heading() const noexcept { return on_ ? "\x1B[1m" : ""; }
    std::string_view quiet() const noexcept { return on_ ? "\x1B[2m" : ""; }
    std::string_view plain() const noexcept { return on_ ? "\x1B[0m" : ""; }
    std::string_view grade(Grade grade) const noexcept;
    std::string_view marked(Grade grade) const noexcept;  // the words themselves: underlined too

private:
    bool on_;
};

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_GRADE_COLOUR_H
