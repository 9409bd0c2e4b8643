#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

#include "listing/markdown_cut.h"
#include "reading.h"

namespace grainside::testing_listing {
namespace {

class MarkdownTest : public testing::TestWithParam<Row> {};

// What is a heading: CommonMark 0.30, sections 4.2 (ATX) and 4.3 (setext).
constexpr Row kRows[] = {
    {"atx", "# Tote\n\nFull grain.\n", "1@1 f:1 name='Tote' description='\\nFull grain.\\n'"},
    {"atx_alone", "# Tote", "1@1 f:1 name='Tote'"},
    {"atx_closed", "# Tote ##  \nx", "1@1 f:1 name='Tote' description='x'"},
    {"atx_hash_in_word", "# Tote C#\nx", "1@1 f:1 name='Tote C#' description='x'"},
    {"atx_indented", "   # Tote\nx", "1@1 f:1 name='Tote' description='x'"},
    {"atx_tab", "#\tTote\r\nx", "1@1 f:1 name='Tote' description='x'"},
    {"text_before", "Draft\n\n# Tote\nx", "1@1 f:1 description='Draft\\n\\n' name='Tote' description='x'"},
    {"first_of_two", "# A\n# B\n", "1@1 f:1 name='A' description='# B\\n'"},
    {"second_level_first", "## Sub\n# Top\nx", "1@1 f:1 description='## Sub\\n' name='Top' description='x'"},
    {"setext", "Tote\n====\n\nx", "1@1 f:1 name='Tote' description='\\nx'"},
    {"setext_two_lines", "Big\nTote\n=\nx", "1@1 f:1 name='Big\\nTote' description='x'"},
    {"setext_after_paragraph", "One.\n\n  Tote \n== \nx",
     "1@1 f:1 description='One.\\n\\n' name='Tote' description='x'"},
    {"setext_needs_a_paragraph", "\n===\nx", "1@1 f:1 description='\\n===\\nx'"},
    {"setext_not_in_list", "- Tote\n===\nx", "1@1 f:1 description='- Tote\\n===\\nx'"},
    {"setext_not_in_quote", "> Tote\n===\nx", "1@1 f:1 description='> Tote\\n===\\nx'"},
    {"no_space", "#Tote\nx", "1@1 f:1 description='#Tote\\nx'"},
    {"code_indented", "    # Tote\nx", "1@1 f:1 description='    # Tote\\nx'"},
    {"code_fenced", "```\n# no\n```\n# Tote\n", "1@1 f:1 description='```\\n# no\\n```\\n' name='Tote'"},
    {"code_fenced_longer", "~~~~\n~~~\n# no\n~~~~~\n# Tote\n",
     "1@1 f:1 description='~~~~\\n~~~\\n# no\\n~~~~~\\n' name='Tote'"},
    {"code_not_closed", "```\n# no\n", "1@1 f:1 description='```\\n# no\\n'"},
    {"empty_heading_passed_over", "#\n# Tote\nx", "1@1 f:1 description='#\\n' name='Tote' description='x'"},
    {"none", "Just words.\n", "1@1 f:1 description='Just words.\\n'"},
    {"break_is_no_paragraph", "---\n===\nx", "1@1 f:1 description='---\\n===\\nx'"},
    {"blank", "\n \n", "1:1 error no-text"},
    {"empty_heading_alone", "#\n", "1@1 f:1 description='#\\n'"},
};

TEST_P(MarkdownTest, GivesWhatTheRowSays) {
    EXPECT_EQ(read_memory(GetParam().input, InputFormat::markdown), GetParam().want);
}

TEST_P(MarkdownTest, FieldsAreSlicesOfTheFileInOrder) {
    const std::string_view file = GetParam().input;
    const char* last = file.data();
    for (const Field& field : listing::cut_markdown(file)) {
        EXPECT_GE(field.text.data(), last);
        last = field.text.data() + field.text.size();
        EXPECT_LE(last, file.data() + file.size());
    }
}

INSTANTIATE_TEST_SUITE_P(Rows, MarkdownTest, testing::ValuesIn(kRows), row_name);

}  // namespace
}  // namespace grainside::testing_listing
