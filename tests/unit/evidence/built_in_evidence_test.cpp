// The evidence half of the default book loads from its compiled form as from its files.
#include <gtest/gtest.h>

#include "grainside/evidence_book.h"
#include "grainside/rule_book.h"

namespace grainside {
namespace {

std::string first_of(const std::vector<Issue>& issues) {
    return issues.empty() ? std::string() : to_text(issues.front());
}

TEST(BuiltInEvidence, Loads) {
    const auto rules = RuleBook::built_in();
    ASSERT_TRUE(rules) << first_of(rules.issues());
    const auto built_in = EvidenceBook::load(rules.value());
    ASSERT_TRUE(built_in) << first_of(built_in.issues());
    const auto folder = RuleBook::load(GRAINSIDE_RULES_FOLDER);
    ASSERT_TRUE(folder) << first_of(folder.issues());
    const auto read = EvidenceBook::load(folder.value());
    ASSERT_TRUE(read) << first_of(read.issues());
    EXPECT_GT(built_in.value().method_count(), 0U);
    EXPECT_GT(built_in.value().limit_count(), 0U);
    EXPECT_GT(built_in.value().candidate_count(), 0U);
    EXPECT_EQ(built_in.value().method_count(), read.value().method_count());
    EXPECT_EQ(built_in.value().limit_count(), read.value().limit_count());
    EXPECT_EQ(built_in.value().candidate_count(), read.value().candidate_count());
    EXPECT_EQ(&built_in.value().rule_book(), &rules.value());
}

}  // namespace
}  // namespace grainside
