// Copy-writing patterns, one finding or none each, graded by hand before there was a checker
// (corpus/published/README.md).
#include "row_expectations.h"

namespace grainside::published {
namespace {

constexpr const char* kFile = "pattern_examples.jsonl";

TEST(PatternExamplesFile, IsWhole) {
    expect_file(kFile, 121, known_differences_of_pattern_examples());
}

class PatternExamples : public testing::TestWithParam<Row> {};

TEST_P(PatternExamples, IsGraded) {
    expect_agreement(GetParam(), known_differences_of_pattern_examples());
}

INSTANTIATE_TEST_SUITE_P(Lines, PatternExamples, testing::ValuesIn(rows_of(kFile)), name_of_row);

}  // namespace
}  // namespace grainside::published
