#include "listing/table_separator.h"

#include <cstddef>

namespace grainside::listing {
namespace {

constexpr std::size_t kMostBytes = std::size_t{1} << 20;

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

}  // namespace grainside::listing
