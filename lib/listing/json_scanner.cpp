#include "listing/json_scanner.h"

#include <array>
#include <cstdint>
#include <cstring>

namespace grainside::listing {
namespace {

constexpr bool is_digit(char c) {
    return c >= '0' && c <= '9';
}
constexpr bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

// Bytes at which the inner loop of a string must stop: the quote, the backslash and control characters.
constexpr std::array<bool, 256> kStopsString = [] {
    std::array<bool, 256> stops{};
    for (std::size_t byte = 0; byte < 0x20; ++byte) stops[byte] = true;
    stops['"'] = true;
    stops['\\'] = true;
    return stops;
}();

// Whether none of the next eight bytes stops a string: each test borrows into the high bit of a byte that it finds.
bool is_plain(const char* bytes) {
    constexpr std::uint64_t kEach = 0x0101010101010101U;
    std::uint64_t word = 0;
    std::memcpy(&word, bytes, sizeof word);
    const std::uint64_t quotes = word ^ (kEach * '"');
    const std::uint64_t backslashes = word ^ (kEach * '\\');
    const std::uint64_t found =
        ((quotes - kEach) & ~quotes) | ((backslashes - kEach) & ~backslashes) | ((word - kEach * 0x20U) & ~word);
    return (found & (kEach * 0x80U)) == 0;
}

constexpr std::string_view kCutOff = "the file may have been cut off; fetch or write it again";
constexpr std::string_view kNulHint = "if the file is UTF-16, convert it to UTF-8";

}  // namespace

std::optional<std::size_t> JsonScanner::end_of_value(std::string_view text, std::size_t from) {
    text_ = text;
    at_ = from;
    in_object_.clear();
    if (!value()) return std::nullopt;
    return at_;
}

bool JsonScanner::is_document(std::string_view text) {
    text_ = text;
    at_ = 0;
    in_object_.clear();
    skip_space();
    if (!value()) return false;
    skip_space();
    if (at_end()) return true;
    return fail(at_, "there is more text after the end of the record",
                "write one record a line, without a comma after it");
}

bool JsonScanner::value() {
    for (;;) {
        skip_space();
        Step step = begin_value();
        if (step == Step::value_done) step = after_value();
        if (step == Step::failed) return false;
        if (step == Step::value_done) return true;
    }
}

JsonScanner::Step JsonScanner::begin_value() {
    const char first = peek();
    if (first == '{' || first == '[') {
        const bool in_object = first == '{';
        ++at_;
        skip_space();
        if (!at_end() && peek() == (in_object ? '}' : ']')) {
            ++at_;
            return Step::value_done;
        }
        in_object_.push_back(in_object);
        if (at_end()) return fail_between(in_object), Step::failed;
        return !in_object || member_name() ? Step::value_next : Step::failed;
    }
    bool complete = false;
    if (first == '"') {
        complete = string();
    } else if (first == '-' || is_digit(first)) {
        complete = number();
    } else if (first == 't') {
        complete = word("true");
    } else if (first == 'f') {
        complete = word("false");
    } else if (first == 'n') {
        complete = word("null");
    } else {
        complete = fail_value();
    }
    return complete ? Step::value_done : Step::failed;
}

JsonScanner::Step JsonScanner::after_value() {
    while (!in_object_.empty()) {
        const bool in_object = in_object_.back();
        skip_space();
        const char next = peek();
        if (next == (in_object ? '}' : ']')) {
            ++at_;
            in_object_.pop_back();
            continue;
        }
        if (next != ',') return fail_between(in_object), Step::failed;
        const std::size_t comma = at_++;
        skip_space();
        if (!at_end() && (peek() == '}' || peek() == ']')) {
            return fail(comma, "there is a comma after the last entry", "remove this comma"), Step::failed;
        }
        return !in_object || member_name() ? Step::value_next : Step::failed;
    }
    return Step::value_done;
}

bool JsonScanner::member_name() {
    if (at_end()) return fail_between(true);
    if (peek() != '"') {
        return fail(at_, "a member name in double quotes should stand here", "write \"name\": with double quotes");
    }
    if (!string()) return false;
    skip_space();
    if (at_end()) return fail_between(true);
    if (peek() != ':') return fail(at_, "a colon is missing after a member name", "write \"name\": \"value\"");
    ++at_;
    return true;
}

bool JsonScanner::string() {
    const std::size_t opening = at_++;
    for (;;) {
        while (text_.size() - at_ >= sizeof(std::uint64_t) && is_plain(text_.data() + at_))
            at_ += sizeof(std::uint64_t);
        while (at_ < text_.size() && !kStopsString[static_cast<unsigned char>(text_[at_])]) ++at_;
        if (at_end()) {
            return fail(opening, "the text that begins here is not closed", "end it with a double quote");
        }
        const char stop = text_[at_];
        if (stop == '"') {
            ++at_;
            return true;
        }
        if (stop == '\\') {
            if (!escape()) return false;
        } else if (stop == '\n' || stop == '\r') {
            return fail(at_, "a line break stands inside a text, or its closing quote is missing",
                        "write line breaks as \\n and end the text with a double quote");
        } else if (stop == '\0') {
            return fail(at_, "a NUL byte stands inside a text", kNulHint);
        } else {
            return fail(at_, "a control character stands inside a text", "write it as \\t or \\u00XX, or remove it");
        }
    }
}

bool JsonScanner::escape() {
    const std::size_t backslash = at_++;
    const char kind = peek();
    if (kind != 'u') {
        constexpr std::string_view kSimple = "\"\\/bfnrt";
        if (!at_end() && kSimple.find(kind) != std::string_view::npos) {
            ++at_;
            return true;
        }
        return fail(backslash, "a backslash is followed by a letter that JSON does not know",
                    "write a plain backslash as \\\\");
    }
    const std::optional<unsigned> unit = hex4(at_ + 1);
    if (!unit) return fail(backslash, "\\u is not followed by four hexadecimal digits", "write for example \\u00e9");
    at_ += 5;
    if (*unit < 0xD800 || *unit > 0xDFFF) return true;
    if (*unit < 0xDC00 && text_.substr(at_, 2) == "\\u") {
        const std::optional<unsigned> low = hex4(at_ + 2);
        if (low && *low >= 0xDC00 && *low <= 0xDFFF) {
            at_ += 6;
            return true;
        }
    }
    return fail(backslash, "half of a character written as \\u stands without its other half",
                "write both halves, or the character itself");
}

bool JsonScanner::number() {
    const std::size_t start = at_;
    constexpr std::string_view kHint = "write numbers as 12 or 0.5, without leading zeros, or put the text in quotes";
    if (peek() == '-') ++at_;
    if (peek() == '0') {
        ++at_;
    } else if (!digits()) {
        return fail(start, "this is not a number as JSON writes it", kHint);
    }
    if (peek() == '.') {
        ++at_;
        if (!digits()) return fail(start, "this is not a number as JSON writes it", kHint);
    }
    if (peek() == 'e' || peek() == 'E') {
        ++at_;
        if (peek() == '+' || peek() == '-') ++at_;
        if (!digits()) return fail(start, "this is not a number as JSON writes it", kHint);
    }
    if (is_digit(peek()) || is_letter(peek()) || peek() == '.') {
        return fail(start, "this is not a number as JSON writes it", kHint);
    }
    return true;
}

bool JsonScanner::digits() {
    const std::size_t start = at_;
    while (is_digit(peek())) ++at_;
    return at_ > start;
}

bool JsonScanner::word(std::string_view expected) {
    if (text_.substr(at_, expected.size()) != expected) return fail_value();
    at_ += expected.size();
    if (!is_letter(peek()) && !is_digit(peek())) return true;
    at_ -= expected.size();
    return fail_value();
}

std::optional<unsigned> JsonScanner::hex4(std::size_t from) const {
    if (from > text_.size() || text_.size() - from < 4) return std::nullopt;
    unsigned value = 0;
    for (const char c : text_.substr(from, 4)) {
        const char lower = static_cast<char>(c | 0x20);
        if (is_digit(c)) {
            value = value * 16 + static_cast<unsigned>(c - '0');
        } else if (lower >= 'a' && lower <= 'f') {
            value = value * 16 + static_cast<unsigned>(lower - 'a') + 10;
        } else {
            return std::nullopt;
        }
    }
    return value;
}

void JsonScanner::skip_space() {
    while (at_ < text_.size() && is_json_space(text_[at_])) ++at_;
}

bool JsonScanner::fail(std::size_t offset, std::string_view message, std::string_view hint) {
    fault_ = {offset, message, hint};
    return false;
}

bool JsonScanner::fail_between(bool in_object) {
    if (at_end()) {
        return fail(at_, in_object ? "the record ends before its closing }" : "a list ends before its closing ]",
                    kCutOff);
    }
    const char c = peek();
    if (c == '\0') return fail(at_, "a NUL byte stands between the members", kNulHint);
    if (c == '}' || c == ']') {
        return fail(at_, in_object ? "this ] closes nothing" : "this } closes nothing",
                    in_object ? "close the object with } first" : "close the list with ] first");
    }
    return fail(at_, in_object ? "a comma or } is missing here" : "a comma or ] is missing here",
                "put a comma between entries, and a backslash before a double quote inside a text");
}

bool JsonScanner::fail_value() {
    if (at_end()) return fail(at_, "the record ends where a value should stand", kCutOff);
    const char c = peek();
    if (c == '\0') return fail(at_, "a NUL byte stands where a value should stand", kNulHint);
    if (c == '\'') return fail(at_, "text in single quotes is not JSON", "use double quotes");
    if (is_letter(c)) {
        return fail(at_, "a word without quotes is not JSON, except true, false and null", "put text in double quotes");
    }
    return fail(at_, "a value should stand here", "write a text in double quotes, a number, true, false or null");
}

}  // namespace grainside::listing
