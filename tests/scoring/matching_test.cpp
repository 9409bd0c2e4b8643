// The rule at the end of corpus/README.md, on spans written as pictures: one letter a span, its place the span's place.
#include "matching.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace grainside::scoring {
namespace {

struct Row {
    std::string_view name;
    // Each line of a picture is one span: where its characters stand; the character is the key. '/' ends a line, '|'
    // the field.
    std::string_view labels;
    std::string_view found;
    std::string_view want;  // "label-found" pairs, then "-found" surplus and "label-" missed
};

std::vector<Candidate> drawn(std::string_view picture) {
    std::vector<Candidate> candidates;
    std::uint32_t field = 0;
    std::uint32_t column = 0;
    bool open = false;
    for (const char c : picture) {
        const bool inside = c != ' ' && c != '/' && c != '|';
        if (inside && !open) candidates.push_back({{field, column, column}, static_cast<std::uint32_t>(c)});
        if (inside) candidates.back().span.end = column + 1;
        open = inside;
        ++column;
        if (c == '/') column = 0;
        if (c == '|') {
            column = 0;
            ++field;
        }
    }
    return candidates;
}

std::string dump(const Matching& matching) {
    std::string out;
    const auto add = [&out](const std::string& item) { out += (out.empty() ? "" : " ") + item; };
    for (const Pair& pair : matching.pairs) add(std::to_string(pair.label) + "-" + std::to_string(pair.found));
    for (const std::size_t label : matching.missed) add(std::to_string(label) + "-");
    for (const std::size_t found : matching.surplus) add("-" + std::to_string(found));
    return out;
}

class MatchingTest : public testing::TestWithParam<Row> {};

TEST_P(MatchingTest, PairsTheLargestOverlapFirst) {
    const Row& row = GetParam();
    EXPECT_EQ(dump(match(drawn(row.labels), drawn(row.found))), row.want)
        << "labels |" << row.labels << "|\nfound  |" << row.found << "|";
}

constexpr Row kRows[] = {
    {.name = "nothing", .labels = "", .found = "", .want = ""},
    {.name = "same_words", .labels = "  aaa", .found = "  aaa", .want = "0-0"},
    {.name = "one_byte_is_enough", .labels = "aaa", .found = "  aaa", .want = "0-0"},
    {.name = "touching_is_not_enough", .labels = "aaa", .found = "   aaa", .want = "0- -0"},
    {.name = "another_key", .labels = "aaa", .found = "bbb", .want = "0- -0"},
    {.name = "another_field", .labels = "aaa", .found = "|aaa", .want = "0- -0"},
    {.name = "second_field", .labels = "a|aaa", .found = "|aaa", .want = "1-0 0-"},
    {.name = "one_to_one", .labels = "aaaaaa", .found = "aa aaa", .want = "0-1 -0"},
    {.name = "one_to_one_other_way", .labels = "aa aaa", .found = "aaaaaa", .want = "1-0 0-"},
    {.name = "largest_first_not_first_come", .labels = "aaaa/    aaaa", .found = "   aaaaa", .want = "1-0 0-"},
    {.name = "crossed", .labels = "aaaa aaaa", .found = "     aaaa/aaaa", .want = "0-1 1-0"},
    {.name = "equal_overlap_closer_span", .labels = "aaa", .found = "aaaaaaa/aaa", .want = "0-1 -0"},
    {.name = "equal_in_all_earlier", .labels = "aaa", .found = "aaa/aaa", .want = "0-0 -1"},
    {.name = "repeats_are_claims_of_their_own", .labels = "aa aa", .found = "aa", .want = "0-0 1-"},
};

INSTANTIATE_TEST_SUITE_P(Rows, MatchingTest, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(OverlapTest, CountsSharedBytes) {
    EXPECT_EQ(overlap({0, 2, 8}, {0, 5, 12}), 3U);
    EXPECT_EQ(overlap({0, 5, 12}, {0, 2, 8}), 3U);
    EXPECT_EQ(overlap({0, 2, 8}, {0, 8, 9}), 0U);
    EXPECT_EQ(overlap({0, 2, 8}, {1, 2, 8}), 0U);
}

}  // namespace
}  // namespace grainside::scoring
