#include "listing/input_format.h"

#include <algorithm>
#include <cstddef>
#include <string>

#include "listing/byte_order_mark.h"
#include "listing/unpacking.h"

namespace grainside::listing {
namespace {

constexpr std::size_t kMaxSpaceBytes = std::size_t{64} << 10;

}  // namespace

InputFormat format_of_name(std::string_view name) {
    name = name_without_packing(name);
    const std::size_t dot = name.find_last_of("./");
    if (dot == std::string_view::npos || name[dot] == '/') return InputFormat::text;
    std::string ending(name.substr(dot + 1));
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    if (ending == "json") return InputFormat::json;
    if (ending == "jsonl" || ending == "ndjson") return InputFormat::json_lines;
    if (ending == "csv") return InputFormat::csv;
    if (ending == "tsv") return InputFormat::tsv;
    if (ending == "md" || ending == "markdown") return InputFormat::markdown;
    if (ending == "html" || ending == "htm" || ending == "xhtml") return InputFormat::html;
    return InputFormat::text;
}

InputFormat format_of_content(ByteSource& source) {
    for (;;) {
        std::string_view text = source.pending();
        if (text.starts_with(kUtf8Mark)) text.remove_prefix(kUtf8Mark.size());
        const std::size_t first = text.find_first_not_of(" \t\r\n");
        // A mark that has come in only in part is waited for.
        const bool may_be_mark = text.size() < kUtf8Mark.size() && kUtf8Mark.starts_with(text);
        if (first != std::string_view::npos && !may_be_mark) {
            if (text[first] == '{') {
                // A line of JSON Lines is a whole object; one that begins with a line break is spread over lines.
                const std::size_t next = text.find_first_not_of(" \t\r", first + 1);
                if (next != std::string_view::npos) {
                    return text[next] == '\n' ? InputFormat::json : InputFormat::json_lines;
                }
                if (text.size() > kMaxSpaceBytes || !source.more()) return InputFormat::json_lines;
                continue;
            }
            if (text[first] == '<') return InputFormat::html;
            return text[first] == '[' ? InputFormat::json : InputFormat::text;
        }
        if (text.size() > kMaxSpaceBytes || !source.more()) return InputFormat::text;
    }
}

}  // namespace grainside::listing
