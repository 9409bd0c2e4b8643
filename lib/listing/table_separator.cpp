#include "listing/table_separator.h"

#include <algorithm>
#include <cstddef>

namespace grainside::listing {
namespace {

constexpr std::size_t kMostBytes = std::size_t{1} << 20;
constexpr std::string_view kSays = "sep=";
// In quotes, with CR LF behind it.
constexpr std::size_t kLongestLine = kSays.size() + 5;

char in_lower_case(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

}  // namespace

char separator_of(ByteSource& source) {
    bool in_quotes = false;
    bool has_semicolon = false;
    bool has_tab = false;
    bool has_text = false;
    for (std::size_t at = 0; at < kMostBytes; ++at) {
        if (at == source.pending().size() && !source.more()) break;
        const char c = source.pending()[at];
        if (c == '"') in_quotes = !in_quotes;
        if (in_quotes) continue;
        if (c == ',') return ',';
        if (c == '\n' && has_text) break;
        has_semicolon = has_semicolon || c == ';';
        has_tab = has_tab || c == '\t';
        has_text = has_text || (c != '\n' && c != '\r');
    }
    if (has_semicolon) return ';';
    return has_tab ? '\t' : ',';
}

std::optional<char> take_separator_line(ByteSource& source) {
    while (source.pending().size() < kLongestLine && source.more()) {
    }
    const std::string_view text = source.pending();
    const std::size_t break_at = text.substr(0, kLongestLine).find('\n');
    std::string_view line = text.substr(0, break_at);
    if (line.ends_with('\r')) line.remove_suffix(1);
    if (line.size() == kSays.size() + 3 && line.starts_with('"') && line.ends_with('"')) {
        line = line.substr(1, line.size() - 2);
    }
    if (line.size() != kSays.size() + 1) return std::nullopt;
    if (!std::equal(kSays.begin(), kSays.end(), line.begin(),
                    [](char wanted, char c) { return in_lower_case(c) == wanted; })) {
        return std::nullopt;
    }
    const char separator = line.back();
    source.consume(break_at == std::string_view::npos ? text.size() : break_at + 1);
    return separator;
}

}  // namespace grainside::listing
