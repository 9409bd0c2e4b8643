#include "edit/document_kind.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <optional>
#include <set>
#include <utility>

#include "edit/file_uri.h"
#include "listing/input_format.h"

namespace grainside::tools::edit {
namespace {

// As editors call them in the protocol ('TextDocumentItem'), and by the names of the formats.
constexpr std::pair<std::string_view, InputFormat> kLanguages[] = {
    {"plaintext", InputFormat::text},    {"text", InputFormat::text},        {"markdown", InputFormat::markdown},
    {"html", InputFormat::html},         {"xhtml", InputFormat::html},       {"json", InputFormat::json},
    {"jsonc", InputFormat::json},        {"jsonl", InputFormat::json_lines}, {"jsonlines", InputFormat::json_lines},
    {"ndjson", InputFormat::json_lines}, {"csv", InputFormat::csv},          {"tsv", InputFormat::tsv},
};

std::string extension_of(std::string_view name) {
    const std::size_t point = name.rfind('.');
    if (point == std::string_view::npos) return {};
    std::string extension(name.substr(point + 1));
    std::transform(extension.begin(), extension.end(), extension.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return extension;
}

// Keys of the mapping that a text is, or of the entries of the list that it is; read from the lines, because what is
// being typed is often no YAML for a while.
struct FirstKeys {
    std::set<std::string_view> of_mapping;
    std::set<std::string_view> of_entries;
};

std::string_view key_at(std::string_view line) {
    const std::size_t colon = line.find(':');
    if (colon == std::string_view::npos || colon == 0) return {};
    const std::string_view key = line.substr(0, colon);
    const bool plain = std::all_of(key.begin(), key.end(), [](char c) { return (c >= 'a' && c <= 'z') || c == '_'; });
    return plain ? key : std::string_view();
}

FirstKeys first_keys(std::string_view text) {
    constexpr std::size_t kMostLines = 400;
    FirstKeys keys;
    std::size_t entry_indent = 0;
    for (std::size_t lines = 0; !text.empty() && lines < kMostLines; ++lines) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        std::string_view line = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        const std::size_t indent = std::min(line.find_first_not_of(' '), line.size());
        line.remove_prefix(indent);
        if (line.starts_with("- ") && indent <= 2) {
            line.remove_prefix(2);
            while (line.starts_with(' ') || line.starts_with('{')) line.remove_prefix(1);
            entry_indent = indent + 2;
            if (const std::string_view key = key_at(line); !key.empty()) keys.of_entries.insert(key);
        } else if (const std::string_view key = key_at(line); !key.empty()) {
            if (indent == 0) keys.of_mapping.insert(key);
            if (indent != 0 && indent == entry_indent) keys.of_entries.insert(key);
        }
    }
    return keys;
}

bool any_of(const std::set<std::string_view>& keys, std::initializer_list<std::string_view> wanted) {
    return std::any_of(wanted.begin(), wanted.end(), [&](std::string_view key) { return keys.count(key) != 0; });
}

// "wording/split.yaml" of "/a/b/wording/split.yaml"; empty where no file of a book lies so (rules/README.md, section
// 1).
std::string place_in_a_book(std::string_view path) {
    constexpr std::string_view kFolders[] = {"wording", "markets", "methods", "limits", "costs"};
    std::array<std::string_view, 3> last;  // the last three parts, the file first
    for (std::string_view& part : last) {
        const std::size_t slash = path.rfind('/');
        part = path.substr(slash == std::string_view::npos ? 0 : slash + 1);
        path = path.substr(0, slash == std::string_view::npos ? 0 : slash);
    }
    const auto joined = [](std::string_view folder, std::string_view file) {
        return std::string(folder) + '/' + std::string(file);
    };
    if (std::find(std::begin(kFolders), std::end(kFolders), last[1]) != std::end(kFolders)) {
        return joined(last[1], last[0]);
    }
    if (last[2] == "vocabulary") return joined(last[2], joined(last[1], last[0]));
    return {};
}

// No more than one word of letters, and comments.
bool is_hardly_begun(std::string_view text) {
    bool any = false;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        std::string_view line = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        while (!line.empty() && (line.back() == ' ' || line.back() == '\r')) line.remove_suffix(1);
        if (line.empty() || line.front() == '#' || line == "---") continue;
        const bool is_word = std::all_of(line.begin(), line.end(), [](char c) { return c >= 'a' && c <= 'z'; });
        if (any || !is_word) return false;
        any = true;
    }
    return true;
}

Recognised recognise_yaml(std::string_view uri, std::string_view text) {
    Recognised found;
    const FirstKeys keys = first_keys(text);
    found.is_hardly_begun = is_hardly_begun(text);
    if (any_of(keys.of_mapping, {"sample", "parts", "listing"})) {
        found.kind = DocumentKind::dossier;
    } else if (any_of(keys.of_entries, {"owner", "reason", "until"})) {
        found.kind = DocumentKind::concessions;
    } else if (any_of(keys.of_entries, {"rule", "method", "limit", "term", "says", "usual", "category"})) {
        found.book_file = place_in_a_book(path_of_uri(uri));
        const bool is_rule = any_of(keys.of_entries, {"when", "like", "grade", "because", "proof"});
        if (found.book_file.empty() && is_rule) found.book_file = "wording/" + name_in_uri(uri);
        if (!found.book_file.empty()) found.kind = DocumentKind::rule_file;
        if (found.book_file.empty() && any_of(keys.of_entries, {"rule"})) found.kind = DocumentKind::concessions;
    }
    return found;
}

}  // namespace

Recognised recognise(std::string_view uri, std::string_view language, std::string_view text,
                     std::string_view rules_folder) {
    const std::string name = name_in_uri(uri);
    const std::string extension = extension_of(name);
    const bool is_yaml = language == "yaml" || extension == "yaml" || extension == "yml";
    if (is_yaml) {
        const std::string path = path_of_uri(uri);
        if (!rules_folder.empty() && path.size() > rules_folder.size() + 1 && path.starts_with(rules_folder) &&
            path[rules_folder.size()] == '/') {
            return {DocumentKind::rule_file, {}, path.substr(rules_folder.size() + 1)};
        }
        return recognise_yaml(uri, text);
    }
    // The name says more than the language: editors call a table and a file of JSON Lines plain text.
    const InputFormat by_name = listing::format_of_name(name);
    if (by_name != InputFormat::text) return {DocumentKind::listing, by_name, {}};
    for (const auto& [known, format] : kLanguages) {
        if (language == known) return {DocumentKind::listing, format, {}};
    }
    if (language.empty() || extension == "txt") return {DocumentKind::listing, InputFormat::text, {}};
    return {};
}

}  // namespace grainside::tools::edit
