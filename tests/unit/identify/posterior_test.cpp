// Bayes' theorem on textbook examples, and how readings are damped, held back by slips and found contradictory.
#include "identify/posterior.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "identify/likelihood.h"
#include "support/built_in_evidence.h"
#include "table_evidence.h"

namespace grainside::identify {
namespace {

using evidence::EvidenceData;
using support::add_method;
using support::body_with;
using support::frame_of;

Belief believed(const EvidenceData& data, const std::vector<std::pair<std::size_t, std::size_t>>& readings,
                std::size_t left_out = evidence::kNone) {
    return believe(data, 0, body_with(readings), priors_of(data, 0, {}), {.left_out = left_out});
}

const support::Rows kDiseaseTest = {{0.95, 0.05}, {0.05, 0.95}};
constexpr double kFactor = 19;  // 0.95 / 0.05

// Prior 1 %, sensitivity and specificity 95 %: 0.161 (MacKay's exercise, from memory, recomputed).
TEST(Posterior, OfTheDiseaseTest) {
    EvidenceData data = frame_of({0.01, 0.99});
    const std::size_t test = add_method(data, "blood", kDiseaseTest);
    const Belief positive = believed(data, {{test, 0}});
    EXPECT_NEAR(positive.posterior[0], 0.161017, 5e-7);
    EXPECT_NEAR(positive.posterior[1], 1 - 0.161017, 5e-7);
    EXPECT_EQ(positive.prior, (std::vector<double>{0.01, 0.99}));
    EXPECT_EQ(positive.readings.size(), 1U);
    EXPECT_EQ(positive.conflict, 0);
}

// A claim that is false with 0.30; sensitivity 0.9, specificity 0.8: 0.6585 after a positive, 0.9492 true after a
// negative (computed by hand beforehand).
TEST(Posterior, OfAnUnevenTest) {
    EvidenceData data = frame_of({0.3, 0.7});
    const std::size_t test = add_method(data, "a", {{0.9, 0.1}, {0.2, 0.8}});
    EXPECT_NEAR(believed(data, {{test, 0}}).posterior[0], 0.658537, 5e-7);
    EXPECT_NEAR(believed(data, {{test, 1}}).posterior[1], 0.949153, 5e-7);
}

// Two urns, 70 red in 100 and 30 red in 100; of twelve draws with replacement eight are red: 0.97 (Edwards' experiment
// on conservatism, 1968; from memory). Every draw is a look of its own.
TEST(Posterior, OfTheTwoUrns) {
    EvidenceData data = frame_of({0.5, 0.5});
    std::vector<std::pair<std::size_t, std::size_t>> draws;
    draws.reserve(12);
    for (int i = 0; i < 12; ++i) {
        draws.emplace_back(add_method(data, "draw " + std::to_string(i), {{0.7, 0.3}, {0.3, 0.7}}), i < 8 ? 0 : 1);
    }
    const Belief belief = believed(data, draws);
    EXPECT_NEAR(belief.posterior[0], 0.97, 0.005);
    EXPECT_NEAR(belief.posterior[0], 1 / (1 + std::pow(3.0 / 7, 4)), 1e-12);
}

// Three doors; the host opens the third and favours neither door: the first keeps a third, the second has two thirds.
TEST(Posterior, OfTheThreeDoors) {
    EvidenceData data = frame_of({1.0 / 3, 1.0 / 3, 1.0 / 3});
    data.judging.slip = {1e-9, 1e-9, 1e-9};  // the host hardly ever slips
    const std::size_t host = add_method(data, "host", {{0.5, 0.5}, {0, 1}, {1, 0}});
    const Belief belief = believed(data, {{host, 1}});
    EXPECT_NEAR(belief.posterior[0], 1.0 / 3, 1e-8);
    EXPECT_NEAR(belief.posterior[1], 2.0 / 3, 1e-8);
    EXPECT_NEAR(belief.posterior[2], 0, 1e-8);
}

TEST(Posterior, WithoutAReadingIsThePrior) {
    EvidenceData data = frame_of({0.2, 0.8});
    const std::size_t test = add_method(data, "blood", kDiseaseTest);
    EXPECT_EQ(believed(data, {}).posterior, (std::vector<double>{0.2, 0.8}));
    const Belief left_out = believed(data, {{test, 0}}, 0);
    EXPECT_EQ(left_out.posterior, (std::vector<double>{0.2, 0.8}));
    EXPECT_TRUE(left_out.readings.empty());
    EXPECT_TRUE(believed(data, {{test, evidence::kNone}}).readings.empty());
}

TEST(Posterior, LeavesOutOnlyTheOneReading) {
    EvidenceData data = frame_of({0.5, 0.5});
    const std::size_t blood = add_method(data, "blood", kDiseaseTest);
    const std::size_t urine = add_method(data, "urine", {{0.8, 0.2}, {0.4, 0.6}});
    const Belief rest = believed(data, {{blood, 0}, {urine, 0}}, 0);
    ASSERT_EQ(rest.readings.size(), 1U);
    EXPECT_EQ(rest.readings[0].reading, 1U);
    EXPECT_NEAR(rest.posterior[0], 2.0 / 3, 1e-12);
}

TEST(Priors, OfTheDossierGoBeforeThoseOfTheBook) {
    const EvidenceData data = frame_of({0.2, 0.8});
    evidence::DossierData dossier;
    EXPECT_EQ(priors_of(data, 0, dossier), (std::vector<double>{0.2, 0.8}));
    dossier.priors.push_back({0, {0.6, 0.4}});
    EXPECT_EQ(priors_of(data, 0, dossier), (std::vector<double>{0.6, 0.4}));
}

// ---- worn samples -----------------------------------------------------------------------------------------------

// What was taken in hand worn does not show how it behaved when it was new, and what wear spoils shows nothing at all;
// that it is leather it still shows.
TEST(Worn, ReadingsCountByWhatWearDoes) {
    struct Case {
        std::string_view method, frame;
        bool worn, counts;
    };
    constexpr Case kCases[] = {
        {"cut-edge", "sheet", true, true},
        {"coat-microscopy", "sheet", true, true},
        {"water-drop", "leather-finish", true, false},
        {"water-drop", "leather-finish", false, true},
        {"salt-spray", "corroding", true, false},
        {"salt-spray", "corroding", false, true},
        {"shower", "water", true, false},
        {"damp-salt-cloth", "corroding", true, false},
        {"magnet", "metal", true, true},
    };
    const EvidenceData& data = support::built_in_evidence().data();
    for (const Case& one : kCases) {
        evidence::Reading reading;
        reading.method = support::method_named(one.method);
        EXPECT_EQ(counts(data, support::frame_named(one.frame), reading, one.worn), one.counts) << one.method;
    }
}

TEST(Worn, WhatDoesNotCountIsNoReading) {
    EvidenceData data = frame_of({0.3, 0.7});
    const std::size_t spoilt = add_method(data, "a", kDiseaseTest);
    const std::size_t sound = add_method(data, "b", kDiseaseTest);
    data.methods[spoilt].when_worn = evidence::WhenWorn::spoils;
    const auto record = body_with({{spoilt, 0}, {sound, 1}});
    const Belief worn = believe(data, 0, record, {0.3, 0.7}, {.sample_is_worn = true});
    ASSERT_EQ(worn.readings.size(), 1U);
    EXPECT_EQ(worn.readings[0].reading, 1U);
    EXPECT_NEAR(worn.posterior[0], 0.3 / (0.3 + 0.7 * kFactor), 1e-12);
    EXPECT_EQ(worn.conflict, 0);
    EXPECT_EQ(believe(data, 0, record, {0.3, 0.7}).readings.size(), 2U);
}

// A candidate that is no concept: the frame is about behaviour, which wear lowers.
TEST(Worn, WhatWearLowersTellsTheMaterialOnly) {
    EvidenceData data = frame_of({0.3, 0.7});
    const std::size_t lowered = add_method(data, "a", kDiseaseTest);
    data.methods[lowered].when_worn = evidence::WhenWorn::lowers;
    const auto record = body_with({{lowered, 0}});
    EXPECT_TRUE(believe(data, 0, record, {0.3, 0.7}, {.sample_is_worn = true}).readings.empty());
    data.frames[0].candidates[0].is = 1;
    EXPECT_EQ(believe(data, 0, record, {0.3, 0.7}, {.sample_is_worn = true}).readings.size(), 1U);
}

// ---- damping -----------------------------------------------------------------------------------------------------

double odds_of(const Belief& belief) {
    return belief.posterior[0] / belief.posterior[1];
}

TEST(Damping, LeavesDifferentLooksWhole) {
    EvidenceData data = frame_of({0.01, 0.99});
    const std::size_t blood = add_method(data, "blood", kDiseaseTest);
    const std::size_t urine = add_method(data, "urine", kDiseaseTest);
    const Belief belief = believed(data, {{blood, 0}, {urine, 0}});
    EXPECT_EQ(belief.readings[0].share, 1);
    EXPECT_EQ(belief.readings[1].share, 1);
    EXPECT_NEAR(odds_of(belief), kFactor * kFactor / 99, 1e-9);
}

// Equal readings share 1 + 1/2: neither is before the other.
TEST(Damping, OfTwoEqualReadings) {
    EvidenceData data = frame_of({0.01, 0.99});
    const std::size_t test = add_method(data, "blood", kDiseaseTest);
    const Belief belief = believed(data, {{test, 0}, {test, 0}});
    EXPECT_DOUBLE_EQ(belief.readings[0].share, 0.75);
    EXPECT_DOUBLE_EQ(belief.readings[1].share, 0.75);
    EXPECT_NEAR(odds_of(belief), std::pow(kFactor, 1.5) / 99, 1e-9);
}

// 1 + 1/2 + 1/4, and never 2 however often one looks.
TEST(Damping, OfManyEqualReadingsHasAnEnd) {
    EvidenceData data = frame_of({0.01, 0.99});
    const std::size_t test = add_method(data, "blood", kDiseaseTest);
    EXPECT_NEAR(odds_of(believed(data, {{test, 0}, {test, 0}, {test, 0}})), std::pow(kFactor, 1.75) / 99, 1e-9);
    const std::vector<std::pair<std::size_t, std::size_t>> many(40, {test, 0});
    EXPECT_LT(odds_of(believed(data, many)), std::pow(kFactor, 2) / 99 * (1 + 1e-12));
}

// The one that tells most counts whole, wherever it stands and whichever method of the look it comes from.
TEST(Damping, CountsTheMostTellingWhole) {
    EvidenceData data = frame_of({0.5, 0.5});
    const std::size_t good = add_method(data, "section", kDiseaseTest);
    const std::size_t poor = add_method(data, "section", {{0.6, 0.4}, {0.4, 0.6}});
    const std::size_t other = add_method(data, "weight", {{0.6, 0.4}, {0.4, 0.6}});
    const Belief belief = believed(data, {{poor, 0}, {other, 0}, {good, 0}, {poor, 1}});
    EXPECT_DOUBLE_EQ(belief.readings[2].share, 1);
    EXPECT_DOUBLE_EQ(belief.readings[0].share, (0.5 + 0.25) / 2);
    EXPECT_DOUBLE_EQ(belief.readings[3].share, (0.5 + 0.25) / 2);
    EXPECT_DOUBLE_EQ(belief.readings[1].share, 1);
    EXPECT_NEAR(odds_of(belief), kFactor * 1.5, 1e-9);  // the poor ones cancel
}

TEST(Damping, FollowsTheBook) {
    EvidenceData data = frame_of({0.5, 0.5});
    const std::size_t test = add_method(data, "blood", kDiseaseTest);
    data.judging.same_look = 0;
    EXPECT_NEAR(odds_of(believed(data, {{test, 0}, {test, 0}})), kFactor, 1e-9);
    data.judging.same_look = 1;
    EXPECT_NEAR(odds_of(believed(data, {{test, 0}, {test, 0}})), kFactor * kFactor, 1e-9);
}

// ---- slips -------------------------------------------------------------------------------------------------------

// A slip of 1 % that reads either outcome alike: 0.995 to 0.005, whatever the table says.
TEST(Slip, KeepsAPerfectTestFromBeingSure) {
    EvidenceData data = frame_of({0.5, 0.5});
    data.judging.slip = {0.01, 0.01, 0.01};
    const std::size_t test = add_method(data, "a", {{1, 0}, {0, 1}});
    const Belief belief = believed(data, {{test, 0}});
    EXPECT_NEAR(belief.posterior[0], 0.995, 1e-12);
    EXPECT_NEAR(belief.posterior[1], 0.005, 1e-12);
    EXPECT_NEAR(outcome_chance(data, data.methods[test], data.methods[test].tables[0], 1, 0), 0.005, 1e-12);
}

// By whoever makes it: 4 % leave 0.98 to 0.02, 2 % 0.99 to 0.01, 1 % 0.995 to 0.005.
TEST(Slip, GoesByTheHands) {
    EvidenceData data = frame_of({0.5, 0.5});
    data.judging.slip = {0.04, 0.02, 0.01};
    const std::size_t test = add_method(data, "a", {{1, 0}, {0, 1}});
    const auto posterior_by = [&](evidence::Who who) {
        data.methods[test].who = who;
        return believed(data, {{test, 0}}).posterior[0];
    };
    EXPECT_NEAR(posterior_by(evidence::Who::anyone), 0.98, 1e-12);
    EXPECT_NEAR(posterior_by(evidence::Who::practised), 0.99, 1e-12);
    EXPECT_NEAR(posterior_by(evidence::Who::laboratory), 0.995, 1e-12);
}

// Half of the slips are mixed-up samples: with a slip of 10 % and 0.8 of the samples giving the second outcome, the
// first is seen of a material that never gives it in 0.1 * (0.2 + 0.5) / 2.
TEST(Slip, IsHalfAMixedUpSample) {
    EvidenceData data = frame_of({0.2, 0.8});
    data.judging.slip = {0.1, 0.1, 0.1};
    const std::size_t test = add_method(data, "a", {{1, 0}, {0, 1}});
    EXPECT_NEAR(outcome_chance(data, data.methods[test], data.methods[test].tables[0], 1, 0), 0.035, 1e-12);
    EXPECT_NEAR(outcome_chance(data, data.methods[test], data.methods[test].tables[0], 0, 0), 0.935, 1e-12);
}

// A book may allow no slips. What a candidate never gives has no logarithm then; two such readings of one look, and two
// that rule out everything, still come to an end and to shares of 1.
TEST(Slip, OfNothingWithAChanceOfNothingComesToAnEnd) {
    EvidenceData data = frame_of({0.3, 0.7});
    const std::size_t a = add_method(data, "a", {{1, 0}, {0, 1}});
    const std::size_t b = add_method(data, "b", {{1, 0}, {0, 1}});
    const Belief twice = believed(data, {{a, 0}, {a, 0}});
    EXPECT_NEAR(twice.posterior[0], 1, 1e-9);
    EXPECT_FALSE(twice.contradictory);
    for (const auto& readings : {std::vector<std::pair<std::size_t, std::size_t>>{{a, 0}, {a, 1}}, {{a, 0}, {b, 1}}}) {
        const Belief against = believed(data, readings);
        EXPECT_NEAR(against.posterior[0], 0.3, 1e-9);
        EXPECT_NEAR(against.posterior[1], 0.7, 1e-9);
        EXPECT_TRUE(std::isfinite(against.conflict));
        EXPECT_TRUE(against.contradictory);
    }
}

TEST(Slip, LeavesChancesThatAddUpToOne) {
    for (const evidence::Method& method : support::built_in_evidence().data().methods) {
        for (const evidence::OutcomeTable& table : method.tables) {
            const EvidenceData& data = support::built_in_evidence().data();
            for (std::size_t i = 0; i < data.frames[table.frame].candidates.size(); ++i) {
                double sum = 0;
                for (std::size_t o = 0; o < method.outcomes.size(); ++o) {
                    const double chance = outcome_chance(data, method, table, i, o);
                    EXPECT_GT(chance, 0) << method.id;
                    sum += chance;
                }
                EXPECT_NEAR(sum, 1, 1e-12) << method.id;
            }
        }
    }
}

// Hardware of which one density is known, in g/cm3 with a standard uncertainty of 0.005.
evidence::PartRecord weighed(double density) {
    evidence::PartRecord record;
    record.part = Part::hardware;
    record.readings.emplace_back();
    record.readings[0].method = support::method_named("weighing-in-water");
    record.readings[0].quantities.push_back({"density", {.value = density, .u = 0.005}, measure::Dimension::density});
    return record;
}

// A density that no alloy of the book has tells none of them apart; what the book does not list may have any.
TEST(Slip, ExplainsADensityThatNothingHas) {
    const EvidenceData& data = support::built_in_evidence().data();
    const std::size_t metal = support::frame_named("metal");
    const Belief belief = believe(data, metal, weighed(5), priors_of(data, metal, {}));
    double kept = 0;  // of the prior, by those whose density is known
    for (std::size_t i = 0; i < belief.prior.size(); ++i) {
        const evidence::Candidate& candidate = data.frames[metal].candidates[i];
        if (candidate.alloy == evidence::kNone) {
            EXPECT_GE(belief.posterior[i], belief.prior[i]) << candidate.id;
            continue;
        }
        if (kept == 0) kept = belief.posterior[i] / belief.prior[i];
        EXPECT_NEAR(belief.posterior[i] / belief.prior[i], kept, 1e-9) << candidate.id;
    }
    EXPECT_GT(kept, 0);
}

// 8.48 g/cm3 +- 0.01 is brass and no zinc (densities from handbooks: brass 8.4 to 8.7, zinc alloy 6.6 to 6.7).
TEST(Slip, LetsADensityTellBrassFromZinc) {
    const EvidenceData& data = support::built_in_evidence().data();
    const std::size_t metal = support::frame_named("metal");
    const Belief belief = believe(data, metal, weighed(8.48), priors_of(data, metal, {}));
    double brass = 0;
    double zinc = 0;
    for (std::size_t i = 0; i < belief.posterior.size(); ++i) {
        const std::string& id = data.frames[metal].candidates[i].id;
        if (id.starts_with("brass")) brass += belief.posterior[i];
        if (id.starts_with("zinc")) zinc += belief.posterior[i];
    }
    EXPECT_GT(brass, 0.9);
    EXPECT_LT(zinc, 0.05);
}

// ---- contradiction -----------------------------------------------------------------------------------------------

struct Looks {
    EvidenceData data = frame_of({0.5, 0.5});
    std::size_t a = add_method(data, "a", {{0.99, 0.01}, {0.01, 0.99}});
    std::size_t b = add_method(data, "b", {{0.99, 0.01}, {0.01, 0.99}});
    std::size_t c = add_method(data, "c", {{0.99, 0.01}, {0.01, 0.99}});
};

TEST(Conflict, OfReadingsThatAgreeIsNone) {
    const Looks looks;
    const Belief belief = believed(looks.data, {{looks.a, 0}, {looks.b, 0}, {looks.c, 0}});
    EXPECT_EQ(belief.conflict, 0);
    EXPECT_FALSE(belief.contradictory);
    EXPECT_TRUE(belief.odd_ones.empty());
}

// Whoever explains one best has 0.99; whoever explains both best 0.99 * 0.01: a factor of 99. That is more than by
// Jensen and others, where each alone has 1/2.
TEST(Conflict, OfReadingsThatDisagree) {
    const Looks looks;
    const Belief belief = believed(looks.data, {{looks.a, 0}, {looks.b, 1}});
    EXPECT_NEAR(belief.conflict, 10 * std::log10(99), 1e-9);
    EXPECT_TRUE(belief.contradictory);
    EXPECT_NEAR(belief.posterior[0], 0.5, 1e-12);
    EXPECT_EQ(belief.odd_ones.size(), 2U);  // either may be wrong
}

// Two against two: each alone has 1/2, all together 0.99^2 * 0.01^2. Jensen and others (1990), from memory: log of the
// ratio, here more than any two of them disagree.
TEST(Conflict, OfManyReadingsIsHowUnlikelyTheyAreTogether) {
    Looks looks;
    const std::size_t d = add_method(looks.data, "d", {{0.99, 0.01}, {0.01, 0.99}});
    const Belief belief = believed(looks.data, {{looks.a, 0}, {looks.b, 1}, {looks.c, 0}, {d, 1}});
    EXPECT_NEAR(belief.conflict, 10 * std::log10(std::pow(0.5, 4) / (0.99 * 0.99 * 0.01 * 0.01)), 1e-9);
}

// Each reading speaks for something rare, and nothing explains both: 0.9 * 0.9 against 0.9 * 0.01. Beside what is
// common neither is a surprise to the other (0.04 decibans by Jensen and others).
TEST(Conflict, OfReadingsThatNothingExplainsTogether) {
    EvidenceData data = frame_of({0.001, 0.001, 0.998});
    const std::size_t a = add_method(data, "a", {{0.9, 0.1}, {0.01, 0.99}, {0.01, 0.99}});
    const std::size_t b = add_method(data, "b", {{0.01, 0.99}, {0.9, 0.1}, {0.01, 0.99}});
    const Belief belief = believed(data, {{a, 0}, {b, 0}});
    EXPECT_NEAR(belief.conflict, 10 * std::log10(90), 1e-9);
    EXPECT_TRUE(belief.contradictory);
}

// That two look at the same thing makes it no better: damped they count less, and contradict one another as much.
TEST(Conflict, IsNotDamped) {
    EvidenceData data = frame_of({0.5, 0.5});
    const std::size_t a = add_method(data, "section", {{0.99, 0.01}, {0.01, 0.99}});
    const std::size_t b = add_method(data, "section", {{0.99, 0.01}, {0.01, 0.99}});
    const Belief belief = believed(data, {{a, 0}, {b, 1}});
    EXPECT_DOUBLE_EQ(belief.readings[0].share, 0.75);
    EXPECT_NEAR(belief.conflict, 10 * std::log10(99), 1e-9);
}

TEST(Conflict, OfReadingsThatTellNothingOfOneAnotherIsNone) {
    EvidenceData data = frame_of({0.5, 0.5});
    const std::size_t a = add_method(data, "a", {{0.9, 0.1}, {0.1, 0.9}});
    const std::size_t nothing = add_method(data, "b", {{0.3, 0.7}, {0.3, 0.7}});
    EXPECT_NEAR(believed(data, {{a, 0}, {nothing, 1}}).conflict, 0, 1e-9);
}

// Beside readings that tell nothing, two that disagree: by 99 as a pair, and by Jensen and others 1/4 to 0.99 * 0.01.
TEST(Conflict, HoldsUpToSixtyFourReadingsAgainstOneAnother) {
    Looks looks;
    const std::size_t nothing = add_method(looks.data, "d", {{0.3, 0.7}, {0.3, 0.7}});
    std::vector<std::pair<std::size_t, std::size_t>> readings = {{looks.a, 0}, {looks.b, 1}};
    readings.resize(64, {nothing, 0});
    EXPECT_NEAR(believed(looks.data, readings).conflict, 10 * std::log10(99), 1e-9);
    readings.emplace_back(nothing, 0);
    EXPECT_NEAR(believed(looks.data, readings).conflict, 10 * std::log10(0.25 / (0.99 * 0.01)), 1e-9);
}

TEST(Conflict, CountsFromTheBooksFigureOn) {
    Looks looks;
    const double conflict = believed(looks.data, {{looks.a, 0}, {looks.b, 1}}).conflict;
    looks.data.judging.conflict = conflict + 0.001;
    EXPECT_FALSE(believed(looks.data, {{looks.a, 0}, {looks.b, 1}}).contradictory);
    looks.data.judging.conflict = conflict - 0.001;
    EXPECT_TRUE(believed(looks.data, {{looks.a, 0}, {looks.b, 1}}).contradictory);
}

TEST(Conflict, NamesTheOddOneOut) {
    const Looks looks;
    const Belief belief = believed(looks.data, {{looks.a, 0}, {looks.b, 1}, {looks.c, 0}});
    EXPECT_TRUE(belief.contradictory);
    EXPECT_EQ(belief.odd_ones, (std::vector<std::size_t>{1}));
}

// Two against two: nobody alone is to blame.
TEST(Conflict, BlamesNobodyWhereNoSingleReadingIsOdd) {
    Looks looks;
    const std::size_t d = add_method(looks.data, "d", {{0.99, 0.01}, {0.01, 0.99}});
    const Belief belief = believed(looks.data, {{looks.a, 0}, {looks.b, 1}, {looks.c, 0}, {d, 1}});
    EXPECT_TRUE(belief.contradictory);
    EXPECT_TRUE(belief.odd_ones.empty());
}

}  // namespace
}  // namespace grainside::identify
