#include "report/excerpts.h"

#include <algorithm>

namespace grainside::report {
namespace {

bool is_space(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

bool ends_sentence(char c) {
    return c == '.' || c == '!' || c == '?';
}

bool continues_char(std::string_view text, std::size_t at) {
    return at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80;
}

bool begins_sentence(std::string_view text, std::size_t at) {
    if (at == 0 || text[at - 1] == '\n') return true;
    return at >= 2 && is_space(text[at - 1]) && ends_sentence(text[at - 2]);
}

bool closes_sentence(std::string_view text, std::size_t at) {
    if (at == text.size() || text[at] == '\n') return true;
    return at > 0 && ends_sentence(text[at - 1]) && is_space(text[at]);
}

std::size_t sentence_start(std::string_view text, std::size_t at) {
    const std::size_t earliest = at > kContextBytes ? at - kContextBytes : 0;
    for (std::size_t start = at;; --start) {
        if (begins_sentence(text, start)) return start;
        if (start > earliest) continue;
        // Nothing to begin with in reach: at a word, or where there is none either, at a character.
        std::size_t word = earliest;
        while (word < at && !is_space(text[word])) ++word;
        if (word < at) return word + 1;
        std::size_t border = earliest;
        while (border < at && continues_char(text, border)) ++border;
        return border;
    }
}

std::size_t sentence_end(std::string_view text, std::size_t at) {
    const std::size_t latest = text.size() - at > kContextBytes ? at + kContextBytes : text.size();
    for (std::size_t end = at; end <= latest; ++end) {
        if (closes_sentence(text, end)) return end;
    }
    std::size_t word = latest;
    while (word > at && !is_space(text[word])) --word;
    if (word > at) return word;
    std::size_t border = latest;
    while (border > at && continues_char(text, border)) --border;
    return border;
}

std::size_t border_before(std::string_view text, std::size_t at) {
    while (at > 0 && continues_char(text, at)) --at;
    return at;
}

void add_around(std::string_view text, const MarkedSpan& mark, std::size_t index, std::vector<Excerpt>& excerpts) {
    const std::size_t start = sentence_start(text, mark.start);
    const std::size_t end = sentence_end(text, mark.end);
    if (mark.end - mark.start <= kMarkHeadBytes + kMarkTailBytes) {
        excerpts.push_back({start, end, index, index + 1});
        return;
    }
    const std::size_t head_end = border_before(text, mark.start + kMarkHeadBytes);
    const std::size_t tail_start = border_before(text, mark.end - kMarkTailBytes);
    excerpts.push_back({start, head_end, index, index + 1});
    excerpts.push_back({tail_start, end, index, index + 1});
}

bool only_space(std::string_view text) {
    return std::all_of(text.begin(), text.end(), is_space);
}

}  // namespace

std::vector<Excerpt> cut_excerpts(std::string_view text, std::span<const MarkedSpan> marks) {
    if (marks.empty()) return {};
    if (text.size() <= kWholeFieldBytes) return {{0, text.size(), 0, marks.size()}};
    std::vector<Excerpt> excerpts;
    for (std::size_t i = 0; i < marks.size(); ++i) add_around(text, marks[i], i, excerpts);
    std::stable_sort(excerpts.begin(), excerpts.end(),
                     [](const Excerpt& a, const Excerpt& b) { return a.start < b.start; });

    std::vector<Excerpt> merged;
    for (const Excerpt& excerpt : excerpts) {
        if (!merged.empty()) {
            Excerpt& last = merged.back();
            const bool touches =
                excerpt.start <= last.end || (excerpt.start - last.end <= kContextBytes &&
                                              only_space(text.substr(last.end, excerpt.start - last.end)));
            if (touches) {
                last.end = std::max(last.end, excerpt.end);
                last.first_mark = std::min(last.first_mark, excerpt.first_mark);
                last.last_mark = std::max(last.last_mark, excerpt.last_mark);
                continue;
            }
        }
        merged.push_back(excerpt);
    }
    return merged;
}

}  // namespace grainside::report
