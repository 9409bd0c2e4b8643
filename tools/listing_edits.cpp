#include "listing_edits.h"

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>

#include "report/json_text.h"

namespace grainside::tools {
namespace {

// What the bytes of a field have to be for `words` to be read from them.
std::string as_in_source(const Field& field, std::string_view words) {
    std::string quoted;
    if (field.origin.writing == Writing::table_quoted) {
        for (const char c : words) quoted.append(c == '"' ? 2U : 1U, c);
        return quoted;
    }
    if (field.origin.writing != Writing::json_string) return std::string(words);
    report::append_json_string(quoted, words);
    return quoted.substr(1, quoted.size() - 2);
}

}  // namespace

std::vector<SourceEdit> listing_edits(const Listing& listing, const Rewording& rewording, SourcePlaces& places) {
    std::vector<SourceEdit> edits;
    for (const Edit& edit : rewording.edits) {
        const auto span = places.span(listing, edit.field, edit.start, edit.end);
        if (!span) continue;
        const std::string_view old =
            listing.source.bytes.substr(static_cast<std::size_t>(span->start - listing.source.start),
                                        static_cast<std::size_t>(span->end - span->start));
        edits.push_back(
            {span->start, span->end, std::string(old), as_in_source(listing.fields[edit.field], edit.wording)});
    }
    std::sort(edits.begin(), edits.end(), [](const SourceEdit& a, const SourceEdit& b) { return a.start < b.start; });
    return edits;
}

}  // namespace grainside::tools
