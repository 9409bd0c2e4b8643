#include "edit/page_edits.h"

#include <optional>
#include <string>

#include "listing/html_element.h"
#include "report/html/html_writer.h"

namespace grainside::tools::edit {
namespace {

// How much white space stands between words is not seen in a page.
std::string with_single_spaces(std::string_view text) {
    std::string out;
    bool space = false;
    for (const char c : text) {
        if (listing::is_html_space(c)) {
            space = !out.empty();
            continue;
        }
        if (space) out += ' ';
        space = false;
        out += c;
    }
    return out;
}

// Quotes and apostrophes stay as they are where they can.
std::vector<std::string> ways_to_write(const std::string& wording) {
    std::vector<std::string> ways;
    if (wording.find_first_of("&<>") == std::string::npos) ways.push_back(wording);
    std::string escaped;
    report::HtmlWriter(escaped).text(wording);
    if (ways.empty() || escaped != wording) ways.push_back(std::move(escaped));
    return ways;
}

}  // namespace

std::vector<SourceEdit> PageEdits::find(const TextSpan& where, const Listing& listing, const Edit& edit) {
    const auto place = fields_.find_at(where, listing, edit.field, edit.start, edit.end);
    if (!place || !place->span.meets(where)) return {};
    const TextSpan span = place->span;
    const std::string_view old_bytes = page_.substr(span.begin, span.end - span.begin);
    if (old_bytes.find_first_of("<>") != std::string_view::npos) return {};
    std::string text(listing.fields[edit.field].text);
    text.replace(edit.start, edit.end - edit.start, edit.wording);
    const std::string wanted = with_single_spaces(text);
    for (std::string& bytes : ways_to_write(edit.wording)) {
        const auto now = reading_.text_with({listing.record, edit.field}, span, bytes);
        if (now && with_single_spaces(*now) == wanted) {
            return {{span.begin, span.end, std::string(old_bytes), std::move(bytes)}};
        }
    }
    return {};
}

}  // namespace grainside::tools::edit
