#include "desk/dossier_sheet.h"

#include <algorithm>
#include <cstdint>
#include <iterator>

#include "evidence/cost_data.h"

namespace grainside::desk {

using document::Node;
using report::JsonWriter;

namespace {

constexpr std::string_view kNoCosts = "none";
constexpr std::string_view kExchangeKey = "exchange";

void write_line(JsonWriter& json, Node line, std::size_t index) {
    json.begin_object();
    json.member("index", std::uint64_t{index});
    json.member("line", std::uint64_t{line.line()});
    if (line.is_mapping()) {
        write_values(json, "values", line);
    } else {
        json.key("values");
        json.begin_object();
        json.member("amount", line.text());
        json.end_object();
    }
    json.end_object();
}

void write_group(JsonWriter& json, Node group) {
    json.begin_object();
    json.member("group", group.key());
    json.key("none");
    json.value_bool(group.is_scalar() && group.text() == kNoCosts);
    json.key("lines");
    json.begin_array();
    if (group.is_sequence()) {
        std::size_t index = 0;
        for (const Node line : group) write_line(json, line, index++);
    } else if (group.is_mapping() || (group.is_scalar() && group.text() != kNoCosts)) {
        write_line(json, group, 0);
    }
    json.end_array();
    json.end_object();
}

}  // namespace

std::string plain_value(Node node) {
    if (node.is_scalar()) return std::string(node.text());
    std::string text;
    for (const Node child : node) {
        if (!text.empty()) text += ", ";
        if (node.is_mapping()) text.append(child.key()).append(": ");
        text += plain_value(child);
    }
    return text;
}

void write_values(JsonWriter& json, std::string_view key, Node mapping,
                  std::initializer_list<std::string_view> left_out) {
    json.key(key);
    json.begin_object();
    for (const Node child : mapping) {
        if (!mapping.is_mapping()) break;
        if (std::find(left_out.begin(), left_out.end(), child.key()) != left_out.end()) continue;
        json.member(child.key(), std::string_view(plain_value(child)));
    }
    json.end_object();
}

void write_sample(JsonWriter& json, Node root) {
    write_values(json, "sample", root.find("sample"));
}

void write_reading_sheet(JsonWriter& json, Node reading, std::size_t index) {
    json.member("index", std::uint64_t{index});
    json.member("method", reading.find("method").text());
    for (const std::string_view key : {"outcome", "date", "photo", "note"}) {
        json.optional_member(key, plain_value(reading.find(key)));
    }
    write_values(json, "values", reading, {"method", "outcome", "date", "photo", "note"});
    json.member("line", std::uint64_t{reading.line()});
}

void write_cost_sheet(JsonWriter& json, Node root) {
    const Node costs = root.find("costs");
    json.key("sheet");
    json.begin_object();
    std::vector<Node> groups;
    json.key("values");
    json.begin_object();
    for (const Node child : costs) {
        bool is_group = false;
        for (std::size_t g = 0; g < evidence::kCostGroupCount; ++g) {
            is_group = is_group || child.key() == name_of(static_cast<CostGroup>(g));
        }
        if (is_group) {
            groups.push_back(child);
        } else if (costs.is_mapping() && child.key() != kExchangeKey) {
            json.member(child.key(), std::string_view(plain_value(child)));
        }
    }
    json.end_object();
    write_values(json, kExchangeKey, costs.find(kExchangeKey));
    json.key("groups");
    json.begin_array();
    for (const Node group : groups) write_group(json, group);
    json.end_array();
    json.end_object();
}

}  // namespace grainside::desk
