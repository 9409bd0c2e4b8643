// Keys of words: which differences do not matter.
#include "text/words_key.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace grainside::text {
namespace {

std::string key_of(std::string_view words) {
    Tokens tokens;
    std::string key = "left over";
    make_words_key(words, tokens, key);
    return key;
}

struct Row {
    std::string_view name, one, other;
    bool same;
};

constexpr Row kRows[] = {
    {"capitals", "Vegan Leather", "vegan leather", true},
    {"hyphen", "vegan-leather", "vegan leather", true},
    {"joined", "veganleather", "vegan leather", true},
    {"spaces", "vegan  leather", " vegan\tleather ", true},
    {"line_end", "vegan\r\nleather", "vegan leather", true},
    {"accents", "nubuck d\xC3\xA9lav\xC3\xA9", "nubuck delave", true},
    {"dash", "vegan \xE2\x80\x93 leather", "vegan leather", true},
    {"quotes", "'vegan' \"leather\"", "vegan leather", true},
    {"tag", "vegan <b>leather</b>", "vegan leather", true},
    {"other_word", "vegan leather", "vegan leathers", false},
    {"percent", "100 %", "100%", true},
    {"no_percent", "100 % cotton", "100 cotton", false},
    {"numbers_apart", "1-2 mm", "12 mm", false},
    {"decimal", "1.2 mm", "12 mm", false},
    {"number_and_unit", "316L steel", "316 l steel", true},
    {"slash", "wool/silk", "wool silk", false},
    {"question", "leather?", "leather", false},
};

TEST(WordsKey, IgnoresWhatDoesNotMatter) {
    for (const Row& row : kRows) EXPECT_EQ(key_of(row.one) == key_of(row.other), row.same) << row.name;
}

TEST(WordsKey, IsEmptyWithoutLetterAndDigit) {
    for (const std::string_view words : {"", " ", "-", "%", "?!", "\xFF\xFE", "<br>"})
        EXPECT_EQ(key_of(words), "") << words;
}

// The fold keeps 65535 bytes of a word: longer ones are told apart all the same.
TEST(WordsKey, TellsLongWordsApart) {
    const std::string word(100'000, 'x');
    EXPECT_NE(key_of(word + "a"), key_of(word + "b"));
    EXPECT_EQ(key_of(word), key_of(word));
}

}  // namespace
}  // namespace grainside::text
