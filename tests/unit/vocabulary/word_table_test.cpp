#include "vocabulary/word_table.h"

#include <gtest/gtest.h>

#include <map>
#include <random>
#include <string>
#include <string_view>

namespace grainside::vocabulary {
namespace {

// As the tokenizer lays words out: other bytes follow directly.
WordId find_followed_by(const WordTable& table, std::string_view word, char filler) {
    const std::string bytes = std::string(word) + std::string(16, filler);
    return table.find_padded(bytes.data(), static_cast<std::uint32_t>(word.size()));
}

TEST(WordTable, NumbersWordsOnceAndFromOne) {
    WordTable table;
    const WordId leather = table.intern("leather");
    const WordId suede = table.intern("suede");
    EXPECT_NE(leather, 0U);
    EXPECT_NE(leather, suede);
    EXPECT_EQ(table.intern("leather"), leather);
    EXPECT_EQ(table.find("leather"), leather);
    EXPECT_EQ(table.find("leathers"), 0U);
    EXPECT_EQ(table.find("leathe"), 0U);
    EXPECT_EQ(table.find(""), 0U);
    EXPECT_EQ(table.size(), 2U);
    EXPECT_EQ(table.text(suede), "suede");
}

// Words are compared as two numbers of 8 bytes: around 8 and 16 bytes every neighbour must stay its own word.
TEST(WordTable, EveryLengthIsAWordOfItsOwn) {
    WordTable table;
    const std::string letters(48, 'a');
    for (std::size_t length = 1; length <= letters.size(); length += 2) table.intern(letters.substr(0, length));
    for (std::size_t length = 1; length <= letters.size(); ++length) {
        for (const char filler : {'\0', 'a', 'z', '\xFF'}) {
            const WordId found = find_followed_by(table, letters.substr(0, length), filler);
            EXPECT_EQ(found != 0, length % 2 == 1) << length;
            EXPECT_EQ(table.text(found).size(), found != 0 ? length : 0);
        }
    }
}

// What a word has been given stays, however many come behind it: the tables and the filter grow on the way.
TEST(WordTable, RoomThatWasReservedIsNoLimit) {
    WordTable table;
    table.reserve(100);
    constexpr WordId kWords = 20'000;
    for (WordId i = 1; i <= kWords; ++i) EXPECT_EQ(table.intern("w" + std::to_string(i * 7919)), i);
    for (WordId i = 1; i <= kWords; ++i) EXPECT_EQ(table.find("w" + std::to_string(i * 7919)), i);
    EXPECT_EQ(table.find("w1"), 0U);
    EXPECT_EQ(table.spellings(), kWords);
}

TEST(WordTable, LongWordsDifferBehindTheirFirstSixteenBytes) {
    WordTable table;
    const WordId first = table.intern("kunstlederhandtasche");
    const WordId second = table.intern("kunstlederhandtascha");
    EXPECT_NE(first, second);
    EXPECT_EQ(find_followed_by(table, "kunstlederhandtasche", 'x'), first);
    EXPECT_EQ(find_followed_by(table, "kunstlederhandtascha", 'x'), second);
    EXPECT_EQ(find_followed_by(table, "kunstlederhandtaschx", 'x'), 0U);
    EXPECT_EQ(find_followed_by(table, "kunstlederhandt", 'a'), 0U);
}

TEST(WordTable, AliasStandsForAWordUnlessItIsOne) {
    WordTable table;
    const WordId fibre = table.intern("fibre");
    const WordId fiber = table.intern("fibers");
    EXPECT_TRUE(table.alias("fiber", fibre));
    EXPECT_TRUE(table.alias("fiber", fibre));
    EXPECT_EQ(table.find("fiber"), fibre);
    EXPECT_FALSE(table.alias("fibers", fibre));
    EXPECT_EQ(table.find("fibers"), fiber);
    EXPECT_EQ(table.size(), 2U);
    EXPECT_EQ(table.spellings(), 3U);
    EXPECT_EQ(table.text(fibre), "fibre");
}

// Against a map, through many growths; the words share beginnings and ends so that they meet in the table.
TEST(WordTable, AgreesWithAMap) {
    WordTable table;
    std::map<std::string, WordId> map;
    std::mt19937 random(7);
    const auto word = [&] {
        std::string text(1 + random() % 40, 'a');
        for (char& c : text) c = static_cast<char>('a' + random() % 3);
        return text;
    };
    for (int i = 0; i < 30'000; ++i) {
        const std::string text = word();
        const WordId id = table.intern(text);
        EXPECT_EQ(map.emplace(text, id).first->second, id);
    }
    std::size_t differences = 0;
    for (int i = 0; i < 30'000; ++i) {
        const std::string text = word();
        const auto known = map.find(text);
        if (find_followed_by(table, text, 'a') != (known == map.end() ? 0 : known->second)) ++differences;
    }
    for (const auto& [text, id] : map) differences += table.find(text) == id && table.text(id) == text ? 0U : 1U;
    EXPECT_EQ(differences, 0U);
    EXPECT_EQ(table.size(), map.size());
}

}  // namespace
}  // namespace grainside::vocabulary
