#include "score_table.h"

#include <gtest/gtest.h>

namespace grainside::scoring {
namespace {

TEST(TallyTest, RatiosFollowTheirDefinitions) {
    const Tally tally{.labels = 8, .found = 5, .right = 4};
    EXPECT_DOUBLE_EQ(tally.precision().value(), 4.0 / 5.0);
    EXPECT_DOUBLE_EQ(tally.recall().value(), 4.0 / 8.0);
    // The harmonic mean of both.
    EXPECT_DOUBLE_EQ(tally.f1().value(), 2.0 / (1.0 / (4.0 / 5.0) + 1.0 / (4.0 / 8.0)));
    EXPECT_EQ(Tally{}.precision(), std::nullopt);
    EXPECT_EQ(Tally{}.f1(), std::nullopt);
}

Scores some_scores() {
    Scores scores;
    scores.listings = 2;
    scores.has_claims = scores.has_findings = scores.has_traps = true;
    ClaimTally& material = scores.claims_of(Kind::material);
    material.labels = 3;
    material.found = 4;
    material.right = 2;
    material.exact = 1;
    material.part_right = 2;
    material.says_labelled = 1;
    material.says_right = 1;
    scores.claims_of(Kind::origin).labels = 1;
    scores.findings_of(Grade::vague) = {.labels = 1, .found = 1, .right = 1};
    scores.honest = 1;
    scores.honest_silent = 1;
    scores.traps = 4;
    scores.traps_passed = 3;
    return scores;
}

TEST(ScoreTableTest, ShowsWhatWasScored) {
    EXPECT_EQ(to_tables(some_scores()),
              "2 listings\n"
              "\n"
              "claims         labels  found  right  precision  recall     F1   part   says  exact\n"
              "material            3      4      2       50.0    66.7   57.1  100.0  100.0   50.0\n"
              "origin              1      0      0          -     0.0    0.0      -      -      -\n"
              "all                 4      4      2       50.0    50.0   50.0  100.0  100.0   50.0\n"
              "\n"
              "findings       labels  found  right  precision  recall     F1\n"
              "vague               1      1      1      100.0   100.0  100.0\n"
              "all                 1      1      1      100.0   100.0  100.0\n"
              "\n"
              "honest listings without any finding: 1 of 1 (100.0)\n"
              "traps passed: 3 of 4 (75.0)\n");
}

TEST(ScoreTableTest, LeavesOutWhatHadNoLabels) {
    Scores scores = some_scores();
    scores.has_findings = scores.has_traps = false;
    const std::string tables = to_tables(scores);
    EXPECT_NE(tables.find("claims"), std::string::npos);
    EXPECT_EQ(tables.find("findings"), std::string::npos);
    EXPECT_EQ(tables.find("traps"), std::string::npos);
}

TEST(ShortfallTest, TellsOfEachLimitThatIsMissed) {
    const Scores scores = some_scores();
    EXPECT_EQ(shortfalls(scores, {}), "");
    EXPECT_EQ(shortfalls(scores, {.claims_f1 = 0.5, .findings_precision = 1.0, .findings_recall = 1.0, .traps = 0.75}),
              "");
    EXPECT_EQ(shortfalls(scores, {.claims_f1 = 0.51, .traps = 0.76}),
              "F1 of claims: 50.0, asked for at least 51.0\n"
              "traps passed: 75.0, asked for at least 76.0\n");
}

TEST(ShortfallTest, NothingToScoreReachesNoLimit) {
    EXPECT_EQ(shortfalls(Scores{}, {.findings_precision = 0.0}),
              "precision of findings: nothing to score, asked for at least 0.0\n");
}

}  // namespace
}  // namespace grainside::scoring
