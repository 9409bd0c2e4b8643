// Examples of the YAML specification, as far as they do without what we refuse.
//
// Source of each row: YAML 1.2.2 specification, the example that the row's name gives, from memory.
#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "tree_dump.h"

namespace grainside::document {
namespace {

struct Row {
    std::string_view name, text, want;
};

constexpr Row kAccepted[] = {
    {"example_5_3_block_structure_indicators", "sequence:\n- one\n- two\nmapping:\n  ? sky\n  : blue\n  sea : green\n",
     R"({"sequence": ["one", "two"], "mapping": {"sky": "blue", "sea": "green"}})"},
    {"example_5_4_flow_collection_indicators", "sequence: [ one, two, ]\nmapping: { sky: blue, sea: green }\n",
     R"({"sequence": ["one", "two"], "mapping": {"sky": "blue", "sea": "green"}})"},
    {"example_5_5_comment_indicator", "# Comment only.\n\n", "absent"},
    {"example_5_7_block_scalar_indicators", "literal: |\n  some\n  text\nfolded: >\n  some\n  text\n",
     R"({"literal": "some\ntext\n", "folded": "some text\n"})"},
    {"example_5_8_quoted_scalar_indicators", "single: 'text'\ndouble: \"text\"\n",
     R"({"single": "text", "double": "text"})"},
    {"example_6_1_indentation_spaces",
     "  # Leading comment line spaces are\n"
     "  # neither content nor indentation.\n"
     "    \n"
     "Not indented:\n"
     " By one space: |\n"
     "    By four\n"
     "      spaces\n"
     " Flow style: [    # Leading spaces\n"
     "   By two,        # in flow style\n"
     "  Also by two,    # are neither\n"
     "  \tStill by two   # content nor\n"
     "    ]             # indentation.\n",
     R"({"Not indented": {"By one space": "By four\n  spaces\n", )"
     R"("Flow style": ["By two", "Also by two", "Still by two"]}})"},
    {"example_6_3_separation_spaces", "- foo:\t bar\n- - baz\n  -\tbaz\n", R"([{"foo": "bar"}, ["baz", "baz"]])"},
    {"example_7_7_single_quoted_characters", " 'here''s to \"quotes\"'\n", R"("here's to \"quotes\"")"},
    {"example_7_8_single_quoted_implicit_keys", "'implicit block key' : [\n  'implicit flow key' : value,\n ]\n",
     R"({"implicit block key": [{"implicit flow key": "value"}]})"},
    {"example_7_9_single_quoted_lines", "' 1st non-empty\n\n 2nd non-empty \n\t3rd non-empty '\n",
     R"(" 1st non-empty\n2nd non-empty 3rd non-empty ")"},
    {"example_7_12_plain_lines", "1st non-empty\n\n 2nd non-empty \n\t3rd non-empty\n",
     R"("1st non-empty\n2nd non-empty 3rd non-empty")"},
    {"example_7_13_flow_sequence", "- [ one, two, ]\n- [three ,four]\n", R"([["one", "two"], ["three", "four"]])"},
    {"example_7_15_flow_mappings", "- { one : two , three: four , }\n- {five: six,seven : eight}\n",
     R"([{"one": "two", "three": "four"}, {"five": "six", "seven": "eight"}])"},
    {"example_8_1_block_scalar_header",
     "- | # Empty header\n literal\n- >1 # Indentation indicator\n  folded\n- |+ # Chomping indicator\n keep\n\n"
     "- >1- # Both indicators\n  strip\n",
     R"(["literal\n", " folded\n", "keep\n\n", " strip"])"},
    {"example_8_4_chomping_final_line_break", "strip: |-\n  text\nclip: |\n  text\nkeep: |+\n  text\n",
     R"({"strip": "text", "clip": "text\n", "keep": "text\n"})"},
    {"example_8_14_block_sequence", "block sequence:\n  - one\n  - two : three\n",
     R"({"block sequence": ["one", {"two": "three"}]})"},
    {"example_8_15_block_sequence_entry_types",
     "- # Empty\n- |\n block node\n- - one # Compact\n  - two # sequence\n- one: two # Compact mapping\n",
     R"([null, "block node\n", ["one", "two"], {"one": "two"}])"},
    {"example_8_16_block_mappings", "block mapping:\n key: value\n", R"({"block mapping": {"key": "value"}})"},
    {"example_9_2_document_markers", "%YAML 1.2\n---\nDocument\n... # Suffix\n", R"("Document")"},
};

class YamlSpecification : public testing::TestWithParam<Row> {};

TEST_P(YamlSpecification, IsFollowed) {
    EXPECT_EQ(dump(parse_good(GetParam().text).root()), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, YamlSpecification, testing::ValuesIn(kAccepted),
                         [](const auto& row) { return std::string(row.param.name); });

constexpr Row kRefused[] = {
    // The specification calls these two invalid.
    {"example_5_10_invalid_use_of_reserved_indicators", "commercial-at: @text\n", "1:16 yaml-syntax"},
    {"example_5_14_invalid_escaped_characters", "Bad escapes:\n  \"\\c\n  \\xq-\"\n", "2:4 yaml-syntax"},
    // Valid YAML that we refuse.
    {"example_5_6_node_property_indicators", "anchored: !local &anchor value\nalias: *anchor\n",
     "1:11 alias; 1:11 tag; 2:8 alias"},
    {"example_7_3_completely_empty_flow_nodes", "{\n  ? foo :,\n  : bar,\n}\n", "3:3 wrong-type"},
};

class YamlSpecificationRefused : public testing::TestWithParam<Row> {};

TEST_P(YamlSpecificationRefused, WithItsPlace) {
    EXPECT_EQ(faults_of(GetParam().text), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, YamlSpecificationRefused, testing::ValuesIn(kRefused),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace grainside::document
