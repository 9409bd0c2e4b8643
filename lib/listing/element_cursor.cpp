#include "listing/element_cursor.h"

#include <algorithm>
#include <array>
#include <cstring>

namespace grainside::listing {
namespace {

// The offset behind the string that begins at `text[from]`, or the end of `text` if it is not closed.
std::size_t end_of_string(std::string_view text, std::size_t from) {
    const std::size_t opening = from;
    for (;;) {
        const std::size_t quote = text.find('"', from + 1);
        if (quote == std::string_view::npos) return text.size();
        std::size_t backslashes = 0;
        while (quote - backslashes - 1 > opening && text[quote - backslashes - 1] == '\\') ++backslashes;
        if (backslashes % 2 == 0) return quote + 1;
        from = quote;
    }
}

constexpr std::array<bool, 256> kMatters = [] {
    std::array<bool, 256> matters{};
    for (const char c : {'"', '{', '}', '[', ']'}) matters[static_cast<unsigned char>(c)] = true;
    return matters;
}();

}  // namespace

ElementCursor::ElementCursor(const RecordText& array)
    : array_(array), state_(State::before_first), at_(1), counted_(array.origin) {}

ElementCursor::Step ElementCursor::next() {
    if (state_ == State::ended) return Step::end;
    const std::string_view text = array_.bytes;
    skip_space();
    if (at_ >= text.size()) {
        return fail(
            {text.size(), "the list ends before its closing ]", "the file may have been cut off; fetch it again"},
            State::ended);
    }
    if (text[at_] == ']' && state_ != State::before_element) {
        ++at_;
        skip_space();
        if (at_ < text.size()) {
            return fail({at_, "there is more text after the end of the list; it is not read",
                         "put all products into one list, or write one a line into a .jsonl file"},
                        State::ended);
        }
        state_ = State::ended;
        return Step::end;
    }
    if (state_ == State::after_element) {
        if (text[at_] == ',') {
            const std::size_t comma = at_++;
            skip_space();
            if (at_ < text.size() && text[at_] == ']') {
                return fail({comma, "there is a comma after the last product", "remove this comma"},
                            State::after_element);
            }
            state_ = State::before_element;
            return next();
        }
        if (text[at_] != '{' || was_broken_) return lost();
        return fail({at_, "a comma is missing before this product", "put a comma between products"},
                    State::before_element);
    }
    if (text[at_] == ',') {
        const std::size_t comma = at_++;
        return fail({comma, "there is a comma with no product before it", "remove this comma"}, State::before_element);
    }
    return give_element();
}

ElementCursor::Step ElementCursor::give_element() {
    const std::size_t end = end_of_element();
    element_.bytes = array_.bytes.substr(at_, end - at_);
    element_.around = array_.around;
    element_.readable_behind = array_.bytes.size() - end + array_.readable_behind;
    counted_ = place_at(array_.bytes.substr(counted_to_), at_ - counted_to_, counted_);
    counted_to_ = at_;
    element_.origin = counted_;
    element_begin_ = at_;
    at_ = end;
    state_ = State::after_element;
    was_broken_ = false;
    return Step::element;
}

void ElementCursor::element_was_broken() {
    was_broken_ = true;
    const std::size_t line = next_line_indented_alike(element_begin_);
    if (line >= at_) return;
    at_ = line;
    state_ = State::before_element;
}

ElementCursor::Step ElementCursor::fail(JsonFault fault, State next) {
    fault_ = fault;
    state_ = next;
    return Step::fault;
}

// Something stands after an element that no array can have there.
ElementCursor::Step ElementCursor::lost() {
    const std::size_t line = next_line_indented_alike(element_begin_);
    const std::size_t where = at_;
    if (line >= array_.bytes.size()) {
        return fail({where, "a comma or ] is missing here; the rest of the file is not read",
                     "mend this place, or write one product a line into a .jsonl file"},
                    State::ended);
    }
    at_ = line;
    return fail({where, "a comma or ] is missing here", "mend this place; reading goes on at the next product"},
                State::before_element);
}

std::size_t ElementCursor::end_of_element() const {
    const std::string_view text = array_.bytes;
    if (text[at_] == '"') return end_of_string(text, at_);
    if (text[at_] != '{' && text[at_] != '[') return std::min(text.find_first_of(",] \t\r\n", at_ + 1), text.size());
    std::size_t depth = 0;
    for (std::size_t at = at_; at < text.size(); ++at) {
        if (!kMatters[static_cast<unsigned char>(text[at])]) continue;
        if (text[at] == '"') {
            at = end_of_string(text, at) - 1;
        } else if (text[at] == '{' || text[at] == '[') {
            ++depth;
        } else if (--depth == 0) {
            return at + 1;
        }
    }
    return text.size();
}

// The offset of the { of the first line after `from`, and after the place that was lost, that is indented as the last
// element was; the size of the text if there is none or if the element did not begin its line.
std::size_t ElementCursor::next_line_indented_alike(std::size_t from) const {
    const std::string_view text = array_.bytes;
    const std::size_t line_break = text.substr(0, element_begin_).rfind('\n');
    if (line_break == std::string_view::npos) return text.size();
    const std::string_view indent = text.substr(line_break + 1, element_begin_ - line_break - 1);
    if (indent.find_first_not_of(" \t") != std::string_view::npos) return text.size();
    for (std::size_t at = text.find('\n', from); at != std::string_view::npos; at = text.find('\n', at + 1)) {
        const std::string_view line = text.substr(at + 1);
        if (line.starts_with(indent) && line.substr(indent.size()).starts_with('{')) return at + 1 + indent.size();
    }
    return text.size();
}

void ElementCursor::skip_space() {
    while (at_ < array_.bytes.size() && is_json_space(array_.bytes[at_])) ++at_;
}

}  // namespace grainside::listing
