// The yardstick for term matching: slow, obvious, and written without looking at how the matcher works.
//
// At each token, from the left, every term is tried word by word; the longest that fits wins, and matching goes on
// behind it. A word of the text fits a term's word if they are equal, or if the text's word is no word of any term and
// differs from a long word of a term by one slip of the pen.
#ifndef GRAINSIDE_TESTS_SUPPORT_NAIVE_MATCHER_H
#define GRAINSIDE_TESTS_SUPPORT_NAIVE_MATCHER_H

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "text/token.h"

namespace grainside::support {

using NaiveTerm = std::vector<std::string>;  // its words, folded

struct NaiveHit {
    std::size_t first = 0;  // half-open range of tokens
    std::size_t last = 0;
    std::size_t term = 0;  // index into the terms
    bool operator==(const NaiveHit&) const = default;
};

// Optimal string alignment distance: drops, additions, changes and swaps of neighbours, by the table of the textbook
// (Damerau 1964; Wagner and Fischer 1974).
inline std::size_t slips_between(std::string_view a, std::string_view b) {
    std::vector<std::vector<std::size_t>> table(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i) table[i][0] = i;
    for (std::size_t j = 0; j <= b.size(); ++j) table[0][j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t change = table[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            table[i][j] = std::min({table[i - 1][j] + 1, table[i][j - 1] + 1, change});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
                table[i][j] = std::min(table[i][j], table[i - 2][j - 2] + 1);
            }
        }
    }
    return table[a.size()][b.size()];
}

class NaiveMatcher {
public:
    // Words of `shortest` letters and more may be misspelt, the first letter being right.
    NaiveMatcher(std::vector<NaiveTerm> terms, std::size_t shortest) : terms_(std::move(terms)), shortest_(shortest) {}

    std::vector<NaiveHit> match(const text::Tokens& tokens) const {
        std::vector<NaiveHit> hits;
        for (std::size_t at = 0; at < tokens.list.size();) {
            const NaiveHit* best = nullptr;
            NaiveHit hit;
            for (std::size_t term = 0; term < terms_.size(); ++term) {
                const std::size_t last = at + terms_[term].size();
                if (!stands_at(terms_[term], tokens, at) || (best != nullptr && last <= hit.last)) continue;
                hit = {at, last, term};
                best = &hit;
            }
            if (best != nullptr) hits.push_back(hit);
            at = best != nullptr ? hit.last : at + 1;
        }
        return hits;
    }

private:
    bool stands_at(const NaiveTerm& term, const text::Tokens& tokens, std::size_t at) const {
        if (at + term.size() > tokens.list.size()) return false;
        for (std::size_t i = 0; i < term.size(); ++i) {
            const text::Token& token = tokens.list[at + i];
            const bool is_word = token.kind == text::TokenKind::word || token.kind == text::TokenKind::number;
            if (!is_word || !fits(tokens.folded_text(token), term[i])) return false;
        }
        return true;
    }

    bool fits(std::string_view written, const std::string& meant) const {
        if (written == meant) return true;
        if (meant.size() < shortest_ || written.empty() || written.front() != meant.front()) return false;
        return slips_between(written, meant) == 1 && !is_term_word(written);
    }

    bool is_term_word(std::string_view word) const {
        return std::any_of(terms_.begin(), terms_.end(), [&](const NaiveTerm& term) {
            return std::find(term.begin(), term.end(), word) != term.end();
        });
    }

    std::vector<NaiveTerm> terms_;
    std::size_t shortest_;
};

}  // namespace grainside::support

#endif  // GRAINSIDE_TESTS_SUPPORT_NAIVE_MATCHER_H
