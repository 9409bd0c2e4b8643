#include "claims/quoted_reviews.h"

#include <algorithm>

namespace grainside::claims {
namespace {

using text::Token;
using text::TokenKind;
using vocabulary::Role;

constexpr std::size_t kShortest = 4;     // tokens; a product's name is shorter
constexpr std::size_t kLongest = 150;    // tokens; also bounds what a hostile text costs
constexpr std::size_t kAttribution = 8;  // tokens within which it is said whose words they are

bool has_space_before(const Token& token) {
    return (token.flags & text::flag::kSpaceBefore) != 0;
}

// A mark that hugs the word behind it: not the inches of '28" to 44"'.
bool opens(const text::Tokens& tokens, std::size_t at) {
    const auto& list = tokens.list;
    return list[at].kind == TokenKind::quote && at + 1 < list.size() && list[at + 1].kind == TokenKind::word &&
           !has_space_before(list[at + 1]) &&
           (at == 0 || has_space_before(list[at]) || list[at - 1].kind == TokenKind::line_end);
}

std::size_t closing(const text::Tokens& tokens, std::size_t open) {
    const std::size_t end = std::min(tokens.list.size(), open + kLongest);
    for (std::size_t i = open + 1; i < end; ++i) {
        if (tokens.list[i].kind == TokenKind::quote) return has_space_before(tokens.list[i]) ? open : i;
    }
    return open;
}

// Whether one of the terms that begin in tokens [first, last) passes `test`.
template <typename Test>
bool any_term(std::span<const vocabulary::Hit> hits, std::size_t first, std::size_t last, Test test) {
    auto hit =
        std::partition_point(hits.begin(), hits.end(), [&](const vocabulary::Hit& one) { return one.first < first; });
    for (; hit != hits.end() && hit->first < last; ++hit) {
        if (test(*hit)) return true;
    }
    return false;
}

bool parts_names(TokenKind kind) {
    return kind == TokenKind::comma || kind == TokenKind::dash || kind == TokenKind::open || kind == TokenKind::close ||
           kind == TokenKind::stop;
}

// '" Marit, Bergen', '" (Jude)': a few words up to the end of the line, of which we know none but a place.
bool is_signed(const vocabulary::Vocabulary& vocabulary, const text::Tokens& tokens,
               std::span<const vocabulary::Hit> hits, std::size_t from) {
    constexpr std::size_t kLongestName = 4;
    std::size_t words = 0;
    std::size_t end = from;
    if (end < tokens.list.size() && tokens.list[end].kind == TokenKind::line_end) ++end;
    for (; end < tokens.list.size() && tokens.list[end].kind != TokenKind::line_end; ++end) {
        if (parts_names(tokens.list[end].kind)) continue;
        if (tokens.list[end].kind != TokenKind::word || ++words > kLongestName) return false;
    }
    return words > 0 && !any_term(hits, from, end, [&](const vocabulary::Hit& hit) {
               return !vocabulary.terms.roles(hit.end).any({Role::place_name});
           });
}

}  // namespace

void find_quoted_reviews(const vocabulary::Vocabulary& vocabulary, const text::Tokens& tokens,
                         std::span<const vocabulary::Hit> hits, std::vector<TokenRange>& reviews) {
    reviews.clear();
    const auto names_reviewer = [&](std::size_t first, std::size_t last) {
        return any_term(hits, first, last, [&](const vocabulary::Hit& hit) {
            return vocabulary.terms.roles(hit.end).any({Role::reviewer});
        });
    };
    std::size_t done = 0;
    for (std::size_t i = 0; i < tokens.list.size(); ++i) {
        if (!opens(tokens, i)) continue;
        const std::size_t close = closing(tokens, i);
        if (close < i + kShortest) continue;
        std::size_t end = close + 1;  // of what may say whose words they are
        while (end < tokens.list.size() && end <= close + kAttribution && tokens.list[end].kind != TokenKind::quote)
            ++end;
        // 'One customer told us: "'
        const bool introduced = i > 0 && tokens.list[i - 1].kind == TokenKind::colon &&
                                names_reviewer(std::max(done, i - std::min(i, kAttribution)), i);
        if (introduced || names_reviewer(close + 1, end) || is_signed(vocabulary, tokens, hits, close + 1))
            reviews.push_back({i, close + 1});
        i = close;
        done = close + 1;
    }
}

}  // namespace grainside::claims
