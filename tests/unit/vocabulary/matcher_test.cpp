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
