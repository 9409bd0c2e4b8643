#include "edit/json_rpc.h"

#include <algorithm>
#include <cstddef>

#include "edit/message_framing.h"

namespace grainside::tools::edit {
namespace {

// Collections within collections that a message may have; the protocol's own have fewer than twenty.
constexpr std::size_t kMostDepth = 128;
// A parser that has read a long message is not kept.
constexpr std::size_t kKeptCapacity = std::size_t{1} << 20U;

// "\ud83d": which half of a pair a JSON escape at `at` is.
enum class Half { none, first, second };
Half half_at(std::string_view text, std::size_t at) {
    constexpr std::size_t kEscape = 6;
    if (text.size() - at < kEscape || text[at] != '\\' || text[at + 1] != 'u') return Half::none;
    if (text[at + 2] != 'd' && text[at + 2] != 'D') return Half::none;
    const char second = text[at + 3];
    if (second == '8' || second == '9' || second == 'a' || second == 'A' || second == 'b' || second == 'B') {
        return Half::first;
    }
    const bool low = second == 'c' || second == 'C' || second == 'd' || second == 'D' || second == 'e' ||
                     second == 'E' || second == 'f' || second == 'F';
    return low ? Half::second : Half::none;
}

// Escapes are found from the beginning, so that the backslash of `\\ud800` is none.
void replace_lone_halves(std::string& content) {
    constexpr std::size_t kEscape = 6;
    for (std::size_t at = content.find('\\'); at != std::string::npos; at = content.find('\\', at)) {
        const Half half = half_at(content, at);
        if (half == Half::none) {
            at += 2;
        } else if (half == Half::first && half_at(content, at + kEscape) == Half::second) {
            at += 2 * kEscape;
        } else {
            content.replace(at, kEscape, "\\ufffd");
            at += kEscape;
        }
        if (at >= content.size()) return;
    }
}

bool has_halves(std::string_view content) {
    return content.find("\\ud") != std::string_view::npos || content.find("\\uD") != std::string_view::npos;
}

// "id" is an integer or a string; anything else is none.
bool read_id(const std::optional<Json>& value, std::string& id) {
    if (const auto number = integer_of(value)) {
        id = std::to_string(*number);
        return true;
    }
    const auto text = text_of(value);
    if (!text) return false;
    id.clear();
    report::append_json_string(id, *text);
    return true;
}

Message broken(ErrorCode code, std::string fault, std::string id = "null") {
    Message message;
    message.error = code;
    message.fault = std::move(fault);
    message.id = std::move(id);
    return message;
}

}  // namespace

Message MessageReader::read(std::string& content) {
    if (has_halves(content)) replace_lone_halves(content);
    if (!parser_ || parser_->capacity() > kKeptCapacity) parser_ = std::make_unique<simdjson::dom::parser>();
    if (parser_->capacity() < content.size() &&
        parser_->allocate(std::max(content.size(), std::size_t{4096}), kMostDepth) != simdjson::SUCCESS) {
        return broken(ErrorCode::internal_error, "no memory for this message");
    }
    Json root;
    if (const auto fault = parser_->parse(content).get(root); fault != simdjson::SUCCESS) {
        return broken(ErrorCode::parse_error, std::string("no JSON: ") + simdjson::error_message(fault));
    }
    if (!root.is_object()) return broken(ErrorCode::invalid_request, "a message is one object");

    Message message;
    const bool has_id = member(root, "id").has_value();
    const bool id_is_sound = read_id(member(root, "id"), message.id);
    const auto method = text_of(member(root, "method"));
    if (text_of(member(root, "jsonrpc")) != "2.0") {
        return broken(ErrorCode::invalid_request, "a message has \"jsonrpc\": \"2.0\"", message.id);
    }
    if (!method) {
        if (!member(root, "method") && (member(root, "result") || member(root, "error"))) {
            message.kind = Message::Kind::answer;
            return message;
        }
        return broken(ErrorCode::invalid_request, "a request has a \"method\"", message.id);
    }
    if (has_id && !id_is_sound) {
        return broken(ErrorCode::invalid_request, "the \"id\" of a request is an integer or a string");
    }
    message.method = *method;
    message.kind = has_id ? Message::Kind::request : Message::Kind::notification;
    if (const auto params = member(root, "params")) {
        if (!params->is_object() && !params->is_array() && !params->is_null()) {
            return broken(ErrorCode::invalid_request, "\"params\" is an object or a list", message.id);
        }
        message.params = params;
    }
    return message;
}

void append_result(std::string& out, std::string_view id, std::string_view result) {
    std::string content = R"({"jsonrpc":"2.0","id":)";
    content.append(id).append(",\"result\":").append(result).append("}");
    append_frame(out, content);
}

void append_error(std::string& out, std::string_view id, ErrorCode code, std::string_view message) {
    std::string content = R"({"jsonrpc":"2.0","id":)";
    content.append(id).append(",\"error\":");
    report::JsonWriter json(content);
    json.begin_object();
    json.member("code", static_cast<double>(code));
    json.member("message", message);
    json.end_object();
    content += '}';
    append_frame(out, content);
}

void append_notification(std::string& out, std::string_view method, std::string_view params) {
    std::string content = R"({"jsonrpc":"2.0","method":)";
    report::append_json_string(content, method);
    content.append(",\"params\":").append(params).append("}");
    append_frame(out, content);
}

}  // namespace grainside::tools::edit
