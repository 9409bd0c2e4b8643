// What must be so of any readings, over the default book with all its frames and methods; seeded, so that a failure
// comes back. No outside source: these are the promises of the design (order of readings, silence of readings that tell
// nothing, a verdict only from readings).
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "grainside/judge.h"
#include "identify/information.h"
#include "identify/part_beliefs.h"
#include "identify/posterior.h"
#include "random_dossier.h"
#include "rules/book_data.h"
#include "support/built_in_evidence.h"
#include "verdict/limit_decision.h"

namespace grainside::identify {
namespace {

using evidence::EvidenceData;
using support::built_in_book;
using support::built_in_evidence;
using support::RandomDossier;

const EvidenceData& data() {
    return built_in_evidence().data();
}

constexpr int kDossiers = 400;

TEST(Properties, TheOrderOfReadingsDoesNotShowInTheLastDigit) {
    RandomDossier random(1);
    int compared = 0;
    for (int n = 0; n < kDossiers; ++n) {
        evidence::PartRecord record = random.part();
        const PartBeliefs before = believe_part(data(), {}, record);
        for (std::size_t i = record.readings.size(); i > 1; --i) {
            std::swap(record.readings[i - 1], record.readings[random.below(i)]);
        }
        const PartBeliefs after = believe_part(data(), {}, record);
        for (std::size_t frame = 0; frame < before.size(); ++frame) {
            ASSERT_EQ(before[frame].posterior, after[frame].posterior) << n << " " << data().frames[frame].id;
            ASSERT_EQ(before[frame].conflict, after[frame].conflict) << n << " " << data().frames[frame].id;
            compared += before[frame].readings.size() > 1 ? 1 : 0;
        }
    }
    EXPECT_GT(compared, kDossiers / 4);
}

TEST(Properties, BeliefsAreSharesOfOne) {
    RandomDossier random(2);
    for (int n = 0; n < kDossiers; ++n) {
        for (const Belief& belief : believe_part(data(), {}, random.part())) {
            if (belief.posterior.empty()) continue;
            double sum = 0;
            for (const double share : belief.posterior) {
                ASSERT_TRUE(std::isfinite(share)) << n;
                ASSERT_GE(share, 0) << n;
                sum += share;
            }
            ASSERT_NEAR(sum, 1, 1e-12) << n << " " << data().frames[belief.frame].id;
            ASSERT_TRUE(std::isfinite(belief.conflict) && belief.conflict >= 0) << n;
        }
    }
}

// A method whose rows are all alike: in a look of its own, and in that of a reading that tells something.
TEST(Properties, AReadingThatAllExplainAlikeChangesNothing) {
    RandomDossier random(3);
    EvidenceData with = data();
    for (int n = 0; n < kDossiers; ++n) {
        evidence::PartRecord record = random.part();
        const PartBeliefs before = believe_part(with, {}, record);
        evidence::Method silent;
        silent.id = "silent";
        silent.looks_at = n % 2 == 0 ? "nothing" : with.methods[record.readings[0].method].looks_at;
        silent.outcomes = {{"a", "", false}, {"b", "", false}};
        for (std::size_t frame = 0; frame < with.frames.size(); ++frame) {
            evidence::OutcomeTable table;
            table.frame = frame;
            for (std::size_t i = 0; i < with.frames[frame].candidates.size(); ++i) {
                table.chance.insert(table.chance.end(), {0.3, 0.7});
            }
            silent.tables.push_back(std::move(table));
        }
        with.methods.push_back(std::move(silent));
        evidence::Reading reading;
        reading.method = with.methods.size() - 1;
        reading.outcome = random.below(2);
        record.readings.insert(record.readings.begin() + static_cast<std::ptrdiff_t>(random.below(2)), reading);
        const PartBeliefs after = believe_part(with, {}, record);
        with.methods.pop_back();
        for (std::size_t frame = 0; frame < before.size(); ++frame) {
            for (std::size_t i = 0; i < before[frame].posterior.size(); ++i) {
                ASSERT_NEAR(before[frame].posterior[i], after[frame].posterior[i], 1e-12)
                    << n << " " << with.frames[frame].candidates[i].id;
            }
        }
    }
}

// What the book does not list explains an outcome as well as the others do on average, so that one outcome of a method
// that has no row for it leaves its share as it was (EVIDENCE.md, `unlisted`), but for less than a tenth of it: the
// average is taken before outcomes that say nothing are levelled.
TEST(Properties, OneOutcomeLeavesTheUnlistedAsTheyWere) {
    struct Case {
        std::string_view frame, candidate, method;
    };
    constexpr Case kCases[] = {{"sheet", "other-sheet", "loupe"},
                               {"sheet", "other-sheet", "cut-edge"},
                               {"metal", "other-metal", "file-mark"},
                               {"metal", "other-metal", "acid-spot"}};
    for (const Case& one : kCases) {
        const std::size_t frame = support::frame_named(one.frame);
        const std::size_t candidate = support::candidate_named(frame, one.candidate);
        const std::size_t method = support::method_named(one.method);
        for (std::size_t outcome = 0; outcome < data().methods[method].outcomes.size(); ++outcome) {
            evidence::PartRecord record;
            record.readings.emplace_back();
            record.readings[0].method = method;
            record.readings[0].outcome = outcome;
            const Belief belief = believe(data(), frame, record, priors_of(data(), frame, {}));
            EXPECT_NEAR(belief.posterior[candidate] / belief.prior[candidate], 1, 0.1) << one.method << " " << outcome;
        }
    }
}

// A value in the middle of an alloy's densities, read better and better: those whose range holds it never lose against
// those that lie a whole 1 g/cm3 away.
TEST(Properties, ABetterDensitySpeaksForTheAlloysThatHaveIt) {
    const std::size_t frame = support::frame_named("metal");
    const std::vector<evidence::Candidate>& candidates = data().frames[frame].candidates;
    const std::size_t method = support::method_named("weighing-in-water");
    int compared = 0;
    for (const evidence::Candidate& candidate : candidates) {
        if (candidate.alloy == evidence::kNone) continue;
        const evidence::Alloy& alloy = data().alloys.at(candidate.alloy);
        if (!alloy.density) continue;
        const double middle = (alloy.density->low + alloy.density->high) / 2;
        double before = 0;
        for (const double u : {0.3, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.002, 0.001}) {
            evidence::PartRecord record;
            record.part = Part::hardware;
            record.readings.emplace_back();
            record.readings[0].method = method;
            record.readings[0].quantities.push_back(
                {"density", {.value = middle, .u = u}, measure::Dimension::density});
            const Belief belief = believe(data(), frame, record, priors_of(data(), frame, {}));
            double family = 0;
            double far = 0;
            for (std::size_t i = 0; i < candidates.size(); ++i) {
                if (candidates[i].alloy == evidence::kNone) continue;
                const auto& range = data().alloys.at(candidates[i].alloy).density;
                if (!range) continue;
                if (range->low <= middle && middle <= range->high) family += belief.posterior[i];
                if (middle < range->low - 1 || middle > range->high + 1) far += belief.posterior[i];
            }
            ASSERT_GT(far, 0);
            EXPECT_GE(family / far, before * (1 - 1e-9)) << candidate.id << " " << u;
            before = family / far;
            ++compared;
        }
    }
    EXPECT_GT(compared, 100);
}

// A smaller uncertainty never takes a decision back.
TEST(Properties, ABetterReadingNeverUndecidesALimit) {
    RandomDossier random(4);
    const vocabulary::ConceptTree& tree = built_in_book().data().vocabulary.concepts;
    int decided = 0;
    for (const evidence::Limit& limit : data().limits) {
        if (limit.quantity.empty() || limit.stated_tolerance) continue;
        const auto& bound = limit.contradicts ? *limit.contradicts : *limit.supports;
        const double at = bound.lower.value_or(bound.upper.value_or(1));
        std::string name = limit.quantity;
        if (const auto plus = name.find('+'); plus != std::string::npos) name.resize(plus);
        Claim claim;
        claim.says = limit.claims.front();
        for (int n = 0; n < 60; ++n) {
            const double value = at * random.between(0.2, 2);
            const double u = at * random.between(0.001, 0.5);
            const auto says_at = [&](double uncertainty) {
                PartEvidence part;
                part.record.readings.emplace_back();
                part.record.readings[0].quantities.push_back({name, {.value = value, .u = uncertainty}, {}});
                return verdict::decide_limit(tree, data(), limit, claim, part, false, {}).value().says;
            };
            const LimitVerdict coarse = says_at(u);
            ASSERT_NE(coarse, LimitVerdict::unread) << limit.id;
            if (coarse == LimitVerdict::undecided) continue;
            ++decided;
            EXPECT_EQ(says_at(u * random.between(0.01, 1)), coarse) << limit.id << " " << value << " " << u;
        }
    }
    EXPECT_GT(decided, 1000);
}

// Which readings speak for a verdict and against it, and which limits.
struct Grounds {
    bool readings = false;  // any that weigh a deciban
    bool for_it = false;
    bool against_it = false;
};
Grounds grounds_of(const Verdict& verdict) {
    Grounds grounds;
    for (const WeighedEvidence& one : verdict.readings) {
        grounds.readings = true;
        grounds.for_it = grounds.for_it || one.decibans > 0;
        grounds.against_it = grounds.against_it || one.decibans < 0;
    }
    for (const LimitResult& one : verdict.limits) {
        grounds.for_it = grounds.for_it || one.says == LimitVerdict::supports;
        grounds.against_it = grounds.against_it || one.says == LimitVerdict::contradicts;
    }
    return grounds;
}

// Only a reading bears a claim out or contradicts it on evidence; neither the words nor what was believed before do.
// Readings of which each would do alone may all weigh less than a deciban beside the others; then they are none of
// those that a verdict lists. Shares of belief are shares.
TEST(Properties, OnlyReadingsDecide) {
    RandomDossier random(5);
    Judge judge(built_in_book(), built_in_evidence());
    int consistent = 0;
    int contradicted = 0;
    for (int n = 0; n < kDossiers; ++n) {
        const std::string yaml = random.yaml();
        const Dossier dossier = support::dossier_of(yaml);
        for (const Verdict& verdict : judge.judge(dossier).verdicts) {
            ASSERT_NEAR(verdict.holds + verdict.fails + verdict.open, 1, 1e-9) << yaml;
            ASSERT_TRUE(verdict.holds >= 0 && verdict.fails >= 0 && verdict.open >= 0) << yaml;
            ASSERT_FALSE(verdict.because.empty()) << yaml;
            const Grounds grounds = grounds_of(verdict);
            if (verdict.grade == Grade::consistent) {
                ++consistent;
                ASSERT_TRUE(grounds.for_it) << verdict.because << "\n" << yaml;
            }
            if (verdict.grade == Grade::contradicted && verdict.basis == Basis::evidence) {
                ASSERT_TRUE(grounds.against_it || !grounds.readings) << verdict.because << "\n" << yaml;
                contradicted += grounds.against_it ? 1 : 0;
            }
        }
    }
    // Enough of both were seen. Compilers order the draws of one expression differently, and so draw other samples.
    EXPECT_GT(consistent, 10);
    EXPECT_GT(contradicted, 10);
}

// An outcome that tells nothing decides nothing, whatever was believed before: every method of the book that has one,
// for every claim.
TEST(Properties, WhatTellsNothingDecidesNothing) {
    constexpr std::string_view kClaims[] = {"Nubuck tote.",
                                            "Snakeskin clutch.",
                                            "Crocodile leather bag.",
                                            "316L stainless steel hardware.",
                                            "Titanium hardware.",
                                            "Sterling silver hardware.",
                                            "Vegetable-tanned leather.",
                                            "Aniline leather.",
                                            "Not real leather.",
                                            "Silk lining.",
                                            "Waterproof tote.",
                                            "Palladium-plated hardware.",
                                            "Chrome-free leather.",
                                            "Nickel-free hardware.",
                                            "Lead-free hardware.",
                                            "Scratch-resistant."};
    Judge judge(built_in_book(), built_in_evidence());
    int judged = 0;
    for (const std::string_view claim : kClaims) {
        for (const evidence::Method& method : data().methods) {
            for (const evidence::Outcome& outcome : method.outcomes) {
                if (!outcome.says_nothing) continue;
                for (const Part part : {Part::body, Part::lining, Part::hardware}) {
                    if ((method.parts & evidence::part_bit(part)) == 0) continue;
                    const Dossier dossier = support::dossier_of(
                        "sample: {what: a bag, category: bag}\nlisting: {description: '" + std::string(claim) +
                        "'}\nparts: {" + std::string(name_of(part)) + ": {readings: [{method: " + method.id +
                        ", outcome: " + outcome.id + "}]}}\n");
                    for (const Verdict& verdict : judge.judge(dossier).verdicts) {
                        ++judged;
                        EXPECT_TRUE(verdict.grade != Grade::contradicted && verdict.grade != Grade::consistent)
                            << claim << " " << method.id << " " << verdict.because;
                    }
                }
            }
        }
    }
    EXPECT_GT(judged, 300);
}

// Without readings nothing is consistent, and nothing contradicted but by the listing itself.
TEST(Properties, WordsAloneDecideNothing) {
    RandomDossier random(6);
    Judge judge(built_in_book(), built_in_evidence());
    for (int n = 0; n < kDossiers; ++n) {
        std::string yaml = random.yaml();
        yaml.resize(std::min(yaml.size(), yaml.find("parts:\n")));
        for (const Verdict& verdict : judge.judge(support::dossier_of(yaml)).verdicts) {
            ASSERT_NE(verdict.grade, Grade::consistent) << yaml;
            if (verdict.grade == Grade::contradicted) {
                ASSERT_EQ(verdict.basis, Basis::cross_check) << yaml;
            }
            ASSERT_EQ(verdict.open, 1) << yaml;
        }
    }
}

TEST(Properties, JudgingTwiceSaysTheSame) {
    RandomDossier random(7);
    Judge judge(built_in_book(), built_in_evidence());
    const auto dump = [&](const Dossier& dossier) {
        std::string text;
        for (const Verdict& verdict : judge.judge(dossier).verdicts) {
            text += std::to_string(verdict.claim) + std::string(name_of(verdict.grade)) + verdict.because;
            for (const std::string& change : verdict.would_change) text += change;
        }
        return text;
    };
    const Dossier first = support::dossier_of(random.yaml());
    const std::string said = dump(first);
    for (int n = 0; n < 20; ++n) (void)dump(support::dossier_of(random.yaml()));
    EXPECT_EQ(dump(first), said);
}

// Plans over random dossiers: nothing negative, nothing planned twice, harmless first.
TEST(Properties, PlansStayWithinReason) {
    RandomDossier random(8);
    Judge judge(built_in_book(), built_in_evidence());
    for (int n = 0; n < 20; ++n) {
        const std::string yaml = random.yaml();
        const TestPlan plan = judge.plan(support::dossier_of(yaml));
        double bits = 0;
        for (const PlannedTest& test : plan.tests) bits += test.bits;
        // A question of three bearings holds at most log2(3) bits, and a limit one; none has more than a few limits.
        EXPECT_LE(bits, static_cast<double>(plan.questions) * 8) << yaml;
        EXPECT_LE(plan.decided_now, plan.decided_after) << yaml;
        EXPECT_LE(plan.decided_after, 1 + 1e-12) << yaml;
        if (!plan.tests.empty()) {
            EXPECT_LT(plan.next, plan.tests.size()) << yaml;
        }
        // Where a verdict names a test that would tell most, the plan has one to make of that part.
        const Dossier dossier = support::dossier_of(yaml);
        const Judgement& judgement = judge.judge(dossier);
        for (const Verdict& verdict : judgement.verdicts) {
            if (verdict.next_test.empty()) continue;
            const Part part = judgement.check->mentions[verdict.claim].part;
            EXPECT_TRUE(
                std::any_of(plan.tests.begin(), plan.tests.end(),
                            [part](const PlannedTest& test) { return part == Part::whole || test.part == part; }))
                << name_of(part) << " " << verdict.next_test << "\n"
                << yaml;
        }
    }
}

}  // namespace
}  // namespace grainside::identify
