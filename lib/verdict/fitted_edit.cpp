#include "verdict/fitted_edit.h"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>
#include <vector>

#include "verdict/article.h"
#include "verdict/letter_case.h"
#include "verdict/neighbour_words.h"
#include "verdict/superlative.h"

namespace grainside::verdict {
namespace {

// Marks that must neither go nor come: quotation marks, tags, references, emphasis, and what parts cells and lines.
bool has_formatting(std::string_view words) {
    constexpr std::string_view kMarks = "\"<>&*_`[]#|\\\t(){}";
    if (words.find_first_of(kMarks) != std::string_view::npos) return true;
    // U+2018 to U+201F, U+00AB and U+00BB.
    for (const std::string_view quote : {"\xE2\x80\x98", "\xE2\x80\x9A", "\xE2\x80\x9B", "\xE2\x80\x9C", "\xE2\x80\x9D",
                                         "\xE2\x80\x9E", "\xE2\x80\x9F", "\xC2\xAB", "\xC2\xBB"}) {
        if (words.find(quote) != std::string_view::npos) return true;
    }
    return false;
}

// The line's end between the words of a wrapped text, with the indentation behind it; "" = there is none.
std::string_view line_break_in(std::string_view words) {
    const std::size_t end = words.find('\n');
    if (end == std::string_view::npos) return {};
    constexpr std::string_view kSpaces = " \r\n";
    const std::size_t from = words.find_last_not_of(kSpaces, end) + 1;
    return words.substr(from, words.find_first_not_of(kSpaces, end) - from);
}

bool has_preposition(std::string_view wording) {
    const auto words = words_of(wording);
    return std::any_of(words.begin(), words.end(), [&](const Word& word) {
        return is_one_of(word.in(wording), {"with", "in", "from", "of", "by", "on", "for"});
    });
}

bool has_words_behind_noun(std::string_view wording) {
    return has_preposition(wording.substr(0, wording.find('(')));
}

// [solid gold]-plated, and the wording has 'plated' too.
bool says_hyphen_word(const Place& place, std::string_view wording) {
    if (place.end >= place.text.size() || place.text[place.end] != '-') return false;
    const std::string_view rest = place.text.substr(place.end + 1, kNeighbourReach);
    const auto end = std::find_if_not(rest.begin(), rest.end(), is_word_byte);
    const std::string_view joined = rest.substr(0, static_cast<std::size_t>(end - rest.begin()));
    const auto words = words_of(wording);
    return std::any_of(words.begin(), words.end(),
                       [&](const Word& word) { return same_letters(word.in(wording), joined); });
}

// 'sheet with apple filler' in brackets reads badly before another noun, so it goes: 'an imitation leather loop'. A
// short name stays there: 'imitation leather (cork) sleeve'.
void drop_long_remark(std::string& wording) {
    const std::size_t open = wording.find(" (");
    if (open == std::string::npos) return;
    if (has_preposition(std::string_view(wording).substr(open))) wording.resize(open);
}

// 'made of [] cotton', 'a [] strap': words that go on with a noun, so that what stood between can go. Not behind 'and',
// a comma, 'is' or 'very', whose phrase would break.
bool leaves_a_phrase(const Place& place) {
    const std::string_view text = place.text;
    if (!place.before_noun) return false;
    const auto behind = word_behind(text, place.end);
    if (!behind || is_one_of(behind->in(text), {"and", "or", "nor", "but", "yet", "to", "in", "for", "with", "against",
                                                "as", "by", "from", "on", "of", "than", "plus"})) {
        return false;
    }
    if (begins_sentence(text, place.start)) return true;
    const auto before = word_in_front(text, place.start);
    if (!before) return false;
    const std::string_view word = before->in(text);
    const bool is_adverb = word.size() > 3 && same_letters(word.substr(word.size() - 2), "ly");
    return !is_adverb &&
           !is_one_of(word, {"and",  "or",   "nor",  "but",   "yet",   "very",  "so",    "too",    "as",
                             "more", "most", "less", "quite", "super", "extra", "not",   "no",     "non",
                             "is",   "are",  "be",   "being", "was",   "were",  "ultra", "highly", "never"});
}

// The word at `start` goes into the edit and gets a capital. All of it, so that a person reads a word and not a letter.
void take_in_capital(std::string_view text, std::size_t start, FittedEdit& edit) {
    edit.end = start + 1;
    while (edit.end < text.size() && is_word_byte(text[edit.end])) ++edit.end;
    edit.wording = text.substr(start, edit.end - start);
    edit.wording.front() = to_upper(edit.wording.front());
}

// '100% ' of '100% viscose'; nothing where no share stands first.
std::string_view share_in_front(std::string_view text) {
    const std::string_view share = text.substr(0, text.find_first_not_of("0123456789.,% "));
    return share.find('%') == std::string_view::npos ? std::string_view() : share;
}

// 'machine stitched, [machine stitched]', '[linen], 100% cotton' for cotton: where the text beside says it already, the
// words go with what parts them.
bool said_beside(const Place& place, FittedEdit& edit) {
    const std::string_view before = place.text.substr(0, place.start);
    const std::string_view behind = place.text.substr(place.end);
    for (const std::string_view gap : {", ", " / ", "/"}) {
        const std::size_t size = gap.size() + edit.wording.size();
        if (before.ends_with(gap) && before.size() >= size &&
            same_letters(before.substr(before.size() - size, edit.wording.size()), edit.wording) &&
            (before.size() == size || !is_in_word(place.text, before.size() - size - 1))) {
            edit = {place.start - gap.size(), place.end, {}};
            return true;
        }
        if (!behind.starts_with(gap)) continue;
        const std::string_view said = behind.substr(gap.size());
        const std::size_t said_end = share_in_front(said).size() + edit.wording.size();
        if (said.size() >= said_end &&
            same_letters(said.substr(said_end - edit.wording.size(), edit.wording.size()), edit.wording) &&
            (said.size() == said_end || !is_in_word(said, said_end))) {
            edit = {place.start, place.end + gap.size(), {}};
            const char first = place.text[edit.end];
            if (is_upper(place.text[place.start]) && is_lower(first) && begins_sentence(place.text, place.start)) {
                take_in_capital(place.text, edit.end, edit);
            }
            return true;
        }
    }
    return false;
}

// 'nubuck (microfibre)', 'silk (100% viscose)': where a bracket right behind the place says the wording, with a share
// or without, what it says stands in the place of both. Where the place ends then.
std::size_t take_bracket(const Place& place, std::string& wording) {
    const std::string_view behind = place.text.substr(place.end);
    if (!behind.starts_with(" (")) return place.end;
    const std::size_t close = behind.find(')');
    if (close == std::string_view::npos) return place.end;
    const std::string_view said = behind.substr(2, close - 2);
    if (said.size() < wording.size() || !same_letters(said.substr(said.size() - wording.size()), wording)) {
        return place.end;
    }
    if (share_in_front(said).size() + wording.size() != said.size()) return place.end;
    wording = said;
    return place.end + close + 1;
}

// 'with the [a polyester lining]'.
void drop_second_article(const Place& place, std::string& wording) {
    const auto words = words_of(wording);
    const auto front = word_in_front(place.text, place.start);
    if (words.empty() || !front || !is_one_of(words.front().in(wording), {"a", "an", "the"})) return;
    if (is_one_of(front->in(place.text), {"a", "an", "the", "our", "your", "my", "its", "their", "his", "her", "this",
                                          "that", "these", "those", "each", "every", "any", "no", "one"})) {
        wording.erase(0, std::min(words.front().end + 1, wording.size()));
    }
}

// Takes words off the wording that the text has behind or in front of the place.
void drop_doubles(const Place& place, std::string& wording) {
    const std::string_view text = place.text;
    const auto cut = [&](std::size_t start, std::size_t end) {
        wording = wording.substr(start, end - start);
        while (!wording.empty() && wording.back() == ' ') wording.pop_back();
    };
    if (const auto behind = word_behind(text, place.end)) {
        // From the word that stands behind already: [split leather] leather, [full grain] suede.
        const auto words = words_of(wording);
        for (const Word& word : words) {
            if (!same_letters(word.in(wording), behind->in(text))) continue;
            cut(0, word.start);
            break;
        }
    }
    for (int n = 0; n < 3 && !wording.empty(); ++n) {
        // imitation [imitation leather]: as many words as both have, the longest run first.
        const auto words = words_of(wording);
        std::size_t at = place.start;
        std::vector<std::string_view> before;
        for (std::size_t i = 0; i < words.size(); ++i) {
            const auto word = word_in_front(text, at);
            if (!word) break;
            before.insert(before.begin(), word->in(text));
            at = word->start;
        }
        std::size_t run = std::min(before.size(), words.size());
        while (run > 0) {
            bool same = true;
            for (std::size_t i = 0; i < run && same; ++i) {
                same = same_letters(before[before.size() - run + i], words[i].in(wording));
            }
            if (same) break;
            --run;
        }
        if (run == 0) break;
        const std::size_t start = run == words.size() ? wording.size() : words[run].start;
        cut(start, wording.size());
    }
}

}  // namespace

std::variant<FittedEdit, NoFit> fit(const Place& place, std::string wording) {
    const std::string_view text = place.text;
    if (has_formatting(text.substr(place.start, place.end - place.start))) {
        return "formatting stands between the words";
    }
    const std::string_view break_inside = line_break_in(text.substr(place.start, place.end - place.start));
    if (place.start >= 2 && text[place.start - 1] == '-' && is_word_byte(text[place.start - 2])) {
        return "the words are only a part of a longer word";
    }
    if (says_hyphen_word(place, wording)) return "the words are only a part of a longer word";
    const bool to_leave_out = wording.empty();
    const auto behind = word_behind(text, place.end);
    const auto superlative = article_of_superlative(place, wording);
    if (const auto* why = std::get_if<NoFit>(&superlative)) return *why;
    const std::optional<Word> the = std::get<std::optional<Word>>(superlative);
    if (!to_leave_out) {
        if (place.before_noun && behind) drop_long_remark(wording);
        drop_second_article(place, wording);
        drop_doubles(place, wording);
    }
    const std::size_t end = wording.empty() ? place.end : take_bracket(place, wording);
    FittedEdit edit{place.start, end, wording};
    if (!wording.empty() && break_inside.empty() && said_beside(place, edit)) return edit;
    // 'Made in Italy' and 'made in China' begin with the same word, which is no name.
    const std::string_view old = text.substr(place.start, place.end - place.start);
    const bool same_word = same_letters(old.substr(0, old.find(' ')), wording.substr(0, wording.find(' ')));
    if (!place.is_name || same_word || begins_sentence(text, place.start)) {
        edit.wording = in_case_of(text, place.start, place.end, wording);
    }
    if (the) {
        edit.start = the->start;
        if (is_upper(text[the->start]) && !edit.wording.empty()) edit.wording.front() = to_upper(edit.wording.front());
    }
    if (wording.empty()) {
        if (to_leave_out ? !leaves_a_phrase(place) : !behind)
            return "without the words the phrase around them has to be written anew";
        if (!break_inside.empty()) return kBrokenLine;
        const std::string_view next = behind->in(text);
        if (text[place.end] != ' ') {
            // At the end of a line they go with the space in front.
            if (place.start == 0 || text[place.start - 1] != ' ') return kBrokenLine;
            edit.start = place.start - 1;
            return edit;
        }
        // The words go with the space behind them; a capital goes over to what is now the first word.
        edit.end = place.end + 1;
        if (is_upper(text[edit.start]) && is_lower(text[behind->start]) && begins_sentence(text, edit.start)) {
            take_in_capital(text, behind->start, edit);
        }
        put_article_right(text, edit, next);
        return edit;
    }
    // 'made in Italy bag' is as good or bad as 'made in China bag'.
    if (place.before_noun && behind && has_words_behind_noun(edit.wording) &&
        !has_words_behind_noun(text.substr(place.start, place.end - place.start))) {
        return "the wording does not fit before the noun that follows";
    }
    const std::string first(edit.wording, 0, edit.wording.find(' '));
    if (!break_inside.empty()) {
        // The line ends where it did, between two of the new words.
        const std::size_t space = edit.wording.find(' ');
        if (space == std::string::npos) return kBrokenLine;
        edit.wording.replace(space, 1, break_inside);
    }
    put_article_right(text, edit, first);
    return edit;
}

}  // namespace grainside::verdict
