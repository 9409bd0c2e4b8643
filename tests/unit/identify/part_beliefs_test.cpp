// What a reading is worth beside all the others, how far from even odds readings reach, and which questions arise.
#include "identify/part_beliefs.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "identify/test_bits.h"
#include "rules/book_data.h"
#include "support/built_in_evidence.h"
#include "table_evidence.h"

namespace grainside::identify {
namespace {

using evidence::EvidenceData;
using support::add_method;
using support::frame_of;
using Readings = std::vector<std::pair<std::size_t, std::size_t>>;

// Decibans of each reading for candidate 0, beside the others.
std::vector<double> weights_of(const EvidenceData& data, const Readings& readings) {
    const PartEvidence part = evidence_of(data, {}, support::body_with(readings));
    std::vector<double> weights;
    for (const PartBeliefs& without : part.without) {
        weights.push_back(decibans_of(part.beliefs[0].posterior[0], without[0].posterior[0]));
    }
    return weights;
}

// ---- weights of evidence -----------------------------------------------------------------------------------------

// Good, Probability and the Weighing of Evidence (1950), after Turing: a factor of 10 is 10 decibans, of 2 about 3.
TEST(WeightOfEvidence, IsInDecibans) {
    EvidenceData data = frame_of({0.3, 0.7});
    const std::size_t ten = add_method(data, "a", {{0.5, 0.5}, {0.05, 0.95}});
    const std::size_t two = add_method(data, "b", {{0.4, 0.6}, {0.2, 0.8}});
    const std::size_t nothing = add_method(data, "c", {{0.4, 0.6}, {0.4, 0.6}});
    const std::size_t against = add_method(data, "d", {{0.05, 0.95}, {0.5, 0.5}});
    const std::vector<double> weights = weights_of(data, {{ten, 0}, {two, 0}, {nothing, 0}, {against, 0}});
    ASSERT_EQ(weights.size(), 4U);
    EXPECT_NEAR(weights[0], 10, 1e-9);
    EXPECT_NEAR(weights[1], 3.0103, 5e-5);
    EXPECT_NEAR(weights[2], 0, 1e-9);
    EXPECT_NEAR(weights[3], -10, 1e-9);
}

// Weights of readings that look at different things add up to what the odds gained.
TEST(WeightOfEvidence, AddsUpToTheOdds) {
    EvidenceData data = frame_of({0.3, 0.7});
    const std::size_t a = add_method(data, "a", {{0.5, 0.5}, {0.05, 0.95}});
    const std::size_t b = add_method(data, "b", {{0.4, 0.6}, {0.7, 0.3}});
    const std::size_t c = add_method(data, "c", {{0.8, 0.2}, {0.3, 0.7}});
    double sum = 0;
    for (const double weight : weights_of(data, {{a, 0}, {b, 0}, {c, 0}})) sum += weight;
    EXPECT_NEAR(sum, 10 * std::log10(10 * (4.0 / 7) * (8.0 / 3)), 1e-9);
}

// Of two equal looks each adds the half that the other leaves it: 19^1.5 with both, 19 with one.
TEST(WeightOfEvidence, OfASecondLookIsWhatItAdds) {
    EvidenceData data = frame_of({0.3, 0.7});
    const std::size_t look = add_method(data, "section", {{0.95, 0.05}, {0.05, 0.95}});
    for (const double weight : weights_of(data, {{look, 0}, {look, 0}})) {
        EXPECT_NEAR(weight, 5 * std::log10(19), 1e-9);
    }
}

// Several candidates count by their prior: (0.2 * 0.9 + 0.1 * 0.3) / 0.3 = 0.7 against 0.1 is a factor of 7.
// Bayes by hand, from even odds: 0.9 to 0.2 of the first reading, 0.3 to 0.6 of the second.
TEST(WeightOfEvidence, AsksWhatEachReadingTellsAloneAndWhatTheOthersTell) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    const std::size_t a = support::add_method(data, "a", {{0.9, 0.1}, {0.2, 0.8}});
    const std::size_t b = support::add_method(data, "b", {{0.7, 0.3}, {0.4, 0.6}});
    const PartEvidence part = evidence_of(data, {}, support::body_with({{a, 0}, {b, 1}}));
    ASSERT_EQ(part.alone.size(), 2U);
    ASSERT_EQ(part.without.size(), 2U);
    EXPECT_NEAR(part.alone[0][0].posterior[0], 0.9 / 1.1, 1e-12);
    EXPECT_NEAR(part.alone[1][0].posterior[0], 1.0 / 3, 1e-12);
    EXPECT_NEAR(part.without[0][0].posterior[0], 1.0 / 3, 1e-12);
    EXPECT_NEAR(part.without[1][0].posterior[0], 0.9 / 1.1, 1e-12);
    EXPECT_NEAR(part.beliefs[0].posterior[0], 0.27 / 0.39, 1e-12);
}

TEST(WeightOfEvidence, OfSeveralCandidatesGoesByTheirPrior) {
    EvidenceData data = frame_of({0.2, 0.1, 0.7});
    const std::size_t a = add_method(data, "a", {{0.9, 0.1}, {0.3, 0.7}, {0.1, 0.9}});
    const PartEvidence part = evidence_of(data, {}, support::body_with({{a, 0}}));
    FrameView view;
    view.bearings = {Bearing::holds, Bearing::holds, Bearing::fails};
    const Truth with = truth_with_priors(part.beliefs, {view});
    const Truth without = truth_with_priors(part.without.at(0), {view});
    EXPECT_NEAR(without.holds, 0.3, 1e-12);  // without the reading the prior stands, and not 'open'
    EXPECT_NEAR(decibans_of(with, without), 10 * std::log10(7.0), 1e-9);
    EXPECT_EQ(truth_of(part.without[0], {view}).open, 1);
}

// What is open counts half on either side: 0.8 + 0.2 / 2 against 0.5 + 0.5 / 2, odds of 9 to odds of 3.
TEST(WeightOfEvidence, CountsWhatIsOpenHalf) {
    EXPECT_NEAR(decibans_of(Truth{0.8, 0, 0.2}, Truth{0.5, 0, 0.5}), 10 * std::log10(3.0), 1e-9);
    EXPECT_NEAR(decibans_of(Truth{0, 0.8, 0.2}, Truth{0.1, 0.5, 0.4}), 10 * std::log10(0.1 / 0.9 / (0.3 / 0.7)), 1e-9);
}

// Where no candidate makes the claim true, the readings speak for it as far as they leave it open: 0.9 against 0.5.
// From 0.3 (all of it half of what is open) to 0.65: odds of 3/7 and 13/7.
TEST(WeightOfEvidence, OfAClaimThatOneReadingMakesTrueGoesByWhatIsTrue) {
    EXPECT_NEAR(decibans_of(Truth{0.5, 0.2, 0.3}, Truth{0, 0.4, 0.6}), 10 * std::log10(13.0 / 3), 1e-9);
    EXPECT_NEAR(decibans_of(Truth{0, 0.4, 0.6}, Truth{0.5, 0.2, 0.3}), -10 * std::log10(13.0 / 3), 1e-9);
}

TEST(WeightOfEvidence, OfAClaimThatNothingMakesTrueGoesByWhatIsNotFalse) {
    EXPECT_NEAR(decibans_of(Truth{0, 0.1, 0.9}, Truth{0, 0.5, 0.5}), 10 * std::log10(9.0), 1e-9);
}

TEST(WeightOfEvidence, IsLeftOutWhereReadingsAreVeryMany) {
    EvidenceData data = frame_of({0.3, 0.7});
    const std::size_t a = add_method(data, "a", {{0.6, 0.4}, {0.5, 0.5}});
    EXPECT_EQ(weights_of(data, Readings(kMostWeighed, {a, 0})).size(), kMostWeighed);
    EXPECT_TRUE(weights_of(data, Readings(kMostWeighed + 1, {a, 0})).empty());
}

// ---- from even odds ----------------------------------------------------------------------------------------------

// Bayes' theorem on odds: what multiplies them by 4.5 takes even odds to 4.5 / 5.5, wherever they stood; the test for
// the rare disease (1 % to 16.1 %) is one of 19 to 1.
TEST(FromEvenOdds, LeavesThePriorOut) {
    EXPECT_NEAR(from_even_odds(0.3, 0.658537), 4.5 / 5.5, 5e-7);
    EXPECT_NEAR(from_even_odds(0.01, 0.161017), 0.95, 5e-7);
    EXPECT_NEAR(from_even_odds(0.96, 0.96), 0.5, 1e-12);  // believed before, and nothing added
    EXPECT_LT(from_even_odds(0.96, 0.95), 0.5);
    EXPECT_TRUE(std::isfinite(from_even_odds(0, 1)));
    EXPECT_TRUE(std::isfinite(from_even_odds(1, 1)));
}

// ---- the default book --------------------------------------------------------------------------------------------

constexpr std::string_view kLeather =
    "body: {readings: [{method: cut-edge, outcome: fibre-and-grain}, {method: ftir-cut-edge, outcome: protein}]}";
constexpr std::string_view kCoatedFabric =
    "body: {readings: [{method: cut-edge, outcome: yarns-under-coat}, {method: ftir-cut-edge, outcome: polyurethane}]}";

PartBeliefs beliefs_of(std::string_view parts) {
    const Dossier dossier = support::dossier_of("sample: {what: bag}\nparts: {" + std::string(parts) + "}\n");
    return believe_part(support::built_in_evidence().data(), dossier.data(), dossier.data().parts.at(0));
}

TEST(MakesSense, OnlyOfWhatThePartIs) {
    const auto& tree = support::built_in_book().data().vocabulary.concepts;
    const EvidenceData& data = support::built_in_evidence().data();
    const auto asked = [&](std::string_view parts, std::string_view frame) {
        return makes_sense(tree, data, beliefs_of(parts), support::frame_named(frame));
    };
    EXPECT_TRUE(asked(kLeather, "species"));
    EXPECT_TRUE(asked(kLeather, "tannage"));
    EXPECT_FALSE(asked(kCoatedFabric, "species"));
    EXPECT_FALSE(asked(kCoatedFabric, "leather-finish"));
    EXPECT_TRUE(asked(kCoatedFabric, "sheet"));
    // Nothing was read of what the lining is.
    EXPECT_TRUE(asked("lining: {readings: [{method: hot-wire, outcome: unclear}]}", "sheet"));
    EXPECT_TRUE(asked("body: {readings: [{method: hang-weight, outcome: holds}]}", "species"));
}

// An outcome that tells nothing leaves each belief where it was, whoever says so of whatever frame.
TEST(Silence, LeavesEveryBeliefWhereItWas) {
    const EvidenceData& data = support::built_in_evidence().data();
    int silent = 0;
    for (std::size_t i = 0; i < data.methods.size(); ++i) {
        const evidence::Method& method = data.methods[i];
        for (std::size_t outcome = 0; outcome < method.outcomes.size(); ++outcome) {
            if (!method.outcomes[outcome].says_nothing) continue;
            ++silent;
            for (const evidence::OutcomeTable& table : method.tables) {
                evidence::PartRecord record;
                record.readings.emplace_back();
                record.readings[0].method = i;
                record.readings[0].outcome = outcome;
                const Belief belief = believe(data, table.frame, record, priors_of(data, table.frame, {}));
                for (std::size_t k = 0; k < belief.prior.size(); ++k) {
                    EXPECT_NEAR(belief.posterior[k], belief.prior[k], 1e-12) << method.id;
                }
            }
        }
    }
    EXPECT_GT(silent, 20);
}

// A test of metals is not made on a strap of leather because both hold chromium.
TEST(MeasuresFor, KeepsToWhatThePartIsFor) {
    const auto& tree = support::built_in_book().data().vocabulary.concepts;
    const EvidenceData& data = support::built_in_evidence().data();
    const PartBeliefs unread(data.frames.size());
    const auto measures = [&](std::string_view method, Part part, std::string_view says, std::string_view quantity) {
        Question question;
        question.part = part;
        question.says = support::concept_named(says);
        question.views = views_of(tree, data, unread, part, question.says);
        return measures_for(data.methods[support::method_named(method)], question, quantity);
    };
    EXPECT_TRUE(measures("xrf-leather", Part::strap, "vegetable-tanned", "content.Cr"));
    EXPECT_FALSE(measures("xrf-filed", Part::strap, "vegetable-tanned", "content.Cr"));
    EXPECT_TRUE(measures("xrf-filed", Part::hardware, "brass", "content.Cu"));
    EXPECT_FALSE(measures("xrf-leather", Part::hardware, "brass", "content.Cu"));
    EXPECT_FALSE(measures("xrf-filed", Part::hardware, "brass", "density"));
    EXPECT_TRUE(measures("thickness-gauge", Part::body, "leather", "thickness"));  // it has no frame of its own
}

}  // namespace
}  // namespace grainside::identify
