#include "lexicons.h"

#include <algorithm>
#include <filesystem>
#include <fstream>

namespace grainside::published {

namespace {

std::string trimmed(std::string_view text) {
    constexpr std::string_view kAround = " ;\t\r";
    const std::size_t first = text.find_first_not_of(kAround);
    if (first == std::string_view::npos) return {};
    return std::string(text.substr(first, text.find_last_not_of(kAround) - first + 1));
}

std::string_view word_at(std::string_view line, std::size_t at) {
    return line.substr(at, line.find(' ', at) - at);
}

std::uint8_t number(std::string_view digits) {
    unsigned value = 0;
    for (char c : digits) value = value * 10 + static_cast<unsigned>(c - '0');
    return static_cast<std::uint8_t>(value);
}

}  // namespace

std::string missing_word_lists() {
    std::string missing;
    for (const char* path : kWordLists) {
        if (!std::filesystem::exists(path)) missing += std::string(path) + " is not there; ";
    }
    return missing.empty() ? missing : missing + "install the packages wamerican and wbritish";
}

std::string missing_glosses() {
    std::string missing;
    for (const char* path : kGlossFiles) {
        if (!std::filesystem::exists(path)) missing += std::string(path) + " is not there; ";
    }
    return missing.empty() ? missing : missing + "install the package wordnet-base";
}

std::set<std::string> entries_of_word_lists() {
    std::set<std::string> entries;
    for (const char* path : kWordLists) {
        std::ifstream file(path);
        for (std::string line; std::getline(file, line);) entries.insert(line);
    }
    return entries;
}

std::vector<GlossText> gloss_texts_of(const char* path) {
    std::vector<GlossText> texts;
    std::ifstream file(path);
    // A line is "offset(8) topic(2) type(1) words(2) head ... | gloss"; the licence before them begins with blanks.
    constexpr std::size_t kTopic = 9;
    constexpr std::size_t kHead = 17;
    for (std::string line; std::getline(file, line);) {
        const std::size_t bar = line.find(" | ");
        if (line.empty() || line.front() == ' ' || bar == std::string::npos || bar < kHead) continue;
        GlossText text;
        text.topic = number(word_at(line, kTopic));
        text.head = word_at(line, kHead);
        // Examples stand in double quotes behind the definition.
        const std::string_view gloss = std::string_view(line).substr(bar + 3);
        bool quoted = false;
        for (std::size_t at = 0; at <= gloss.size(); quoted = !quoted) {
            const std::size_t end = std::min(gloss.find('"', at), gloss.size());
            text.text = trimmed(gloss.substr(at, end - at));
            text.is_example = quoted;
            // Between two examples stands punctuation, or who wrote the sentence.
            if (!text.text.empty() && (quoted || at == 0)) texts.push_back(text);
            at = end + 1;
        }
    }
    return texts;
}

std::set<std::string> listed_words(const std::string& file) {
    std::set<std::string> words;
    std::ifstream lines(std::string(GRAINSIDE_EVERYDAY_WORDS "/") + file);
    for (std::string line; std::getline(lines, line);) {
        const std::string_view word = word_at(line, 0);
        if (!word.empty() && word.front() != '#') words.emplace(word);
    }
    return words;
}

}  // namespace grainside::published
