#include "vocabulary/matcher.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>
#include <random>
#include <string>
#include <vector>

#include "support/both_matchers.h"

namespace grainside::vocabulary {
namespace {

using support::BothMatchers;
using support::NaiveTerm;

// Six words, two of them long enough to be misspelt.
const std::vector<std::string> kWords = {"full", "grain", "leather", "calf", "top", "polyurethane"};

// Different terms, so that a term is named by one number.
std::vector<NaiveTerm> random_terms(std::mt19937& random) {
    std::vector<NaiveTerm> terms;
    const std::size_t count = 1 + random() % 9;
    while (terms.size() < count) {
        NaiveTerm term(1 + random() % 4);
        for (std::string& word : term) word = kWords[random() % kWords.size()];
        if (std::find(terms.begin(), terms.end(), term) == terms.end()) terms.push_back(std::move(term));
    }
    return terms;
}

std::string text_number(std::size_t number, std::size_t length) {
    std::string text;
    for (std::size_t i = 0; i < length; ++i) {
        text += (i == 0 ? "" : " ") + kWords[number % kWords.size()];
        number /= kWords.size();
    }
    return text;
}

TEST(Matcher, AgreesWithTheNaiveOneOnAllShortTexts) {
    std::size_t texts = 0;
    std::size_t differences = 0;
    for (unsigned seed = 1; seed <= 6; ++seed) {
        std::mt19937 random(seed);
        BothMatchers both(random_terms(random));
        std::size_t count = 1;
        for (std::size_t length = 0; length <= 5; ++length, count *= kWords.size()) {
            for (std::size_t number = 0; number < count; ++number) {
                ++texts;
                if (both.agree(text_number(number, length))) continue;
                if (++differences < 4) ADD_FAILURE() << "seed " << seed << ": " << text_number(number, length);
            }
        }
    }
    std::cout << texts << " texts, " << differences << " differences\n";
    EXPECT_EQ(differences, 0U);
}

// All texts of up to `longest` tokens over `alphabet`, cut once.
struct CutText {
    std::string text;
    text::Tokens tokens;
};
std::vector<CutText> all_texts(const std::vector<std::string>& alphabet, std::size_t longest) {
    std::vector<CutText> texts = {{"", {}}};
    for (std::size_t first = 0, length = 1; length <= longest; ++length) {
        const std::size_t end = texts.size();
        for (; first < end; ++first) {
            for (const std::string& word : alphabet) {
                texts.push_back({texts[first].text + (texts[first].text.empty() ? "" : " ") + word, {}});
            }
        }
    }
    for (CutText& cut : texts) text::tokenize(cut.text, cut.tokens);
    return texts;
}

// All terms of up to `longest` of `words`.
std::vector<NaiveTerm> all_terms(const std::vector<std::string>& words, std::size_t longest) {
    std::vector<NaiveTerm> terms = {{}};
    for (std::size_t first = 0, length = 1; length <= longest; ++length) {
        const std::size_t end = terms.size();
        for (; first < end; ++first) {
            for (const std::string& word : words) {
                NaiveTerm longer = terms[first];
                longer.push_back(word);
                terms.push_back(std::move(longer));
            }
        }
    }
    terms.erase(terms.begin());
    return terms;
}

// Every vocabulary of one to `most` different terms, whatever the order in which they are added.
template <typename Each>
void for_each_choice(const std::vector<NaiveTerm>& terms, std::size_t most, const Each& each) {
    std::vector<NaiveTerm> chosen;
    const auto choose = [&](const auto& again, std::size_t from) -> void {
        if (!chosen.empty()) each(chosen);
        if (chosen.size() == most) return;
        for (std::size_t i = from; i < terms.size(); ++i) {
            chosen.push_back(terms[i]);
            again(again, i + 1);
            chosen.pop_back();
        }
    };
    choose(choose, 0);
}

struct SmallWorld {
    std::string_view name;
    std::size_t words, most_terms, longest_text;
};
#ifdef GRAINSIDE_UNDER_SANITIZER
constexpr std::size_t kShorter = 2;
#else
constexpr std::size_t kShorter = 0;
#endif
constexpr SmallWorld kSmallWorlds[] = {
    {"three_terms_over_two_words", 2, 3, 6 - kShorter},
    {"two_terms_over_three_words", 3, 2, 5 - kShorter},
    {"three_terms_over_three_words", 3, 3, 4 - kShorter},
};
void PrintTo(const SmallWorld& world, std::ostream* out) {
    *out << world.name;
}
class EverySmallVocabulary : public testing::TestWithParam<SmallWorld> {};

// Terms of up to three words; the texts hold a comma as well.
TEST_P(EverySmallVocabulary, AgreesWithTheNaiveOneOnEveryShortText) {
    constexpr std::size_t kLongestTerm = 3;
    std::vector<std::string> words(kWords.begin(), kWords.begin() + static_cast<std::ptrdiff_t>(GetParam().words));
    const std::vector<NaiveTerm> terms = all_terms(words, kLongestTerm);
    words.emplace_back(",");
    const std::vector<CutText> texts = all_texts(words, GetParam().longest_text);
    std::size_t vocabularies = 0;
    std::size_t differences = 0;
    for_each_choice(terms, GetParam().most_terms, [&](const std::vector<NaiveTerm>& chosen) {
        ++vocabularies;
        BothMatchers both(chosen);
        for (const CutText& cut : texts) {
            if (both.agree(cut.tokens)) continue;
            if (++differences < 4) ADD_FAILURE() << "vocabulary " << vocabularies << ": " << cut.text;
        }
    });
    std::cout << vocabularies << " vocabularies, " << texts.size() << " texts, " << differences << " differences\n";
    EXPECT_EQ(differences, 0U);
}

std::string name_of_world(const testing::TestParamInfo<SmallWorld>& info) {
    return std::string(info.param.name);
}
INSTANTIATE_TEST_SUITE_P(Worlds, EverySmallVocabulary, testing::ValuesIn(kSmallWorlds), name_of_world);

// With marks, other words, numbers, hyphens and slips between.
TEST(Matcher, AgreesWithTheNaiveOneOnRandomTexts) {
    const std::vector<std::string> others = {", ",        ". ",         "-",        " / ",     " bag ",         " 304 ",
                                             " (",        ") ",         " lether ", "\n",      " polyurethan ", " Top ",
                                             " letaher ", " lleather ", " x ",      " fulll ", " LEATHER "};
    std::size_t texts = 0;
    std::size_t differences = 0;
    for (unsigned seed = 100; seed < 140; ++seed) {
        std::mt19937 random(seed);
        BothMatchers both(random_terms(random));
        for (int i = 0; i < 150; ++i) {
            std::string text;
            for (std::size_t k = 5 + random() % 40; k > 0; --k) {
                text += random() % 3 == 0 ? others[random() % others.size()] : kWords[random() % kWords.size()];
                if (random() % 3 != 0) text += ' ';
            }
            ++texts;
            if (both.agree(text)) continue;
            if (++differences < 4) ADD_FAILURE() << "seed " << seed << ": " << text;
        }
    }
    std::cout << texts << " texts, " << differences << " differences\n";
    EXPECT_EQ(differences, 0U);
}

}  // namespace
}  // namespace grainside::vocabulary
