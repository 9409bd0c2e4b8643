#include "vocabulary/spelling.h"

#include <algorithm>
#include <cstdint>

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

// One bit a letter: a side whose letters are not all in the word cannot stand in it, which settles nearly every pair.
std::uint32_t letters_of(std::string_view word) {
    std::uint32_t letters = 0;
    for (char c : word) letters |= c >= 'a' && c <= 'z' ? 1U << (c - 'a') : 0U;
    return letters;
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

SpellingPair::SpellingPair(std::string_view first, std::string_view second)
    : left(first), right(second), left_letters(letters_of(first)), right_letters(letters_of(second)) {}

std::vector<std::string> paired_forms(std::string_view word, std::span<const SpellingPair> pairs) {
    std::vector<std::string> forms;
    const std::uint32_t letters = letters_of(word);
    const auto replace = [&](const std::string& from, const std::string& to) {
        if (word == from) {
            forms.push_back(to);
        } else if (from.size() >= kLongPairSide && word.size() > from.size()) {
            if (const std::size_t at = word.find(from); at != std::string_view::npos) {
                std::string form(word);
                form.replace(at, from.size(), to);
                forms.push_back(std::move(form));
            }
        }
    };
    for (const SpellingPair& pair : pairs) {
        if ((pair.left_letters & ~letters) == 0) replace(pair.left, pair.right);
        if ((pair.right_letters & ~letters) == 0) replace(pair.right, pair.left);
    }
    return forms;
}

bool can_be_joined(std::string_view left, std::string_view right) {
    return left.size() >= 2 && right.size() >= 2 && left.size() + right.size() >= 6 && !has_digit(left) &&
           !has_digit(right);
}

}  // namespace grainside::vocabulary
