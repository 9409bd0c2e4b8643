#include "vocabulary/spelling.h"

#include <algorithm>
#include <utility>

namespace grainside::vocabulary {

namespace {

constexpr std::size_t kLongPairSide = 5;

bool has_digit(std::string_view word) {
    return std::any_of(word.begin(), word.end(), [](char c) { return c >= '0' && c <= '9'; });
}

bool is_vowel(char c) {
    return std::string_view("aeiou").find(c) != std::string_view::npos;
}

bool takes_es(std::string_view word) {
    return word.ends_with("s") || word.ends_with("x") || word.ends_with("z") || word.ends_with("ch") ||
           word.ends_with("sh");
}

}  // namespace

std::vector<std::string> number_forms(std::string_view word) {
    std::vector<std::string> forms;
    if (word.size() < 3 || has_digit(word)) return forms;
    const std::string text(word);
    if (word.ends_with("y") && !is_vowel(word[word.size() - 2])) {
        forms.push_back(text.substr(0, text.size() - 1) + "ies");
    } else if (takes_es(word)) {
        forms.push_back(text + "es");
    } else {
        forms.push_back(text + "s");
    }
    if (word.size() > 3 && word.ends_with("ies")) {
        forms.push_back(text.substr(0, text.size() - 3) + "y");
    } else if (word.size() > 4 && word.ends_with("es") && takes_es(word.substr(0, word.size() - 2))) {
        forms.push_back(text.substr(0, text.size() - 2));
    } else if (word.size() > 3 && word.ends_with("s") && !word.ends_with("ss") && !word.ends_with("us")) {
        forms.push_back(text.substr(0, text.size() - 1));
    }
    return forms;
}

void SpellingPairs::add(std::string_view left, std::string_view right) {
    for (const auto& [from, to] : {std::pair(left, right), std::pair(right, left)}) {
        begins_.set(beginning_of(from));
        by_beginning_[beginning_of(from)].push_back(static_cast<std::uint32_t>(sides_.size()));
        sides_.push_back({std::string(from), std::string(to)});
    }
}

std::vector<std::string> SpellingPairs::forms(std::string_view word) const {
    struct Found {
        std::uint32_t side;
        std::size_t at;
    };
    std::vector<Found> found;
    for (std::size_t at = 0; at + 3 <= word.size(); ++at) {
        const std::size_t beginning = beginning_of(word.substr(at, 3));
        if (!begins_[beginning]) continue;
        for (std::uint32_t side : by_beginning_.at(beginning)) {
            const std::string& from = sides_[side].from;
            const bool counts = from.size() >= kLongPairSide || from.size() == word.size();
            if (counts && word.substr(at).starts_with(from)) found.push_back({side, at});
        }
    }
    std::sort(found.begin(), found.end(),
              [](const Found& a, const Found& b) { return a.side != b.side ? a.side < b.side : a.at < b.at; });
    std::vector<std::string> forms;
    for (std::size_t i = 0; i < found.size(); ++i) {
        if (i > 0 && found[i - 1].side == found[i].side) continue;  // only the first of one side is replaced
        const Side& side = sides_[found[i].side];
        forms.emplace_back(word).replace(found[i].at, side.from.size(), side.to);
    }
    return forms;
}

bool can_be_joined(std::string_view left, std::string_view right) {
    return left.size() >= 2 && right.size() >= 2 && left.size() + right.size() >= 6 && !has_digit(left) &&
           !has_digit(right);
}

}  // namespace grainside::vocabulary
