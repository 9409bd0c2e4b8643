#include "completion.h"

#include <algorithm>

namespace grainside::tools {

std::string shell_quoted(const std::string& text) {
    std::string quoted = "'";
    for (const char c : text) {
        if (c == '\'') {
            quoted += "'\\''";
        } else {
            quoted += c;
        }
    }
    return quoted + "'";
}

bool is_right_below(const CompletedCommand& command, const CompletedCommand& below) {
    return below.path.size() == command.path.size() + 1 &&
           std::equal(command.path.begin(), command.path.end(), below.path.begin());
}

std::string path_text(const CompletedCommand& command) {
    std::string text;
    for (const std::string& word : command.path) text += (text.empty() ? "" : " ") + word;
    return text;
}

}  // namespace grainside::tools
