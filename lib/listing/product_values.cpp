// ProductJson::Walk: values as texts.
#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

#include "listing/json_string.h"
#include "listing/product_walk.h"

namespace grainside::listing {

namespace ondemand = simdjson::ondemand;

namespace {

std::string_view trim_end(std::string_view text) {
    while (!text.empty() && is_json_space(text.back())) text.remove_suffix(1);
    return text;
}

}  // namespace

std::string_view kind_of_json(char first) noexcept {
    switch (first) {
        case '"':
            return "a text";
        case '{':
            return "an object";
        case '[':
            return "a list";
        case 't':
        case 'f':
            return "true or false";
        case 'n':
            return "null";
        default:
            return "a number";
    }
}

bool ProductJson::Walk::first_text(const Taste& taste, ondemand::value& value, std::string_view& into) {
    texts_.clear();
    if (!texts(taste, value, texts_)) return false;
    const auto found = std::find_if(texts_.begin(), texts_.end(), [](const Text& text) { return !text.words.empty(); });
    if (found != texts_.end()) into = found->words;
    return true;
}

bool ProductJson::Walk::texts(const Taste& taste, ondemand::value& value, std::vector<Text>& into, bool in_list) {
    const std::string_view token = trim_end(value.raw_json_token());
    const char first = token.empty() ? '\0' : token.front();
    if (first == '"') {
        Text text;
        if (!string_text(value, text)) return false;
        if (has_room(token, into.size())) into.push_back(text);
        return true;
    }
    if (first == '[' && !in_list) {
        return each_element(value, [&](ondemand::value& element) { return texts(taste, element, into, true); });
    }
    if (first == '{') return object_text(taste, value, into);
    const bool is_boolean = first == 't' || first == 'f';
    const bool is_number = first == '-' || (first >= '0' && first <= '9');
    if ((is_boolean && taste.booleans) || (is_number && taste.numbers)) {
        if (!scalar(token)) return false;
        if (has_room(token, into.size())) into.push_back(as_written(token, Writing::json_value));
        return true;
    }
    if (!pass_over(value)) return false;
    // Null says that there is nothing, which is what a missing member says too.
    if (first != 'n') wrong_type(taste.member, token, "text in double quotes");
    return true;
}

bool ProductJson::Walk::object_text(const Taste& taste, ondemand::value& value, std::vector<Text>& into) {
    const std::string_view token = value.raw_json_token();
    ondemand::object object;
    error_ = value.get_object().get(object);
    if (error_ != simdjson::SUCCESS) return false;
    std::size_t best = taste.object_members.size();
    Text text;
    for (auto result : object) {
        ondemand::field field;
        error_ = std::move(result).get(field);
        std::string_view key;
        if (error_ != simdjson::SUCCESS || !key_text(field, key)) return false;
        ondemand::value& value_inside = field.value();
        const std::string_view inner = trim_end(value_inside.raw_json_token());
        const auto rank = static_cast<std::size_t>(
            std::find(taste.object_members.begin(), taste.object_members.end(), key) - taste.object_members.begin());
        const char first = inner.empty() ? '\0' : inner.front();
        const bool is_text = first == '"' || (taste.numbers && (first == '-' || (first >= '0' && first <= '9')));
        if (rank >= best || !is_text) {
            if (!pass_over(value_inside)) return false;
        } else {
            best = rank;
            if (first == '"' ? !string_text(value_inside, text) : !scalar(inner)) return false;
            if (first != '"') text = as_written(inner, Writing::json_value);
        }
    }
    if (best == taste.object_members.size()) {
        wrong_type(taste.member, token, "text in double quotes, or an object with a name");
    } else if (has_room(token, into.size())) {
        into.push_back(text);
    }
    return true;
}

// Holds a value that is not read to the grammar, into which simdjson does not look. The iteration passes it afterwards.
bool ProductJson::Walk::pass_over(ondemand::value& value) {
    const std::string_view token = trim_end(value.raw_json_token());
    if (token.starts_with('{') || token.starts_with('[')) {
        return scanner_.end_of_value(parsed_, offset_of(token.data())).has_value();
    }
    if (!token.starts_with('"')) return scalar(token);
    if (!take_string(value)) return false;
    // simdjson has seen to quotes, control characters and UTF-8; only escapes can be wrong.
    return token.find('\\') == std::string_view::npos || scalar(token);
}

// Whether `token` is one value and nothing else.
bool ProductJson::Walk::scalar(std::string_view token) {
    return scanner_.end_of_value(token, 0) == token.size();
}

// The iteration would take a string that it has to skip for a name, if a colon followed.
bool ProductJson::Walk::take_string(ondemand::value& value) {
    error_ = value.get_raw_json_string().error();
    return error_ == simdjson::SUCCESS;
}

bool ProductJson::Walk::string_text(ondemand::value& value, Text& into) {
    const std::string_view token = trim_end(value.raw_json_token());
    if (token.size() < 2 || token.back() != '"' || !take_string(value)) return false;
    const std::string_view body = token.substr(1, token.size() - 2);
    into = as_written(body, Writing::json_string);
    if (body.find('\\') == std::string_view::npos) return true;
    const auto text = unescape(body, arena_);
    if (!text) return false;
    into.words = *text;
    if (into.words.find('\0') != std::string_view::npos && !std::exchange(has_nul_, true)) {
        warn("nul-byte", token, "this text holds a NUL character", "remove \\u0000");
    }
    return true;
}

// REQUIRES: `token` lies in `parsed_`.
ProductJson::Walk::Text ProductJson::Walk::as_written(std::string_view token, Writing writing) const {
    return {token, {offset_of(token.data()), static_cast<std::uint32_t>(token.size()), writing}};
}

bool ProductJson::Walk::key_text(const ondemand::field& field, std::string_view& into) {
    const char* const begin = field.key().raw();
    const std::string_view rest = parsed_.substr(offset_of(begin));
    // Names are short; a loop beats the calls that a library search takes for each byte.
    std::size_t end = 0;
    while (end < rest.size() && rest[end] != '"' && rest[end] != '\\') ++end;
    if (end == rest.size()) return false;
    if (rest[end] == '"') {
        into = rest.substr(0, end);
        return true;
    }
    while (end < rest.size() && rest[end] != '"') end += rest[end] == '\\' ? 2U : 1U;
    if (end >= rest.size()) return false;
    const auto text = unescape(rest.substr(0, end), arena_);
    if (!text) return false;
    into = *text;
    return true;
}

void ProductJson::Walk::add_field(std::string_view name, const Text& text) {
    if (text.words.empty() || !has_room(text.words, listing_->fields.size())) return;
    listing_->fields.push_back({name, text.words, text.origin});
    listing_->fields.back().origin.start += text_.start;
}

bool ProductJson::Walk::has_room(std::string_view token, std::size_t used) {
    if (used < kMaxFields) return true;
    if (!too_many_) {
        too_many_ = true;
        const bool in_record = token.data() >= parsed_.data() && token.data() < parsed_.data() + parsed_.size();
        sink_->report_at(
            Issue::Severity::error, "record-too-large", text_, in_record ? offset_of(token.data()) : 0,
            "this record has more than " + std::to_string(kMaxFields) + " texts; those from here on are not read",
            "split the record");
    }
    return false;
}

void ProductJson::Walk::wrong_type(std::string_view member, std::string_view token, std::string_view expected) {
    std::string message = "\"";
    message += member;
    message += "\" should be ";
    message += expected;
    message += ", but this is ";
    message += kind_of_json(token.front());
    message += " and is not read";
    warn("wrong-member-type", token, std::move(message), "write it as schema.org does, or leave it out");
}

void ProductJson::Walk::warn(std::string_view code, std::string_view token, std::string message, std::string hint) {
    sink_->report_at(Issue::Severity::warning, code, text_, offset_of(token.data()), std::move(message),
                     std::move(hint));
}

}  // namespace grainside::listing
