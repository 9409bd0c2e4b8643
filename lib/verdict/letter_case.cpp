#include "verdict/letter_case.h"

#include <algorithm>
#include <array>
#include <vector>

namespace grainside::verdict {

bool is_upper(char c) noexcept {
    return c >= 'A' && c <= 'Z';
}
bool is_lower(char c) noexcept {
    return c >= 'a' && c <= 'z';
}
char to_upper(char c) noexcept {
    return is_lower(c) ? static_cast<char>(c - 'a' + 'A') : c;
}
char to_lower(char c) noexcept {
    return is_upper(c) ? static_cast<char>(c - 'A' + 'a') : c;
}
bool is_word_byte(char c) noexcept {
    return is_upper(c) || is_lower(c) || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
}

namespace {

// Small in Title Case too.
constexpr auto kSmallWords = std::to_array<std::string_view>(
    {"a", "an", "and", "as", "at", "by", "for", "from", "in", "of", "on", "or", "the", "to", "with"});

bool is_small_word(std::string_view word) {
    return std::find(kSmallWords.begin(), kSmallWords.end(), word) != kSmallWords.end();
}

std::vector<std::string_view> letter_words(std::string_view text) {
    std::vector<std::string_view> words;
    for (std::size_t at = 0; at < text.size();) {
        if (!is_upper(text[at]) && !is_lower(text[at])) {
            ++at;
            continue;
        }
        std::size_t end = at;
        while (end < text.size() && (is_upper(text[end]) || is_lower(text[end]))) ++end;
        words.push_back(text.substr(at, end - at));
        at = end;
    }
    return words;
}

bool all_upper(std::string_view word) {
    return std::all_of(word.begin(), word.end(), is_upper);
}

// 'PU', 'RFID': capitals that a name has in any text.
bool is_name_in_capitals(std::string_view word) {
    constexpr std::size_t kLongest = 5;
    return word.size() >= 2 && word.size() <= kLongest && all_upper(word);
}

std::string_view word_before(std::string_view text, std::size_t at) {
    std::size_t end = std::min(at, text.size());
    while (end > 0 && text[end - 1] == ' ') --end;
    std::size_t begin = end;
    while (begin > 0 && (is_upper(text[begin - 1]) || is_lower(text[begin - 1]))) --begin;
    return text.substr(begin, end - begin);
}

std::string_view word_behind(std::string_view text, std::size_t at) {
    while (at < text.size() && (text[at] == ' ' || text[at] == '-')) ++at;
    std::size_t end = at;
    while (end < text.size() && (is_upper(text[end]) || is_lower(text[end]))) ++end;
    return text.substr(at, end - at);
}

enum class Case { small, capital, title, capitals };

// One capitalised word tells Title Case from a sentence's beginning by its neighbours.
Case case_of_one(std::string_view text, std::size_t start, std::size_t end) {
    const std::string_view before = begins_sentence(text, start) ? std::string_view() : word_before(text, start);
    const std::string_view behind = word_behind(text, end);
    const auto is_capitalised = [](std::string_view word) { return !word.empty() && is_upper(word.front()); };
    if (is_capitalised(behind) && (before.empty() || is_capitalised(before) || is_small_word(before))) {
        return Case::title;
    }
    if (is_capitalised(before) && behind.empty()) return Case::title;
    return begins_sentence(text, start) || !before.empty() ? Case::capital : Case::small;
}

Case case_of(std::string_view text, std::size_t start, std::size_t end) {
    const std::vector<std::string_view> words = letter_words(text.substr(start, end - start));
    if (words.empty()) return Case::small;
    const auto is_capitalised = [](std::string_view word) { return is_upper(word.front()); };
    if (std::all_of(words.begin(), words.end(), all_upper)) {
        if (words.size() > 1 || !is_name_in_capitals(words.front())) return Case::capitals;
        const std::string_view behind = word_behind(text, end);
        const std::string_view before = word_before(text, start);
        const auto shouts = [](std::string_view word) { return word.size() > 1 && all_upper(word); };
        if (shouts(behind) || shouts(before)) return Case::capitals;
        if (!behind.empty() && is_upper(behind.front())) return Case::title;
        return begins_sentence(text, start) ? Case::capital : Case::small;
    }
    std::size_t counted = 0;
    std::size_t capitalised = 0;
    for (const std::string_view word : words) {
        if (is_small_word(word)) continue;
        ++counted;
        if (is_capitalised(word)) ++capitalised;
    }
    if (counted > 1 && capitalised == counted) return Case::title;
    if (!is_capitalised(words.front())) return Case::small;
    if (words.size() > 1) {
        if (is_name_in_capitals(words.front())) return begins_sentence(text, start) ? Case::capital : Case::small;
        return Case::capital;
    }
    return case_of_one(text, start, end);
}

void capitalise_words(std::string& wording) {
    bool at_word = true;
    for (std::size_t i = 0; i < wording.size(); ++i) {
        const bool is_letter = is_upper(wording[i]) || is_lower(wording[i]);
        if (is_letter && at_word) {
            std::size_t end = i;
            while (end < wording.size() && (is_upper(wording[end]) || is_lower(wording[end]))) ++end;
            if (i == 0 || !is_small_word(std::string_view(wording).substr(i, end - i))) {
                wording[i] = to_upper(wording[i]);
            }
        }
        at_word = !is_letter && !(wording[i] >= '0' && wording[i] <= '9') && wording[i] != '\'';
    }
}

}  // namespace

bool begins_sentence(std::string_view text, std::size_t at) {
    std::size_t before = std::min(at, text.size());
    while (before > 0 && (text[before - 1] == ' ' || text[before - 1] == '\t' || text[before - 1] == '"' ||
                          text[before - 1] == '*' || text[before - 1] == '(')) {
        --before;
    }
    if (before == 0) return true;
    constexpr std::string_view kEnds = ".!?:\n\r;|>#-\xA2";  // \xA2: the last byte of a bullet, U+2022
    if (text[before - 1] == '-') return before >= 2 && text[before - 2] == '\n';
    return kEnds.find(text[before - 1]) != std::string_view::npos;
}

std::string in_case_of(std::string_view text, std::size_t start, std::size_t end, std::string wording) {
    if (wording.empty()) return wording;
    switch (case_of(text, start, end)) {
        case Case::small:
            break;
        case Case::capital:
            wording.front() = to_upper(wording.front());
            break;
        case Case::title:
            capitalise_words(wording);
            break;
        case Case::capitals:
            std::transform(wording.begin(), wording.end(), wording.begin(), to_upper);
            break;
    }
    return wording;
}

}  // namespace grainside::verdict
