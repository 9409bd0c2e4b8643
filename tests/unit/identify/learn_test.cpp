// Learning from confirmed dossiers; all figures by hand from the formulas named beside them.
#include "identify/learn.h"

#include <gtest/gtest.h>

#include <numeric>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "grainside/learn.h"
#include "support/built_in_evidence.h"
#include "table_evidence.h"

namespace grainside::identify {
namespace {

using evidence::DossierData;
using evidence::EvidenceData;
using Readings = std::vector<std::pair<std::size_t, std::size_t>>;

DossierData dossier(const Readings& readings, std::size_t truth) {
    DossierData made;
    made.parts.push_back(support::body_with(readings));
    made.confirmed.push_back({Part::body, 0, truth});
    return made;
}

Learnt learnt_from(const EvidenceData& data, const std::vector<DossierData>& dossiers, double weight) {
    std::vector<const DossierData*> all;
    all.reserve(dossiers.size());
    for (const DossierData& one : dossiers) all.push_back(&one);
    return learn(data, all, weight);
}

EvidenceData one_test(const support::Rows& rows, const std::vector<double>& priors = {0.5, 0.5}) {
    EvidenceData data = support::frame_of(priors);
    support::add_method(data, "a", rows);
    return data;
}

// The mean of a Dirichlet posterior is (weight * before + count) / (weight + counts): the book's 90/10 worth 20
// readings, one of the first outcome and three of the second seen: (18 + 1) / 24 and (2 + 3) / 24.
TEST(Learn, IsTheMeanOfTheDirichletPosterior) {
    const EvidenceData data = one_test({{0.9, 0.1}, {0.2, 0.8}});
    const Learnt learnt =
        learnt_from(data, {dossier({{0, 0}}, 0), dossier({{0, 1}}, 0), dossier({{0, 1}}, 0), dossier({{0, 1}}, 0)}, 20);
    ASSERT_EQ(learnt.rows.size(), 1U);
    const LearntRow& row = learnt.rows[0];
    EXPECT_EQ(row.method, 0U);
    EXPECT_EQ(row.frame, 0U);
    EXPECT_EQ(row.candidate, 0U);
    EXPECT_EQ(row.counts, (std::vector<std::size_t>{1, 3}));
    EXPECT_EQ(row.before, (std::vector<double>{0.9, 0.1}));
    ASSERT_EQ(row.after.size(), 2U);
    EXPECT_NEAR(row.after[0], 19.0 / 24, 1e-12);
    EXPECT_NEAR(row.after[1], 5.0 / 24, 1e-12);
}

// Laplace's rule of succession: an even row worth its two outcomes, s of n seen: (s + 1) / (n + 2).
TEST(Learn, IsLaplacesRuleForAnEvenRow) {
    const EvidenceData data = one_test({{0.5, 0.5}, {0.5, 0.5}});
    const Learnt learnt = learnt_from(data, {dossier({{0, 0}, {0, 0}, {0, 0}, {0, 1}}, 1)}, 2);
    ASSERT_EQ(learnt.rows.size(), 1U);
    EXPECT_EQ(learnt.rows[0].candidate, 1U);
    EXPECT_NEAR(learnt.rows[0].after[0], 4.0 / 6, 1e-12);
}

TEST(Learn, KeepsMethodsAndCandidatesApart) {
    EvidenceData data = one_test({{0.9, 0.1}, {0.2, 0.8}});
    support::add_method(data, "b", {{0.6, 0.4}, {0.3, 0.7}});
    const Learnt learnt =
        learnt_from(data, {dossier({{1, 0}, {0, 0}}, 1), dossier({{0, 1}}, 0), dossier({{1, 1}}, 1)}, 10);
    ASSERT_EQ(learnt.rows.size(), 3U);  // by method, frame, candidate
    EXPECT_EQ(std::pair(learnt.rows[0].method, learnt.rows[0].candidate), (std::pair<std::size_t, std::size_t>(0, 0)));
    EXPECT_EQ(std::pair(learnt.rows[1].method, learnt.rows[1].candidate), (std::pair<std::size_t, std::size_t>(0, 1)));
    EXPECT_EQ(std::pair(learnt.rows[2].method, learnt.rows[2].candidate), (std::pair<std::size_t, std::size_t>(1, 1)));
    EXPECT_EQ(learnt.rows[2].counts, (std::vector<std::size_t>{1, 1}));
}

TEST(Learn, LearnsNothingFromWhatIsNotConfirmed) {
    const EvidenceData data = one_test({{0.9, 0.1}, {0.2, 0.8}});
    DossierData open = dossier({{0, 0}}, 0);
    open.confirmed.clear();
    DossierData elsewhere = dossier({{0, 0}}, 0);
    elsewhere.confirmed[0].part = Part::lining;
    const Learnt learnt = learnt_from(data, {open, elsewhere}, 20);
    EXPECT_TRUE(learnt.rows.empty());
    EXPECT_EQ(learnt.book.cases, 0U);
    EXPECT_EQ(learnt.book.brier, 0);
}

// ---- calibration -------------------------------------------------------------------------------------------------

// Brier (1950), for several categories: the sum of squared differences. An even prior over two is 0.25 + 0.25; the test
// below leaves 0.9 and 0.1, so 2 * 0.01 where it is right and 2 * 0.81 where it is wrong.
TEST(Brier, OfHandComputedPredictions) {
    const EvidenceData data = one_test({{0.9, 0.1}, {0.1, 0.9}});
    const Learnt learnt = learnt_from(data, {dossier({{0, 0}}, 0), dossier({{0, 0}}, 1)}, 20);
    EXPECT_EQ(learnt.prior_only.cases, 2U);
    EXPECT_NEAR(learnt.prior_only.brier, 0.5, 1e-12);
    EXPECT_EQ(learnt.book.cases, 2U);
    EXPECT_NEAR(learnt.book.brier, (2 * 0.01 + 2 * 0.81) / 2, 1e-12);
}

TEST(Brier, IsNoughtAtBestAndTwoAtWorst) {
    EvidenceData data = one_test({{0.999999999, 0.000000001}, {0.000000001, 0.999999999}});
    EXPECT_NEAR(learnt_from(data, {dossier({{0, 0}}, 0)}, 20).book.brier, 0, 1e-8);
    EXPECT_NEAR(learnt_from(data, {dossier({{0, 0}}, 1)}, 20).book.brier, 2, 1e-8);
}

// Three categories, prior 0.5, 0.3, 0.2, the second true: 0.25 + 0.49 + 0.04.
TEST(Brier, OfSeveralCategories) {
    const EvidenceData data = one_test({{0.5, 0.5}, {0.5, 0.5}, {0.5, 0.5}}, {0.5, 0.3, 0.2});
    const Learnt learnt = learnt_from(data, {dossier({{0, 0}}, 1)}, 20);
    EXPECT_NEAR(learnt.prior_only.brier, 0.78, 1e-12);
    EXPECT_NEAR(learnt.book.brier, 0.78, 1e-12);
}

TEST(Brier, UsesTheDossiersOwnPriors) {
    const EvidenceData data = one_test({{0.9, 0.1}, {0.1, 0.9}});
    DossierData own = dossier({{0, 0}}, 0);
    own.priors.push_back({0, {0.2, 0.8}});
    EXPECT_NEAR(learnt_from(data, {own}, 20).prior_only.brier, 2 * 0.64, 1e-12);
}

// Without a reading on the question there is nothing to judge the book by.
TEST(Brier, CountsConfirmedPartsWithAReadingOnly) {
    const EvidenceData data = one_test({{0.9, 0.1}, {0.1, 0.9}});
    const Learnt learnt = learnt_from(data, {dossier({}, 0), dossier({{0, evidence::kNone}}, 0)}, 20);
    EXPECT_EQ(learnt.prior_only.cases, 0U);
    EXPECT_EQ(learnt.book.cases, 0U);
    EXPECT_EQ(learnt.learnt.cases, 0U);
}

// Posteriors of 0.92 and 0.08, four times of five right: the uppermost bin came true in 4 of 5, the lowest in 1 of 5.
TEST(Reliability, CountsWhatCameTrue) {
    const EvidenceData data = one_test({{0.92, 0.08}, {0.08, 0.92}});
    std::vector<DossierData> dossiers(4, dossier({{0, 0}}, 0));
    dossiers.push_back(dossier({{0, 0}}, 1));
    const Learnt learnt = learnt_from(data, dossiers, 20);
    const ReliabilityBin& top = learnt.book.bins[9];
    EXPECT_EQ(top.predictions, 5U);
    EXPECT_NEAR(top.mean_predicted, 0.92, 1e-12);
    EXPECT_NEAR(top.observed, 0.8, 1e-12);
    const ReliabilityBin& bottom = learnt.book.bins[0];
    EXPECT_EQ(bottom.predictions, 5U);
    EXPECT_NEAR(bottom.mean_predicted, 0.08, 1e-12);
    EXPECT_NEAR(bottom.observed, 0.2, 1e-12);
    for (std::size_t i = 1; i < 9; ++i) EXPECT_EQ(learnt.book.bins[i].predictions, 0U);
    EXPECT_EQ(learnt.prior_only.bins[5].predictions, 10U);
}

// Certainty belongs to the last bin.
TEST(Reliability, HoldsCertaintyInItsLastBin) {
    const EvidenceData data = one_test({{0.5, 0.5}, {0.5, 0.5}}, {1, 0});
    const Learnt learnt = learnt_from(data, {dossier({{0, 0}}, 0)}, 20);
    EXPECT_EQ(learnt.prior_only.bins[9].predictions, 1U);
    EXPECT_EQ(learnt.prior_only.bins[0].predictions, 1U);
}

// ---- leave one out -----------------------------------------------------------------------------------------------

// One dossier alone teaches itself nothing: its score is the book's.
TEST(LeaveOneOut, OfOneDossierIsTheBook) {
    const EvidenceData data = one_test({{0.9, 0.1}, {0.2, 0.8}});
    const Learnt learnt = learnt_from(data, {dossier({{0, 1}, {0, 1}}, 0)}, 1);
    EXPECT_NEAR(learnt.learnt.brier, learnt.book.brier, 1e-12);
}

// Of two dossiers each is judged by the other's count. Book row of the first candidate 0.9/0.1 worth 10 with one more
// of the second outcome: 9/11 and 2/11; the second candidate keeps 0.2/0.8. After the second outcome, priors even:
// (2/11) / (2/11 + 0.8) = 5/27, and Brier 2 * (22/27)^2.
TEST(LeaveOneOut, JudgesEachByTheOthers) {
    const EvidenceData data = one_test({{0.9, 0.1}, {0.2, 0.8}});
    const Learnt learnt = learnt_from(data, {dossier({{0, 1}}, 0), dossier({{0, 1}}, 0)}, 10);
    EXPECT_NEAR(learnt.learnt.brier, 2 * (22.0 / 27) * (22.0 / 27), 1e-12);
    EXPECT_NEAR(learnt.book.brier, 2 * (8.0 / 9) * (8.0 / 9), 1e-12);
    EXPECT_EQ(learnt.learnt.cases, 2U);
}

// The book itself is never changed.
TEST(Learn, LeavesTheBookAlone) {
    const EvidenceData data = one_test({{0.9, 0.1}, {0.2, 0.8}});
    (void)learnt_from(data, {dossier({{0, 1}}, 0), dossier({{0, 1}}, 0)}, 10);
    EXPECT_EQ(data.methods[0].tables[0].chance, (std::vector<double>{0.9, 0.1, 0.2, 0.8}));
}

// Whatever is seen, a row stays a distribution.
// The ids of rules/methods/looking.yaml and rules/candidates.yaml.
TEST(Learn, TellsInTheWordsOfTheBook) {
    const Dossier dossier = support::dossier_of(
        "sample: {what: Wallet, category: small-goods, condition: new}\n"
        "parts: {body: {readings: [{method: loupe, outcome: pores-in-rows}]}}\n"
        "confirmed: {body: {species: goat-leather}}\n");
    const Learning learning = grainside::learn(support::built_in_evidence(), std::span(&dossier, 1), 20);
    EXPECT_EQ(learning.dossiers, 1U);
    ASSERT_EQ(learning.likelihoods.size(), 1U);
    const LearntLikelihood& told = learning.likelihoods[0];
    EXPECT_EQ(told.method, "loupe");
    EXPECT_EQ(told.frame, "species");
    EXPECT_EQ(told.candidate, "goat-leather");
    EXPECT_EQ(told.seen, 1U);
    std::string seen;
    for (const LearntOutcome& outcome : told.outcomes) {
        if (outcome.seen == 1) seen += outcome.outcome + " ";
    }
    EXPECT_EQ(seen, "pores-in-rows ");
    EXPECT_EQ(learning.by_the_book.cases, 1U);
}

TEST(Learn, KeepsRowsAtOne) {
    const EvidenceData data = one_test({{0.7, 0.2, 0.1}, {0.1, 0.1, 0.8}});
    const Learnt learnt = learnt_from(data, {dossier({{0, 0}, {0, 2}, {0, 2}}, 0), dossier({{0, 1}}, 1)}, 3.5);
    for (const LearntRow& row : learnt.rows) {
        EXPECT_NEAR(std::accumulate(row.after.begin(), row.after.end(), 0.0), 1, 1e-12);
    }
}

}  // namespace
}  // namespace grainside::identify
