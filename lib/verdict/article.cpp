#include "verdict/article.h"

#include <algorithm>
#include <cstddef>
#include <initializer_list>
#include <iterator>
#include <string>

#include "verdict/letter_case.h"
#include "verdict/neighbour_words.h"

namespace grainside::verdict {
namespace {

// Whether it is spoken with a vowel in front. By spelling, with the exceptions that such texts have.
bool begins_with_vowel_sound(std::string_view word) {
    std::string small(word.substr(0, std::min<std::size_t>(word.size(), 12)));
    std::size_t capitals = 0;
    while (capitals < word.size() && is_upper(word[capitals])) ++capitals;
    // Letters that are spelt out: an MDF board, an ABS shell, a PU coat; but a PUR-free, NASA-like word is rare here.
    const bool is_spelt = capitals >= 2 && (capitals == word.size() || !is_lower(word[capitals]));
    if (is_spelt) return std::string_view("AEFHILMNORSX").find(word.front()) != std::string_view::npos;
    std::transform(small.begin(), small.end(), small.begin(), to_lower);
    const auto starts = [&](std::initializer_list<std::string_view> beginnings) {
        return std::any_of(beginnings.begin(), beginnings.end(),
                           [&](std::string_view one) { return small.starts_with(one); });
    };
    if (small.empty()) return false;
    if (small.front() == '8' || starts({"11 ", "18 "}) || small == "11" || small == "18") return true;
    if (starts({"hour", "honest", "heir", "honour", "honor"})) return true;
    if (starts({"uni", "use", "usu", "euro", "one", "once", "ewe", "u-"}) && !starts({"unin", "unim", "unid"})) {
        return false;
    }
    return std::string_view("aeiou").find(small.front()) != std::string_view::npos;
}

// Where the marks begin that open right before `at`: A "[vegan leather]" tote, a <b>[vegan leather]</b> tote.
std::size_t before_opening_marks(std::string_view text, std::size_t at) {
    constexpr std::string_view kMarks[] = {
        "\"",           "'",        "*",       "_", "(", "\xE2\x80\x98", "\xE2\x80\x9C", "\xE2\x80\x9D",
        "\xE2\x80\x9E", "\xC2\xAB", "\xC2\xBB"};
    constexpr std::size_t kLongestTag = 20;
    const std::size_t furthest = at - std::min(at, kNeighbourReach);
    while (at > furthest) {
        const std::string_view rest = text.substr(furthest, at - furthest);
        const auto* mark = std::find_if(std::begin(kMarks), std::end(kMarks),
                                        [&](std::string_view one) { return rest.ends_with(one); });
        std::size_t size = mark == std::end(kMarks) ? 0 : mark->size();
        if (const std::size_t open = rest.rfind('<'); rest.ends_with('>') && open != std::string_view::npos) {
            if (rest.size() - open <= kLongestTag) size = rest.size() - open;
        }
        if (size == 0) break;
        at -= size;
    }
    return at;
}

}  // namespace

void put_article_right(std::string_view text, FittedEdit& edit, std::string_view next) {
    const auto article = word_in_front(text, before_opening_marks(text, edit.start));
    if (!article || next.empty() || !is_one_of(article->in(text), {"a", "an"})) return;
    // 'grade A [x]': a letter and no article, unless everything is in capitals.
    const std::string_view old = article->in(text);
    const bool all_capitals = next.size() > 1 && std::none_of(next.begin(), next.end(), is_lower);
    if (old == "A" && !all_capitals && !begins_sentence(text, article->start)) return;
    const bool needs_an = begins_with_vowel_sound(next);
    if (needs_an == (old.size() == 2)) return;
    std::string right = needs_an ? "an" : "a";
    if (is_upper(old.front())) right.front() = 'A';
    const bool shouted = article->start >= 2 && is_upper(text[article->start - 2]);
    if (old == "AN" || (old == "A" && needs_an && all_capitals && shouted)) right = needs_an ? "AN" : "A";
    edit.wording = right.append(text, article->end, edit.start - article->end) + edit.wording;
    edit.start = article->start;
}

}  // namespace grainside::verdict
