#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>
#include <vector>

#include "text/token.h"
#include "text/tokenizer.h"
#include "verdict/examination/findings.h"
#include "verdict/examination/proof_texts.h"
#include "verdict/proof.h"
#include "vocabulary/matcher.h"

namespace grainside::verdict {

namespace {

using Severity = Issue::Severity;
using vocabulary::Role;

constexpr std::size_t kMostCompared = 64;  // texts to flag, or to pass, of one rule
constexpr std::size_t kFewestShared = 2;   // words that two texts must share to be alike

using Words = std::vector<std::string>;

// What of an example matters: its words without what could be any product, field by field.
class ExampleWords {
public:
    explicit ExampleWords(const vocabulary::Vocabulary& vocabulary) : vocabulary_(vocabulary) {}

    // In written order.
    Words of(const ProofText& example) {
        Words words;
        add("n ", example.title, words);
        add("d ", example.text, words);
        add("m ", example.material, words);
        add("c ", example.category, words);
        return words;
    }

    // The flagged words alone, as they would stand in the description.
    Words of_words(std::string_view text) {
        ProofText example;
        example.text = text;
        return of(example);
    }

private:
    bool is_dropped(const vocabulary::Hit& hit) const {
        const auto senses = vocabulary_.terms.senses(hit.end);
        return std::any_of(senses.begin(), senses.end(), [](const vocabulary::Sense& sense) {
            return sense.role == Role::product || sense.role == Role::determiner || sense.role == Role::article;
        });
    }

    void add(std::string_view field, std::string_view text, Words& words) {
        text::tokenize(text, tokens_);
        vocabulary::match_terms(vocabulary_, tokens_, word_ids_, hits_);
        std::vector<char> dropped(tokens_.list.size());
        for (const vocabulary::Hit& hit : hits_) {
            if (is_dropped(hit)) std::fill(dropped.begin() + hit.first, dropped.begin() + hit.last, char{1});
        }
        for (std::size_t i = 0; i < tokens_.list.size(); ++i) {
            const text::Token& token = tokens_.list[i];
            const bool counts = token.kind == text::TokenKind::word || token.kind == text::TokenKind::number;
            if (!counts || dropped[i] != 0) continue;
            // Known words under the spelling that their variants share.
            const auto word = word_ids_[i] != 0 ? vocabulary_.words.text(word_ids_[i]) : tokens_.folded_text(token);
            words.push_back(std::string(field).append(word));
        }
    }

    const vocabulary::Vocabulary& vocabulary_;
    text::Tokens tokens_;
    std::vector<vocabulary::WordId> word_ids_;
    std::vector<vocabulary::Hit> hits_;
};

Words set_of(Words words) {
    std::sort(words.begin(), words.end());
    words.erase(std::unique(words.begin(), words.end()), words.end());
    return words;
}

// Between two sets of words.
struct Difference {
    std::size_t shared = 0;
    std::size_t only_a = 0;
    std::size_t only_b = 0;
};

Difference difference_of(const Words& a, const Words& b) {
    Difference result;
    std::size_t i = 0;
    std::size_t k = 0;
    while (i < a.size() && k < b.size()) {
        if (a[i] == b[k]) {
            ++result.shared;
            ++i;
            ++k;
        } else if (a[i] < b[k]) {
            ++result.only_a;
            ++i;
        } else {
            ++result.only_b;
            ++k;
        }
    }
    result.only_a += a.size() - i;
    result.only_b += b.size() - k;
    return result;
}

void compare(const RuleInfo& rule, const std::vector<ProofText>& examples, std::string_view what, ExampleWords& words,
             Remarks& remarks) {
    const std::size_t count = std::min(examples.size(), kMostCompared);
    std::vector<Words> written;
    std::vector<Words> sets;
    std::vector<Words> flagged;
    for (std::size_t i = 0; i < count; ++i) {
        written.push_back(words.of(examples[i]));
        sets.push_back(set_of(written.back()));
        flagged.push_back(words.of_words(examples[i].words));
    }
    for (std::size_t b = 1; b < count; ++b) {
        for (std::size_t a = 0; a < b; ++a) {
            const Difference difference = difference_of(sets[a], sets[b]);
            // Another order is another thing to read.
            const bool same = written[a] == written[b] && !written[a].empty();
            // Texts that flag other words each test a word of their own.
            const bool near = difference.only_a <= 1 && difference.only_b <= 1 && flagged[a] == flagged[b] &&
                              difference.shared >= kFewestShared;
            if (!same && !near) continue;
            remarks.add(same ? Severity::error : Severity::note, same ? "example-twice" : "examples-alike", rule,
                        fmt::format("rule '{}': this text to {} {} that of line {}: {}", rule.id, what,
                                    same ? "has the same words as" : "differs by one word or none from",
                                    examples[a].line, one_line_of(examples[b])),
                        "write one that the rule could get wrong in another way", {}, examples[b].line);
            break;
        }
    }
}

bool share_a_market(const RuleInfo& a, const RuleInfo& b) {
    if (a.markets.empty() || b.markets.empty()) return a.markets.empty() && b.markets.empty();
    return std::any_of(a.markets.begin(), a.markets.end(), [&](const std::string& market) {
        return std::find(b.markets.begin(), b.markets.end(), market) != b.markets.end();
    });
}

bool share_a_day(const RuleInfo& a, const RuleInfo& b) {
    const auto ends_before = [](const RuleInfo& one, const RuleInfo& other) {
        return !one.until.empty() && !other.from.empty() && one.until < other.from;
    };
    return !ends_before(a, b) && !ends_before(b, a);
}

// One text gets one finding, so of two rules that claim it one must fail.
void find_texts_of_two_rules(const rules::BookData& book, std::span<const std::uint32_t> models, Remarks& remarks) {
    constexpr std::size_t kMostOwners = 32;
    std::map<std::tuple<std::string_view, std::string_view, std::string_view, std::string_view>,
             std::vector<std::uint32_t>>
        owners;
    for (std::uint32_t i = 0; i < book.rules.size(); ++i) {
        const RuleInfo& rule = book.rules[i];
        if (models[i] != kNoModel && shares_proof(rule, book.rules[models[i]])) continue;
        for (const ProofText& example : rule.flags) {
            auto& others = owners[{example.title, example.text, example.material, example.category}];
            for (const std::uint32_t other : others) {
                const RuleInfo& first = book.rules[other];
                if (other == i || !share_a_market(rule, first) || !share_a_day(rule, first)) continue;
                remarks.add(Severity::error, "example-twice", rule,
                            fmt::format("rule '{}' flags word for word a text that '{}' flags ({}:{}): {}", rule.id,
                                        first.id, first.file, first.line, one_line_of(example)),
                            "decide which of the two speaks of it", first.id, example.line);
                break;
            }
            if (others.size() < kMostOwners) others.push_back(i);
        }
    }
}

}  // namespace

void find_alike_examples(const rules::BookData& book, std::span<const std::uint32_t> models, Remarks& remarks) {
    ExampleWords words(book.vocabulary);
    for (std::size_t i = 0; i < book.rules.size(); ++i) {
        const RuleInfo& rule = book.rules[i];
        if (models[i] != kNoModel && shares_proof(rule, book.rules[models[i]])) continue;
        compare(rule, rule.flags, "flag", words, remarks);
        compare(rule, rule.passes, "pass", words, remarks);
    }
    find_texts_of_two_rules(book, models, remarks);
}

}  // namespace grainside::verdict
