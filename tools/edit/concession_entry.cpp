#include "edit/concession_entry.h"

#include <algorithm>

#include "report/json_text.h"

namespace grainside::tools::edit {
namespace {

// As a plain scalar where that can be nothing else, else in double quotes, for which a JSON string is one (YAML 1.2.2,
// section 7.3.1).
void append_scalar(std::string& out, std::string_view text) {
    const auto is_letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    const bool plain = !text.empty() && is_letter(text.front()) && text.back() != ' ' && text.size() > 3 &&
                       std::all_of(text.begin(), text.end(), [&](char c) {
                           return is_letter(c) || c == ' ' || c == '-' || (c >= '0' && c <= '9');
                       });
    if (plain) {
        out += text;
    } else {
        report::append_json_string(out, text);
    }
}

}  // namespace

std::string concession_entry(const ConcessionKey& key, std::string_view file) {
    std::string entry = file.empty() || file.ends_with('\n') ? "- rule: " : "\n- rule: ";
    entry += key.rule;
    if (!key.listing.empty()) {
        entry += "\n  listing: ";
        append_scalar(entry, key.listing);
    }
    entry += "\n  words: ";
    append_scalar(entry, key.words);
    entry +=
        "\n  reason:  # why it may stand"
        "\n  owner:   # who answers for it"
        "\n  until:   # the last day, YYYY-MM-DD\n";
    return entry;
}

}  // namespace grainside::tools::edit
