#include "evidence/entry_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "evidence/elements.h"
#include "rules/references.h"

namespace grainside::evidence {

using document::Document;
using document::Faults;
using document::Node;

namespace {

bool is_id(std::string_view text) {
    if (text.empty() || text.front() == '-' || text.back() == '-') return false;
    return std::all_of(text.begin(), text.end(),
                       [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; });
}

std::optional<std::size_t> position_of(std::string_view name, std::span<const std::string_view> names) {
    const auto found = std::find(names.begin(), names.end(), name);
    if (found == names.end()) return std::nullopt;
    return static_cast<std::size_t>(found - names.begin());
}

// The nearest name, or all where they are few enough to read.
std::string hint_for(std::string_view name, std::span<const std::string_view> names, Faults& faults) {
    constexpr std::size_t kMostListed = 40;
    std::string hint = faults.suggestion(name, names);
    if (hint.empty() && !names.empty() && names.size() <= kMostListed) {
        hint = fmt::format("one of {}", fmt::join(names, ", "));
    }
    return hint;
}

}  // namespace

void EntryReader::error(Node place, std::string_view code, std::string message, std::string hint) const {
    faults_.error(document_, place, code, std::move(message), std::move(hint));
}

void EntryReader::error_at_key(Node place, std::string_view code, std::string message, std::string hint) const {
    faults_.error_at_key(document_, place, code, std::move(message), std::move(hint));
}

bool EntryReader::check_keys(Node entry, std::initializer_list<std::string_view> known) const {
    return document::check_keys(document_, entry, known, faults_);
}

std::string EntryReader::text(Node entry, std::string_view key) const {
    const Node node = entry.find(key);
    if (!node.is_sequence() && !node.is_mapping()) return std::string(node.text());
    error(node, "wrong-type", fmt::format("`{}` is a text", key));
    return {};
}

std::string EntryReader::required_text(Node entry, std::string_view key) const {
    std::string found = text(entry, key);
    const Node node = entry.find(key);
    if (!node.exists()) {
        error(entry, "missing-key", fmt::format("`{}` must stand here", key));
    } else if (!node.is_sequence() && !node.is_mapping() && found.empty()) {
        error(node, "missing-key", fmt::format("`{}` is empty", key));
    }
    return found;
}

std::string EntryReader::required_text(Node entry, std::string_view key, std::size_t most) const {
    std::string found = required_text(entry, key);
    if (found.size() > most) {
        error(entry.find(key), "too-long", fmt::format("`{}` has {} bytes; {} are allowed", key, found.size(), most));
    }
    return found;
}

std::string EntryReader::text_if_named(Node entry, std::string_view key, std::size_t most) const {
    return entry.find(key).exists() ? required_text(entry, key, most) : std::string();
}

std::string EntryReader::required_day(Node entry, std::string_view key, std::string hint) const {
    const Node node = entry.find(key);
    if (!node.exists()) {
        error(entry, "missing-key", fmt::format("`{}` must stand here", key), std::move(hint));
        return {};
    }
    return std::string(read_date(document_, node, faults_).value_or(std::string_view()));
}

bool EntryReader::check_id(Node place, std::string_view id) const {
    if (is_id(id)) return true;
    error(place, "bad-id", fmt::format("'{}' is no id", id), "use lower-case letters, digits and hyphens");
    return false;
}

std::string EntryReader::required_id(Node entry, std::string_view key) const {
    std::string id = required_text(entry, key);
    if (!id.empty() && !check_id(entry.find(key), id)) id.clear();
    return id;
}

std::optional<double> EntryReader::number(Node node, double low, double high) const {
    const std::optional<double> found = read_number(document_, node, faults_);
    if (!found || (*found >= low && *found <= high)) return found;
    error(node, "out-of-range", fmt::format("{} is not from {} to {}", *found, low, high));
    return std::nullopt;
}

std::optional<double> EntryReader::required_number(Node entry, std::string_view key, double low, double high) const {
    const Node node = entry.find(key);
    if (node.exists()) return number(node, low, high);
    error(entry, "missing-key", fmt::format("`{}` must stand here", key));
    return std::nullopt;
}

void EntryReader::each_text(Node list, const std::function<void(Node)>& visit) const {
    if (list.is_scalar()) {
        visit(list);
    } else if (list.is_sequence()) {
        for (Node member : list) {
            if (member.is_scalar()) {
                visit(member);
            } else {
                error(member, "wrong-type", "a list of texts");
            }
        }
    } else {
        error(list, "wrong-type", "expected a text or a list of texts");
    }
}

std::vector<std::string> EntryReader::texts(Node list) const {
    std::vector<std::string> found;
    each_text(list, [&](Node one) { found.emplace_back(one.text()); });
    return found;
}

std::optional<Part> EntryReader::part(Node node, std::string_view name) const {
    const std::optional<Part> named = part_named(name);
    if (named) return named;
    std::vector<std::string_view> names;
    for (std::size_t p = 0; p < kPartCount; ++p) names.push_back(name_of(static_cast<Part>(p)));
    // Of a key the place of the key; a list's member has none.
    error_at_key(node, "unknown-part", fmt::format("there is no part '{}'", name), hint_for(name, names, faults_));
    return std::nullopt;
}

PartSet EntryReader::parts(Node list) const {
    PartSet set = 0;
    each_text(list, [&](Node one) {
        if (const std::optional<Part> named = part(one, one.text())) set = static_cast<PartSet>(set | part_bit(*named));
    });
    return set;
}

ConceptId EntryReader::require_concept(Node node) const {
    return book_.vocabulary.concepts.require(document_, node, faults_);
}

std::vector<ConceptId> EntryReader::concepts(Node list) const {
    std::vector<ConceptId> found;
    each_text(list, [&](Node one) {
        const ConceptId id = require_concept(one);
        if (id != 0) found.push_back(id);
    });
    return found;
}

std::vector<std::uint32_t> EntryReader::required_sources(Node entry) const {
    const Node sources = entry.find("sources");
    if (sources.exists()) return rules::read_sources(document_, sources, book_.sources, faults_);
    error(entry, "missing-key", "`sources` must stand here", "cite a source of sources.yaml, or common-practice");
    return {};
}

std::optional<std::size_t> EntryReader::choice(Node node, std::span<const std::string_view> names,
                                               std::string_view what) const {
    const auto at = position_of(node.text(), names);
    if (!at) {
        error(node, fmt::format("unknown-{}", what), fmt::format("there is no {} '{}'", what, node.text()),
              hint_for(node.text(), names, faults_));
    }
    return at;
}

std::optional<std::size_t> EntryReader::choice_of_key(Node place, std::span<const std::string_view> names,
                                                      std::string_view what) const {
    const auto at = position_of(place.key(), names);
    if (!at) {
        error_at_key(place, fmt::format("unknown-{}", what), fmt::format("there is no {} '{}'", what, place.key()),
                     hint_for(place.key(), names, faults_));
    }
    return at;
}

bool EntryReader::check_element(Node at_key) const {
    if (is_element(at_key.key())) return true;
    const std::string near = faults_.suggestion(at_key.key(), element_symbols());
    error_at_key(at_key, "unknown-element", fmt::format("there is no element '{}'", at_key.key()),
                 near.empty() ? "write its symbol, as in `Zn`" : near);
    return false;
}

bool each_entry(const rules::BookData& book, std::string_view file, Faults& faults,
                const std::function<void(const EntryReader&, Node)>& visit) {
    bool any = false;
    for (const Document& document : book.documents) {
        const bool wanted = file.ends_with('/') ? document.file().starts_with(file) : document.file() == file;
        if (!wanted) continue;
        any = true;
        if (!document.root().exists()) continue;
        if (!document.root().is_sequence()) {
            faults.error(document, document.root(), "wrong-type", "this file is a sequence of entries");
            continue;
        }
        const EntryReader reader(book, document, faults);
        for (Node node : document.root()) visit(reader, node);
    }
    return any;
}

}  // namespace grainside::evidence
