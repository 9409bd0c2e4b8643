#include "desk/json_request.h"

#include <simdjson.h>

#include <algorithm>

#include "desk/desk_error.h"

namespace grainside::desk {
namespace {

[[noreturn]] void bad_request(std::string message) {
    throw DeskError{400, "bad-request", std::move(message)};
}

JsonValue value_of(const simdjson::dom::element& element) {
    JsonValue value;
    switch (element.type()) {
        case simdjson::dom::element_type::NULL_VALUE:
            break;
        case simdjson::dom::element_type::BOOL:
            value.kind = JsonValue::Kind::truth;
            value.truth = bool(element);
            break;
        case simdjson::dom::element_type::INT64:
            value.kind = JsonValue::Kind::number;
            value.number = std::int64_t(element);
            break;
        case simdjson::dom::element_type::UINT64:
        case simdjson::dom::element_type::DOUBLE:
            bad_request("a number is not whole, or too large");
        case simdjson::dom::element_type::STRING:
            value.kind = JsonValue::Kind::text;
            value.text = std::string_view(element);
            break;
        case simdjson::dom::element_type::ARRAY:
            value.kind = JsonValue::Kind::list;
            for (const simdjson::dom::array list = element; const auto item : list)
                value.items.push_back(value_of(item));
            break;
        case simdjson::dom::element_type::OBJECT:
            value.kind = JsonValue::Kind::object;
            for (const simdjson::dom::object object = element; const auto [key, member] : object) {
                if (value.members.size() == kMostJsonMembers) bad_request("an object has too many members");
                if (!value[key].is_null()) bad_request("a member stands twice");
                value.members.push_back({std::string(key), value_of(member)});
            }
            break;
    }
    return value;
}

}  // namespace

// Here, where a member is whole.
JsonValue::JsonValue() = default;
JsonValue::JsonValue(const JsonValue&) = default;
JsonValue::JsonValue(JsonValue&&) noexcept = default;
JsonValue& JsonValue::operator=(const JsonValue&) = default;
JsonValue& JsonValue::operator=(JsonValue&&) noexcept = default;
JsonValue::~JsonValue() = default;

const JsonValue& JsonValue::operator[](std::string_view name) const {
    static const JsonValue kNull;
    const auto found = std::find_if(members.begin(), members.end(), [&](const auto& one) { return one.name == name; });
    return found == members.end() ? kNull : found->value;
}

JsonValue parse_request(const std::string& body) {
    simdjson::dom::parser parser;
    simdjson::dom::element root;
    if (parser.allocate(std::max(body.size(), std::size_t{1}), kMostJsonDepth) != simdjson::SUCCESS) {
        throw DeskError{500, "internal", "memory has run out"};
    }
    if (const auto fault = parser.parse(body).get(root); fault != simdjson::SUCCESS) {
        throw DeskError{400, "bad-json", std::string("this is no JSON: ") + simdjson::error_message(fault)};
    }
    JsonValue value = value_of(root);
    if (value.kind != JsonValue::Kind::object) bad_request("a request is an object");
    return value;
}

std::optional<std::string_view> optional_text(const JsonValue& object, std::string_view name) {
    const JsonValue& value = object[name];
    if (value.is_null()) return std::nullopt;
    if (value.kind != JsonValue::Kind::text) bad_request('\'' + std::string(name) + "' has to be a text");
    return std::string_view(value.text);
}

std::string_view text_member(const JsonValue& object, std::string_view name) {
    const std::optional<std::string_view> text = optional_text(object, name);
    if (!text) bad_request('\'' + std::string(name) + "' is missing");
    return *text;
}

std::size_t index_member(const JsonValue& object, std::string_view name) {
    const JsonValue& value = object[name];
    if (value.kind != JsonValue::Kind::number || value.number < 0) {
        bad_request('\'' + std::string(name) + "' has to be a number from 0 up");
    }
    return static_cast<std::size_t>(value.number);
}

std::vector<std::string> texts_member(const JsonValue& object, std::string_view name) {
    const JsonValue& value = object[name];
    if (value.is_null()) return {};
    std::vector<std::string> texts;
    for (const JsonValue& item : value.items) texts.push_back(item.text);
    const bool all = std::all_of(value.items.begin(), value.items.end(),
                                 [](const JsonValue& item) { return item.kind == JsonValue::Kind::text; });
    if (value.kind != JsonValue::Kind::list || !all)
        bad_request('\'' + std::string(name) + "' has to be a list of texts");
    return texts;
}

std::pair<std::size_t, std::size_t> span_member(const JsonValue& object, std::string_view name) {
    const JsonValue& value = object[name];
    const bool sound = value.kind == JsonValue::Kind::list && value.items.size() == 2 &&
                       std::all_of(value.items.begin(), value.items.end(), [](const JsonValue& item) {
                           return item.kind == JsonValue::Kind::number && item.number >= 0;
                       });
    if (!sound || value.items[0].number > value.items[1].number) {
        bad_request('\'' + std::string(name) + "' has to be a start and an end");
    }
    return {static_cast<std::size_t>(value.items[0].number), static_cast<std::size_t>(value.items[1].number)};
}

}  // namespace grainside::desk
