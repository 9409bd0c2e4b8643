#include "desk/record_lines.h"

namespace grainside::desk {

std::vector<std::string_view> records_in(std::string_view lines) {
    std::vector<std::string_view> records;
    while (!lines.empty()) {
        const std::size_t end = lines.find('\n');
        records.push_back(lines.substr(0, end));
        if (end == std::string_view::npos) break;
        lines.remove_prefix(end + 1);
    }
    return records;
}

}  // namespace grainside::desk
