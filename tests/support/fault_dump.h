// Issues as one line each, so that a table row can hold them.
#ifndef GRAINSIDE_TESTS_SUPPORT_FAULT_DUMP_H
#define GRAINSIDE_TESTS_SUPPORT_FAULT_DUMP_H

#include <span>
#include <string>

#include "grainside/result.h"

namespace grainside::support {

// "line:column code", one an issue, joined by "; ".
inline std::string dump_places(std::span<const Issue> issues) {
    std::string text;
    for (const Issue& issue : issues) {
        if (!text.empty()) text += "; ";
        text += std::to_string(issue.line) + ":" + std::to_string(issue.column) + " " + issue.code;
    }
    return text;
}

// "file:line:column code", one a line.
inline std::string dump_files(std::span<const Issue> issues) {
    std::string text;
    for (const Issue& issue : issues) {
        text += issue.file + ":" + std::to_string(issue.line) + ":" + std::to_string(issue.column) + " " + issue.code +
                "\n";
    }
    return text;
}

}  // namespace grainside::support

#endif  // GRAINSIDE_TESTS_SUPPORT_FAULT_DUMP_H
