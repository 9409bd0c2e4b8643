// Wordings that 16 CFR Part 24, Directive 94/11/EC, EN 15987 and national laws call acceptable or unacceptable. Each
// row of the file names its entry of the fact base, the clause, and whether the text was seen or is from memory.
#include "row_expectations.h"

namespace grainside::published {
namespace {

constexpr const char* kFile = "leather_words.jsonl";

TEST(LeatherWordsFile, IsWhole) {
    expect_file(kFile, 174, known_differences_of_leather_words());
}

TEST(LeatherWordsFile, NamesTheClauseOfEveryRow) {
    for (const Row& row : rows_of(kFile)) {
        EXPECT_TRUE(row.cite.ends_with("(seen)") || row.cite.find("from memory") != std::string::npos)
            << row.name << ": '" << row.cite << "'";
    }
}

class LeatherWords : public testing::TestWithParam<Row> {};

TEST_P(LeatherWords, IsJudgedAsInTheSource) {
    expect_agreement(GetParam(), known_differences_of_leather_words());
}

INSTANTIATE_TEST_SUITE_P(Wordings, LeatherWords, testing::ValuesIn(rows_of(kFile)), name_of_row);

}  // namespace
}  // namespace grainside::published
