#include "edit/json_values.h"

namespace grainside::tools::edit {

std::optional<Json> member(const std::optional<Json>& value, std::string_view name) {
    if (!value) return std::nullopt;
    simdjson::dom::object object;
    Json found;
    if (value->get_object().get(object) != simdjson::SUCCESS) return std::nullopt;
    if (object.at_key(name).get(found) != simdjson::SUCCESS) return std::nullopt;
    return found;
}

std::optional<Json> member_at(std::optional<Json> value, std::initializer_list<std::string_view> names) {
    for (const std::string_view name : names) value = member(value, name);
    return value;
}

std::optional<std::string_view> text_of(const std::optional<Json>& value) {
    std::string_view text;
    if (!value || value->get_string().get(text) != simdjson::SUCCESS) return std::nullopt;
    return text;
}

std::optional<std::int64_t> integer_of(const std::optional<Json>& value) {
    std::int64_t number = 0;
    if (!value || value->get_int64().get(number) != simdjson::SUCCESS) return std::nullopt;
    return number;
}

bool is_true(const std::optional<Json>& value) {
    bool truth = false;
    return value && value->get_bool().get(truth) == simdjson::SUCCESS && truth;
}

std::optional<simdjson::dom::array> list_of(const std::optional<Json>& value) {
    simdjson::dom::array list;
    if (!value || value->get_array().get(list) != simdjson::SUCCESS) return std::nullopt;
    return list;
}

}  // namespace grainside::tools::edit
