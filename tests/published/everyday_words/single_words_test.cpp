// Every word of two English word lists, alone as a listing's description. README.md has the figures.
#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/checker.h"
#include "lexicons.h"
#include "rules/book_data.h"
#include "text/tokenizer.h"

namespace grainside::published {
namespace {

const RuleBook& book() {
    static const Result<RuleBook> built_in = RuleBook::built_in();
    return built_in.value();
}

// "leather's" -> "leather": the possessive is the same word.
std::string_view without_possessive(std::string_view entry) {
    return entry.ends_with("'s") ? entry.substr(0, entry.size() - 2) : entry;
}

// Whether the two are one word but for a final s: 'cheetahs' read as 'cheetah' is no slip taken for another word.
bool same_but_for_s(std::string_view word, std::string_view known) {
    if (word.size() < known.size()) return !word.ends_with('s') && known.starts_with(word) && known.ends_with('s');
    return word.starts_with(known) && (word.substr(known.size()) == "s" || word.substr(known.size()) == "es");
}

struct Correction {
    std::string entry;
    std::string word;  // folded, so without apostrophe and capitals, as not_misspelt.yaml wants it
    std::string read_as;
};

// The entries of which some word is taken for a misspelling of another.
struct Corrections {
    std::vector<Correction> of_other_words;
    std::size_t of_the_same_word = 0;
};

const Corrections& corrections() {
    static const Corrections found = [] {
        const vocabulary::Vocabulary& vocabulary = book().data().vocabulary;
        Corrections result;
        text::Tokens tokens;
        for (const std::string& entry : entries_of_word_lists()) {
            text::tokenize(entry, tokens);
            for (const text::Token& token : tokens.list) {
                const std::string_view word = tokens.folded_text(token);
                if (vocabulary.words.find(word) != 0) continue;
                const vocabulary::WordId id = vocabulary.misspellings.find(word);
                if (id == 0) continue;
                const std::string_view known = vocabulary.words.text(id);
                if (same_but_for_s(word, known)) {
                    ++result.of_the_same_word;
                } else {
                    result.of_other_words.push_back({entry, std::string(word), std::string(known)});
                }
            }
        }
        return result;
    }();
    return found;
}

bool is_corrected(std::string_view entry) {
    const auto& all = corrections().of_other_words;
    return std::any_of(all.begin(), all.end(), [&](const Correction& one) { return one.entry == entry; });
}

class SingleWords : public testing::Test {
protected:
    void SetUp() override {
        if (const std::string missing = missing_word_lists(); !missing.empty()) GTEST_SKIP() << missing;
        ASSERT_TRUE(RuleBook::built_in());
    }
};

TEST_F(SingleWords, AreNeverTakenForAMisspelling) {
    const std::set<std::string> known = listed_words("known_corrections.txt");
    std::set<std::string> met;
    for (const Correction& correction : corrections().of_other_words) {
        met.insert(correction.word);
        EXPECT_TRUE(known.contains(correction.word)) << correction.entry << " is read as " << correction.read_as
                                                     << ": add it to rules/vocabulary/en/not_misspelt.yaml";
    }
    for (const std::string& word : known) {
        EXPECT_TRUE(met.contains(word)) << "mended: take " << word << " off known_corrections.txt";
    }
    std::cout << entries_of_word_lists().size() << " entries, " << corrections().of_other_words.size()
              << " read as another word, " << corrections().of_the_same_word << " as the same without its s\n";
}

TEST_F(SingleWords, AreClaimsOnlyIfIntended) {
    const std::set<std::string> intended = listed_words("intended_words.txt");
    const std::set<std::string> mistaken = listed_words("mistaken_words.txt");
    ASSERT_FALSE(intended.empty());
    Checker checker(book());
    std::set<std::string> met;
    std::size_t with_claim = 0;
    std::size_t with_finding = 0;
    for (const std::string& entry : entries_of_word_lists()) {
        Listing listing;
        listing.fields.push_back({"description", entry});
        const CheckResult& result = checker.check(listing);
        if (result.claim_count > 0) ++with_claim;
        if (!result.findings.empty()) ++with_finding;
        if ((result.claim_count == 0 && result.findings.empty()) || is_corrected(entry)) continue;
        const std::string word(without_possessive(entry));
        met.insert(word);
        EXPECT_TRUE(intended.contains(word) || mistaken.contains(word))
            << entry << " alone says " << book().concept_name(result.mentions.front().says)
            << ": a word of the trade goes into intended_words.txt, any other wants a condition in its vocabulary file";
    }
    for (const std::string& word : mistaken) {
        EXPECT_TRUE(met.contains(word)) << "mended: take " << word << " off mistaken_words.txt";
        EXPECT_FALSE(intended.contains(word)) << word << " stands in both lists";
    }
    std::cout << with_claim << " entries with a claim, " << with_finding << " with a finding\n";
}

}  // namespace
}  // namespace grainside::published
