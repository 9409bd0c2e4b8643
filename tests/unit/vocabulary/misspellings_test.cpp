#include "vocabulary/misspellings.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "support/naive_matcher.h"

namespace grainside::vocabulary {
namespace {

struct Row {
    std::string_view name, written;
    WordId want;
};

constexpr WordId kLeather = 1;
constexpr WordId kPolyurethane = 2;

// Known: leather, polyurethane, suede (too short), and a word of 33 letters (too long). Protected: feather, leathern.
constexpr Row kRows[] = {
    {"dropped", "lether", kLeather},
    {"dropped_last", "leathe", kLeather},
    {"added", "leatther", kLeather},
    {"added_last", "leatherr", kLeather},
    {"changed", "laather", kLeather},
    {"changed_last", "leathes", kLeather},
    {"swapped", "laether", kLeather},
    {"swapped_last", "leathre", kLeather},
    {"long_word", "polyurethan", kPolyurethane},
    {"long_word_swapped", "polyuretahne", kPolyurethane},
    {"first_letter_wrong", "heather", 0},
    {"first_letter_dropped", "eather", 0},
    {"first_two_swapped", "elather", 0},
    {"protected_word", "leathern", 0},
    {"two_drops", "lethr", 0},
    {"two_changes", "laathes", 0},
    {"drop_and_add", "letherr", 0},
    {"another_word", "velvety", 0},
    {"short_known_word", "sued", 0},
    {"nothing", "", 0},
};

class MisspellingsTest : public testing::TestWithParam<Row> {};

TEST_P(MisspellingsTest, FindTheWordMeant) {
    Misspellings misspellings;
    misspellings.add("leather", kLeather);
    misspellings.add("polyurethane", kPolyurethane);
    misspellings.add("suede", 3);
    misspellings.add(std::string(33, 'q'), 4);
    misspellings.protect("feather");
    misspellings.protect("leathern");
    misspellings.freeze();
    EXPECT_EQ(misspellings.find(GetParam().written), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, MisspellingsTest, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

// Every drop, addition, change and swap of every word, and random strings of letters around them, against the edit
// distance of the textbook.
TEST(Misspellings, AgreeWithTheEditDistance) {
    const std::vector<std::string> words = {
        "leather",  "polyurethane", "weather",   "feathers",   "polyester",
        "calfskin", "leatherette",  "vegetable", "vegetables", "abababababababababababababababab"};
    Misspellings misspellings;
    for (std::size_t i = 0; i < words.size(); ++i) misspellings.add(words[i], static_cast<WordId>(i + 1));
    misspellings.freeze();
    std::vector<std::string> texts;
    for (const std::string& word : words) {
        for (std::size_t i = 0; i < word.size(); ++i) {
            texts.push_back(word.substr(0, i) + word.substr(i + 1));
            if (i + 1 < word.size()) {
                texts.push_back(word);
                std::swap(texts.back()[i], texts.back()[i + 1]);
            }
            for (char c = 'a'; c <= 'z'; ++c) {
                texts.push_back(word.substr(0, i) + c + word.substr(i));
                texts.push_back(word.substr(0, i) + c + word.substr(i + 1));
            }
        }
    }
    std::mt19937 random(11);
    for (int i = 0; i < 4000; ++i) {  // two and three slips
        std::string text = texts[random() % texts.size()];
        if (text.size() < 3) continue;
        text[random() % text.size()] = static_cast<char>('a' + random() % 26);
        std::swap(text[0], text[random() % 2]);
        texts.push_back(text);
    }
    std::size_t differences = 0;
    for (const std::string& text : texts) {
        bool near = false;
        for (const std::string& word : words) {
            near = near ||
                   (text.size() <= kLongestMisspelt && text[0] == word[0] && support::slips_between(text, word) <= 1);
        }
        const WordId found = misspellings.find(text);
        const bool right =
            found == 0 ? !near : support::slips_between(text, words[found - 1]) <= 1 && text[0] == words[found - 1][0];
        if (!right) ++differences;
    }
    EXPECT_EQ(differences, 0U) << texts.size() << " texts, " << differences << " differences";
    RecordProperty("texts", static_cast<int>(texts.size()));
}

}  // namespace
}  // namespace grainside::vocabulary
