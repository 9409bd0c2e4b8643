#include "vocabulary/term_trie.h"

#include <gtest/gtest.h>

#include <map>
#include <random>
#include <vector>

namespace grainside::vocabulary {
namespace {

using Path = std::vector<WordId>;

TermTrie::NodeId walk(const TermTrie& trie, const Path& path) {
    TermTrie::NodeId node = 0;
    for (const WordId word : path) {
        node = trie.step(node, word).node();
        if (node == 0) return 0;
    }
    return node;
}

Sense meaning(ConceptId id) {
    Sense sense;
    sense.concept_id = id;
    return sense;
}

TEST(TermTrie, TermsEndWhereTheyWereAdded) {
    TermTrie trie;
    trie.add(Path{1, 2, 3}, meaning(7));
    trie.add(Path{1}, meaning(8));
    EXPECT_TRUE(trie.has_term(Path{1}));
    EXPECT_FALSE(trie.has_term(Path{1, 2}));
    EXPECT_TRUE(trie.has_term(Path{1, 2, 3}));
    EXPECT_FALSE(trie.has_term(Path{2}));
    trie.freeze();
    EXPECT_EQ(trie.terms(), 2U);
    ASSERT_EQ(trie.senses(walk(trie, {1, 2, 3})).size(), 1U);
    EXPECT_EQ(trie.senses(walk(trie, {1, 2, 3}))[0].concept_id, 7);
    EXPECT_NE(walk(trie, {1, 2}), 0U);
    EXPECT_TRUE(trie.senses(walk(trie, {1, 2})).empty());
    EXPECT_EQ(walk(trie, {2}), 0U);
    EXPECT_EQ(walk(trie, {1, 3}), 0U);
    EXPECT_EQ(walk(trie, {1, 2, 3, 1}), 0U);
}

TEST(TermTrie, SensesKeepTheirOrderAndStandOnce) {
    TermTrie trie;
    Sense conditional = meaning(5);
    conditional.condition = Condition::before_hide;
    trie.add(Path{4}, meaning(9));
    trie.add(Path{4}, conditional);
    trie.add(Path{4}, meaning(9));
    trie.add(Path{4}, meaning(5));
    trie.freeze();
    const auto senses = trie.senses(walk(trie, {4}));
    ASSERT_EQ(senses.size(), 3U);
    EXPECT_EQ(senses[0].concept_id, 9);
    EXPECT_EQ(senses[1].condition, Condition::before_hide);
    EXPECT_EQ(senses[2].concept_id, 5);
    EXPECT_EQ(trie.terms(), 1U);
}

TEST(TermTrie, AgreesWithAMapThroughManyGrowths) {
    TermTrie trie;
    std::map<Path, ConceptId> map;
    std::mt19937 random(3);
    const auto path = [&] {
        Path words(1 + random() % 5);
        for (WordId& word : words) word = 1 + static_cast<WordId>(random() % 12);
        return words;
    };
    for (ConceptId id = 1; id <= 9000; ++id) {
        const Path words = path();
        if (map.emplace(words, id).second) trie.add(words, meaning(id));
    }
    trie.freeze();
    EXPECT_EQ(trie.terms(), map.size());
    std::size_t differences = 0;
    for (int i = 0; i < 20'000; ++i) {
        const Path words = path();
        const auto known = map.find(words);
        const TermTrie::NodeId node = walk(trie, words);
        const bool has = node != 0 && !trie.senses(node).empty();
        if (has != (known != map.end()) || (has && trie.senses(node)[0].concept_id != known->second)) ++differences;
    }
    EXPECT_EQ(differences, 0U);
    for (const auto& [words, id] : map) {
        EXPECT_TRUE(words.size() < 2 || trie.may_begin_with(words[0], words[1]));
    }
}

TEST(TermTrie, PlacesTellWhetherATermEndsOrGoesOn) {
    TermTrie trie;
    trie.add(Path{1, 2}, meaning(7));
    trie.add(Path{3}, meaning(8));
    trie.freeze();
    EXPECT_FALSE(trie.first(1).ends_term());
    EXPECT_TRUE(trie.first(1).goes_on());
    EXPECT_TRUE(trie.step(trie.first(1).node(), 2).ends_term());
    EXPECT_FALSE(trie.step(trie.first(1).node(), 2).goes_on());
    EXPECT_TRUE(trie.first(3).ends_term());
    EXPECT_FALSE(trie.first(3).goes_on());
    EXPECT_FALSE(trie.first(2).exists());
    EXPECT_FALSE(trie.first(99).exists());
    EXPECT_TRUE(trie.may_begin_with(1, 2));
    EXPECT_FALSE(trie.may_begin_with(1, 3));
}

}  // namespace
}  // namespace grainside::vocabulary
