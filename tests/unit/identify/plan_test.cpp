// Plans over small books whose best test is known, and over the default book.
#include "identify/plan.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>
#include <vector>

#include "grainside/judge.h"
#include "identify/information.h"
#include "report/told_verdicts.h"
#include "support/built_in_evidence.h"
#include "table_evidence.h"

namespace grainside::identify {
namespace {

using evidence::EvidenceData;
using evidence::Harm;
using support::about_the_first;
using support::add_method;

std::size_t add_test(EvidenceData& data, const std::string& look, const support::Rows& rows, Harm harm, double minutes,
                     double cost) {
    const std::size_t index = add_method(data, look, rows);
    data.methods[index].harm = harm;
    data.methods[index].minutes = minutes;
    data.methods[index].cost = cost;
    return index;
}

const support::Rows kDecisive = {{0.99, 0.01}, {0.01, 0.99}};
const support::Rows kUseless = {{0.5, 0.5}, {0.5, 0.5}};
const support::Rows kFair = {{0.8, 0.2}, {0.2, 0.8}};

PartEvidence body(const EvidenceData& data, const std::vector<std::pair<std::size_t, std::size_t>>& readings = {}) {
    return evidence_of(data, {}, support::body_with(readings));
}

Plan planned(const EvidenceData& data, const std::vector<std::pair<std::size_t, std::size_t>>& readings = {}) {
    return make_plan(data, {body(data, readings)}, {about_the_first(data)});
}

std::vector<std::size_t> methods_of(const Plan& plan) {
    std::vector<std::size_t> methods;
    for (const PlanStep& step : plan.steps) methods.push_back(step.method);
    return methods;
}

// The useless and dear one is not even planned.
TEST(Plan, TakesTheDecisiveCheapTest) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    data.judging.slip = {0.01, 0.01, 0.01};
    (void)add_test(data, "a", kUseless, Harm::destroy, 120, 500);
    const std::size_t decisive = add_test(data, "b", kDecisive, Harm::none, 5, 0);
    const Plan plan = planned(data);
    EXPECT_EQ(methods_of(plan), (std::vector<std::size_t>{decisive}));
    EXPECT_EQ(plan.next, 0U);
    EXPECT_EQ(plan.decided_now, 0);
    EXPECT_GT(plan.decided_after, 0.9);
    EXPECT_EQ(plan.minutes, 5);
    EXPECT_EQ(plan.cost, 0);
}

// What it tells is the mutual information of its table (information_test.cpp has that against textbooks).
TEST(Plan, ExpectsTheBitsOfTheTable) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    (void)add_test(data, "a", kFair, Harm::none, 5, 0);
    const Plan plan = planned(data);
    ASSERT_EQ(plan.steps.size(), 1U);
    EXPECT_NEAR(plan.steps[0].bits, binary_information(0.5, 0.8), 1e-9);
    EXPECT_EQ(plan.steps[0].questions, (std::vector<std::size_t>{0}));
}

// Of two that tell the same, what costs less comes next; minutes, money and harm all cost.
TEST(Plan, PrefersLessEffort) {
    using Effort = std::tuple<Harm, double, double>;
    const Effort dearer[] = {{Harm::none, 60, 0}, {Harm::none, 5, 30}, {Harm::cut, 5, 0}};
    for (const auto& [harm, minutes, cost] : dearer) {
        EvidenceData data = support::frame_of({0.5, 0.5});
        (void)add_test(data, "a", kFair, harm, minutes, cost);
        const std::size_t cheap = add_test(data, "b", kFair, Harm::none, 5, 0);
        const Plan plan = planned(data);
        ASSERT_FALSE(plan.steps.empty());
        EXPECT_EQ(plan.steps[plan.next].method, cheap) << minutes << " " << cost;
    }
}

