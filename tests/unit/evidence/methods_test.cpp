// Methods: which row a candidate takes, what an entry holds, and each fault of methods/*.yaml with its exact place.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <stdexcept>
#include <string>
#include <string_view>

#include "evidence/quantity_names.h"
#include "small_evidence.h"

namespace grainside::evidence {
namespace {

const Method& method_named(const EvidenceData& data, std::string_view id) {
    const auto found =
        std::find_if(data.methods.begin(), data.methods.end(), [id](const Method& method) { return method.id == id; });
    if (found == data.methods.end()) throw std::runtime_error("no such method");
    return *found;
}

TEST(Methods, HoldEffortPartsAndQuantities) {
    const auto data = support::loaded_with("methods/a.yaml", support::small_evidence().at("methods/a.yaml"));
    const Method& edge = method_named(data, "edge");
    EXPECT_EQ(edge.parts, part_bit(Part::body) | part_bit(Part::lining));  // those of its frame
    EXPECT_EQ(edge.harm, Harm::cut);
    EXPECT_EQ(edge.who, Who::practised);
    EXPECT_EQ(edge.minutes, 10);
    EXPECT_EQ(edge.cost, 1);
    EXPECT_EQ(edge.cautions, std::vector<std::string>{"Mind the blade."});
    EXPECT_EQ(edge.when_worn, WhenWorn::counts);
    EXPECT_DOUBLE_EQ(edge.reliability, 0.95);
    const Method& colour = method_named(data, "colour");
    EXPECT_EQ(colour.when_worn, WhenWorn::spoils);
    EXPECT_DOUBLE_EQ(colour.reliability, 0.8);
    ASSERT_EQ(colour.reads.size(), 2U);  // its formula says what it reads
    EXPECT_EQ(colour.reads[0].name, "before");
    EXPECT_EQ(colour.reads[1].unit, kColourUnit);
    const Method& weighing = method_named(data, "weighing");
    EXPECT_EQ(weighing.parts, part_bit(Part::hardware));
    EXPECT_EQ(weighing.likelihood_by, LikelihoodBy::density);
    ASSERT_EQ(weighing.reads.size(), 3U);
    EXPECT_EQ(weighing.reads[2].dimension, measure::Dimension::temperature);
}

TEST(Quantities, AreKnownByWhatMethodsReadOrCompute) {
    const EvidenceBook& book = support::small_evidence_book();
    const auto& concepts = book.rule_book().data().vocabulary.concepts;
    const auto dimension = [&](std::string_view name) { return dimension_of(name, book.data(), concepts); };
    EXPECT_EQ(dimension("coat"), measure::Dimension::length);
    EXPECT_EQ(dimension("coat-share"), measure::Dimension::share);
    EXPECT_EQ(dimension("density"), measure::Dimension::density);
    EXPECT_EQ(dimension("grey-scale"), measure::Dimension::number);
    EXPECT_EQ(dimension("content.Cr+Al+Ti"), measure::Dimension::share);
    EXPECT_EQ(dimension("fibre-share.cotton"), measure::Dimension::share);
    EXPECT_EQ(dimension("content.Xx"), std::nullopt);
    EXPECT_EQ(dimension("content.Cr+"), std::nullopt);
    EXPECT_EQ(dimension("fibre-share.coton"), std::nullopt);
    EXPECT_EQ(dimension("before"), std::nullopt);  // a colour is no single number
    EXPECT_EQ(dimension("plating"), std::nullopt);
    EXPECT_EQ(elements_of("content.Cr+Al+Ti"), (std::vector<std::string>{"Cr", "Al", "Ti"}));
    EXPECT_EQ(elements_of("coat"), std::vector<std::string>{});
}

// What stands in the second line of a method whose other keys are right.
std::string method_with(std::string_view rest) {
    return "- {method: m, title: T, how: H., looks_at: s, harm: cut, minutes: 1, cost: 1, who: anyone, sources: "
           "law,\n" +
           std::string(rest) + "}\n";
}

// The shares of the first of two outcomes, for full-grain-leather, suede, cotton and odd-sheet. By concepts.yaml the
// first is a grain-leather, and that is leather; suede is leather; odd-sheet is no concept.
struct Choice {
    std::string_view name, rows;
    std::array<double, 4> want;
};
constexpr Choice kChoices[] = {
    {"others_speak_for_the_rest", "leather: {a: 90, b: 10}, others: {a: 5, b: 95}", {0.9, 0.9, 0.05, 0.05}},
    {"own_row_first",
     "suede: {a: 80, b: 20}, odd-sheet: {a: 40, b: 60}, leather: {a: 90, b: 10}, others: {a: 5, b: 95}",
     {0.9, 0.8, 0.05, 0.4}},
    {"the_nearer_concept_wins",
     "leather: {a: 70, b: 30}, grain-leather: {a: 95, b: 5}, others: {a: 5, b: 95}",
     {0.95, 0.7, 0.05, 0.05}},
    // full-grain-leather is-a grain-leather and is-a trait-grain-kept, both one step up.
    {"of_equally_near_ones_the_first_written",
     "trait-grain-kept: {a: 60, b: 40}, leather: {a: 95, b: 5}, others: {a: 5, b: 95}",
     {0.6, 0.95, 0.05, 0.05}},
    {"an_outcome_left_out_is_never_seen", "cotton: {b: 100}, others: {a: 50, b: 50}", {0.5, 0.5, 0, 0.5}},
    {"sums_within_a_hundredth_are_scaled",
     "cotton: {a: 33.333, b: 66.66}, others: {a: 50, b: 50}",
     {0.5, 0.5, 33.333 / 99.993, 0.5}},
    {"without_others_where_each_has_a_row",
     "material: {a: 30, b: 70}, odd-sheet: {a: 40, b: 60}",
     {0.3, 0.3, 0.3, 0.4}},
};
class RowChoice : public testing::TestWithParam<Choice> {};
TEST_P(RowChoice, TakesTheNearest) {
    const auto data = support::loaded_with(
        "methods/b.yaml",
        method_with("outcomes: {a: A, b: B}, likelihood: {sheet: {" + std::string(GetParam().rows) + "}}"));
    const Method& method = method_named(data, "m");
    ASSERT_EQ(method.tables.size(), 1U);
    ASSERT_EQ(method.tables[0].chance.size(), 8U);
    for (std::size_t i = 0; i < GetParam().want.size(); ++i) {
        EXPECT_NEAR(method.tables[0].chance[2 * i], GetParam().want[i], 1e-12) << i;
        EXPECT_NEAR(method.tables[0].chance[2 * i] + method.tables[0].chance[2 * i + 1], 1, 1e-12) << i;
    }
}
INSTANTIATE_TEST_SUITE_P(Rows, RowChoice, testing::ValuesIn(kChoices),
                         [](const auto& row) { return std::string(row.param.name); });

// Shares by hand. Priors of the frame: 0.3, 0.1, 0.4, 0.2; 'unclear' is seen in 10, 10, 40 and 20 of 100, on average 24
// (0.3 * 10 + 0.1 * 10 + 0.4 * 40 + 0.2 * 20): that goes in its place, and the rest of each row is scaled to 76.
TEST(Methods, LevelWhatSaysNothing) {
    const auto table_with = [](std::string_view silent) {
        const auto data = support::loaded_with(
            "methods/b.yaml", method_with("outcomes: {a: A, b: B, unclear: C}, " + std::string(silent) +
                                          "likelihood: {sheet: {leather: {a: 80, b: 10, unclear: 10}, cotton: {a: 30, "
                                          "b: 30, unclear: 40}, others: {a: 20, b: 60, unclear: 20}}}"));
        return method_named(data, "m");
    };
    const Method levelled = table_with("");
    EXPECT_FALSE(levelled.outcomes[0].says_nothing);
    EXPECT_TRUE(levelled.outcomes[2].says_nothing);  // by its name
    constexpr double kScaled[4][3] = {
        {0.76 * 8 / 9, 0.76 / 9, 0.24}, {0.76 * 8 / 9, 0.76 / 9, 0.24}, {0.38, 0.38, 0.24}, {0.19, 0.57, 0.24}};
    ASSERT_EQ(levelled.tables.at(0).chance.size(), 12U);
    for (std::size_t i = 0; i < 4; ++i) {
        for (std::size_t k = 0; k < 3; ++k) {
            EXPECT_NEAR(levelled.tables[0].chance[3 * i + k], kScaled[i][k], 1e-12) << i << " " << k;
        }
    }
    // Named ones instead of 'unclear'; of b on average 0.4 * 10 + 0.4 * 30 + 0.2 * 60 = 28.
    const Method named = table_with("says_nothing: b, ");
    EXPECT_TRUE(named.outcomes[1].says_nothing);
    EXPECT_FALSE(named.outcomes[2].says_nothing);
    for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR(named.tables[0].chance[3 * i + 1], 0.28, 1e-12) << i;
    EXPECT_NEAR(named.tables[0].chance[0], 0.8 / 0.9 * 0.72, 1e-12);
    EXPECT_NEAR(named.tables[0].chance[2], 0.1 / 0.9 * 0.72, 1e-12);
}

// A material of which nothing else is ever seen gives all else alike.
TEST(Methods, LevelARowThatHoldsNothingElse) {
    const auto data = support::loaded_with(
        "methods/b.yaml", method_with("outcomes: {a: A, b: B, unclear: C}, likelihood: {sheet: {cotton: {unclear: "
                                      "100}, others: {a: 50, b: 50}}}"));
    const auto& chance = method_named(data, "m").tables.at(0).chance;
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_NEAR(chance[3 * i + 2], 0.4, 1e-12) << i;  // cotton is four of ten
        EXPECT_NEAR(chance[3 * i], 0.3, 1e-12) << i;
    }
}

// What the frame does not list gives each outcome as often as the rest does on average: here 0.75 * 90 + 0.25 * 10
// = 70.
TEST(Methods, GiveTheUnlistedTheAverage) {
    const auto load = [](std::string_view rows) {
        auto files = support::small_evidence();
        const std::string frame =
            "- {frame: f, title: T, parts: body, claims: leather, candidates: [{candidate: nubuck, prior: 3}, "
            "{candidate: nappa, prior: 1}, {candidate: odd, name: something else, prior: 2, unlisted: yes}]}\n";
        const std::string method = method_with("outcomes: {a: A, b: B}, likelihood: {f: {" + std::string(rows) + "}}");
        return support::loaded_with(
            {{"candidates.yaml", files.at("candidates.yaml") + frame}, {"methods/b.yaml", method}});
    };
    const auto averaged = load("nubuck: {a: 90, b: 10}, nappa: {a: 10, b: 90}");
    EXPECT_NEAR(method_named(averaged, "m").tables.at(0).chance[4], 0.7, 1e-12);
    EXPECT_NEAR(method_named(averaged, "m").tables.at(0).chance[5], 0.3, 1e-12);
    const auto own_row = load("nubuck: {a: 90, b: 10}, nappa: {a: 10, b: 90}, odd: {a: 40, b: 60}");
    EXPECT_NEAR(method_named(own_row, "m").tables.at(0).chance[4], 0.4, 1e-12);
}

TEST(Methods, HoldWhatNumbersImply) {
    const auto data = support::loaded_with(
        "methods/b.yaml",
        method_with("outcomes: {a: A, b: B}, likelihood: {sheet: {others: {a: 50, b: 50}}}, reads: {thickness: mm, "
                    "content: '%'}, implies: {b: {thickness: {above: 200 um}}, a: {content.Cr: {at_most: 0.1 %}}}"));
    const Method& method = method_named(data, "m");
    ASSERT_EQ(method.implies.size(), 2U);  // in written order
    EXPECT_EQ(method.implies[0].outcome, 1U);
    EXPECT_EQ(method.implies[0].quantity, "thickness");
    EXPECT_NEAR(method.implies[0].bound.lower.value_or(0), 0.2, 1e-12);
    EXPECT_FALSE(method.implies[0].bound.lower_inclusive);
    EXPECT_EQ(method.implies[1].outcome, 0U);
    EXPECT_EQ(method.implies[1].quantity, "content.Cr");
    EXPECT_NEAR(method.implies[1].bound.upper.value_or(0), 0.1, 1e-12);
}

struct Row {
    std::string_view name, text, want;
};

constexpr Row kLines[] = {
    {"right", "parts: body, reads: {thickness: mm}", ""},
    {"worn_and_reliability", "parts: body, reads: {thickness: mm}, worn: lowers, reliability: 50", ""},
    {"unknown_key", "parts: body, reads: {thickness: mm}, note: x", "2:38 unknown-key"},
    {"unknown_part", "parts: pocket, reads: {thickness: mm}", "2:1 unknown-part"},
    {"nowhere", "reads: {thickness: mm}", "1:3 missing-key"},
    {"unknown_worn", "parts: body, reads: {thickness: mm}, worn: lower", "2:44 unknown-worn"},
    {"reliability_of_a_coin", "parts: body, reads: {thickness: mm}, reliability: 40", "2:51 out-of-range"},
    {"cautions_are_texts", "parts: body, reads: {thickness: mm}, cautions: {a: b}", "2:48 wrong-type"},
    {"nothing_to_see", "parts: body", "1:3 nothing-to-see"},
    {"outcomes_that_say_nothing", "parts: body, outcomes: {a: A, b: B}", "1:3 nothing-to-see"},
    {"likelihood_without_outcomes", "likelihood: {sheet: {others: {a: 100}}}", "1:3 nothing-to-see; 2:1 missing-key"},
    {"outcomes_are_a_list", "parts: body, outcomes: [a, b], reads: {thickness: mm}", "2:24 wrong-type"},
    {"outcome_with_bad_id", "parts: body, outcomes: {Not seen: A}, reads: {thickness: mm}", "2:35 bad-id"},
    {"outcome_without_meaning", "parts: body, outcomes: {a: }, reads: {thickness: mm}", "2:25 wrong-type"},
    {"unknown_frame", "parts: body, outcomes: {a: A}, likelihood: {sheets: {others: {a: 100}}}", "2:45 unknown-frame"},
    {"table_is_a_text", "outcomes: {a: A}, likelihood: {sheet: others}", "2:39 wrong-type"},
    {"row_is_a_number", "outcomes: {a: A}, likelihood: {sheet: {others: 100}}", "2:48 wrong-type"},
    {"unknown_material", "outcomes: {a: A}, likelihood: {sheet: {coton: {a: 100}, others: {a: 100}}}",
     "2:40 unknown-material"},
    {"unknown_outcome", "outcomes: {a: A}, likelihood: {sheet: {others: {a: 90, b: 10}}}", "2:56 unknown-outcome"},
    {"share_above_100", "outcomes: {a: A, b: B}, likelihood: {sheet: {others: {a: 110, b: -10}}}",
     "2:58 out-of-range; 2:66 out-of-range"},
    {"share_in_quotes", "outcomes: {a: A}, likelihood: {sheet: {others: {a: '100'}}}", "2:52 wrong-type"},
    {"row_adds_up_to_99", "outcomes: {a: A, b: B}, likelihood: {sheet: {others: {a: 90, b: 9}}}", "2:46 row-sum"},
    {"row_adds_up_to_100_02", "outcomes: {a: A, b: B}, likelihood: {sheet: {others: {a: 90, b: 10.02}}}",
     "2:46 row-sum"},
    {"candidates_without_a_row", "outcomes: {a: A}, likelihood: {sheet: {leather: {a: 100}}}", "2:32 missing-row"},
    {"row_that_nobody_takes", "outcomes: {a: A}, likelihood: {sheet: {gold: {a: 100}, others: {a: 100}}}",
     "2:40 unused-row"},
    {"row_behind_nearer_ones",
     "outcomes: {a: A}, likelihood: {sheet: {suede: {a: 100}, grain-leather: {a: 100}, leather: {a: 100}, others: {a: "
     "100}}}",
     "2:82 unused-row"},
    {"others_that_nobody_takes",
     "outcomes: {a: A}, likelihood: {sheet: {material: {a: 100}, odd-sheet: {a: 100}, others: {a: 100}}}",
     "2:81 unused-row"},
    {"outcome_in_no_row", "outcomes: {a: A, b: B}, likelihood: {sheet: {others: {a: 100}}}", "2:18 impossible-outcome"},
    {"table_for_other_parts", "parts: hardware, outcomes: {a: A}, likelihood: {sheet: {others: {a: 100}}}",
     "2:49 no-common-part"},
    {"unknown_unit", "parts: body, reads: {thickness: furlong}", "2:33 unknown-unit"},
    {"quantity_with_bad_name", "parts: body, reads: {Thick ness: mm}", "2:22 bad-id"},
    {"quantity_named_like_a_key", "parts: body, reads: {outcome: mm}", "2:22 bad-id"},
    {"reads_is_a_list", "parts: body, reads: [thickness]", "2:21 wrong-type"},
    {"same_name_other_dimension", "parts: body, reads: {coat: g}", "2:28 wrong-dimension"},
    {"same_name_as_computed", "parts: body, reads: {coat-share: mm}", "2:34 wrong-dimension"},
    {"colour_of_a_number", "parts: body, reads: {before: none}", "2:30 wrong-dimension"},
    {"content_in_mm", "parts: body, reads: {content: mm}", "2:31 wrong-dimension"},
    {"unknown_formula", "parts: body, computes: weight", "2:24 unknown-computes"},
    {"formula_with_another_dimension", "parts: body, reads: {in_air: mm}, computes: density",
     "2:30 wrong-dimension; 2:30 wrong-dimension"},
    {"likelihood_by_without_frames", "parts: body, computes: density, likelihood_by: density", "1:3 missing-key"},
    {"frames_without_likelihood_by", "parts: body, computes: density, frames: metal", "2:33 missing-key"},
    {"likelihood_by_what_is_not_read", "reads: {thickness: mm}, likelihood_by: composition, frames: metal",
     "2:40 missing-quantity"},
    {"likelihood_by_of_an_unknown_frame", "computes: density, likelihood_by: density, frames: [metal, metals]",
     "2:60 unknown-frame"},
    {"likelihood_by_without_alloys", "computes: density, likelihood_by: density, frames: sheet", "2:52 missing-alloy"},
    {"silence_of_an_unknown_outcome",
     "outcomes: {a: A}, says_nothing: [unclear], likelihood: {sheet: {others: {a: 100}}}", "2:34 unknown-outcome"},
    {"implies_is_a_list", "parts: body, outcomes: {a: A}, reads: {thickness: mm}, implies: [a]", "2:65 wrong-type"},
    {"implied_by_a_number", "parts: body, outcomes: {a: A}, reads: {thickness: mm}, implies: {a: 0.2 mm}",
     "2:69 wrong-type"},
    {"implies_an_unknown_outcome",
     "parts: body, outcomes: {a: A}, reads: {thickness: mm}, implies: {b: {thickness: {above: 1 mm}}}",
     "2:66 unknown-outcome"},
    {"implied_by_what_is_not_read",
     "parts: body, outcomes: {a: A}, reads: {thickness: mm}, implies: {a: {coat: {above: 1 mm}}}",
     "2:70 unknown-quantity"},
    {"implied_by_another_dimension",
     "parts: body, outcomes: {a: A}, reads: {thickness: mm}, implies: {a: {thickness: {above: 1 g}}}",
     "2:89 wrong-unit"},
    {"implied_by_what_is_computed",
     "outcomes: {a: A}, likelihood: {sheet: {others: {a: 100}}}, computes: coat-share, implies: {a: {coat-share: "
     "{above: 10 %}}}",
     ""},
    {"unknown_likelihood_by", "parts: body, computes: density, likelihood_by: weight", "2:48 unknown-likelihood_by"},
};
class MethodFaults : public testing::TestWithParam<Row> {};
TEST_P(MethodFaults, AreToldWithTheirPlace) {
    EXPECT_EQ(support::faults_with("methods/b.yaml", method_with(GetParam().text)), GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, MethodFaults, testing::ValuesIn(kLines),
                         [](const auto& row) { return std::string(row.param.name); });

constexpr Row kFiles[] = {
    {"empty", "", ""},
    {"mapping", "method: m\n", "1:1 wrong-type"},
    {"nothing_but_a_name", "- {method: m}\n",
     "1:3 missing-key; 1:3 missing-key; 1:3 missing-key; 1:3 missing-key; 1:3 missing-key; 1:3 missing-key; 1:3 "
     "missing-key; 1:3 missing-key; 1:3 missing-key; 1:3 nothing-to-see"},
    {"twice",
     "- {method: edge, title: T, how: H., looks_at: s, harm: cut, minutes: 1, cost: 1, who: anyone, sources: law, "
     "parts: body, reads: {thickness: mm}}\n",
     "1:12 duplicate-method"},
    {"title_left_blank",
     "- {method: m, title: , how: H., looks_at: s, harm: cut, minutes: 1, cost: 1, who: anyone, sources: law, "
     "parts: body, reads: {thickness: mm}}\n",
     "1:15 missing-key"},
    {"bad_values",
     "- {method: M, title: [T], how: '', looks_at: The cut, harm: much, minutes: -1, cost: dear, who: me, sources: "
     "lore, parts: body, reads: {thickness: mm}}\n",
     "1:12 bad-id; 1:22 wrong-type; 1:32 missing-key; 1:46 bad-id; 1:61 unknown-harm; 1:76 out-of-range; 1:86 "
     "wrong-type; 1:97 unknown-who; 1:110 unknown-source"},
};
class MethodFileFaults : public testing::TestWithParam<Row> {};
TEST_P(MethodFileFaults, AreToldWithTheirPlace) {
    EXPECT_EQ(support::faults_with("methods/b.yaml", GetParam().text), GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, MethodFileFaults, testing::ValuesIn(kFiles),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace grainside::evidence
