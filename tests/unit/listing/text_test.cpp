#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

#include "reading.h"

namespace grainside::testing_listing {
namespace {

using namespace std::string_view_literals;

class TextTest : public testing::TestWithParam<Row> {};

constexpr Row kRows[] = {
    {"words", "Full grain tote.\n", "1@1 f:1 description='Full grain tote.\\n'"},
    {"no_final_newline", "Tote", "1@1 f:1 description='Tote'"},
    {"line_ends_stay", "a\r\nb\n", "1@1 f:1 description='a\\x0D\\nb\\n'"},
    {"mark", "\xEF\xBB\xBFTote", "1@1 f:1 description='Tote'"},
    {"json_is_text_too", R"({"name":"a"})", R"(1@1 f:1 description='{"name":"a"}')"},
    {"empty", "", "1:1 error no-text"},
    {"mark_alone", "\xEF\xBB\xBF", "1:1 error no-text"},
    {"blank", " \n\t\r\n", "1:1 error no-text"},
    {"nul_once", "a\nb\0c\0"sv, "2:2 warning nul-byte\n1@1 f:1 description='a\\nb\\x00c\\x00'"},
    {"not_utf8_stays", "ab\n\xE9t\xE9", "2:1 warning not-utf8\n1@1 f:1 description='ab\\n\xE9t\xE9'"},
    {"utf16_little_end",
     "\xFF\xFE"
     "a\0"sv,
     "1:1 error not-utf8"},
    {"utf16_big_end", "\xFE\xFF\0a"sv, "1:1 error not-utf8"},
};

TEST_P(TextTest, GivesWhatTheRowSays) {
    EXPECT_EQ(read_memory(GetParam().input, InputFormat::text), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, TextTest, testing::ValuesIn(kRows), row_name);

TEST(Utf16, IsRefusedInEveryFormatWithAHint) {
    for (const auto format : {InputFormat::text, InputFormat::markdown, InputFormat::json, InputFormat::json_lines}) {
        auto reader = ListingReader::from_memory("f", "\xFF\xFE{\0}\0"sv, {.format = format});
        Listing listing;
        std::vector<Issue> issues;
        EXPECT_FALSE(reader.next(listing, issues));
        ASSERT_EQ(issues.size(), 1U);
        EXPECT_EQ(issues[0].code, "not-utf8");
        EXPECT_EQ(issues[0].hint, "save it as UTF-8, or convert it: iconv -f UTF-16 -t UTF-8");
    }
}

}  // namespace
}  // namespace grainside::testing_listing
