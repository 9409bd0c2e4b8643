#include "verdict/quotation.h"

#include <algorithm>
#include <iterator>

#include "verdict/letter_case.h"

namespace grainside::verdict {
namespace {

constexpr std::size_t kQuotationReach = 600;
constexpr std::string_view kStraight = "\"";

struct Marks {
    std::string_view open, close;
};
// U+201C, U+201D; U+201E, U+201C; U+00AB, U+00BB. Single ones are apostrophes too often.
constexpr Marks kMarks[] = {
    {"\xE2\x80\x9C", "\xE2\x80\x9D"}, {"\xE2\x80\x9E", "\xE2\x80\x9C"}, {"\xC2\xAB", "\xC2\xBB"}};

bool is_inch(std::string_view text, std::size_t at) {
    return at > 0 && text[at - 1] >= '0' && text[at - 1] <= '9';
}

std::string_view line_before(std::string_view text, std::size_t start) {
    std::size_t from = start;
    while (from > 0 && start - from < kQuotationReach && text[from - 1] != '\n') --from;
    return text.substr(from, start - from);
}

std::string_view line_behind(std::string_view text, std::size_t end) {
    const std::string_view reach = text.substr(end, kQuotationReach);
    return reach.substr(0, std::min(reach.find('\n'), reach.size()));
}

// Where the straight mark stands that is open at the end of `line`; npos where none is.
std::size_t open_straight(std::string_view line) {
    std::size_t open = std::string_view::npos;
    for (std::size_t at = line.find(kStraight); at != std::string_view::npos; at = line.find(kStraight, at + 1)) {
        if (is_inch(line, at)) continue;
        open = open == std::string_view::npos ? at : std::string_view::npos;
    }
    return open;
}

// '> I love my vegan leather tote', as Markdown and mail quote; '> 80% leather' is an amount.
bool begins_as_quoted(std::string_view line_before) {
    const std::size_t mark = line_before.find_first_not_of(" \t");
    if (mark == std::string_view::npos || line_before[mark] != '>') return false;
    const std::size_t word = line_before.find_first_not_of("> \t", mark);
    return word == std::string_view::npos || line_before[word] < '0' || line_before[word] > '9';
}

bool has_words(std::string_view text) {
    return std::any_of(text.begin(), text.end(), is_word_byte);
}

bool between(std::string_view before, std::string_view behind, std::size_t open, std::size_t open_bytes,
             std::size_t close) {
    if (open == std::string_view::npos || close == std::string_view::npos) return false;
    return has_words(before.substr(open + open_bytes)) || has_words(behind.substr(0, close));
}

}  // namespace

bool stands_in_quotation(std::string_view text, std::size_t start, std::size_t end) {
    const std::string_view before = line_before(text, start);
    const std::string_view behind = line_behind(text, end);
    if (before.size() < kQuotationReach && begins_as_quoted(before)) return true;
    if (between(before, behind, open_straight(before), kStraight.size(), behind.find(kStraight))) return true;
    return std::any_of(std::begin(kMarks), std::end(kMarks), [&](const Marks& marks) {
        const std::size_t open = before.rfind(marks.open);
        if (open == std::string_view::npos) return false;
        const bool closed = before.find(marks.close, open + marks.open.size()) != std::string_view::npos;
        if (closed) return false;
        return between(before, behind, open, marks.open.size(), behind.find(marks.close));
    });
}

}  // namespace grainside::verdict
