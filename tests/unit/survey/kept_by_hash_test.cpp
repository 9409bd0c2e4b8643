// What is kept of more than fits, and how many different ones there were, whatever the order and the parts.
#include "survey/kept_by_hash.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdint>
#include <map>
#include <random>
#include <string>
#include <vector>

#include "survey/distinct_count.h"
#include "survey/name_keys.h"

namespace grainside::survey {
namespace {

using Counts = KeptByHash<std::uint64_t>;
constexpr std::size_t kMost = 50;

void count(Counts& counts, const std::string& text) {
    if (std::uint64_t* number = counts.of(text, [] { return std::uint64_t{0}; })) ++*number;
}

// 200 texts, the n-th of them n times, in a random order.
std::vector<std::string> shuffled_texts(std::mt19937& random) {
    std::vector<std::string> texts;
    for (int text = 1; text <= 200; ++text)
        texts.insert(texts.end(), static_cast<std::size_t>(text), std::to_string(text));
    std::shuffle(texts.begin(), texts.end(), random);
    return texts;
}

TEST(KeptByHash, KeepsTheSameWithWholeCountsInEveryOrderAndSplit) {
    std::mt19937 random(1);
    std::map<std::string, std::uint64_t> first;
    for (int round = 0; round < 20; ++round) {
        std::vector<Counts> parts(1 + static_cast<std::size_t>(round) % 5, Counts(kMost));
        for (const std::string& text : shuffled_texts(random)) count(parts[random() % parts.size()], text);
        while (parts.size() > 1) {
            parts[random() % (parts.size() - 1)].merge(std::move(parts.back()),
                                                       [](std::uint64_t& a, std::uint64_t b) { a += b; });
            parts.pop_back();
        }
        std::map<std::string, std::uint64_t> kept;
        for (const auto& [key, number] : parts.front().entries()) {
            kept[key.second] = number;
            EXPECT_EQ(key.second, std::to_string(number));
        }
        EXPECT_EQ(kept.size(), kMost);
        if (round == 0) first = kept;
        EXPECT_EQ(kept, first) << round;
        EXPECT_TRUE(parts.front().different().estimated);
    }
}

TEST(KeptByHash, KeepsAllWhileThereIsRoom) {
    Counts counts(3);
    for (const char* text : {"a", "b", "a", "c", ""}) {
        if (*text != '\0') count(counts, text);
    }
    EXPECT_EQ(counts.entries().size(), 3U);
    EXPECT_EQ(counts.different().count, 3U);
    EXPECT_FALSE(counts.different().estimated);
    count(counts, "d");
    EXPECT_EQ(counts.entries().size(), 3U);
    EXPECT_TRUE(counts.different().estimated);
}

TEST(DistinctCount, IsExactUpToItsSizeAndNearBeyond) {
    std::mt19937_64 random(2);
    DistinctCount exact(64);
    std::vector<std::uint64_t> hashes(64);
    for (std::uint64_t& hash : hashes) hash = random();
    for (int round = 0; round < 3; ++round) {
        for (const std::uint64_t hash : hashes) exact.add(hash);
    }
    EXPECT_EQ(exact.value().count, 64U);
    EXPECT_FALSE(exact.value().estimated);

    // The relative error is about 1 / sqrt(64); five times that is missed once in millions of seeds.
    constexpr double kNumber = 10'000;
    DistinctCount one(64);
    DistinctCount other(64);
    DistinctCount all(64);
    for (int i = 0; i < static_cast<int>(kNumber); ++i) {
        const std::uint64_t hash = random();
        (i % 3 == 0 ? one : other).add(hash);
        all.add(hash);
    }
    one.merge(other);
    EXPECT_EQ(one.value().count, all.value().count);
    EXPECT_TRUE(one.value().estimated);
    EXPECT_NEAR(static_cast<double>(one.value().count), kNumber, kNumber * 5 / 8);
}

TEST(NameKeys, AreAlikeButForCapitalsSpacesAndHyphens) {
    NameKeys keys;
    const std::string key(keys.key_of("Full-Grain  Leather"));
    EXPECT_EQ(keys.key_of("full grain leather"), key);
    EXPECT_NE(keys.key_of("full grain leathers"), key);
    // Nothing but marks: they are the name.
    EXPECT_EQ(keys.key_of("***"), "***");
    EXPECT_EQ(name_in("  a b \n"), "a b");
    EXPECT_EQ(name_in(" \t "), "");
    // Cut before the character that does not fit.
    const std::string longest = std::string(kMostNameBytes - 1, 'x');
    EXPECT_EQ(name_in(longest + "\xC3\xA9"), longest);
    EXPECT_EQ(name_in(std::string(kMostNameBytes + 9, '\x80')).size(), kMostNameBytes);
}

}  // namespace
}  // namespace grainside::survey
