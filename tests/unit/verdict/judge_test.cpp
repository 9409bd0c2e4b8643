// Judging whole dossiers with the default book: words and readings together.
#include "grainside/judge.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
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
    // What was believed beforehand proves nothing: these are rare, and an unclear look leaves them as rare as they are.
    {"r_nubuck_and_an_unclear_look",
     {"Nubuck tote.", "body: {readings: [{method: loupe, outcome: unclear}]}"},
     "inconclusive 'Nubuck'"},
    {"r_316l_and_an_unclear_magnet",
     {"316L stainless steel hardware.", "hardware: {readings: [{method: magnet, outcome: unclear}]}"},
     "inconclusive '316L stainless steel'"},
    {"r_snakeskin_and_an_unclear_look",
     {"Snakeskin clutch.", "body: {readings: [{method: loupe, outcome: unclear}]}"},
     "inconclusive 'Snakeskin'"},
    // A metal without a candidate of its own is false of those listed.
    {"a_steel_is_no_titanium",
     {"Titanium hardware.",
      "hardware: {readings: [{method: magnet, outcome: strong-pull}, {method: weighing-in-water, in_air: 20 \xC2\xB1 "
      "0.003 g, "
      "in_water: 17.455 \xC2\xB1 0.006 g, water: 21.0 \xC2\xB1 0.6 degC}]}"},
     "contradicted 'Titanium'"},
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

    // What a limit needs beside its number.
    {"r_a_thick_plating_of_what_nobody_knows",
     {"Gold-plated hardware.", "hardware: {readings: [{method: plating-xrf, plating: 2.7 \xC2\xB1 0.2 \xC2\xB5m}]}"},
     "inconclusive 'Gold-plated'"},
    {"a_thick_plating_of_gold",
     {"Gold-plated hardware.",
      "hardware: {readings: [{method: plating-xrf, plating: 2.7 \xC2\xB1 0.2 \xC2\xB5m}, {method: xrf-surface, "
      "outcome: "
      "reads-gold}]}"},
     "consistent 'Gold-plated'"},
    {"r_fourteen_karat_of_what_nobody_knows",
     {"14k gold buckle.",
      "hardware: {readings: [{method: metals-laboratory, composition: {Au: 58.5 \xC2\xB1 0.2 %}}]}"},
     "inconclusive '14k gold'"},
    {"r_a_coat_on_what_nobody_knows",
     {"Coated leather tote.", "body: {readings: [{method: coat-microscopy, coat: 0.26 \xC2\xB1 0.02 mm}]}", "eu"},
     "inconclusive 'Coated leather'"},
    {"r_one_metal_of_five",
     {"Metal-free tanned.", "body: {readings: [{method: xrf-leather, composition: {Cr: 0.02 \xC2\xB1 0.01 %}}]}"},
     "inconclusive 'Metal-free tanned'"},
    {"one_metal_of_five_is_too_much",
     {"Metal-free tanned.", "body: {readings: [{method: xrf-leather, composition: {Cr: 2.5 \xC2\xB1 0.1 %}}]}"},
     "contradicted 'Metal-free tanned'"},
    {"five_metals_of_five",
     {"Metal-free tanned.",
      "body: {readings: [{method: xrf-leather, composition: {Cr: 0.01 \xC2\xB1 0.01 %, Al: 0.01 \xC2\xB1 0.01 %, Ti: "
      "0.01 \xC2\xB1 0.01 %, Zr: 0.01 \xC2\xB1 0.01 %, Fe: 0.01 \xC2\xB1 0.01 %}}]}"},
     "consistent 'Metal-free tanned'"},
    // Leather by the ounce: 1/64 of an inch (charts of leather thickness); 3 oz are 1.19 mm.
    {"r_ounces_agree",
     {"3 oz leather tote.", "body: {readings: [{method: thickness-gauge, thickness: 1.2 \xC2\xB1 0.05 mm}]}"},
     "consistent '3 oz'; unsupported 'leather'"},
    {"r_ounces_do_not",
     {"3 oz leather tote.", "body: {readings: [{method: thickness-gauge, thickness: 2.9 \xC2\xB1 0.05 mm}]}"},
     "contradicted '3 oz'; unsupported 'leather'"},

    // The whole product.
    {"vegan_is_denied_by_any_part",
     {"Vegan tote.",
      "lining: {readings: [{method: cut-edge, outcome: fibre-and-grain}, {method: ftir-cut-edge, outcome: protein}]}"},
     "contradicted 'Vegan'"},

    // Limits by market.
    {"coat_in_doubt",
     {"Leather tote.", "body: {readings: [{method: coat-microscopy, coat: 0.16 \xC2\xB1 0.02 mm}]}", "eu"},
     "inconclusive 'Leather'"},
    {"r_coat_on_the_edge_of_the_guard_band",
     {"Leather tote.", "body: {readings: [{method: coat-microscopy, coat: 0.17 \xC2\xB1 0.02 mm}]}", "eu"},
     "inconclusive 'Leather'"},
    // Spanish law of 1984 lets bags have more, up to 0.3 mm (Royal Decree 769/1984).
    {"coat_that_spain_allows",
     {"Leather tote.", "body: {readings: [{method: coat-microscopy, coat: 0.25 \xC2\xB1 0.02 mm}]}", "es"},
     "inconclusive 'Leather'"},
    {"coat_too_thick_in_spain",
     {"Leather tote.", "body: {readings: [{method: coat-microscopy, coat: 0.35 \xC2\xB1 0.02 mm}]}", "es"},
     "contradicted 'Leather'"},
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
    // What wear spoils does not count for the frames either.
    {"new_and_wet_inside",
     {"Water-resistant tote.", "body: {readings: [{method: shower, outcome: inside-wet}]}"},
     "contradicted 'Water-resistant'"},
    {"r_worn_and_wet_inside",
     {"Water-resistant tote.", "body: {readings: [{method: shower, outcome: inside-wet}]}", "us", ", condition: used"},
     "unsupported 'Water-resistant'"},
    {"r_worn_and_bright",
     {"Tarnish-resistant hardware.", "hardware: {readings: [{method: salt-spray, outcome: bright}]}", "us",
      ", months_in_use: 3"},
     "unsupported 'Tarnish-resistant'"},
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

