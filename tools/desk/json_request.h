// The JSON that the page sends, read strictly. Thread-safe for distinct objects.
#ifndef GRAINSIDE_TOOLS_DESK_JSON_REQUEST_H
#define GRAINSIDE_TOOLS_DESK_JSON_REQUEST_H

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace grainside::desk {

struct JsonMember;

// A value of RFC 8259, without numbers that are not whole: the page sends none.
struct JsonValue {
    enum class Kind : std::uint8_t { null, truth, number, text, list, object } kind = Kind::null;
    bool truth = false;
    std::int64_t number = 0;
    std::string text;
    std::vector<JsonValue> items;
    std::vector<JsonMember> members;

    JsonValue();
    JsonValue(const JsonValue&);
    JsonValue(JsonValue&&) noexcept;
    JsonValue& operator=(const JsonValue&);
    JsonValue& operator=(JsonValue&&) noexcept;
    ~JsonValue();

    // The member of that name; a null where there is none or this is no object.
    const JsonValue& operator[](std::string_view name) const;
    bool is_null() const noexcept { return kind == Kind::null; }
};

struct JsonMember {
    std::string name;
    JsonValue value;
};

// Nested at most this deep.
inline constexpr std::size_t kMostJsonDepth = 16;
// Of one object; each is held against those before it.
inline constexpr std::size_t kMostJsonMembers = 256;

// Throws DeskError ("bad-json", "bad-request") for what is no object of this kind; a member that stands twice is a
// fault.
JsonValue parse_request(const std::string& body);

// The member as what it has to be. They throw DeskError ("bad-request", with its name) for anything else.
std::string_view text_member(const JsonValue& object, std::string_view name);
std::optional<std::string_view> optional_text(const JsonValue& object, std::string_view name);
std::size_t index_member(const JsonValue& object, std::string_view name);
// A list of texts; empty where it is not there.
std::vector<std::string> texts_member(const JsonValue& object, std::string_view name);
// "at":[start,end]
std::pair<std::size_t, std::size_t> span_member(const JsonValue& object, std::string_view name);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_JSON_REQUEST_H
