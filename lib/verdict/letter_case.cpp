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
bool same_letters(std::string_view a, std::string_view b) noexcept {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](char x, char y) { return to_lower(x) == to_lower(y); });
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

std::string_view word_behind(std::string_view text, std::size_t at) {
    while (at < text.size() && (text[at] == ' ' || text[at] == '-')) ++at;
    std::size_t end = at;
    while (end < text.size() && (is_upper(text[end]) || is_lower(text[end]))) ++end;
    return text.substr(at, end - at);
}

// Whether most words around, on the same line, have a capital: at least two of them, and three of four.
bool is_title_around(std::string_view text, std::size_t start, std::size_t end) {
    constexpr std::size_t kReach = 80;
    std::size_t from = start;
    while (from > 0 && start - from < kReach && text[from - 1] != '\n') --from;
    std::size_t to = end;
    while (to < text.size() && to - end < kReach && text[to] != '\n') ++to;
    std::size_t counted = 0;
    std::size_t capitalised = 0;
    for (const std::string_view side : {text.substr(from, start - from), text.substr(end, to - end)}) {
        for (const std::string_view word : letter_words(side)) {
            if (word.size() < 2 || is_small_word(word)) continue;
            ++counted;
            if (is_upper(word.front())) ++capitalised;
        }
    }
    return capitalised >= 2 && capitalised * 4 >= counted * 3;
}

enum class Case { small, capital, title, capitals };

Case case_of(std::string_view text, std::size_t start, std::size_t end) {
    const std::vector<std::string_view> words = letter_words(text.substr(start, end - start));
    if (words.empty()) return Case::small;
    const auto is_capitalised = [](std::string_view word) { return is_upper(word.front()); };
    if (std::all_of(words.begin(), words.end(), all_upper)) {
        if (words.size() > 1 || !is_name_in_capitals(words.front())) return Case::capitals;
        const std::string_view behind = word_behind(text, end);
        if (behind.size() > 1 && all_upper(behind)) return Case::capitals;
        if (is_title_around(text, start, end)) return Case::title;
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
    // '18k gold' at the head of a sentence: a number hides its capital.
    const bool begins_with_letter = is_upper(text[start]) || is_lower(text[start]);
    if (!begins_with_letter && begins_sentence(text, start)) return Case::capital;
    if (!is_capitalised(words.front())) return Case::small;
    if (words.size() > 1) {
        if (is_name_in_capitals(words.front())) return begins_sentence(text, start) ? Case::capital : Case::small;
        return Case::capital;
    }
    return is_title_around(text, start, end) ? Case::title : Case::capital;
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
    constexpr std::string_view kPassed = " \t\"*(_`'";
    while (before > 0 && kPassed.find(text[before - 1]) != std::string_view::npos) --before;
    if (before == 0) return true;
    const char last = text[before - 1];
    if (last == '-') return before < 2 || text[before - 2] == '\n';
    if (static_cast<unsigned char>(last) >= 0x80) {
        // Bullets, arrows, brackets and pictures stand in these blocks; letters do not.
        while (before > 1 && (static_cast<unsigned char>(text[before - 1]) & 0xC0U) == 0x80U) --before;
        const auto lead = static_cast<unsigned char>(text[before - 1]);
        return lead == 0xE2 || lead == 0xE3 || lead == 0xF0;
    }
    constexpr std::string_view kEnds = ".!?:\n\r;|>#";
    return kEnds.find(last) != std::string_view::npos;
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
