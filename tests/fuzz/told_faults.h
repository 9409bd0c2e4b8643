// What a fuzz target asserts of faults and warnings: each has a code, a sentence and a line that is there, and printed
// they hold no character that a terminal obeys.
#ifndef GRAINSIDE_TESTS_FUZZ_TOLD_FAULTS_H
#define GRAINSIDE_TESTS_FUZZ_TOLD_FAULTS_H

#include <algorithm>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>

#include "grainside/result.h"
#include "inert_forms.h"
#include "require.h"

namespace grainside::fuzz {

// As they are printed. `text` is the file that they speak of; empty: faults of no file.
inline std::string told_faults(std::span<const Issue> issues, std::string_view text) {
    const std::size_t line_count = static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')) + 1;
    std::string told;
    for (const Issue& issue : issues) {
        require(issue.line <= line_count);
        check_issue(issue);
        told += to_text(issue);
    }
    return told;
}

}  // namespace grainside::fuzz

#endif  // GRAINSIDE_TESTS_FUZZ_TOLD_FAULTS_H
