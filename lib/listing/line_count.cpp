#include "listing/line_count.h"

#include <algorithm>
#include <cstring>

#include "listing/byte_order_mark.h"
#include "listing/json_lines_source.h"

namespace grainside::listing {
namespace {

constexpr std::size_t kMostEscaped = 30;  // "graph" with every letter as an escape

std::size_t find_byte(std::string_view text, char byte, std::size_t from) {
    const void* found = std::memchr(text.data() + from, byte, text.size() - from);
    return found == nullptr ? text.size() : static_cast<std::size_t>(static_cast<const char*>(found) - text.data());
}

// Whether `line` may have the member "@graph": as it is, or with one of its letters as an escape ("\u0040graph"), all
// of which begin with \u00.
bool may_have_graph(std::string_view line) {
    for (std::size_t at = find_byte(line, '@', 0); at < line.size(); at = find_byte(line, '@', at + 1)) {
        const std::string_view rest = line.substr(at + 1);
        if (rest.starts_with("graph") || rest.starts_with('\\')) return true;
        // "@g\u0072aph"
        if (rest.starts_with('g') && rest.substr(0, kMostEscaped).find('\\') != std::string_view::npos) return true;
    }
    // The letter @ itself: \u0040.
    for (std::size_t at = find_byte(line, '\\', 0); at < line.size(); at = find_byte(line, '\\', at + 1)) {
        if (line.substr(at + 1).starts_with("u0040")) return true;
    }
    return false;
}

}  // namespace

LineCount::Counted LineCount::count(std::string_view lines, std::uint64_t most) {
    Counted counted;
    while (counted.bytes < lines.size()) {
        const std::size_t end = find_byte(lines, '\n', counted.bytes);
        const std::uint64_t records = records_of(lines.substr(counted.bytes, end - counted.bytes));
        if (counted.records + records > most) break;
        counted.records += records;
        ++counted.lines;
        counted.bytes = std::min(end + 1, lines.size());
    }
    return counted;
}

std::uint64_t LineCount::records_of(std::string_view line) {
    if (line.size() > max_record_bytes_) return 1;
    if (is_blank_line(line)) return 0;
    return may_have_graph(line) ? nodes_of(line) : 1;
}

std::uint64_t LineCount::nodes_of(std::string_view line) {
    if (line.starts_with(kUtf8Mark)) line.remove_prefix(kUtf8Mark.size());
    if (line.ends_with('\r')) line.remove_suffix(1);
    unused_.clear();
    sink_.begin(unused_);
    records_.restart(0);
    Listing listing;
    if (!records_.read({line, line, 0, {1, 1}}, listing)) {
        while (records_.next_in_graph(listing)) {
        }
    }
    return records_.count();
}

}  // namespace grainside::listing
