#include "yaml_places.h"

#include <algorithm>
#include <cstdint>
#include <map>

#include "document/document.h"
#include "document/faults.h"
#include "document/yaml_document.h"

namespace grainside::tools {
namespace {

// Where the lines begin; a byte order mark is no part of the first.
std::vector<std::size_t> line_begins(std::string_view yaml) {
    constexpr std::string_view kMark = "\xEF\xBB\xBF";
    std::vector<std::size_t> begins{yaml.starts_with(kMark) ? kMark.size() : 0};
    for (std::size_t end = yaml.find('\n'); end != std::string_view::npos; end = yaml.find('\n', end + 1)) {
        begins.push_back(end + 1);
    }
    return begins;
}

}  // namespace

YamlPlaces::YamlPlaces(std::string_view yaml, const std::vector<Field>& fields) : walks_(fields.size()) {
    document::Faults faults;
    const auto document = document::parse_yaml("", std::string(yaml), faults);
    if (!document) return;
    const std::vector<std::size_t> lines = line_begins(yaml);
    // Keys stand once in a mapping, so a name has one scalar.
    std::map<std::string_view, std::size_t> by_name;
    for (std::size_t i = 0; i < fields.size(); ++i) by_name.try_emplace(fields[i].name, i);
    const auto note = [&](const std::string& name, document::Node node) {
        const auto field = by_name.find(name);
        if (field == by_name.end() || fields[field->second].text != node.text()) return;
        const std::size_t line = std::min<std::size_t>(node.line() - 1, lines.size() - 1);
        const std::size_t begin = std::min(lines[line] + node.column() - 1, yaml.size());
        walks_[field->second].emplace(yaml, begin, fields[field->second].text);
    };
    for (const document::Node child : document->root().find("listing")) {
        if (child.is_scalar()) note(std::string(child.key()), child);
        if (child.key() != "attributes") continue;
        for (const document::Node attribute : child)
            note("additionalProperty." + std::string(attribute.key()), attribute);
    }
}

std::optional<std::pair<std::size_t, std::size_t>> YamlPlaces::find(std::size_t field, std::size_t start,
                                                                    std::size_t end) {
    if (!walks_[field]) return std::nullopt;
    YamlScalarWalk& walk = *walks_[field];
    if (!walk.to(start)) return std::nullopt;
    const std::size_t from = walk.at_word();
    const auto to = walk.to(end);
    if (!to) return std::nullopt;
    return std::pair(from, *to);
}

std::optional<std::string> YamlPlaces::written(std::size_t field, std::string_view words) const {
    if (!walks_[field]) return std::nullopt;
    const char style = walks_[field]->style();
    std::string out;
    for (const char c : words) {
        if (style == '"' && (c == '"' || c == '\\')) out += '\\';
        if (style == '\'' && c == '\'') out += '\'';
        out += c;
    }
    return out;
}

}  // namespace grainside::tools