// The better test per effort is next although it cuts; in the order of work the harmless one comes first.
TEST(Plan, PutsHarmlessTestsFirst) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    const std::size_t cut = add_test(data, "a", {{0.8, 0.2}, {0.2, 0.8}}, Harm::cut, 1, 0);
    const std::size_t look = add_test(data, "b", {{0.7, 0.3}, {0.3, 0.7}}, Harm::none, 60, 0);
    const std::size_t mark = add_test(data, "c", {{0.75, 0.25}, {0.25, 0.75}}, Harm::mark, 60, 0);
    const Plan plan = planned(data);
    EXPECT_EQ(methods_of(plan), (std::vector<std::size_t>{look, mark, cut}));
    EXPECT_EQ(plan.next, 2U);
}

TEST(Plan, PlansNothingWhereAllIsDecided) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    data.judging.slip = {0.01, 0.01, 0.01};
    const std::size_t decisive = add_test(data, "a", kDecisive, Harm::none, 5, 0);
    (void)add_test(data, "b", kFair, Harm::none, 5, 0);
    const Plan plan = planned(data, {{decisive, 0}});
    EXPECT_TRUE(plan.steps.empty());
    EXPECT_EQ(plan.decided_now, 1);
    EXPECT_EQ(plan.decided_after, 1);
}

// Both outcomes of the first test settle the question; what the second would tell beyond that is worth no walk.
TEST(Plan, AsksNothingMoreOfWhatATestSettles) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    data.judging.least_bits = 0.001;
    const std::size_t decisive = add_test(data, "a", kDecisive, Harm::none, 5, 0);
    (void)add_test(data, "b", kFair, Harm::none, 50, 0);
    ASSERT_GT(binary_information(0.99, 0.8), 0.001);
    EXPECT_EQ(methods_of(planned(data)), (std::vector<std::size_t>{decisive}));
}

// What hardly anything is made of is as good as false before any reading, and that proves nothing: verdicts call it
// open, and a test is worth making.
TEST(Plan, AsksOfWhatWasUnlikelyBeforeAnyReading) {
    EvidenceData data = support::frame_of({0.03, 0.97});
    const std::size_t test = add_test(data, "a", {{0.95, 0.05}, {0.05, 0.95}}, Harm::none, 5, 0);
    const Plan plan = planned(data);
    EXPECT_EQ(methods_of(plan), (std::vector<std::size_t>{test}));
    EXPECT_EQ(plan.decided_now, 0);
    EXPECT_GT(plan.decided_after, 0.8);
}

// The prior of what nobody has looked at is no reading: neither of the claim's frame nor of the one around it.
TEST(Plan, SettlesNothingByTheFrameAroundThatNobodyRead) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    evidence::Frame outer = data.frames[0];
    outer.candidates[0].prior = 0.02;
    outer.candidates[1].prior = 0.98;
    data.frames.push_back(outer);
    const std::size_t test = add_test(data, "a", kFair, Harm::none, 5, 0);
    data.judging.least_bits = 0.001;
    Question question = about_the_first(data);
    question.views[0].outer = 1;
    question.views[0].outer_within = {true, false};
    const Plan plan = make_plan(data, {body(data)}, {question});
    EXPECT_EQ(plan.decided_now, 0);
    EXPECT_EQ(methods_of(plan), (std::vector<std::size_t>{test}));
}

// Readings that contradict one another leave a claim open although belief is on one side.
TEST(Plan, AsksOfAnOpenClaimUntilATestSpeaksOfIt) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    data.judging.slip = {0.01, 0.01, 0.01};
    data.judging.least_bits = 0.001;
    const std::size_t decisive = add_test(data, "a", kDecisive, Harm::none, 5, 0);
    const std::size_t other = add_test(data, "b", kFair, Harm::none, 5, 0);
    Question question = about_the_first(data);
    EXPECT_TRUE(make_plan(data, {body(data, {{decisive, 0}})}, {question}).steps.empty());
    question.open = true;
    const Plan plan = make_plan(data, {body(data, {{decisive, 0}})}, {question});
    EXPECT_EQ(methods_of(plan), (std::vector<std::size_t>{other}));
    EXPECT_EQ(plan.decided_now, 0);
}

