#include "document/faults.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

#include "tree_dump.h"

namespace grainside::document {
namespace {

struct NearRow {
    std::string_view name, word;
    std::vector<std::string_view> candidates;
    std::string_view want;
};

const NearRow kNear[] = {
    {"same", "grade", {"grade"}, "grade"},
    {"one_left_out", "markts", {"sources", "markets"}, "markets"},
    {"one_too_many", "graade", {"grade"}, "grade"},
    {"swapped", "wehn", {"when", "then"}, "when"},
    {"swapped_twice", "suorecs", {"sources"}, "sources"},
    {"nearest_wins", "titled", {"tiled", "title", "titles"}, "tiled"},
    {"two_edits_in_six", "sorces", {"sauces", "source"}, "sauces"},
    {"three_edits_are_too_many", "misleadxyz", {"misleading"}, ""},
    {"a_third_of_five_is_one", "grdae", {"grape"}, ""},
    {"too_short_to_guess", "is", {"in"}, ""},
    {"nothing_to_choose_from", "grade", {}, ""},
    {"empty_word", "", {"a"}, ""},
};

class Nearest : public testing::TestWithParam<NearRow> {};

TEST_P(Nearest, Picks) {
    EXPECT_EQ(nearest(GetParam().word, GetParam().candidates), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, Nearest, testing::ValuesIn(kNear),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(Nearest, LongWordsAreNearToNothing) {
    const std::string word(65, 'a');
    const std::vector<std::string_view> candidates{word};
    EXPECT_EQ(nearest(word, candidates), "");
    const std::string longest(64, 'a');
    const std::string longer(66, 'a');
    const std::vector<std::string_view> longer_candidates{longer};
    EXPECT_EQ(nearest(longest, longer_candidates), longer);
}

TEST(Suggestion, NamesTheNearestOrListsAFew) {
    const std::vector<std::string_view> few{"vague", "misleading"};
    EXPECT_EQ(suggestion("misleding", few), "did you mean `misleading`?");
    EXPECT_EQ(suggestion("wrong", few), "one of vague, misleading");
    const std::vector<std::string_view> twelve(12, "candidate");
    EXPECT_TRUE(suggestion("x", twelve).starts_with("one of candidate, "));
    const std::vector<std::string_view> many(13, "candidate");
    EXPECT_EQ(suggestion("x", many), "");
    EXPECT_EQ(suggestion("x", {}), "");
}

TEST(CheckKeys, ReportsEachUnknownKeyWhereItStands) {
    const Document document = parse_good("rule: a\ntitel:\n  - x\nnone: 1\n");
    Faults faults;
    EXPECT_TRUE(check_keys(document, document.root(), {"rule", "title"}, faults));
    const std::vector<Issue> issues = faults.take();
    ASSERT_EQ(dump(issues), "2:1 unknown-key; 4:1 unknown-key");
    EXPECT_EQ(to_text(issues[0]),
              "test.yaml:2:1: error: the key `titel` is not known [unknown-key]\n"
              "  titel:\n"
              "  ^\n"
              "  hint: did you mean `title`?\n");
    EXPECT_EQ(issues[1].hint, "one of rule, title");
}

TEST(CheckKeys, WantsAMapping) {
    const Document document = parse_good("- a\n");
    Faults faults;
    EXPECT_FALSE(check_keys(document, document.root(), {"a"}, faults));
    EXPECT_FALSE(check_keys(document, {}, {"a"}, faults));
    EXPECT_EQ(dump(faults.take()), "0:0 wrong-type; 1:1 wrong-type");
}

TEST(Faults, AreSortedByPlaceAndKeepTheirOrderThere) {
    Faults faults;
    const auto add = [&](std::string file, std::uint32_t line, std::uint32_t column, std::string code) {
        faults.add(
            {.code = code, .file = file, .line = line, .column = column, .message = {}, .hint = {}, .excerpt = {}});
    };
    add("b", 1, 1, "e");
    add("a", 2, 1, "c");
    add("a", 2, 1, "d");
    add("a", 1, 9, "b");
    add("a", 1, 2, "a");
    std::string order;
    for (const Issue& issue : faults.take()) order += issue.code;
    EXPECT_EQ(order, "abcde");
    EXPECT_TRUE(faults.take().empty());
}

TEST(Faults, WarningsAreNoErrors) {
    const Document document = parse_good("a: 1\n");
    Faults faults;
    faults.warning(document, document.root(), "c", "m");
    EXPECT_FALSE(faults.any_errors());
    faults.error(document, document.root().find("a"), "c", "m");
    EXPECT_TRUE(faults.any_errors());
    const std::vector<Issue> issues = faults.take();
    EXPECT_EQ(dump(issues), "1:1 c; 1:4 c");
    EXPECT_EQ(issues[0].severity, Issue::Severity::warning);
    EXPECT_EQ(issues[1].excerpt, "a: 1");
    EXPECT_FALSE(faults.any_errors());
}

TEST(Faults, KeepsABoundedNumberAndCountsTheOthers) {
    Faults faults;
    const Document document = parse_good("a: 1\n");
    for (std::size_t i = 0; i < kMaxIssues; ++i) faults.warning(document, document.root(), "c", "m");
    EXPECT_FALSE(faults.any_errors());
    faults.error(document, document.root(), "c", "m");
    faults.warning(document, document.root(), "c", "m");
    EXPECT_TRUE(faults.any_errors());
    const std::vector<Issue> issues = faults.take();
    ASSERT_EQ(issues.size(), kMaxIssues + 1);
    EXPECT_EQ(to_text(issues.back()), "note: 2 more are not shown [more-faults]\n");
}

}  // namespace
}  // namespace grainside::document
