#include "cut_texts.h"

#include <algorithm>
#include <iterator>
#include <vector>

namespace grainside::scoring {

namespace {

constexpr std::string_view kBlanks = " \t\r\n";
constexpr std::size_t kWindows[] = {3, 7};  // words: a noun phrase, and two that hang together
constexpr std::size_t kMostFillers = 8;     // longer reaches have rows in tests/unit/claims
constexpr std::string_view kFiller = " quorl";

// The words of `text` between blanks, with their marks, as they stand in it.
std::vector<std::string_view> words_of(std::string_view text) {
    std::vector<std::string_view> words;
    for (std::size_t at = text.find_first_not_of(kBlanks); at != std::string_view::npos;) {
        const std::size_t end = std::min(text.find_first_of(kBlanks, at), text.size());
        words.push_back(text.substr(at, end - at));
        at = text.find_first_not_of(kBlanks, end);
    }
    return words;
}

// From the first byte of `from` to the last of `to`, which stands in the same text.
std::string_view through(std::string_view from, std::string_view to) {
    return {from.data(), static_cast<std::size_t>(to.data() - from.data()) + to.size()};
}

}  // namespace

void CutTexts::cut(const Listing& listing) {
    for (const Field& field : listing.fields) {
        const std::vector<std::string_view> words = words_of(field.text);
        for (const std::size_t window : kWindows) {
            for (std::size_t first = 0; first + window <= words.size(); ++first)
                digest_.read(field.name, through(words[first], words[first + window - 1]));
        }
    }
}

void CutTexts::stretch(const Listing& listing) {
    std::string text;
    for (const Field& field : listing.fields) {
        const std::vector<std::string_view> words = words_of(field.text);
        for (std::size_t at = 1; at < words.size(); ++at) {
            const std::string_view before = through(words.front(), words[at - 1]);
            const std::string_view behind = through(words[at], words.back());
            text.assign(before);
            for (std::size_t fillers = 0; fillers < kMostFillers; ++fillers) {
                text += kFiller;
                const std::size_t size = text.size();
                text.append(" ").append(behind);
                digest_.read(field.name, text);
                text.resize(size);
            }
            text.assign(before.substr(0, before.size() - words[at - 1].size())).append(behind);
            digest_.read(field.name, text);
        }
    }
}

}  // namespace grainside::scoring