// A long plan has a test of every part that one would tell more about.
TEST(Plan, HasATestOfEveryPart) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    data.judging.least_bits = 0.0001;
    const support::Rows slight = {{0.55, 0.45}, {0.45, 0.55}};
    for (int n = 0; n < 30; ++n) (void)add_test(data, "look-" + std::to_string(n), slight, Harm::none, 5, 0);
    for (evidence::Method& method : data.methods) method.parts = evidence::part_bit(Part::body);
    const std::size_t dear = add_test(data, "dear", slight, Harm::destroy, 600, 900);
    data.methods[dear].parts = evidence::part_bit(Part::lining);
    Question of_lining = about_the_first(data);
    of_lining.part = Part::lining;
    evidence::PartRecord lining;
    lining.part = Part::lining;
    const Plan plan = make_plan(data, {body(data), evidence_of(data, {}, lining)}, {about_the_first(data), of_lining});
    EXPECT_EQ(plan.steps.size(), 25U);
    EXPECT_EQ(std::count_if(plan.steps.begin(), plan.steps.end(),
                            [](const PlanStep& step) { return step.part == Part::lining; }),
              1);
}

// Where nothing ever slips, a perfect test settles all there is, whichever way it comes out.
TEST(Plan, WithoutSlipsComesToAnEnd) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    const std::size_t perfect = add_test(data, "a", {{1, 0}, {0, 1}}, Harm::none, 5, 0);
    (void)add_test(data, "a", {{1, 0}, {0, 1}}, Harm::none, 50, 0);
    const Plan plan = planned(data);
    EXPECT_EQ(methods_of(plan), (std::vector<std::size_t>{perfect}));
    EXPECT_NEAR(plan.steps.at(0).bits, 1, 1e-9);
    EXPECT_EQ(plan.decided_after, 1);
    EXPECT_TRUE(planned(data, {{perfect, 0}}).steps.empty());
}

TEST(Plan, PlansNothingWhereNothingIsAsked) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    (void)add_test(data, "a", kFair, Harm::none, 5, 0);
    const Plan plan = make_plan(data, {body(data)}, {});
    EXPECT_TRUE(plan.steps.empty());
    EXPECT_EQ(plan.decided_now, 1);
}

TEST(Plan, PlansNoTestThatIsOnRecord) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    const std::size_t made = add_test(data, "a", kFair, Harm::none, 5, 0);
    const std::size_t other = add_test(data, "b", kFair, Harm::none, 5, 0);
    EXPECT_EQ(methods_of(planned(data, {{made, 0}})), (std::vector<std::size_t>{other}));
}

TEST(Plan, PlansNoTestTwice) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    (void)add_test(data, "a", {{0.6, 0.4}, {0.4, 0.6}}, Harm::none, 5, 0);
    EXPECT_EQ(planned(data).steps.size(), 1U);
}

// What tells less than the book's least bits is not worth the walk.
TEST(Plan, LeavesOutWhatTellsTooLittle) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    (void)add_test(data, "a", kFair, Harm::none, 5, 0);
    const double bits = binary_information(0.5, 0.8);
    data.judging.least_bits = bits + 1e-6;
    EXPECT_TRUE(planned(data).steps.empty());
    data.judging.least_bits = bits - 1e-6;
    EXPECT_EQ(planned(data).steps.size(), 1U);
}

// A test of another part is none of this one.
TEST(Plan, KeepsToThePart) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    const std::size_t test = add_test(data, "a", kFair, Harm::none, 5, 0);
    data.methods[test].parts = evidence::part_bit(Part::lining);
    EXPECT_TRUE(planned(data).steps.empty());
}

// A binary symmetric channel with the method's reliability.
TEST(Plan, WeighsTheMeasureOfALimitByItsReliability) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    evidence::Method gauge;
    gauge.id = "gauge";
    gauge.looks_at = "coat";
    gauge.parts = evidence::kAllParts;
    gauge.reads.push_back({"coat", measure::Dimension::length, "mm"});
    gauge.reliability = 0.9;
    data.methods.push_back(gauge);
    Question question;
    question.says = 1;
    question.limits.push_back({"coat", 0.2});
    const Plan plan = make_plan(data, {body(data)}, {question});
    ASSERT_FALSE(plan.steps.empty());
    // Crossover 0.1, prior 0.2 (the exercise of information_test.cpp).
    EXPECT_NEAR(plan.steps[0].bits, 0.3578, 5e-5);
}

