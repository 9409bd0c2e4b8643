#include "listing/element_cursor.h"

#include <algorithm>
#include <array>

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

void ElementCursor::start(const RecordText& array) {
    array_ = array;
    state_ = State::before_first;
    ends_with_text_ = true;
    at_ = 1;
    element_begin_ = 0;
    was_broken_ = no_more_lines_ = false;
    counted_to_ = 0;
    counted_ = array.origin;
}

ElementCursor::Step ElementCursor::next() {
    if (state_ == State::ended) return Step::end;
    const std::string_view text = array_.bytes;
    skip_space();
    if (at_ >= text.size()) {
        state_ = State::ended;
        // What swallowed the end has been reported.
        if (was_broken_) return Step::end;
        return fail({text.size(), "the list ends before its closing ]", "the file may be cut off; fetch it again"},
                    State::ended);
    }
    if (text[at_] == ']' && state_ != State::before_element) {
        ++at_;
        skip_space();
        if (at_ < text.size() && ends_with_text_) {
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
    element_begin_ = at_;
    const auto end = scanner_.end_of_value(array_.bytes, at_);
    was_broken_ = !end;
    if (!end) {
        fault_ = scanner_.fault();
        go_on_after_broken();
        return Step::broken_element;
    }
    element_.bytes = array_.bytes.substr(at_, *end - at_);
    element_.around = array_.around;
    element_.around_line = array_.around_line;
    element_.start = array_.start + at_;
    element_.readable_behind = array_.bytes.size() - *end + array_.readable_behind;
    counted_ = place_at(array_.bytes.substr(counted_to_), at_ - counted_to_, counted_);
    counted_to_ = at_;
    element_.origin = counted_;
    at_ = *end;
    state_ = State::after_element;
    return Step::element;
}

void ElementCursor::go_on_after_broken() {
    // The fault may be that the next element begins before this one ended; then its line is the one.
    const std::size_t inside = array_.bytes.substr(element_begin_, fault_.offset - element_begin_).rfind('\n');
    if (find_line_indented_alike(inside == std::string_view::npos ? fault_.offset : element_begin_ + inside)) {
        state_ = State::before_element;
        return;
    }
    at_ = end_by_brackets();
    state_ = State::after_element;
}

ElementCursor::Step ElementCursor::fail(JsonFault fault, State next) {
    fault_ = fault;
    state_ = next;
    return Step::fault;
}

// Something stands after an element that no array can have there.
ElementCursor::Step ElementCursor::lost() {
    const std::size_t where = at_;
    if (find_line_indented_alike(where)) {
        return fail({where, "a comma or ] is missing here", "mend this place; reading goes on at the next product"},
                    State::before_element);
    }
    return fail({where, "a comma or ] is missing here; the rest of the file is not read",
                 "mend this place, or write one product a line into a .jsonl file"},
                State::ended);
}

// The end of the broken element as far as its brackets tell.
std::size_t ElementCursor::end_by_brackets() const {
    const std::string_view text = array_.bytes;
    const std::size_t begin = element_begin_;
    if (text[begin] == '"') return end_of_string(text, begin);
    if (text[begin] != '{' && text[begin] != '[') {
        return std::min(text.find_first_of(",] \t\r\n", begin + 1), text.size());
    }
    std::size_t depth = 0;
    for (std::size_t at = begin; at < text.size(); ++at) {
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

// Goes to the { of the first line that begins after `from` and is indented as the last element was. False if there is
// none or if the element did not begin its line.
bool ElementCursor::find_line_indented_alike(std::size_t from) {
    if (no_more_lines_) return false;
    const std::string_view text = array_.bytes;
    std::size_t line_begin = element_begin_;
    while (line_begin > 0 && (text[line_begin - 1] == ' ' || text[line_begin - 1] == '\t')) --line_begin;
    if (line_begin == 0 || text[line_begin - 1] != '\n') return false;
    const std::string_view indent = text.substr(line_begin, element_begin_ - line_begin);
    for (std::size_t at = text.find('\n', from); at != std::string_view::npos; at = text.find('\n', at + 1)) {
        const std::string_view line = text.substr(at + 1);
        if (line.starts_with(indent) && line.substr(indent.size()).starts_with('{')) {
            at_ = at + 1 + indent.size();
            return true;
        }
    }
    no_more_lines_ = true;
    return false;
}

void ElementCursor::skip_space() {
    while (at_ < array_.bytes.size() && is_json_space(array_.bytes[at_])) ++at_;
}

}  // namespace grainside::listing
