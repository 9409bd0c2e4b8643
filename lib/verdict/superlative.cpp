#include "verdict/superlative.h"

#include <algorithm>
#include <cstddef>

#include "verdict/letter_case.h"

namespace grainside::verdict {
namespace {

// 'finest', 'best', 'most': by spelling, without the words that only end so.
bool is_superlative(std::string_view word) {
    if (is_one_of(word, {"best", "most"})) return true;
    constexpr std::size_t kShortest = 6;
    return word.size() >= kShortest && same_letters(word.substr(word.size() - 3), "est") &&
           !is_one_of(word, {"honest", "modest", "forest", "harvest", "interest", "amethyst", "midwest"});
}

bool has_superlative(std::string_view words) {
    const auto is_letter = [](char c) { return is_upper(c) || is_lower(c); };
    for (auto at = words.begin(); at != words.end();) {
        at = std::find_if(at, words.end(), is_letter);
        const auto end = std::find_if_not(at, words.end(), is_letter);
        if (is_superlative(
                words.substr(static_cast<std::size_t>(at - words.begin()), static_cast<std::size_t>(end - at)))) {
            return true;
        }
        at = end;
    }
    return false;
}

// 'one of the [finest]', 'among the [finest]': out of several, so that the noun is not one stuff. `the`: where it
// begins.
bool picks_out(std::string_view text, std::size_t the) {
    const auto before = word_in_front(text, the);
    if (!before) return false;
    if (!is_one_of(before->in(text), {"of"})) return is_one_of(before->in(text), {"among", "amongst"});
    const auto first = word_in_front(text, before->start);
    return first && is_one_of(first->in(text), {"one", "some", "any", "many", "few", "each"});
}

constexpr NoFit kSuperlative = "the words around belong to the superlative that would go";

}  // namespace

std::variant<std::optional<Word>, NoFit> article_of_superlative(const Place& place, std::string_view wording) {
    const std::string_view text = place.text;
    const bool goes = has_superlative(text.substr(place.start, place.end - place.start)) && !has_superlative(wording);
    const auto front = goes ? word_in_front(text, place.start) : std::nullopt;
    if (!front) return std::nullopt;
    const std::string_view word = front->in(text);
    if (word.ends_with("'s") || word.ends_with("\xE2\x80\x99s") || word.ends_with("s'")) return kSuperlative;
    if (!is_one_of(word, {"the"})) return std::nullopt;
    const bool is_stuff = wording.empty() ? place.before_stuff : !place.before_noun;
    if (!is_stuff || picks_out(text, front->start)) return kSuperlative;
    if (text[front->end] != ' ') return kBrokenLine;
    return front;
}

}  // namespace grainside::verdict
