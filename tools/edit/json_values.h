// Reading what a client sent, of which nothing can be taken for granted: a value that is not there or of another kind
// is no value. Values live as long as what was parsed.
#ifndef GRAINSIDE_TOOLS_EDIT_JSON_VALUES_H
#define GRAINSIDE_TOOLS_EDIT_JSON_VALUES_H

#include <simdjson.h>

#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string_view>

namespace grainside::tools::edit {

using Json = simdjson::dom::element;

// The value of `name`; nothing also where `value` is no object.
std::optional<Json> member(const std::optional<Json>& value, std::string_view name);
// The same through objects: member_at(params, {"textDocument", "uri"}).
std::optional<Json> member_at(std::optional<Json> value, std::initializer_list<std::string_view> names);

std::optional<std::string_view> text_of(const std::optional<Json>& value);
std::optional<std::int64_t> integer_of(const std::optional<Json>& value);
// False where there is none.
bool is_true(const std::optional<Json>& value);
std::optional<simdjson::dom::array> list_of(const std::optional<Json>& value);

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_JSON_VALUES_H
