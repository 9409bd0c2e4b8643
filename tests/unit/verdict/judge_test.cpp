// Judging whole dossiers with the default book: words and readings together.
#include "grainside/judge.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "evidence/dossier_data.h"
#include "support/built_in_evidence.h"

namespace grainside {
namespace {

constexpr std::string_view kLeather =
    "body: {readings: [{method: cut-edge, outcome: fibre-and-grain}, {method: ftir-cut-edge, outcome: protein}]}";
constexpr std::string_view kCoatedFabric =
    "body: {readings: [{method: cut-edge, outcome: yarns-under-coat}, {method: ftir-cut-edge, outcome: polyurethane}]}";

struct Sample {
    std::string_view text;
    std::string_view parts;
    std::string_view region = "us";
    std::string_view more{};  // of the sample: ", condition: used"
};

Dossier dossier_of(const Sample& sample) {
    std::string yaml = "sample: {what: tote, category: bag" + std::string(sample.more) + "}\n";
    if (!sample.text.empty()) {
        yaml += "listing:\n  region: " + std::string(sample.region) + "\n  description: |\n    " +
                std::string(sample.text) + "\n";
    }
    if (!sample.parts.empty()) yaml += "parts: {" + std::string(sample.parts) + "}\n";
    return support::dossier_of(std::move(yaml));
}

std::string_view words_of(const Dossier& dossier, const Claim& claim) {
    return dossier.data().listing.fields[claim.field].text.substr(claim.start, claim.end - claim.start);
}

// "grade 'words'", one a verdict, joined by "; ".
std::string dump(const Dossier& dossier, const Judgement& judgement) {
    std::string text;
    for (const Verdict& verdict : judgement.verdicts) {
        if (!text.empty()) text += "; ";
        text += std::string(name_of(verdict.grade)) + " '" +
                std::string(words_of(dossier, judgement.check->mentions[verdict.claim])) + "'";
    }
    return text;
}

std::string judged(const Sample& sample, JudgeOptions options = {}) {
    const Dossier dossier = dossier_of(sample);
    Judge judge(support::built_in_book(), support::built_in_evidence(), std::move(options));
    return dump(dossier, judge.judge(dossier));
}

struct Row {
    std::string_view name;
    Sample sample;
    std::string_view want;
};

// What the readings are follows the methods' outcomes: a fibre weave with protein in it is leather, yarns under a coat
// of polyurethane are coated fabric (EN 15987; ISO 17131).
constexpr Row kRows[] = {
    // Evidence alone.
    {"borne_out", {"Leather tote.", kLeather}, "consistent 'Leather'"},
    {"denied_by_readings", {"Full grain leather tote.", kCoatedFabric}, "contradicted 'Full grain leather'"},
    {"nothing_read", {"Leather tote.", ""}, "unsupported 'Leather'"},
    {"another_part_was_read",
     {"Leather tote.", "lining: {readings: [{method: cut-edge, outcome: yarns-alone}]}"},
     "unsupported 'Leather'"},
    {"read_and_not_decided",
     {"Leather tote.", "body: {readings: [{method: loupe, outcome: repeating-print}]}"},
     "inconclusive 'Leather'"},
    {"leather_is_not_yet_nappa", {"Nappa leather tote.", kLeather}, "inconclusive 'Nappa leather'"},
    {"fabric_is_no_nappa", {"Nappa leather tote.", kCoatedFabric}, "contradicted 'Nappa leather'"},
    {"readings_that_contradict",
     {"Leather tote.",
      "body: {readings: [{method: cut-edge, outcome: fibre-and-grain}, {method: ftir-cut-edge, outcome: "
      "polyurethane}]}"},
     "inconclusive 'Leather'"},
    // 21.1193 g in air and 17.9291 g in water of 21 degrees are 6.61 g/cm3: zinc (handbooks: 6.6 to 6.7), not brass.
    {"zinc_is_no_brass",
     {"Brass hardware.",
      "hardware: {readings: [{method: weighing-in-water, in_air: 21.1193 \xC2\xB1 0.0024 g, in_water: 17.9291 \xC2\xB1 "
      "0.006 g, water: 21.0 \xC2\xB1 0.6 \xC2\xB0"
      "C}]}"},
     "contradicted 'Brass'"},
    // A denial swaps true and false.
    {"a_denial_borne_out", {"Not real leather.", kCoatedFabric}, "consistent 'leather'"},
    {"a_denial_denied", {"Not real leather.", kLeather}, "contradicted 'leather'"},
    {"a_denial_unread", {"Not real leather.", ""}, "unsupported 'leather'"},

    // Words and evidence: misleading words stay so whatever is read; a contradiction is worse.
    {"misleading_stays", {"Genuine PU leather tote.", kCoatedFabric}, "misleading 'Genuine PU leather'"},
    {"misleading_unread", {"Genuine PU leather tote.", ""}, "misleading 'Genuine PU leather'"},
    {"contradicted_goes_before_misleading",
     {"Genuine PU leather tote.", kLeather},
     "contradicted 'Genuine PU leather'"},

    // Words without a checkable meaning stay vague, borne out or not.
    {"vague_stays",
     {"Head layer leather tote.",
      "body: {readings: [{method: cut-edge, outcome: fibre-and-grain}, {method: section-microscopy, outcome: "
      "grain-whole}, {method: loupe, outcome: pores-even}, {method: ftir-cut-edge, outcome: protein}]}"},
     "vague 'Head layer leather'"},
    {"vague_and_contradicted", {"Head layer leather tote.", kCoatedFabric}, "contradicted 'Head layer leather'"},
    {"vague_and_nothing_tells", {"Durable tote.", kLeather}, "vague 'Durable'"},
    // What only wants proof has it in a reading, and is denied by one.
    {"want_of_proof", {"Rust-resistant hardware.", ""}, "unsupported 'Rust-resistant'"},
    {"want_of_proof_lifted",
     {"Rust-resistant hardware.", "hardware: {readings: [{method: salt-spray, salt-spray-hours: exactly 120 h}]}"},
     "consistent 'Rust-resistant'"},
    {"want_of_proof_and_too_little",
     {"Rust-resistant hardware.", "hardware: {readings: [{method: salt-spray, salt-spray-hours: exactly 48 h}]}"},
     "inconclusive 'Rust-resistant'"},
    {"want_of_proof_and_denied",
     {"Rust-resistant hardware.", "hardware: {readings: [{method: salt-spray, salt-spray-hours: exactly 8 h}]}"},
     "contradicted 'Rust-resistant'"},

    // The whole product.
    {"vegan_is_denied_by_any_part",
     {"Vegan tote.",
      "lining: {readings: [{method: cut-edge, outcome: fibre-and-grain}, {method: ftir-cut-edge, outcome: protein}]}"},
     "contradicted 'Vegan'"},

    // Limits by market.
    {"coat_in_doubt",
     {"Leather tote.", "body: {readings: [{method: coat-microscopy, coat: 0.16 \xC2\xB1 0.02 mm}]}", "eu"},
     "inconclusive 'Leather'"},
    {"coat_too_thick_in_the_eu",
     {"Leather tote.", "body: {readings: [{method: coat-microscopy, coat: 0.26 \xC2\xB1 0.02 mm}]}", "eu"},
     "contradicted 'Leather'"},
    {"no_coat_limit_in_the_us",
     {"Leather tote.", "body: {readings: [{method: coat-microscopy, coat: 0.26 \xC2\xB1 0.02 mm}]}"},
     "unsupported 'Leather'"},
    {"a_coat_that_passes_makes_no_leather",
     {"Leather tote.", "body: {readings: [{method: coat-microscopy, coat: 0.05 \xC2\xB1 0.02 mm}]}", "eu"},
     "inconclusive 'Leather'"},
    {"coated_leather",
     {"Coated leather tote.",
      "body: {readings: [{method: cut-edge, outcome: fibre-under-film}, {method: ftir-cut-edge, outcome: protein}, "
      "{method: coat-microscopy, coat: 0.26 \xC2\xB1 0.02 mm, total: 1.2 \xC2\xB1 0.03 mm}]}",
      "eu"},
     "consistent 'Coated leather'"},
    // It needs leather: a coat on cloth bears nothing out.
    {"a_coat_on_cloth_is_no_coated_leather",
     {"Coated leather tote.",
      "body: {readings: [{method: cut-edge, outcome: yarns-under-coat}, {method: ftir-cut-edge, outcome: "
      "polyurethane}, "
      "{method: coat-microscopy, coat: 0.26 \xC2\xB1 0.02 mm, total: 1.2 \xC2\xB1 0.03 mm}]}",
      "eu"},
     "contradicted 'Coated leather'"},
    // EN 1811 lets it pass, which makes nothing skin-friendly.
    {"a_release_that_passes",
     {"Hypoallergenic hardware.",
      "hardware: {readings: [{method: nickel-release, nickel-release: 0.2 \xC2\xB1 0.05 \xC2\xB5g/cm2/week}]}", "eu"},
     "inconclusive 'Hypoallergenic'"},
    {"a_release_that_fails",
     {"Hypoallergenic hardware.",
      "hardware: {readings: [{method: nickel-release, nickel-release: 1.2 \xC2\xB1 0.05 \xC2\xB5g/cm2/week}]}", "eu"},
     "contradicted 'Hypoallergenic'"},
    {"nickel_in_the_metal",
     {"Nickel-free hardware.",
      "hardware: {readings: [{method: metals-laboratory, composition: {Ni: 5.0 \xC2\xB1 0.2 %}}]}"},
     "contradicted 'Nickel-free'"},
    {"hours_of_salt_spray",
     {"Tarnish-resistant hardware.", "hardware: {readings: [{method: salt-spray, salt-spray-hours: exactly 96 h}]}"},
     "consistent 'Tarnish-resistant'"},

    // Worn samples.
    {"new_and_early_rust",
     {"Tarnish-resistant hardware.", "hardware: {readings: [{method: salt-spray, salt-spray-hours: exactly 8 h}]}"},
     "contradicted 'Tarnish-resistant'"},
    {"worn_and_early_rust",
     {"Tarnish-resistant hardware.", "hardware: {readings: [{method: salt-spray, salt-spray-hours: exactly 8 h}]}",
      "us", ", condition: used"},
     "inconclusive 'Tarnish-resistant'"},
};

class BuiltInJudge : public testing::TestWithParam<Row> {};

TEST_P(BuiltInJudge, GradesTheClaim) {
    EXPECT_EQ(judged(GetParam().sample), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, BuiltInJudge, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

// ---- words and evidence together ---------------------------------------------------------------------------------

// Everything that a rule's own proof flags, judged with readings for several of the claims: only words that want proof
// are ever lifted; what misleads or means nothing stays, or turns out false.
TEST(Judge, EvidenceLiftsTheWantOfProofOnly) {
    constexpr std::string_view kReadings =
        "body: {readings: [{method: cut-edge, outcome: fibre-and-grain}, {method: ftir-cut-edge, outcome: protein}, "
        "{method: light, light-grade: 6 \xC2\xB1 0.2}]}, hardware: {readings: [{method: salt-spray, salt-spray-hours: "
        "exactly 120 h}, {method: metals-laboratory, composition: {Pb: 0.001 \xC2\xB1 0.001 %}}]}";
    Judge judge(support::built_in_book(), support::built_in_evidence());
    int lifted = 0;
    int kept = 0;
    for (const RuleInfo& rule : support::built_in_book().rules()) {
        for (const ProofText& proof : rule.flags) {
            if (!proof.title.empty() || !proof.material.empty() || proof.text.find('\n') != std::string::npos) continue;
            const Dossier dossier = dossier_of({proof.text, kReadings, rule.markets.empty() ? "us" : rule.markets[0]});
            const Judgement& judgement = judge.judge(dossier);
            for (const Verdict& verdict : judgement.verdicts) {
                if (verdict.finding == kNoClaim) continue;
                const Grade words = judgement.check->findings[verdict.finding].grade;
                if (words == Grade::unsupported) {
                    lifted += verdict.grade == Grade::consistent ? 1 : 0;
                    continue;
                }
                EXPECT_TRUE(verdict.grade == words || verdict.grade == Grade::contradicted) << proof.text;
                ++kept;
            }
        }
    }
    EXPECT_GT(lifted, 5);
    EXPECT_GT(kept, 100);
}

TEST(Judge, TellsTheGroundOfItsGrade) {
    const Dossier words = dossier_of({"Genuine PU leather tote.", kCoatedFabric});
    Judge judge(support::built_in_book(), support::built_in_evidence());
    const Judgement& misleading = judge.judge(words);
    ASSERT_EQ(misleading.verdicts.size(), 1U);
    EXPECT_EQ(misleading.verdicts[0].basis, Basis::wording);
    EXPECT_NE(misleading.verdicts[0].finding, kNoClaim);
    EXPECT_EQ(misleading.worst, Grade::misleading);
    const Dossier readings = dossier_of({"Full grain leather tote.", kCoatedFabric});
    const Judgement& contradicted = judge.judge(readings);
    ASSERT_EQ(contradicted.verdicts.size(), 1U);
    const Verdict& verdict = contradicted.verdicts[0];
    EXPECT_EQ(verdict.basis, Basis::evidence);
    EXPECT_EQ(verdict.finding, kNoClaim);
    EXPECT_EQ(contradicted.worst, Grade::contradicted);
    EXPECT_GT(verdict.fails, 0.95);
    ASSERT_EQ(verdict.readings.size(), 2U);
    EXPECT_LT(verdict.readings[0].decibans, 0);
    EXPECT_LE(verdict.readings[0].decibans, verdict.readings[1].decibans);  // heaviest first
    EXPECT_EQ(verdict.readings[0].part, Part::body);
}

TEST(Judge, TurnsWeightsRoundForADenial) {
    Judge judge(support::built_in_book(), support::built_in_evidence());
    const Dossier dossier = dossier_of({"Not real leather.", kCoatedFabric});
    const Judgement& judgement = judge.judge(dossier);
    ASSERT_EQ(judgement.verdicts.size(), 1U);
    for (const WeighedEvidence& one : judgement.verdicts[0].readings) EXPECT_GT(one.decibans, 0);
    EXPECT_GT(judgement.verdicts[0].holds, 0.95);
}

// ---- options -----------------------------------------------------------------------------------------------------

// 0.16 +- 0.02 mm against 0.15 (JCGM 106:2012, clause 8).
TEST(Judge, DecidesByTheRuleAskedFor) {
    const Sample near{"Leather tote.", "body: {readings: [{method: coat-microscopy, coat: 0.16 \xC2\xB1 0.02 mm}]}",
                      "eu"};
    const auto by = [&](DecisionRule rule) {
        JudgeOptions options;
        options.decision_rule = rule;
        return judged(near, options);
    };
    EXPECT_EQ(by(DecisionRule::both_guarded), "inconclusive 'Leather'");
    EXPECT_EQ(by(DecisionRule::simple_acceptance), "contradicted 'Leather'");
    EXPECT_EQ(by(DecisionRule::guarded_acceptance), "contradicted 'Leather'");
    EXPECT_EQ(by(DecisionRule::guarded_rejection), "inconclusive 'Leather'");  // the coat passes; leather is unread
}

// The market asked for goes before that of the listing.
TEST(Judge, AsksTheMarketsAskedFor) {
    const Sample thick{"Leather tote.", "body: {readings: [{method: coat-microscopy, coat: 0.26 \xC2\xB1 0.02 mm}]}",
                       "us"};
    JudgeOptions options;
    options.check.markets = {"de"};
    EXPECT_EQ(judged(thick, options), "contradicted 'Leather'");
    options.check.markets = {"us"};
    EXPECT_EQ(judged(thick, options), "unsupported 'Leather'");
}

// ISO 10713 was withdrawn in 2025: gold of 0.3 micrometres is too thin by it only while it was in force.
TEST(Judge, AsksTheLimitsOfTheDay) {
    const Sample thin{"Gold-plated hardware.",
                      "hardware: {readings: [{method: plating-xrf, plating: 0.3 \xC2\xB1 0.02 \xC2\xB5m}]}"};
    JudgeOptions options;
    options.check.on = "2020-06-01";
    EXPECT_TRUE(judged(thin, options).starts_with("contradicted 'Gold-plated"));
    options.check.on = "2026-11-26";
    EXPECT_FALSE(judged(thin, options).starts_with("contradicted 'Gold-plated"));
}

TEST(DecisionRules, HaveNames) {
    for (const DecisionRule rule : {DecisionRule::both_guarded, DecisionRule::simple_acceptance,
                                    DecisionRule::guarded_acceptance, DecisionRule::guarded_rejection}) {
        EXPECT_EQ(decision_rule_named(name_of(rule)), rule);
    }
    EXPECT_EQ(decision_rule_named("whatever"), std::nullopt);
}

// ---- what would change it ----------------------------------------------------------------------------------------

// 0.02/sqrt(n) has to come below 0.012: three readings.
TEST(Judge, TellsHowManyRepeatsWouldSettleIt) {
    Judge judge(support::built_in_book(), support::built_in_evidence());
    const Dossier dossier = dossier_of(
        {"Leather tote.", "body: {readings: [{method: coat-microscopy, coat: 0.162 \xC2\xB1 0.02 mm}]}", "eu"});
    const Judgement& judgement = judge.judge(dossier);
    ASSERT_EQ(judgement.verdicts.size(), 1U);
    const auto& limits = judgement.verdicts[0].limits;
    const auto coat = std::find_if(limits.begin(), limits.end(),
                                   [](const LimitResult& one) { return one.limit == "coat-of-leather-eu"; });
    ASSERT_NE(coat, limits.end());
    EXPECT_EQ(coat->says, LimitVerdict::undecided);
    EXPECT_EQ(coat->repeats, 3U);
    EXPECT_EQ(coat->bound, "above 0.15 mm");
    EXPECT_FALSE(coat->sources.empty());
    const auto& changes = judgement.verdicts[0].would_change;
    EXPECT_TRUE(std::any_of(changes.begin(), changes.end(),
                            [](const std::string& one) { return one.starts_with("3 readings of coat"); }));
}

TEST(Judge, SaysWhichLimitWasNotRead) {
    Judge judge(support::built_in_book(), support::built_in_evidence());
    const Dossier dossier = dossier_of({"Leather tote.", kLeather, "eu"});
    const Judgement& judgement = judge.judge(dossier);
    ASSERT_EQ(judgement.verdicts.size(), 1U);
    ASSERT_EQ(judgement.verdicts[0].limits.size(), 1U);
    EXPECT_EQ(judgement.verdicts[0].limits[0].says, LimitVerdict::unread);
    EXPECT_EQ(judgement.verdicts[0].limits[0].value, "");
    EXPECT_EQ(judgement.verdicts[0].grade, Grade::consistent);
}

// `coated-leather-eu` needs leather: on cloth it is not even asked.
TEST(Judge, AsksNoLimitOfWhatThePartIsNot) {
    const auto asks_it = [](std::string_view look, std::string_view spectrum) {
        const std::string parts = "body: {readings: [{method: cut-edge, outcome: " + std::string(look) +
                                  "}, {method: ftir-cut-edge, outcome: " + std::string(spectrum) +
                                  "}, {method: coat-microscopy, coat: 0.26 \xC2\xB1 0.02 mm}]}";
        Judge judge(support::built_in_book(), support::built_in_evidence());
        const Dossier dossier = dossier_of({"Coated leather tote.", parts, "eu"});
        const Judgement& judgement = judge.judge(dossier);
        const auto& limits = judgement.verdicts.at(0).limits;
        return std::any_of(limits.begin(), limits.end(),
                           [](const LimitResult& one) { return one.limit == "coated-leather-eu"; });
    };
    EXPECT_TRUE(asks_it("fibre-under-film", "protein"));
    EXPECT_FALSE(asks_it("yarns-under-coat", "polyurethane"));
}

// ---- without a listing -------------------------------------------------------------------------------------------

TEST(Judge, WithoutAListingTellsThePartsOnly) {
    Judge judge(support::built_in_book(), support::built_in_evidence());
    const Dossier dossier = dossier_of({"", kCoatedFabric});
    const Judgement& judgement = judge.judge(dossier);
    EXPECT_EQ(judgement.check, nullptr);
    EXPECT_TRUE(judgement.verdicts.empty());
    EXPECT_EQ(judgement.worst, Grade::consistent);
    ASSERT_EQ(judgement.parts.size(), 1U);
    EXPECT_EQ(judgement.parts[0].part, Part::body);
    ASSERT_FALSE(judgement.parts[0].frames.empty());
    const FrameBelief& sheet = judgement.parts[0].frames[0];
    EXPECT_EQ(sheet.frame, "sheet");
    EXPECT_EQ(sheet.candidates.front().id, "pu-coated-fabric");
    EXPECT_GT(sheet.candidates.front().posterior, 0.9);
    EXPECT_EQ(sheet.readings.size(), 2U);
    EXPECT_TRUE(std::is_sorted(sheet.candidates.begin(), sheet.candidates.end(),
                               [](const auto& a, const auto& b) { return a.posterior > b.posterior; }));
    // Nobody asks how a cloth was tanned.
    for (const FrameBelief& frame : judgement.parts[0].frames) EXPECT_NE(frame.frame, "leather-finish");
}

TEST(Judge, ForgetsTheLastDossier) {
    Judge judge(support::built_in_book(), support::built_in_evidence());
    const Dossier with = dossier_of({"Leather tote.", kLeather});
    EXPECT_EQ(judge.judge(with).verdicts.size(), 1U);
    const Dossier without = dossier_of({"", ""});
    const Judgement& judgement = judge.judge(without);
    EXPECT_EQ(judgement.check, nullptr);
    EXPECT_TRUE(judgement.verdicts.empty());
    EXPECT_TRUE(judgement.parts.empty());
    EXPECT_TRUE(judgement.cautions.empty());
}

TEST(Judge, TellsEachCautionOnce) {
    Judge judge(support::built_in_book(), support::built_in_evidence());
    const Dossier dossier = dossier_of(
        {"", "body: {readings: [{method: cut-edge, outcome: unclear}, {method: cut-edge, outcome: unclear}]}"});
    EXPECT_EQ(judge.judge(dossier).cautions.size(), 1U);
}

// ---- the same claim twice ----------------------------------------------------------------------------------------

TEST(Judge, GivesClaimsThatSayTheSameTheSameVerdict) {
    EXPECT_EQ(judged({"Leather tote. The tote is made of leather.", kCoatedFabric}),
              "contradicted 'Leather'; contradicted 'leather'");
}

}  // namespace
}  // namespace grainside
