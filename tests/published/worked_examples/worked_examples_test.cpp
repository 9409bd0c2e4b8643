// Every verdict of the fact base on a wording (16 CFR 23, 24, 260, 303, 323 and others) against the default rule book.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "known_differences.h"
#include "worked_example.h"

namespace grainside::published {
namespace {

std::vector<WorkedExample> applicable_examples() {
    std::vector<WorkedExample> examples;
    if (Result<std::vector<WorkedExample>> read = read_worked_examples()) examples = std::move(read).value();
    std::erase_if(examples, [](const WorkedExample& example) { return !example.applicable; });
    return examples;
}

TEST(WorkedExamplesFile, IsWhole) {
    const Result<std::vector<WorkedExample>> read = read_worked_examples();
    ASSERT_TRUE(read) << to_text(read.issues().front());
    EXPECT_EQ(read.value().size(), 367U);
    std::set<std::string> facts;
    for (const WorkedExample& example : read.value()) facts.insert(example.fact);
    // 225 worked wordings of claims.yaml; further rows are of the tables of verdicts in the other two fact files.
    EXPECT_GE(facts.size(), 225U);
}

TEST(WorkedExamplesFile, HoldsEveryKnownDifference) {
    const std::vector<WorkedExample> examples = applicable_examples();
    for (const KnownDifference& known : known_differences_of_worked_examples()) {
        EXPECT_TRUE(std::any_of(examples.begin(), examples.end(),
                                [&](const WorkedExample& example) { return example.name == known.row; }))
            << "a known difference names no row: " << known.row;
    }
}

class WorkedExamples : public testing::TestWithParam<WorkedExample> {};

TEST_P(WorkedExamples, IsJudgedAsInTheSource) {
    static const Result<RuleBook> book = RuleBook::built_in();
    ASSERT_TRUE(book);
    const WorkedExample& example = GetParam();
    const Agreement agreement = compare(book.value(), example);
    const auto known = known_differences_of_worked_examples();
    const auto differs =
        std::find_if(known.begin(), known.end(), [&](const KnownDifference& one) { return one.row == example.name; });
    if (differs != known.end()) {
        EXPECT_FALSE(agreement.agreed) << "mended: take it off the list, which says '" << differs->why << "'";
    } else {
        EXPECT_TRUE(agreement.agreed) << example.text << "\n'" << example.quote << "': wanted "
                                      << name_of(example.grade) << (example.or_worse ? " or worse" : "") << ", found "
                                      << agreement.ours << '\n'
                                      << example.cite << ": " << example.why;
    }
}

INSTANTIATE_TEST_SUITE_P(Wordings, WorkedExamples, testing::ValuesIn(applicable_examples()),
                         [](const auto& example) { return example.param.name; });

}  // namespace
}  // namespace grainside::published