// A market's own limit takes the place of that of the larger market, unless both are asked for by name.
TEST(Judge, AsksTheMarketsOwnLimitInsteadOfTheLargerOnes) {
    const Sample sample{"Leather tote.", "body: {readings: [{method: coat-microscopy, coat: 0.25 \xC2\xB1 0.02 mm}]}",
                        "us"};
    const auto in = [&](std::vector<std::string> markets) {
        JudgeOptions options;
        options.check.markets = std::move(markets);
        return judged(sample, options);
    };
    EXPECT_EQ(in({"es"}), "inconclusive 'Leather'");
    EXPECT_EQ(in({"eu"}), "contradicted 'Leather'");
    EXPECT_EQ(in({"es", "eu"}), "contradicted 'Leather'");
    EXPECT_EQ(in({"es", "it"}), "contradicted 'Leather'");
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

// The day asked for; else that on which the listing was captured; else today.
TEST(Judge, AsksTheLimitsOfTheDayOfTheListing) {
    const auto judged_when = [](std::string_view captured, std::string_view on, std::string_view today) {
        const Dossier dossier = support::dossier_of(
            "sample: {what: tote, category: bag}\nlisting:\n" +
            (captured.empty() ? "" : "  captured: " + std::string(captured) + "\n") +
            "  description: Gold-plated hardware.\nparts: {hardware: {readings: [{method: plating-xrf, plating: 0.3 "
            "\xC2\xB1 0.02 \xC2\xB5m}]}}\n");
        JudgeOptions options;
        options.check.on = on;
        options.today = today;
        Judge judge(support::built_in_book(), support::built_in_evidence(), options);
        return judge.judge(dossier).worst == Grade::contradicted;
    };
    EXPECT_TRUE(judged_when("2020-06-01", "", ""));
    EXPECT_FALSE(judged_when("2026-06-01", "", ""));
    EXPECT_FALSE(judged_when("2020-06-01", "2026-06-01", ""));
    EXPECT_TRUE(judged_when("2026-06-01", "2020-06-01", ""));
    EXPECT_TRUE(judged_when("2020-06-01", "", "2026-06-01"));
    EXPECT_FALSE(judged_when("", "", "2026-06-01"));
    EXPECT_TRUE(judged_when("", "", "2020-06-01"));
}

// One judge, dossiers of several days: each by its own.
TEST(Judge, KeepsTheDaysOfDossiersApart) {
    const auto captured = [](std::string_view day) {
        return support::dossier_of("sample: {what: tote, category: bag}\nlisting: {captured: " + std::string(day) +
                                   ", description: Gold-plated hardware.}\nparts: {hardware: {readings: [{method: "
                                   "plating-xrf, plating: 0.3 \xC2\xB1 0.02 \xC2\xB5m}]}}\n");
    };
    const Dossier before = captured("2020-06-01");
    const Dossier after = captured("2026-06-01");
    Judge judge(support::built_in_book(), support::built_in_evidence());
    EXPECT_EQ(judge.judge(before).worst, Grade::contradicted);
    EXPECT_NE(judge.judge(after).worst, Grade::contradicted);
    EXPECT_EQ(judge.judge(before).worst, Grade::contradicted);
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

Verdict only_verdict(const Sample& sample) {
    Judge judge(support::built_in_book(), support::built_in_evidence());
    const Dossier dossier = dossier_of(sample);
    return judge.judge(dossier).verdicts.at(0);
}

bool any_change(const Verdict& verdict, std::string_view part_of_it) {
    return std::any_of(verdict.would_change.begin(), verdict.would_change.end(),
                       [&](const std::string& one) { return one.find(part_of_it) != std::string::npos; });
}

// What the readings show of a denied claim, told of the claim as it stands.
TEST(Judge, TellsWhyOfADenial) {
    const Verdict borne_out = only_verdict({"Not real leather.", kCoatedFabric});
    EXPECT_TRUE(borne_out.because.starts_with("The readings show polyurethane-coated fabric (")) << borne_out.because;
    const Verdict denied = only_verdict({"Not real leather.", kLeather});
    EXPECT_TRUE(denied.because.starts_with("The readings show full grain leather (")) << denied.because;
    EXPECT_TRUE(denied.because.ends_with("; not leather is false of it.")) << denied.because;
    // Not of cowhide: it is no leather at all.
    const Verdict closer = only_verdict({"Not made of cowhide.", kCoatedFabric});
    EXPECT_EQ(closer.grade, Grade::consistent);
    EXPECT_TRUE(closer.because.starts_with("The readings show polyurethane-coated fabric (")) << closer.because;
}

// 97.9 per cent is above the 95 that decide, but few goods are bonded leather to begin with.
TEST(Judge, TellsWhatWasLikelyBeforeAnyReading) {
    const Verdict likely = only_verdict(
        {"Bonded leather straps.", "strap: {readings: [{method: cut-edge, outcome: fibre-and-grain}]}", "uk"});
    EXPECT_EQ(likely.grade, Grade::inconclusive);
    EXPECT_NE(likely.because.find("that the words are false was likely before"), std::string::npos) << likely.because;
    const Verdict open = only_verdict({"Full grain leather.", kLeather});
    EXPECT_EQ(open.grade, Grade::inconclusive);
    EXPECT_TRUE(open.because.ends_with("; that does not decide it.")) << open.because;
}

TEST(Judge, TellsAValueBetweenTwoBounds) {
    const Verdict verdict =
        only_verdict({"Lead-free hardware.",
                      "hardware: {readings: [{method: metals-laboratory, composition: {Pb: 0.03 \xC2\xB1 0.002 %}}]}"});
    EXPECT_EQ(verdict.grade, Grade::inconclusive);
    EXPECT_NE(
        verdict.because.find("between what would contradict the claim (at least 0.05 %) and what would bear it out "
                             "(below 0.01 %)"),
        std::string::npos)
        << verdict.because;
    EXPECT_FALSE(any_change(verdict, "in all would settle it"));
}

TEST(Judge, TellsWhatASupportingLimitLacks) {
    const Verdict gold =
        only_verdict({"Gold-plated hardware.",
                      "hardware: {readings: [{method: plating-xrf, plating: 2.7 \xC2\xB1 0.2 \xC2\xB5m}]}"});
    EXPECT_NE(gold.because.find("but no reading shows that the part is gold plating."), std::string::npos)
        << gold.because;
    const Verdict metals = only_verdict(
        {"Metal-free tanned.", "body: {readings: [{method: xrf-leather, composition: {Cr: 0.02 \xC2\xB1 0.01 %}}]}"});
    EXPECT_NE(metals.because.find("by what was read, which is not all that counts."), std::string::npos)
        << metals.because;
    EXPECT_TRUE(any_change(metals, "A reading of all of the content of Cr+Al+Ti+Zr+Fe would settle it."));
}

TEST(Judge, TellsWhichReadingsAreWorn) {
    const Sample sample{"Water-resistant tote.", "body: {readings: [{method: shower, outcome: inside-wet}]}", "us",
                        ", condition: used"};
    EXPECT_TRUE(any_change(only_verdict(sample), "'The closed product in a shower' does not count: on a worn sample"));
    EXPECT_FALSE(any_change(only_verdict({sample.text, sample.parts}), "does not count"));
}

TEST(Judge, TellsWhichReadingCarriesTheVerdict) {
    // Each alone would not do for full grain.
    const Verdict verdict = only_verdict({"Leather tote.", kLeather});
    EXPECT_TRUE(any_change(verdict, "Without 'Cut edge under a loupe' it would be inconclusive."));
    const Verdict limit = only_verdict(
        {"Leather tote.", "body: {readings: [{method: coat-microscopy, coat: 0.26 \xC2\xB1 0.02 mm}]}", "eu"});
    EXPECT_TRUE(any_change(limit, "Without 'Coat thickness on a section' it would be ")) << limit.because;
}

// What is undecided gets a test to make; what is decided needs none, and words that mislead stay whatever is read.
// A title against the text: what the text says would pass as words, and the readings show that it is false too.
TEST(Judge, OffersNoWordsThatTheReadingsContradict) {
    const auto offered = [](std::string_view parts) {
        const Dossier dossier = support::dossier_of(
            "sample: {what: tote, category: bag}\nlisting: {name: Genuine leather tote, description: PU "
            "leather.}\nparts: {" +
            std::string(parts) + "}\n");
        Judge judge(support::built_in_book(), support::built_in_evidence());
        const Judgement& judgement = judge.judge(dossier);
        std::string words;
        for (const Verdict& verdict : judgement.verdicts) words += verdict.say_instead + ';';
        return words;
    };
    EXPECT_EQ(offered(kLeather).find("polyurethane"), std::string::npos) << offered(kLeather);
    EXPECT_NE(offered(kCoatedFabric).find("polyurethane"), std::string::npos) << offered(kCoatedFabric);
}

TEST(Judge, OffersATestOnlyWhereOneWouldHelp) {
    const Verdict open = only_verdict({"Leather tote.", ""});
    EXPECT_FALSE(open.next_test.empty());
    EXPECT_TRUE(any_change(open, "would tell most about leather."));
    EXPECT_EQ(only_verdict({"Leather tote.", kLeather}).next_test, "");
    const Verdict words = only_verdict({"Genuine PU leather tote.", kCoatedFabric});
    EXPECT_EQ(words.next_test, "");
    EXPECT_TRUE(words.would_change.empty());
}

TEST(Judge, OffersWhatTheWordsCouldSayInstead) {
    EXPECT_FALSE(only_verdict({"Genuine PU leather tote.", kCoatedFabric}).say_instead.empty());
    EXPECT_EQ(only_verdict({"Leather tote.", ""}).say_instead, "");
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
    EXPECT_TRUE(judgement.methods.empty());
    EXPECT_TRUE(judgement.unasked.empty());
}

// Those on record, in the book's order, and the one that a verdict offers; each with its cautions and sources.
TEST(Judge, NamesEachMethodOnce) {
    Judge judge(support::built_in_book(), support::built_in_evidence());
    const auto ids_of = [](const Judgement& judgement) {
        std::vector<std::string> ids;
        for (const NamedMethod& one : judgement.methods) ids.push_back(one.method);
        return ids;
    };
    const Dossier alone = dossier_of(
        {"",
         "body: {readings: [{method: bend, outcome: unclear}, {method: cut-edge, outcome: unclear}, {method: "
         "cut-edge, outcome: unclear}]}"});
    const Judgement& parts_only = judge.judge(alone);
    EXPECT_EQ(ids_of(parts_only), (std::vector<std::string>{"cut-edge", "bend"}));
    EXPECT_EQ(parts_only.methods[0].cautions.size(), 1U);
    EXPECT_EQ(parts_only.methods[0].title, "Cut edge under a loupe");
    EXPECT_FALSE(parts_only.methods[0].sources.empty());
    EXPECT_EQ(ids_of(judge.identify(alone)), (std::vector<std::string>{"cut-edge", "bend"}));
    const Dossier open = dossier_of({"Leather tote.", "body: {readings: [{method: bend, outcome: no-change}]}"});
    const Judgement& judgement = judge.judge(open);
    const std::string& next = judgement.verdicts.at(0).next_test;
    ASSERT_FALSE(next.empty());
    const std::vector<std::string> ids = ids_of(judgement);
    EXPECT_EQ(ids.size(), 2U);
    EXPECT_EQ(std::count(ids.begin(), ids.end(), next), 1);
    EXPECT_EQ(std::count(ids.begin(), ids.end(), "bend"), 1);
}

// Readings that no claim is about; of the part that a claim is about, those that tell nothing of it.
TEST(Judge, TellsWhichReadingsNobodyAskedFor) {
    Judge judge(support::built_in_book(), support::built_in_evidence());
    const auto unasked = [&](const Sample& sample) {
        std::string text;
        const Dossier dossier = dossier_of(sample);
        for (const ReadingPlace& one : judge.judge(dossier).unasked) {
            text += std::string(name_of(one.part)) + std::to_string(one.reading) + ";";
        }
        return text;
    };
    constexpr std::string_view kReadings =
        "body: {readings: [{method: thickness-gauge, thickness: 1.2 \xC2\xB1 0.05 mm}, {method: cut-edge, outcome: "
        "fibre-and-grain}]}, hardware: {readings: [{method: magnet, outcome: no-pull}]}";
    EXPECT_EQ(unasked({"Leather tote.", kReadings}), "body0;hardware0;");
    EXPECT_EQ(unasked({"Leather tote with brass hardware.", kReadings}), "body0;");
    EXPECT_EQ(unasked({"Leather tote, 1.2 mm thick.", kReadings}), "hardware0;");
    EXPECT_EQ(unasked({"", kReadings}), "");  // only with a listing
}

// ---- the same claim twice ----------------------------------------------------------------------------------------

TEST(Judge, GivesClaimsThatSayTheSameTheSameVerdict) {
    EXPECT_EQ(judged({"Leather tote. The tote is made of leather.", kCoatedFabric}),
              "contradicted 'Leather'; contradicted 'leather'");
}

}  // namespace
}  // namespace grainside
