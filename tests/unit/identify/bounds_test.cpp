// Where counting, blaming, planning and learning end: bounds of effort and of numbers. They are choices of ours, no
// source; what lies on either side of each is stated here, so that a change of one is meant.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "identify/information.h"
#include "identify/learn.h"
#include "identify/part_beliefs.h"
#include "identify/plan.h"
#include "identify/test_bits.h"
#include "table_evidence.h"

namespace grainside::identify {
namespace {

using evidence::EvidenceData;
using support::about_the_first;
using support::add_method;
using support::body_with;
using support::frame_of;
using Readings = std::vector<std::pair<std::size_t, std::size_t>>;

Belief believed(const EvidenceData& data, const Readings& readings) {
    return believe(data, 0, body_with(readings), priors_of(data, 0, {}));
}

// ---- contradiction -------------------------------------------------------------------------------------------------

// Two of them contradict one another, all others tell nothing.
TEST(Blame, IsSoughtAmongThirtyTwoReadings) {
    EvidenceData data = frame_of({0.5, 0.5});
    const std::size_t a = add_method(data, "a", {{0.99, 0.01}, {0.01, 0.99}});
    const std::size_t b = add_method(data, "b", {{0.99, 0.01}, {0.01, 0.99}});
    const std::size_t nothing = add_method(data, "c", {{0.3, 0.7}, {0.3, 0.7}});
    Readings readings = {{a, 0}, {b, 1}};
    readings.resize(32, {nothing, 0});
    EXPECT_EQ(believed(data, readings).odd_ones, (std::vector<std::size_t>{0, 1}));
    readings.emplace_back(nothing, 0);
    EXPECT_TRUE(believed(data, readings).contradictory);
    EXPECT_TRUE(believed(data, readings).odd_ones.empty());
}

// The book's figure itself counts as a contradiction, with all readings and without one of them.
TEST(Blame, IsNobodysWhereWhatIsLeftStillReachesTheFigure) {
    EvidenceData data = frame_of({0.5, 0.5});
    const std::size_t a = add_method(data, "a", {{0.9, 0.1}, {0.1, 0.9}});
    const std::size_t b = add_method(data, "b", {{0.9, 0.1}, {0.1, 0.9}});
    const std::size_t c = add_method(data, "c", {{0.8, 0.2}, {0.2, 0.8}});
    const double of_two = believed(data, {{a, 0}, {b, 1}}).conflict;
    data.judging.conflict = of_two;
    EXPECT_TRUE(believed(data, {{a, 0}, {b, 1}}).contradictory);
    // Without the third the first two are as far apart as before; without one of those nothing is.
    EXPECT_EQ(believed(data, {{a, 0}, {b, 1}, {c, 0}}).odd_ones, (std::vector<std::size_t>{1, 0}));
}

// ---- damping -------------------------------------------------------------------------------------------------------

// Spreads that differ by less than 1e-9 are equal but for rounding, and share the weight; others come one after the
// other.
TEST(Damping, TakesSpreadsForEqualThatRoundingParts) {
    for (const auto& [apart, first_share] : {std::pair{4e-10, 0.75}, std::pair{4e-9, 0.5}}) {
        EvidenceData data = frame_of({0.5, 0.5});
        const double high = 0.4 * std::exp(apart);
        const std::size_t lower = add_method(data, "a", {{0.4, 0.6}, {0.1, 0.9}});
        const std::size_t higher = add_method(data, "a", {{high, 1 - high}, {0.1, 0.9}});
        const Belief belief = believed(data, {{lower, 0}, {higher, 0}});
        EXPECT_DOUBLE_EQ(belief.readings[0].share, first_share) << apart;
        EXPECT_DOUBLE_EQ(belief.readings[1].share, 1.5 - first_share) << apart;
    }
}

// ---- numbers -------------------------------------------------------------------------------------------------------

// In a book without slips what a candidate cannot give leaves it a chance of 1e-12.
TEST(Impossible, IsOneInAMillionMillions) {
    EvidenceData data = frame_of({0.5, 0.5});
    const std::size_t test = add_method(data, "a", {{1, 0}, {0, 1}});
    EXPECT_NEAR(believed(data, {{test, 0}}).posterior[1] * 1e12, 1, 1e-6);
}

// Shares count from 1e-12 to 1 less 1e-12: 120 decibans from even odds.
TEST(WeightOfEvidence, EndsAtOneInAMillionMillions) {
    EXPECT_NEAR(decibans_of(1, 0.5), 120, 1e-3);
    EXPECT_NEAR(decibans_of(0, 0.5), -120, 1e-3);
    EXPECT_NEAR(decibans_of(0.5, 1), -120, 1e-3);
    EXPECT_NEAR((1 - from_even_odds(0, 0.5)) * 1e12, 1, 1e-3);
    EXPECT_NEAR(from_even_odds(1, 0.5) * 1e12, 1, 1e-3);
}

// Dirichlet: (weight * 0.5 + 1) / (weight + 1), the weight of what is asked taken into 0.001 to 1e9.
TEST(Learn, TakesWeightsIntoItsBounds) {
    EvidenceData data = frame_of({0.5, 0.5});
    (void)add_method(data, "a", {{0.5, 0.5}, {0.5, 0.5}});
    evidence::DossierData dossier;
    dossier.parts.push_back(body_with({{0, 0}}));
    dossier.confirmed.push_back({Part::body, 0, 0});
    const std::vector<const evidence::DossierData*> all = {&dossier};
    const auto after = [&](double weight) { return learn(data, all, weight).rows.at(0).after.at(0); };
    const auto mean = [](double weight) { return (weight * 0.5 + 1) / (weight + 1); };
    EXPECT_DOUBLE_EQ(after(0.001), mean(0.001));
    for (const double little : {0.0, -5.0, std::nan("")}) EXPECT_DOUBLE_EQ(after(little), mean(0.001)) << little;
    EXPECT_NEAR((after(1e9) - 0.5) * 1e9, 0.5, 1e-6);
    EXPECT_NEAR((after(1e12) - 0.5) * 1e9, 0.5, 1e-6);
}

// ---- plans ---------------------------------------------------------------------------------------------------------

std::size_t add_gauge(EvidenceData& data, const std::string& quantity, double reliability) {
    evidence::Method gauge;
    gauge.id = "gauge-" + std::to_string(data.methods.size());
    gauge.looks_at = gauge.id;
    gauge.parts = evidence::kAllParts;
    gauge.reads.push_back({quantity, measure::Dimension::length, "mm"});
    gauge.reliability = reliability;
    data.methods.push_back(std::move(gauge));
    return data.methods.size() - 1;
}

PartEvidence body(const EvidenceData& data) {
    return evidence_of(data, {}, body_with({}));
}

// Thirty tests that tell a little each, and none of which settles anything.
TEST(Plan, EndsAfterTwentyFourSteps) {
    EvidenceData data = frame_of({0.5, 0.5});
    data.judging.least_bits = 1e-4;
    for (int i = 0; i < 30; ++i) (void)add_method(data, "look-" + std::to_string(i), {{0.52, 0.48}, {0.48, 0.52}});
    EXPECT_EQ(make_plan(data, {body(data)}, {about_the_first(data)}).steps.size(), 24U);
}

// Of two tests alike the one that the book has first.
TEST(Plan, TakesTheFirstOfTestsThatAreAlike) {
    EvidenceData data = frame_of({0.5, 0.5});
    const std::size_t first = add_method(data, "a", {{0.8, 0.2}, {0.2, 0.8}});
    (void)add_method(data, "a", {{0.8, 0.2}, {0.2, 0.8}});
    const Plan plan = make_plan(data, {body(data)}, {about_the_first(data)});
    ASSERT_FALSE(plan.steps.empty());
    EXPECT_EQ(plan.steps[plan.next].method, first);
    EXPECT_EQ(most_telling(data, body(data), about_the_first(data)), first);
}

// A test is said to be about the questions that get a fifth of its bits. Beside one of even chance (0.531 bits by a
// gauge that is right nine times of ten), one of 0.06 gets 0.136 bits, 20.4 per cent, one of 0.055 gets 0.126, 19.1 per
// cent.
TEST(Plan, TellsTheQuestionsThatGetAFifth) {
    for (const auto& [chance, told] : {std::pair{0.06, 2U}, std::pair{0.055, 1U}}) {
        EvidenceData data = frame_of({0.5, 0.5});
        (void)add_gauge(data, "coat", 0.9);
        Question even;
        even.says = 1;
        even.limits.push_back({"coat", 0.5});
        Question other = even;
        other.limits[0].chance = chance;
        const Plan plan = make_plan(data, {body(data)}, {even, other});
        ASSERT_FALSE(plan.steps.empty());
        EXPECT_NEAR(plan.steps[0].bits, binary_information(0.5, 0.9) + binary_information(chance, 0.9), 1e-9);
        EXPECT_EQ(plan.steps[0].questions.size(), told) << chance;
    }
}

// True, false or neither: log2 3 bits, however many limits a question asks.
TEST(Plan, ExpectsNoMoreThanAQuestionHolds) {
    EvidenceData data = frame_of({0.5, 0.5});
    (void)add_gauge(data, "coat", 0.9999);
    Question question;
    question.says = 1;
    for (int i = 0; i < 4; ++i) question.limits.push_back({"coat", 0.5});
    const Plan plan = make_plan(data, {body(data)}, {question});
    ASSERT_FALSE(plan.steps.empty());
    EXPECT_NEAR(plan.steps[0].bits, std::log2(3), 1e-12);
}

// Where nothing is claimed each candidate is an answer of its own: four of them hold two bits.
TEST(Plan, ExpectsAllThatThereIsToKnowWhereNothingIsClaimed) {
    EvidenceData data = frame_of({0.25, 0.25, 0.25, 0.25});
    (void)add_method(data, "a", {{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}});
    Question question = about_the_first(data);
    question.says = 0;
    const Plan plan = make_plan(data, {body(data)}, {question});
    ASSERT_FALSE(plan.steps.empty());
    EXPECT_NEAR(plan.steps[0].bits, 2, 1e-12);
    EXPECT_EQ(plan.decided_after, 1);
}

// Every way that two tests of a rare thing can come out, counted: the share of the truths (drawn evenly over the
// belief, so to 1/64) that both of them settle is the sum of the chances of those outcomes.
TEST(Plan, ExpectsToSettleWhatAllOutcomesTogetherSettle) {
    EvidenceData data = frame_of({0.25, 0.75});
    data.judging.least_bits = 0.001;
    const double right = 0.9;
    (void)add_method(data, "a", {{right, 1 - right}, {1 - right, right}});
    (void)add_method(data, "b", {{right, 1 - right}, {1 - right, right}});
    double settled = 0;
    for (const bool first : {true, false}) {
        const double one = first ? right : 1 - right;
        const double other = 1 - one;
        const double seen = 0.25 * one + 0.75 * other;
        const double belief = 0.25 * one / seen;
        if (std::max(belief, 1 - belief) >= data.judging.decided_at) {
            settled += seen;
            continue;
        }
        for (const bool second : {true, false}) {
            const double then = second ? right : 1 - right;
            const double both = belief * then + (1 - belief) * (1 - then);
            const double after = belief * then / both;
            if (std::max(after, 1 - after) >= data.judging.decided_at) settled += seen * both;
        }
    }
    const Plan plan = make_plan(data, {body(data)}, {about_the_first(data)});
    ASSERT_EQ(plan.steps.size(), 2U);
    EXPECT_EQ(plan.decided_now, 0);
    // Outcomes are drawn for 64 samples: three standard deviations of a share.
    EXPECT_NEAR(plan.decided_after, settled, 3 * std::sqrt(settled * (1 - settled) / 64));
}

}  // namespace
}  // namespace grainside::identify