// The first measure leaves 99 %, which settles it; the second would still tell 0.06 bits.
TEST(Plan, AsksNothingMoreOfALimitThatAMeasureSettles) {
    EvidenceData data = support::frame_of({0.5, 0.5});
    data.judging.least_bits = 0.001;
    for (const char* id : {"gauge", "microscope"}) {
        evidence::Method method;
        method.id = id;
        method.looks_at = id;
        method.parts = evidence::kAllParts;
        method.reads.push_back({"coat", measure::Dimension::length, "mm"});
        method.reliability = 0.99;
        data.methods.push_back(method);
    }
    Question question;
    question.says = 1;
    question.limits.push_back({"coat", 0.5});
    ASSERT_GT(binary_information(0.99, 0.99), 0.001);
    EXPECT_EQ(make_plan(data, {body(data)}, {question}).steps.size(), 1U);
}

// ---- the default book --------------------------------------------------------------------------------------------

constexpr std::string_view kDossiers[] = {
    "sample: {what: bag}\nparts: {body: {readings: [{method: loupe, outcome: repeating-print}]}}\n",
    "sample: {what: bag, category: bag}\nlisting: {description: 'Full grain leather tote with solid brass hardware. "
    "Vegetable-tanned calf leather.'}\nparts: {body: {readings: [{method: loupe, outcome: pores-even}]}, hardware: "
    "{readings: [{method: magnet, outcome: no-pull}]}}\n",
    "sample: {what: bag, category: bag}\nlisting: {description: 'Leather tote, waterproof, nickel-free 316L "
    "hardware.', "
    "region: eu}\n",
};

std::string dump(const TestPlan& plan) {
    std::string text = std::to_string(plan.next) + " " + std::to_string(plan.decided_now) + " " +
                       std::to_string(plan.decided_after) + "\n";
    for (const PlannedTest& test : plan.tests) {
        text += test.method + " " + std::string(name_of(test.part)) + " " + std::to_string(test.bits) + "\n";
    }
    return text;
}

int rank_of(std::string_view harm) {
    constexpr std::string_view kHarms[] = {"none", "mark", "cut", "destroy"};
    return static_cast<int>(std::find(std::begin(kHarms), std::end(kHarms), harm) - std::begin(kHarms));
}

TEST(BuiltInPlan, IsTheSameTwiceHarmlessFirstAndWithinReason) {
    for (const std::string_view yaml : kDossiers) {
        const Dossier dossier = support::dossier_of(std::string(yaml));
        Judge judge(support::built_in_book(), support::built_in_evidence());
        const TestPlan plan = judge.plan(dossier);
        Judge other(support::built_in_book(), support::built_in_evidence());
        EXPECT_EQ(dump(plan), dump(judge.plan(dossier)));
        EXPECT_EQ(dump(plan), dump(other.plan(dossier)));
        ASSERT_FALSE(plan.tests.empty()) << yaml;
        EXPECT_LT(plan.next, plan.tests.size());
        EXPECT_GE(plan.decided_now, 0);
        EXPECT_GE(plan.decided_after, plan.decided_now);
        EXPECT_LE(plan.decided_after, 1);
        double minutes = 0;
        for (std::size_t i = 0; i < plan.tests.size(); ++i) {
            const PlannedTest& test = plan.tests[i];
            minutes += test.minutes;
            if (i > 0) {
                EXPECT_GE(rank_of(test.harm), rank_of(plan.tests[i - 1].harm)) << test.method;
            }
            EXPECT_GE(test.bits, support::built_in_evidence().data().judging.least_bits);
            for (std::size_t j = 0; j < i; ++j) {
                EXPECT_FALSE(plan.tests[j].method == test.method && plan.tests[j].part == test.part) << test.method;
            }
            for (const evidence::PartRecord& part : dossier.data().parts) {
                if (part.part != test.part) continue;
                for (const evidence::Reading& reading : part.readings) {
                    const evidence::Method& method = support::built_in_evidence().data().methods[reading.method];
                    if (method.reads.empty()) {
                        EXPECT_NE(method.id, test.method);
                    }
                }
            }
        }
        EXPECT_NEAR(plan.minutes, minutes, 1e-9);
    }
}

