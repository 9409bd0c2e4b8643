// How the frames' views of one claim add up: the law of total probability, each figure by hand.
#include <gtest/gtest.h>

#include <utility>
#include <vector>

#include "identify/part_beliefs.h"
#include "rules/book_data.h"
#include "support/built_in_evidence.h"

namespace grainside::identify {
namespace {

FrameView view_of(std::vector<Bearing> bearings) {
    FrameView view;
    view.bearings = std::move(bearings);
    return view;
}

void expect_truth(const Truth& truth, double holds, double fails, double open) {
    EXPECT_NEAR(truth.holds, holds, 1e-12);
    EXPECT_NEAR(truth.fails, fails, 1e-12);
    EXPECT_NEAR(truth.open, open, 1e-12);
}

constexpr auto kHolds = Bearing::holds;
constexpr auto kFails = Bearing::fails;
constexpr auto kOpen = Bearing::open;

TEST(TruthSum, OfNothingIsOpen) {
    expect_truth(TruthSum().truth(), 0, 0, 1);
}

TEST(TruthSum, OfOneFrameAddsUpItsCandidates) {
    TruthSum sum;
    sum.add(view_of({kHolds, kFails, kOpen, kHolds}), {0.4, 0.3, 0.2, 0.1}, 1);
    expect_truth(sum.truth(), 0.5, 0.3, 0.2);
}

// A frame without a reading, and nothing against what it asks for, leaves all as it was, for whoever comes behind it
// too: the second one asks of a part that is such a part with 0.6 only, so 0.6 * 0.9 is true and 0.6 * 0.1 + 0.4 false.
TEST(TruthSum, OfAFrameWithoutAReadingIsThatOfTheNext) {
    TruthSum sum;
    sum.add(view_of({kHolds, kFails}), {}, 1);
    expect_truth(sum.truth(), 0, 0, 1);
    sum.add(view_of({kHolds, kFails}), {0.9, 0.1}, 0.6);
    expect_truth(sum.truth(), 0.54, 0.46, 0);
}

// Nothing was read of the species, but the part is leather with 0.7 only: with 0.3 the claim is false, whichever it is.
TEST(TruthSum, OfAFrameWithoutAReadingIsFalseWhereThePartIsNoSuchThing) {
    TruthSum sum;
    sum.add(view_of({kHolds, kFails}), {}, 0.7);
    expect_truth(sum.truth(), 0, 0.3, 0.7);
}

// 0.7 * (0.5, 0.2, 0.3) and 0.3 false.
TEST(TruthSum, CountsWhatLiesOutsideAgainstTheClaim) {
    TruthSum sum;
    sum.add(view_of({kHolds, kFails, kOpen}), {0.5, 0.2, 0.3}, 0.7);
    expect_truth(sum.truth(), 0.35, 0.44, 0.21);
}

// What the first leaves open (0.5) is split by the second, and its question of what the part is was answered by the
// first.
TEST(TruthSum, SplitsWhatTheFirstLeavesOpen) {
    TruthSum sum;
    sum.add(view_of({kHolds, kFails, kOpen}), {0.2, 0.3, 0.5}, 1);
    sum.add(view_of({kHolds, kFails, kOpen}), {0.6, 0.3, 0.1}, 0.4);
    expect_truth(sum.truth(), 0.2 + 0.5 * 0.6, 0.3 + 0.5 * 0.3, 0.5 * 0.1);
}

// ---- which questions arise -----------------------------------------------------------------------------------------

// A species is asked for where the part is rather leather than not.
TEST(MakesSense, FromAnEvenChanceOn) {
    const evidence::EvidenceData& data = support::built_in_evidence().data();
    const vocabulary::ConceptTree& tree = support::built_in_book().data().vocabulary.concepts;
    const std::size_t sheet = support::frame_named("sheet");
    const std::size_t species = support::frame_named("species");
    PartBeliefs beliefs(data.frames.size());
    Belief& of_sheet = beliefs[sheet];
    of_sheet.posterior.assign(data.frames[sheet].candidates.size(), 0);
    double& leather = of_sheet.posterior[support::candidate_named(sheet, "suede")];
    double& cloth = of_sheet.posterior[support::candidate_named(sheet, "cotton")];
    leather = 0.25;
    cloth = 0.75;
    EXPECT_TRUE(makes_sense(tree, data, beliefs, species));  // nothing was read: that it is leather is taken as given
    of_sheet.readings.emplace_back();
    EXPECT_FALSE(makes_sense(tree, data, beliefs, species));
    EXPECT_TRUE(makes_sense(tree, data, beliefs, sheet));
    for (const double share : {0.5, 0.5625, 0.75}) {
        leather = share;
        cloth = 1 - share;
        EXPECT_TRUE(makes_sense(tree, data, beliefs, species)) << share;
    }
    leather = 0.4375;
    cloth = 0.5625;
    EXPECT_FALSE(makes_sense(tree, data, beliefs, species));
}

// A belief has moved by half a percentage point or more, in either direction.
TEST(Moved, ByHalfAPercentagePoint) {
    Belief belief;
    belief.prior = {0.5, 0.5};
    for (const double by : {0.0049, -0.0049, 0.0}) {
        belief.posterior = {0.5 + by, 0.5 - by};
        EXPECT_FALSE(moved(belief)) << by;
    }
    for (const double by : {0.0051, -0.0051, 0.4}) {
        belief.posterior = {0.5 + by, 0.5 - by};
        EXPECT_TRUE(moved(belief)) << by;
    }
}

}  // namespace
}  // namespace grainside::identify
