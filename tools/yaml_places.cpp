#include "yaml_places.h"

#include <map>

#include "document/document.h"
#include "document/faults.h"
#include "document/yaml_document.h"
#include "yaml_spans.h"

namespace grainside::tools {
YamlPlaces::YamlPlaces(std::string_view yaml, const std::vector<Field>& fields) : walks_(fields.size()) {
    document::Faults faults;
    const auto document = document::parse_yaml("", std::string(yaml), faults);
    if (!document) return;
    const YamlSpans spans(yaml, *document);
    // Keys stand once in a mapping, so a name has one scalar.
    std::map<std::string_view, std::size_t> by_name;
    for (std::size_t i = 0; i < fields.size(); ++i) by_name.try_emplace(fields[i].name, i);
    const auto note = [&](const std::string& name, document::Node node) {
        const auto field = by_name.find(name);
        if (field == by_name.end() || fields[field->second].text != node.text()) return;
        walks_[field->second].emplace(yaml, spans.begin(node), fields[field->second].text);
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
