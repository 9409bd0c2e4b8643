#include "edit/completion.h"

#include <algorithm>
#include <utility>

#include "document/faults.h"
#include "document/yaml_document.h"
#include "edit/known_name.h"

namespace grainside::tools::edit {
namespace {

// In no list, near to no name, and in the alphabet of ids, so that a reader of ids gets as far as looking it up.
std::string word_not_in(std::string_view text) {
    std::string word = "zz-to-be-completed-zz";
    while (text.find(word) != std::string_view::npos) word += 'z';
    return word;
}

std::size_t behind_blanks(std::string_view text, std::size_t at) {
    while (at < text.size() && (text[at] == ' ' || text[at] == '\t')) ++at;
    return at;
}

// The last character before `at` on its line that is no blank; NUL at the beginning of a line.
char sign_before(std::string_view text, std::size_t at) {
    while (at > 0 && (text[at - 1] == ' ' || text[at - 1] == '\t')) --at;
    return at == 0 || text[at - 1] == '\n' || text[at - 1] == '\r' ? '\0' : text[at - 1];
}

// What closes the mappings and lists in brackets that are open at `at`, read as YAML's plain style: quotes hide
// brackets where a value can begin, '#' behind a blank hides the rest of the line.
std::string open_brackets_closed(std::string_view text, std::size_t at) {
    std::string closing;
    for (std::size_t i = 0; i < at; ++i) {
        const char c = text[i];
        const bool begins = i == 0 || std::string_view(" \t\n[{,:").find(text[i - 1]) != std::string_view::npos;
        // Outside of brackets a bracket within a plain value is a letter.
        if (begins && (c == '"' || c == '\'')) {
            const std::size_t quote = text.find(c, i + 1);
            if (quote == std::string_view::npos || quote >= at) return closing;
            i = quote;
        } else if (begins && c == '#') {
            i = std::min(text.find('\n', i), at);
        } else if ((c == '{' || c == '[') && begins) {
            closing.insert(closing.begin(), c == '{' ? '}' : ']');
        } else if (!closing.empty() && c == closing.front()) {
            closing.erase(closing.begin());
        }
    }
    return closing;
}

// The keys of the mapping that has `word` as a key.
const std::vector<std::string_view>* find_keys_beside(document::Node node, std::string_view word,
                                                      std::vector<std::string_view>& keys) {
    if (node.is_mapping() && node.find(word).exists()) {
        for (const document::Node child : node) keys.push_back(child.key());
        return &keys;
    }
    for (const document::Node child : node) {
        if (find_keys_beside(child, word, keys) != nullptr) return &keys;
    }
    return nullptr;
}

// A key stands once in a mapping.
void drop_keys_beside(const std::string& probe, const std::string& word, std::vector<std::string>& names) {
    document::Faults faults;
    const auto document = document::parse_yaml("", probe, faults);
    if (!document) return;
    std::vector<std::string_view> keys;
    if (find_keys_beside(document->root(), word, keys) == nullptr) return;
    std::erase_if(names,
                  [&](const std::string& name) { return std::find(keys.begin(), keys.end(), name) != keys.end(); });
}

}  // namespace

Completion complete(std::string_view text, std::size_t caret, const NamesInPlace& names_in_place) {
    Completion found;
    found.span = name_at(text, caret);
    const std::string word = word_not_in(text);
    const std::size_t line_end = std::min(text.find('\n', found.span.end), text.size());
    const std::string closing = open_brackets_closed(text, found.span.begin);
    std::string probe;
    const auto try_with = [&](const std::string& put) {
        probe.assign(text.substr(0, found.span.begin)).append(put).append(text.substr(found.span.end));
        found.names = names_in_place(probe, word);
        if (!found.names.empty() || closing.empty()) return !found.names.empty();
        // Brackets that are still open where somebody types: as if they ended here.
        probe.assign(text.substr(0, found.span.begin)).append(put).append(closing).append(text.substr(line_end));
        found.names = names_in_place(probe, word);
        return !found.names.empty();
    };
    const std::size_t behind = behind_blanks(text, found.span.end);
    const bool has_colon = behind < text.size() && text[behind] == ':';
    const char before = sign_before(text, found.span.begin);
    // Behind a colon, in quotes and behind a number nothing but a value can stand.
    const bool may_be_key = before == '\0' || before == '-' || before == '{' || before == ',';
    if (may_be_key && (has_colon ? try_with(word) : try_with(word + ": x"))) {
        found.keys = true;
        found.needs_colon = !has_colon;
        drop_keys_beside(probe, word, found.names);
        return found;
    }
    if (!has_colon) try_with(word);
    return found;
}

}  // namespace grainside::tools::edit