// What the verdicts call open, counted as reports tell it, and the part that a test of each speaks of: the plan says
// the same.
TEST(BuiltInPlan, AgreesWithTheVerdicts) {
    constexpr std::string_view kListings[] = {
        "Tote in lambskin.",
        "Tote in goat leather.",
        "Tote in sheepskin.",
        "Tote in pigskin.",
        "Tote in deerskin.",
        "Tote in crocodile leather.",
        "Tote in ostrich leather.",
        "Tote in nubuck.",
        "Silk pouch.",
        "Ankle boots in calfskin, real lambskin lining, leather sole, solid brass zip. Waterproof.",
        "Full grain leather tote, made in Portugal, premium quality, cotton lining, nickel-free brass buckle.",
        "Genuine PU leather tote with a suede lining.",
        "Vegan tote, PVC-free.",
        "Tote without lambskin, 1.4 mm thick.",
    };
    for (const std::string_view listing : kListings) {
        const Dossier dossier = support::dossier_of("sample: {what: x}\nlisting: {region: eu, description: '" +
                                                    std::string(listing) + "'}\n");
        Judge judge(support::built_in_book(), support::built_in_evidence());
        const TestPlan plan = judge.plan(dossier);
        const Judgement& judgement = judge.judge(dossier);
        std::size_t open = 0;
        for (const auto& [part, told] : report::told_by_part(judgement)) {
            for (const report::ToldVerdict& one : told) {
                const Verdict& verdict = *one.verdict;
                open += verdict.grade == Grade::unsupported || verdict.grade == Grade::inconclusive ||
                        verdict.grade == Grade::vague;
                if (verdict.next_test.empty()) continue;
                const Part asked = part == Part::whole ? judgement.check->main_part : part;
                EXPECT_TRUE(std::any_of(plan.tests.begin(), plan.tests.end(),
                                        [asked](const PlannedTest& test) { return test.part == asked; }))
                    << listing << ": " << name_of(asked) << " " << verdict.next_test;
            }
        }
        EXPECT_EQ(plan.statements, open) << listing;
        EXPECT_LE(plan.questions, plan.statements) << listing;
        const bool any = std::any_of(judgement.verdicts.begin(), judgement.verdicts.end(),
                                     [](const Verdict& verdict) { return !verdict.next_test.empty(); });
        EXPECT_EQ(!plan.tests.empty(), any) << listing;
        EXPECT_EQ(plan.decided_now, plan.questions == 0 ? 1 : 0) << listing;
    }
}

// Without a listing one asks what the part is: no more can be learnt than its candidates leave open.
TEST(BuiltInPlan, TellsNoMoreThanThereIsToLearn) {
    const Dossier dossier = support::dossier_of(std::string(kDossiers[0]));
    Judge judge(support::built_in_book(), support::built_in_evidence());
    const std::vector<PartJudgement> parts = judge.identify(dossier).parts;
    ASSERT_EQ(parts.size(), 1U);
    std::vector<double> belief;
    for (const CandidateBelief& one : parts[0].frames.at(0).candidates) belief.push_back(one.posterior);
    const TestPlan plan = judge.plan(dossier);
    double sum = 0;
    for (const PlannedTest& test : plan.tests) {
        EXPECT_LE(test.bits, entropy(belief) + 1e-9) << test.method;
        sum += test.bits;
    }
    // Bits are told on top of the steps before; the average over 64 drawn samples may miss the entropy a little.
    EXPECT_LE(sum, entropy(belief) * 1.15);
    EXPECT_EQ(plan.questions, 1U);
    for (const PlannedTest& test : plan.tests) EXPECT_EQ(test.about, (std::vector<std::string>{"what it is"}));
}

}  // namespace
}  // namespace grainside::identify
