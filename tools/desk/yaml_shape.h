// What a YAML text says, without where and how it is written: a tree that can be changed and compared. Plain data.
#ifndef GRAINSIDE_TOOLS_DESK_YAML_SHAPE_H
#define GRAINSIDE_TOOLS_DESK_YAML_SHAPE_H

#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "document/document.h"

namespace grainside::desk {

struct YamlShape {
    document::NodeKind kind = document::NodeKind::null;
    std::string text;                                         // of a scalar
    std::vector<std::pair<std::string, YamlShape>> children;  // keys are empty in a sequence

    bool operator==(const YamlShape&) const = default;

    static YamlShape of(document::Node node);
    static YamlShape scalar(std::string_view text);
    static YamlShape sequence() { return {document::NodeKind::sequence, {}, {}}; }
    static YamlShape mapping() { return {document::NodeKind::mapping, {}, {}}; }

    YamlShape& add(std::string_view key, YamlShape child);
    // nullptr where there is none.
    YamlShape* find(std::string_view key);
    bool is_scalar() const noexcept { return kind == document::NodeKind::scalar; }
    bool is_mapping() const noexcept { return kind == document::NodeKind::mapping; }
    bool is_sequence() const noexcept { return kind == document::NodeKind::sequence; }
};

// A step is a key, or in a sequence the number of an item.
using YamlPath = std::vector<std::string>;

// nullptr, or an absent node, where the path leads nowhere.
YamlShape* at_path(YamlShape& root, std::span<const std::string> path);
document::Node at_path(document::Node root, std::span<const std::string> path);

// `text` as a value of YAML on one line; `in_brackets`: within a flow collection.
std::string written_scalar(std::string_view text, bool in_brackets);
// "{Zn: 95.4 %, Al: 4 %}", on one line.
std::string written_in_brackets(const YamlShape& shape);
// "key: value" on as many lines as it takes, the first without its indentation, the last without its end. Lists of
// mappings and texts of several lines stand in lines, and what holds them, and mappings at the left edge; all else in
// brackets.
std::string written_in_lines(std::string_view key, const YamlShape& shape, std::size_t indent,
                             std::string_view line_end);
// An item behind its dash, its keys in lines of their own.
std::string written_item_in_lines(const YamlShape& item, std::size_t indent, std::string_view line_end);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_YAML_SHAPE_H
