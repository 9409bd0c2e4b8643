#include "verdict/neighbour_words.h"

#include <algorithm>

#include "verdict/letter_case.h"

namespace grainside::verdict {
namespace {

// One space or one line's end, which is how a wrapped text has its spaces.
std::size_t gap_behind(std::string_view text, std::size_t at) {
    const std::string_view rest = text.substr(std::min(at, text.size()));
    return rest.starts_with("\r\n") ? 2 : rest.starts_with(' ') || rest.starts_with('\n') ? 1 : 0;
}
std::size_t gap_in_front(std::string_view text, std::size_t at) {
    const std::string_view rest = text.substr(0, at);
    return rest.ends_with("\r\n") ? 2 : rest.ends_with(' ') || rest.ends_with('\n') ? 1 : 0;
}

}  // namespace

bool is_in_word(std::string_view text, std::size_t at) {
    return is_word_byte(text[at]) || text[at] == '-' || text[at] == '\'' || text[at] == '%';
}

std::optional<Word> word_in_front(std::string_view text, std::size_t at) {
    const std::size_t end = at - gap_in_front(text, at);
    std::size_t begin = end;
    while (begin > 0 && end - begin < kNeighbourReach && is_in_word(text, begin - 1)) --begin;
    if (begin == end || end == at) return std::nullopt;
    return Word{begin, end};
}

std::optional<Word> word_behind(std::string_view text, std::size_t at) {
    const std::size_t begin = at + gap_behind(text, at);
    if (begin == at || begin >= text.size() || !is_word_byte(text[begin])) return std::nullopt;
    std::size_t end = begin;
    while (end < text.size() && end - begin < kNeighbourReach && is_in_word(text, end)) ++end;
    return Word{begin, end};
}

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> words) {
    return std::any_of(words.begin(), words.end(), [&](std::string_view one) { return same_letters(word, one); });
}

std::vector<Word> words_of(std::string_view wording) {
    std::vector<Word> words;
    for (std::size_t at = 0; at < wording.size();) {
        const std::size_t end = std::min(wording.find(' ', at), wording.size());
        if (end > at) words.push_back({at, end});
        at = end + 1;
    }
    return words;
}

}  // namespace grainside::verdict
