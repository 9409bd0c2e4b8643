// Any bytes: the two tokenizers agree, and what must hold for the tokens and segments of any text holds. Where an empty
// line stands in them, the lines before it are terms too, and the matcher finds in the text behind it what the naive
// one finds.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "../unit/text/token_checks.h"
#include "require.h"
#include "support/both_matchers.h"
#include "text/segments.h"
#include "text/tokenizer.h"

namespace {

using namespace grainside::text;
using grainside::fuzz::require;
using grainside::support::NaiveTerm;

// The naive matcher tries each term at each token.
constexpr std::size_t kMostTerms = 12;
constexpr std::size_t kMostWords = 5;
constexpr std::size_t kMostMatchedBytes = 1024;

// The folded words of a line; none where it holds a mark, or a word of which a slip would not be clear: the naive
// matcher knows neither that numbers are never misspelt nor how long a word may be.
NaiveTerm term_of(std::string_view line) {
    Tokens tokens;
    tokenize(line, tokens);
    NaiveTerm term;
    for (const Token& token : tokens.list) {
        const std::string word(tokens.folded_text(token));
        const bool long_word = word.size() >= grainside::vocabulary::kShortestMisspelt;
        const bool letters = std::all_of(word.begin(), word.end(), [](char c) { return c >= 'a' && c <= 'z'; });
        if (token.kind > TokenKind::number || word.empty() || term.size() == kMostWords) return {};
        if (word.size() > grainside::vocabulary::kLongestMisspelt || (long_word && !letters)) return {};
        term.push_back(word);
    }
    return term;
}

// Whether some text could be a slip of two words at once: the matcher takes one of them, the naive one either.
bool has_near_words(const std::vector<NaiveTerm>& terms) {
    std::vector<std::string> words;
    for (const NaiveTerm& term : terms) {
        std::copy_if(term.begin(), term.end(), std::back_inserter(words),
                     [](const std::string& word) { return word.size() >= grainside::vocabulary::kShortestMisspelt; });
    }
    std::sort(words.begin(), words.end());
    words.erase(std::unique(words.begin(), words.end()), words.end());
    for (std::size_t i = 0; i < words.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            if (grainside::support::slips_between(words[i], words[j]) <= 3) return true;
        }
    }
    return false;
}

void check_matches(std::string_view lines, std::string_view text) {
    std::vector<NaiveTerm> terms;
    while (!lines.empty() && terms.size() < kMostTerms) {
        const std::size_t end = std::min(lines.find('\n'), lines.size());
        NaiveTerm term = term_of(lines.substr(0, end));
        lines.remove_prefix(std::min(end + 1, lines.size()));
        if (!term.empty() && std::find(terms.begin(), terms.end(), term) == terms.end())
            terms.push_back(std::move(term));
    }
    if (terms.empty() || has_near_words(terms)) return;
    grainside::support::BothMatchers both(terms);
    require(both.agree(text.substr(0, kMostMatchedBytes)));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    // Longer inputs find nothing that several blocks of 64 bytes do not, and cost the fuzzer its speed.
    if (size > 4096) return 0;
    const std::string_view text(reinterpret_cast<const char*>(data), size);

    // Kept from input to input, as a worker keeps them: what an earlier text left in the buffers must not matter.
    static Tokens tokens;
    static Tokens plain;
    static std::vector<Segment> segments;
    tokenize(text, tokens);
    tokenize_plainly(text, plain);
    require(same_tokens(tokens, plain));
    require(first_fault(text, tokens).empty());
    require(first_fault(text, plain).empty());

    cut_segments(tokens, segments);
    std::uint32_t past = 0;
    for (const Segment& segment : segments) {
        require(past <= segment.first && segment.first < segment.last && segment.last <= tokens.list.size());
        past = segment.last;
    }
    const std::size_t empty_line = text.find("\n\n");
    if (empty_line != std::string_view::npos) check_matches(text.substr(0, empty_line), text.substr(empty_line + 2));
    return 0;
}
