// Frames and candidates: what an entry holds, and each fault of candidates.yaml with its exact place.
#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "small_evidence.h"

namespace grainside::evidence {
namespace {

TEST(Candidates, HoldScaledPriorsAndConcepts) {
    const auto data = support::loaded_with("candidates.yaml", support::small_evidence().at("candidates.yaml"));
    ASSERT_EQ(data.frames.size(), 2U);
    const Frame& sheet = data.frames[0];
    EXPECT_EQ(sheet.parts, part_bit(Part::body) | part_bit(Part::lining));
    EXPECT_EQ(sheet.claims.size(), 2U);
    EXPECT_EQ(sheet.of, kNone);
    ASSERT_EQ(sheet.candidates.size(), 4U);
    EXPECT_DOUBLE_EQ(sheet.candidates[0].prior, 0.3);
    EXPECT_DOUBLE_EQ(sheet.candidates[1].prior, 0.1);
    EXPECT_DOUBLE_EQ(sheet.candidates[2].prior, 0.4);
    EXPECT_DOUBLE_EQ(sheet.candidates[3].prior, 0.2);
    EXPECT_EQ(sheet.candidates[0].name, "full grain leather");  // the wording of concepts.yaml
    EXPECT_NE(sheet.candidates[0].is, 0);
    EXPECT_EQ(sheet.candidates[0].rules_out.size(), 1U);
    EXPECT_EQ(sheet.candidates[2].bears_out.size(), 1U);
    EXPECT_EQ(sheet.candidates[3].name, "something else");
    EXPECT_EQ(sheet.candidates[3].is, 0);
    EXPECT_EQ(sheet.candidates[3].leaves_open.size(), 1U);
    EXPECT_EQ(data.frames[1].candidates[1].alloy, 1U);
}

TEST(Candidates, HoldWhatIsUnlistedAndWhoseKinAreApart) {
    const auto data = support::loaded_with(
        "candidates.yaml",
        support::small_evidence().at("candidates.yaml") +
            "- {frame: f, title: T, parts: body, claims: leather, kin: apart, candidates: [{candidate: nubuck, prior: "
            "1}, {candidate: odd, name: something else, prior: 1, unlisted: yes}]}\n");
    ASSERT_EQ(data.frames.size(), 3U);
    EXPECT_FALSE(data.frames[0].kin_apart);  // by default they stay open
    EXPECT_TRUE(data.frames[2].kin_apart);
    EXPECT_FALSE(data.frames[2].candidates[0].unlisted);
    EXPECT_TRUE(data.frames[2].candidates[1].unlisted);
}

struct Row {
    std::string_view name, text, want;
};

// A third frame behind sheet and metal, from line 17.
constexpr Row kRows[] = {
    {"right",
     "- {frame: f, title: T, parts: body, claims: leather, candidates: [{candidate: nubuck, prior: 1}, {candidate: "
     "nappa, prior: 1}]}\n",
     ""},
    {"hangs_on_a_later_one",
     "- {frame: f, title: T, parts: body, claims: leather, within: leather, of: g, candidates: [{candidate: nubuck, "
     "prior: 1}, {candidate: nappa, prior: 1}]}\n"
     "- {frame: g, title: T, parts: body, claims: leather, candidates: [{candidate: rawhide, prior: 1}, {candidate: "
     "grain-leather, prior: 1}]}\n",
     ""},
    {"kin_told_open",
     "- {frame: f, title: T, parts: body, claims: leather, kin: open, candidates: [{candidate: nubuck, prior: 1}, "
     "{candidate: nappa, prior: 1}]}\n",
     ""},
    {"unknown_kin",
     "- {frame: f, title: T, parts: body, claims: leather, kin: far, candidates: [{candidate: nubuck, prior: 1}, "
     "{candidate: nappa, prior: 1}]}\n",
     "17:59 unknown-kin"},
    {"unlisted_is_a_concept",
     "- {frame: f, title: T, parts: body, claims: leather, candidates: [{candidate: nubuck, prior: 1, unlisted: yes}, "
     "{candidate: nappa, prior: 1}]}\n",
     "17:107 both-ways"},
    {"unlisted_has_an_alloy",
     "- {frame: f, title: T, parts: body, claims: leather, candidates: [{candidate: nubuck, prior: 1}, {candidate: "
     "odd, name: odd, prior: 1, alloy: zinc, unlisted: yes}]}\n",
     "17:159 both-ways"},
    {"unlisted_is_yes_or_no",
     "- {frame: f, title: T, parts: body, claims: leather, candidates: [{candidate: nubuck, prior: 1}, {candidate: "
     "odd, name: odd, prior: 1, unlisted: perhaps}]}\n",
     "17:146 wrong-type"},
    {"text_for_a_frame", "- f\n", "17:3 wrong-type"},
    {"nothing_but_a_name", "- {frame: f}\n", "17:3 missing-key; 17:3 missing-key; 17:3 missing-key; 17:3 missing-key"},
    {"unknown_key",
     "- {frame: f, tittle: T, title: T, parts: body, claims: leather, candidates: [{candidate: nubuck, prior: 1}, "
     "{candidate: nappa, prior: 1}]}\n",
     "17:14 unknown-key"},
    {"twice",
     "- {frame: sheet, title: T, parts: body, claims: leather, candidates: [{candidate: nubuck, prior: 1}, {candidate: "
     "nappa, prior: 1}]}\n",
     "17:11 duplicate-frame"},
    {"unknown_part_and_concept",
     "- {frame: f, title: T, parts: [body, pocket], claims: [leather, lether], candidates: [{candidate: nubuck, prior: "
     "1}, {candidate: nappa, prior: 1}]}\n",
     "17:38 unknown-part; 17:65 unknown-concept"},
    {"one_candidate",
     "- {frame: f, title: T, parts: body, claims: leather, candidates: [{candidate: nubuck, prior: 1}]}\n",
     "17:66 too-few-candidates"},
    {"candidates_are_no_list", "- {frame: f, title: T, parts: body, claims: leather, candidates: nubuck}\n",
     "17:66 too-few-candidates"},
    {"candidate_twice_in_the_book",
     "- {frame: f, title: T, parts: body, claims: leather, candidates: [{candidate: suede, prior: 1}, {candidate: "
     "nappa, prior: 1}]}\n",
     "17:79 duplicate-candidate"},
    {"candidate_twice_in_the_frame",
     "- {frame: f, title: T, parts: body, claims: leather, candidates: [{candidate: nappa, prior: 1}, {candidate: "
     "nappa, prior: 1}]}\n",
     "17:109 duplicate-candidate"},
    {"neither_concept_nor_name",
     "- {frame: f, title: T, parts: body, claims: leather, candidates: [{candidate: thing, prior: 1}, {candidate: "
     "nappa, prior: 1}]}\n",
     "17:67 missing-key"},
    {"priors",
     "- {frame: f, title: T, parts: body, claims: leather, candidates: [{candidate: nubuck, prior: 0}, {candidate: "
     "nappa, prior: -1}, {candidate: rawhide}, {candidate: parchment, prior: low}]}\n",
     "17:94 bad-prior; 17:124 bad-prior; 17:129 missing-key; 17:181 wrong-type"},
    {"unknown_concepts_in_its_lists",
     "- {frame: f, title: T, parts: body, claims: leather, candidates: [{candidate: nubuck, prior: 1, bears_out: [x], "
     "rules_out: y, leaves_open: [z]}, {candidate: nappa, prior: 1}]}\n",
     "17:109 unknown-concept; 17:124 unknown-concept; 17:141 unknown-concept"},
    {"borne_out_and_ruled_out",
     "- {frame: f, title: T, parts: body, claims: leather, candidates: [{candidate: nubuck, prior: 1, bears_out: "
     "[suede], rules_out: [suede]}, {candidate: nappa, prior: 1}]}\n",
     "17:128 both-ways"},
    {"leaves_itself_open",
     "- {frame: f, title: T, parts: body, claims: leather, candidates: [{candidate: nubuck, prior: 1, leaves_open: "
     "[nubuck]}, {candidate: nappa, prior: 1}]}\n",
     "17:110 both-ways"},
    {"unknown_alloy",
     "- {frame: f, title: T, parts: body, claims: leather, candidates: [{candidate: nubuck, prior: 1, alloy: zink}, "
     "{candidate: nappa, prior: 1}]}\n",
     "17:104 unknown-alloy"},
    {"within_without_of",
     "- {frame: f, title: T, parts: body, claims: leather, within: leather, candidates: [{candidate: nubuck, prior: "
     "1}, {candidate: nappa, prior: 1}]}\n",
     "17:3 missing-key"},
    {"unknown_frame",
     "- {frame: f, title: T, parts: body, claims: leather, within: leather, of: sheets, candidates: [{candidate: "
     "nubuck, prior: 1}, {candidate: nappa, prior: 1}]}\n",
     "17:75 unknown-frame"},
    {"hangs_on_itself",
     "- {frame: f, title: T, parts: body, claims: leather, within: leather, of: f, candidates: [{candidate: nubuck, "
     "prior: 1}, {candidate: nappa, prior: 1}]}\n",
     "17:75 cycle"},
    {"never_within",
     "- {frame: f, title: T, parts: body, claims: leather, within: metal, of: sheet, candidates: [{candidate: nubuck, "
     "prior: 1}, {candidate: nappa, prior: 1}]}\n",
     "17:73 never-within"},
    {"asks_of_parts_that_the_other_does_not",
     "- {frame: f, title: T, parts: [body, zip], claims: leather, within: leather, of: sheet, candidates: [{candidate: "
     "nubuck, prior: 1}, {candidate: nappa, prior: 1}]}\n",
     "17:82 unknown-part"},
};
class CandidateFaults : public testing::TestWithParam<Row> {};
TEST_P(CandidateFaults, AreToldWithTheirPlace) {
    EXPECT_EQ(support::faults_with("candidates.yaml",
                                   support::small_evidence().at("candidates.yaml") + std::string(GetParam().text)),
              GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, CandidateFaults, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace grainside::evidence
