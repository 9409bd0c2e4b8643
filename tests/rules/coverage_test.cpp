// Every condition of every rule must be seen true and false over the proof texts of the book, every limit true, false
// and unknown over the dossiers of the corpus. What counts as seen: verdict/examination/examiner.h.
#include <gtest/gtest.h>

#include <filesystem>
#include <iostream>
#include <string>

#include "support/built_in_evidence.h"
#include "verdict/examination/examiner.h"

namespace grainside {
namespace {

// Gaps that were left when this was written. The numbers may fall and never grow: lower them with every gap that is
// closed.
constexpr std::uint32_t kMostGapsOfRules = 40;
constexpr std::uint32_t kMostGapsOfLimits = 197;

// Judging every dossier in every market is the work of another test there; here a few show that nothing is amiss.
#ifdef GRAINSIDE_UNDER_SANITIZER
constexpr std::uint32_t kMostDossiers = 3;
#else
constexpr std::uint32_t kMostDossiers = 1000;
#endif

std::uint32_t print_gaps(const CoverageReport& report, bool of_limits) {
    std::uint32_t gaps = 0;
    std::uint32_t clauses = 0;
    const auto print = [&](const ClauseCoverage& clause, bool seen, const char* what) {
        if (seen) return;
        ++gaps;
        std::cout << "gap: " << clause.owner << ' ' << clause.clause << ": never " << what << '\n';
    };
    for (const ClauseCoverage& clause : report.clauses) {
        if (clause.of_a_limit != of_limits) continue;
        ++clauses;
        print(clause, clause.seen_true, "true");
        print(clause, clause.seen_false, "false");
        if (of_limits) print(clause, clause.seen_unknown, "unknown");
    }
    std::cout << clauses << " clauses, " << gaps << " gaps\n";
    EXPECT_GT(clauses, 0U);
    return gaps;
}

TEST(Coverage, EveryConditionOfARuleIsSeenTrueAndFalse) {
    const RuleBook& book = support::built_in_book();
    const CoverageReport report = Examiner(book).coverage();
    ASSERT_GT(report.texts, book.rules().size());
    EXPECT_EQ(report.dossiers, 0U);
    const std::uint32_t gaps = print_gaps(report, false);
    EXPECT_EQ(gaps, report.gaps);
    EXPECT_LE(gaps, kMostGapsOfRules) << "a new condition needs texts that make it true and false";
}

TEST(Coverage, EveryLimitIsSeenTrueFalseAndUnknown) {
    Examiner examiner(support::built_in_book(), &support::built_in_evidence());
    std::uint32_t read = 0;
    for (const auto& entry : std::filesystem::directory_iterator(GRAINSIDE_DOSSIERS)) {
        if (entry.path().extension() != ".yaml" || read == kMostDossiers) continue;
        Result<Dossier> dossier = Dossier::read(entry.path(), support::built_in_evidence());
        ASSERT_TRUE(dossier) << to_text(dossier.issues().front());
        examiner.add(dossier.value());
        ++read;
    }
    const CoverageReport report = examiner.coverage();
    EXPECT_EQ(report.dossiers, read);
    const std::uint32_t gaps = print_gaps(report, true);
    if (read == kMostDossiers) return;
    EXPECT_LE(gaps, kMostGapsOfLimits) << "a new limit needs dossiers on both sides of it";
}

}  // namespace
}  // namespace grainside
