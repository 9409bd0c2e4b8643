#include <gtest/gtest.h>

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/listing_reader.h"
#include "reading.h"

namespace grainside::testing_listing {
namespace {

using namespace std::string_view_literals;

class JsonLinesTest : public testing::TestWithParam<Row> {};

constexpr Row kFields[] = {
    {"name_only", R"({"name":"Tote"})", "1@1 f:1 name='Tote'"},
    {"written_order", R"({"description":"b","name":"a","category":"d","material":"c"})",
     "1@1 f:1 description='b' name='a' category='d' material='c'"},
    {"sku", R"({"sku":"T-1","@id":"x","name":"a"})", "1@1 T-1 name='a'"},
    {"sku_number", R"({"sku":00,"name":"a"})", "1:8 error json-syntax"},
    {"sku_plain_number", R"({"sku":1200,"name":"a"})", "1@1 1200 name='a'"},
    {"at_id", R"({"@id":"urn:x:1","name":"a"})", "1@1 urn:x:1 name='a'"},
    {"empty_sku", R"({"sku":"","@id":"y","name":"a"})", "1@1 y name='a'"},
    {"language_region", R"({"name":"a","inLanguage":"de-AT","offers":{"price":3,"eligibleRegion":"AT"}})",
     "1@1 f:1 [de-AT AT] name='a'"},
    {"language_object", R"({"name":"a","inLanguage":{"@type":"Language","name":"fr"}})", "1@1 f:1 [fr ] name='a'"},
    {"offers_list", R"({"name":"a","offers":[{"price":"1"},{"eligibleRegion":{"name":"France","identifier":"FR"}}]})",
     "1@1 f:1 [ FR] name='a'"},
    {"region_name", R"({"name":"a","offers":{"eligibleRegion":{"@type":"Country","name":"IT"}}})",
     "1@1 f:1 [ IT] name='a'"},
    {"region_list", R"({"name":"a","offers":{"eligibleRegion":["ES","PT"]}})", "1@1 f:1 [ ES PT] name='a'"},
    {"regions_of_all_offers",
     R"({"name":"a","offers":[{"eligibleRegion":"US"},{"eligibleRegion":["GB","US",""]},{"eligibleRegion":"DE"}]})",
     "1@1 f:1 [ US GB DE] name='a'"},
    {"material_list", R"({"material":["Leather",{"@type":"Product","name":"Cotton"},{"@value":"Zinc"}]})",
     "1@1 f:1 material='Leather' material='Cotton' material='Zinc'"},
    {"name_list", R"({"name":["a","b"],"description":["c"],"category":{"name":"Bags"}})",
     "1@1 f:1 name='a' name='b' description='c' category='Bags'"},
    {"property", R"({"additionalProperty":{"name":"Lining","value":"cotton"}})",
     "1@1 f:1 additionalProperty.Lining='cotton'"},
    {"property_list", R"({"additionalProperty":[{"value":"a","name":"X"},{"name":"Y","value":["b","c"]}]})",
     "1@1 f:1 additionalProperty.X='a' additionalProperty.Y='b' additionalProperty.Y='c'"},
    {"property_number_as_written", R"({"additionalProperty":[{"name":"N","value":1.50},{"name":"B","value":true}]})",
     "1@1 f:1 additionalProperty.N='1.50' additionalProperty.B='true'"},
    {"property_large_number", R"({"additionalProperty":{"name":"N","value":123456789012345678901234567890e999}})",
     "1@1 f:1 additionalProperty.N='123456789012345678901234567890e999'"},
    {"property_unit", R"({"additionalProperty":{"unitText":"mm","name":"Thickness","value":1.4}})",
     "1@1 f:1 additionalProperty.Thickness='1.4 mm'"},
    {"property_text_has_its_unit", R"({"additionalProperty":{"name":"T","value":"1.4 mm","unitText":"mm"}})",
     "1@1 f:1 additionalProperty.T='1.4 mm'"},
    {"property_escaped_name", R"({"additionalProperty":{"name":"Caf\u00e9","value":"x"}})",
     "1@1 f:1 additionalProperty.Caf\xC3\xA9='x'"},
    {"property_without_value", R"({"name":"a","additionalProperty":{"name":"X"}})", "1@1 f:1 name='a'"},
    {"property_without_name", R"({"additionalProperty":{"value":"x"}})",
     "1:23 warning wrong-member-type\n1@1 f:1 additionalProperty.='x'"},
    {"brand_is_no_field", R"({"brand":{"name":"Invented"},"name":"a"})", "1@1 f:1 name='a'"},
    {"unknown_members", R"({"x":{"name":"no"},"y":[1,"}]"],"name":"a","z":null})", "1@1 f:1 name='a'"},
    {"number_out_of_any_range", R"({"gtin":99999999999999999999999999,"w":1e999,"name":"a"})", "1@1 f:1 name='a'"},
    {"empty_fields", R"({"name":"a","description":"","material":[""]})", "1@1 f:1 name='a'"},
    {"null_is_absent", R"({"name":"a","description":null,"additionalProperty":null,"offers":null,"sku":null})",
     "1@1 f:1 name='a'"},
    {"first_of_duplicates_wins", R"({"name":"a","name":"b","name":3})", "1@1 f:1 name='a'"},
    {"escaped_key", R"({"na\u006de":"a"})", "1@1 f:1 name='a'"},
    {"escaped_key_is_a_duplicate", R"({"na\u006de":"a","name":"b"})", "1@1 f:1 name='a'"},
    {"escapes", R"({"name":"q\"b\\s\/\b\f\n\r\t."})", R"(1@1 f:1 name='q"b\s/\x08\x0C\n\x0D\x09.')"},
    {"surrogate_pair", R"({"name":"\ud83d\udc5c\uD83D\uDC5C"})", "1@1 f:1 name='\xF0\x9F\x91\x9C\xF0\x9F\x91\x9C'"},
    {"unicode_lengths", R"({"name":"\u0041\u00e9\u20ac"})", "1@1 f:1 name='A\xC3\xA9\xE2\x82\xAC'"},
    {"escaped_nul", R"({"name":"a\u0000b"})", "1:9 warning nul-byte\n1@1 f:1 name='a\\x00b'"},
    {"space_everywhere", " \t{ \"name\" : \"a\" , \"material\" : [ \"b\" , \"c\" ] } \t",
     "1@1 f:1 name='a' material='b' material='c'"},
};

constexpr Row kFaults[] = {
    {"nothing", "", ""},
    {"empty_lines", "\n\n  \n\t\n", ""},
    {"empty_object", "{}", "1:1 error no-text"},
    {"blank_text", R"({"name":" \n","description":""})", "1:1 error no-text"},
    {"brand_alone", R"({"brand":"Invented"})", "1:1 error no-text"},
    {"broken_in_the_middle", "{\"name\":\"a\"}\n{\"name\":\"b\" \"x\"}\n{\"name\":\"c\"}\n",
     "1@1 f:1 name='a'\n2:13 error json-syntax\n3@3 f:3 name='c'"},
    {"broken_line_counts_empty_does_not", "x\n\n{\"name\":\"c\"}", "1:1 error json-syntax\n2@3 f:2 name='c'"},
    {"list_line", R"(["a"])", "1:1 error not-an-object"},
    {"number_line", "12", "1:1 error not-an-object"},
    {"text_line", R"(  "a")", "1:3 error not-an-object"},
    {"cut_off", R"({"name":"a)", "1:9 error json-syntax"},
    {"cut_off_after_member", R"({"name":"a")", "1:12 error json-syntax"},
    {"cut_off_after_comma", R"({"name":"a",)", "1:13 error json-syntax"},
    {"cut_off_in_list", R"({"material":["a")", "1:17 error json-syntax"},
    {"cut_off_in_list_of_objects", R"({"sku":[{})", "1:9 warning wrong-member-type\n1:11 error json-syntax"},
    {"cut_off_after_object", R"({"name":"a","offers":{})", "1:24 error json-syntax"},
    {"cut_off_after_property", R"({"additionalProperty":[{"name":"a","value":"b"})", "1:48 error json-syntax"},
    {"comma_after_last", R"({"name":"a",})", "1:12 error json-syntax"},
    {"comma_at_line_end", R"({"name":"a"},)", "1:13 error json-syntax"},
    {"two_on_a_line", R"({"name":"a"}{"name":"b"})", "1:13 error json-syntax"},
    {"single_quotes", R"({'name':'a'})", "1:2 error json-syntax"},
    {"no_quotes", R"({"name":Tote})", "1:9 error json-syntax"},
    {"string_then_colon", R"({"x":"y":[1],"name":"a"})", "1:9 error json-syntax"},
    {"fault_in_unknown_member", R"({"name":"a","x":{"y":tru}})", "1:22 error json-syntax"},
    {"wrong_bracket_in_unknown_member", R"({"name":"a","x":[1}})", "1:19 error json-syntax"},
    {"bad_escape_in_unknown_member", R"({"name":"a","x":"\q"})", "1:18 error json-syntax"},
    {"bad_escape_in_unknown_key", R"({"name":"a","\q":1})", "1:14 error json-syntax"},
    {"bad_escape", R"({"name":"a\d"})", "1:11 error json-syntax"},
    {"lone_high_surrogate", R"({"name":"\ud800"})", "1:10 error json-syntax"},
    {"lone_low_surrogate", R"({"name":"\udc00"})", "1:10 error json-syntax"},
    {"high_surrogate_then_letter", R"({"name":"\ud800\u0041"})", "1:10 error json-syntax"},
    {"raw_tab", "{\"name\":\"a\tb\"}", "1:11 error json-syntax"},
    {"raw_nul_in_text", "{\"name\":\"a\0b\"}"sv, "1:11 error json-syntax"},
    {"raw_nul_between", "{\"name\":\0\"ab\"}"sv, "1:9 error json-syntax"},
    {"wrong_types", R"({"name":3,"description":{"x":1},"material":[[1],"m"],"sku":true})",
     "1:9 warning wrong-member-type\n1:25 warning wrong-member-type\n1:45 warning wrong-member-type\n"
     "1:60 warning wrong-member-type\n1@1 f:1 material='m'"},
    {"wrong_type_of_list_members", R"({"name":"a","additionalProperty":["x"],"offers":"y"})",
     "1:35 warning wrong-member-type\n1:49 warning wrong-member-type\n1@1 f:1 name='a'"},
    {"not_utf8", "{\"name\":\"caf\xE9 bag\"}\n{\"name\":\"b\"}",
     "1:13 warning not-utf8\n1@1 f:1 name='caf  bag'\n2@2 f:2 name='b'"},
    {"not_utf8_and_escape", "{\"name\":\"\\u00e9\xC3\\n\xE2\x82\"}",
     "1:16 warning not-utf8\n1@1 f:1 name='\xC3\xA9 \\n  '"},
    {"not_utf8_and_broken", "{\"name\":\"\xFF\",}", "1:10 warning not-utf8\n1:12 error json-syntax"},
    {"encoded_surrogate", "{\"name\":\"\xED\xA0\x80\"}", "1:10 warning not-utf8\n1:1 error no-text"},
};

constexpr Row kGraphs[] = {
    {"graph", R"({"@context":"https://schema.org","@graph":[{"@type":"Product","name":"a"},{"name":"b","sku":"s"}]})",
     "1@1 f:1 name='a'\n2@1 s name='b'"},
    {"graph_with_other_nodes",
     R"({"@graph":[{"@type":"Organization","name":"o","description":1},{"@type":["schema:Product","x"],"name":"p"}]})"
     "\n"
     R"({"name":"q"})",
     "2@1 f:2 name='p'\n3@2 f:3 name='q'"},
    {"graph_empty", R"({"@graph":[],"name":"x"})", ""},
    {"graph_of_rubbish", R"({"@graph":[1,"x",{}]})",
     "1:12 error not-an-object\n1:14 error not-an-object\n1:18 error no-text"},
    {"graph_broken", R"({"@graph":[{"name":"a"},{"name":}]})", "1:33 error json-syntax"},
    {"graph_not_utf8", "{\"@graph\":[{\"name\":\"a\xFF\"},{\"name\":\"b\"}]}",
     "1:22 warning not-utf8\n1@1 f:1 name='a '\n2@1 f:2 name='b'"},
    {"graph_in_graph_is_unknown", R"({"@graph":[{"name":"a","@graph":[{"name":"b"}]}]})", "1@1 f:1 name='a'"},
};

TEST_P(JsonLinesTest, GivesWhatTheRowSays) {
    EXPECT_EQ(read_memory(GetParam().input, InputFormat::json_lines), GetParam().want);
}

// The same record must not depend on line ends, on a mark in front or on what stands behind it.
TEST_P(JsonLinesTest, IsTheSameInOtherDress) {
    const std::string input(GetParam().input);
    if (input.find('\n') != std::string::npos) return;
    const std::string want(GetParam().want);
    EXPECT_EQ(read_memory(input + "\r\n", InputFormat::json_lines), want);
    EXPECT_EQ(read_memory("\xEF\xBB\xBF" + input, InputFormat::json_lines), want);
    EXPECT_EQ(read_memory(input + "\n" + std::string(500, ' '), InputFormat::json_lines), want);
    const std::string after_another = "{\"sku\":\"0\",\"name\":\"0\"}\n\xEF\xBB\xBF" + input;
    const std::string both = read_memory(after_another, InputFormat::json_lines);
    EXPECT_TRUE(both.starts_with("1@1 0 name='0'")) << both;
    EXPECT_EQ(both.size() > 14, !want.empty()) << both;
}

// A record that is copied lies where an earlier one lay, and what that left behind it is none of its own.
TEST_P(JsonLinesTest, IsTheSameBehindAnyCopiedRecord) {
    const auto behind_a_run_of = [&](char c) {
        // Not UTF-8, so that it is copied.
        return read_memory("{\"x\":\"\xFF" + std::string(300, c) + "\"}\n" + std::string(GetParam().input),
                           InputFormat::json_lines);
    };
    const std::string want = behind_a_run_of(' ');
    for (const char c : {',', ']', '}', ':', '{', '0'}) EXPECT_EQ(behind_a_run_of(c), want) << c;
}

INSTANTIATE_TEST_SUITE_P(Fields, JsonLinesTest, testing::ValuesIn(kFields), row_name);
INSTANTIATE_TEST_SUITE_P(Faults, JsonLinesTest, testing::ValuesIn(kFaults), row_name);
INSTANTIATE_TEST_SUITE_P(Graphs, JsonLinesTest, testing::ValuesIn(kGraphs), row_name);

TEST(JsonLinesIssues, TellPlaceWordsAndWhatToDo) {
    auto reader = ListingReader::from_memory("feed.jsonl", "\n{\"name\":\"a\" \"x\"}\n", {});
    Listing listing;
    std::vector<Issue> issues;
    EXPECT_FALSE(reader.next(listing, issues));
    ASSERT_EQ(issues.size(), 1U);
    EXPECT_EQ(issues[0].severity, Issue::Severity::error);
    EXPECT_EQ(issues[0].file, "feed.jsonl");
    EXPECT_EQ(issues[0].line, 2U);
    EXPECT_EQ(issues[0].column, 13U);
    EXPECT_EQ(issues[0].message, "a comma or } is missing here");
    EXPECT_EQ(issues[0].hint, "put a comma between entries, and a backslash before a double quote inside a text");
    EXPECT_EQ(issues[0].excerpt, "{\"name\":\"a\" \"x\"}");
}

TEST(JsonLinesIssues, QuoteTheWordsWhereTheLineIsTooLongToShow) {
    const std::string input = std::string("{\"name\":\"") + std::string(300, 'a') + "\" \"x\"}";
    auto reader = ListingReader::from_memory("f", input, {.format = InputFormat::json_lines});
    Listing listing;
    std::vector<Issue> issues;
    EXPECT_FALSE(reader.next(listing, issues));
    ASSERT_EQ(issues.size(), 1U);
    EXPECT_EQ(issues[0].message, "a comma or } is missing here, near: \"x\"}");
    EXPECT_EQ(issues[0].excerpt, "");
}

TEST(JsonLinesIssues, AreBoundedInNumber) {
    std::string input;
    for (int i = 0; i < 5000; ++i) input += "x\n";
    input += "{\"name\":\"a\"}";
    auto reader = ListingReader::from_memory("f", input, {.format = InputFormat::json_lines});
    Listing listing;
    std::vector<Issue> issues;
    EXPECT_TRUE(reader.next(listing, issues));
    EXPECT_EQ(listing.record, 5001U);
    ASSERT_EQ(issues.size(), kMaxIssuesPerCall + 1);
    EXPECT_EQ(issues.back().code, "too-many-issues");
    EXPECT_EQ(issues.back().severity, Issue::Severity::error);
    EXPECT_EQ(issues.back().message, "4000 further issues up to here are not listed");
}

TEST(JsonLinesLimits, NestingIsBoundedByMemoryOnly) {
    constexpr int kDepth = 10000;
    std::string deep;
    for (int i = 0; i < kDepth; ++i) deep += "{\"a\":";
    deep += '1';
    deep.append(kDepth, '}');
    EXPECT_EQ(read_memory(deep, InputFormat::json_lines), "1:1 error no-text");
    EXPECT_EQ(read_memory("{\"name\":\"n\",\"x\":" + deep + "}", InputFormat::json_lines), "1@1 f:1 name='n'");
    // One closing brace too few: at the end.
    deep.pop_back();
    EXPECT_EQ(read_memory(deep, InputFormat::json_lines),
              std::string("1:") + std::to_string(deep.size() + 1) + " error json-syntax");
    const std::string lists = std::string("{\"material\":") + std::string(kDepth, '[') + std::string(kDepth, ']') + "}";
    EXPECT_EQ(read_memory(lists, InputFormat::json_lines), "1:14 warning wrong-member-type\n1:1 error no-text");
}

TEST(JsonLinesLimits, FieldsBeyondTheLimitAreReported) {
    std::string input = "{\"material\":[\"a\"";
    for (int i = 0; i < 70000; ++i) input += ",\"a\"";
    input += "]}";
    auto reader = ListingReader::from_memory("f", input, {.format = InputFormat::json_lines});
    Listing listing;
    std::vector<Issue> issues;
    ASSERT_TRUE(reader.next(listing, issues));
    EXPECT_EQ(listing.fields.size(), 65536U);
    ASSERT_EQ(issues.size(), 1U);
    EXPECT_EQ(issues[0].code, "record-too-large");
}

// The example object of RFC 8259 section 13: valid JSON of which we know no member that holds text.
TEST(JsonLinesStandards, ExampleOfRfc8259) {
    constexpr std::string_view kExample = R"({
      "Image": {
          "Width":  800,
          "Height": 600,
          "Title":  "View from 15th Floor",
          "Thumbnail": {
              "Url":    "http://www.example.com/image/481989943",
              "Height": 125,
              "Width":  100
          },
          "Animated" : false,
          "IDs": [116, 943, 234, 38793]
        }
    })";
    EXPECT_EQ(read_memory(kExample, InputFormat::json), "1:1 error no-text");
    const std::string named = std::string("{\"name\":\"n\",").append(kExample.substr(1));
    EXPECT_EQ(read_memory(named, InputFormat::json), "1@1 f:1 name='n'");
}

TEST(JsonLinesReader, CountsBytes) {
    constexpr std::string_view kInput = "{\"name\":\"a\"}\n{\"name\":\"b\"}\n";
    auto reader = ListingReader::from_memory("f", kInput, {.format = InputFormat::json_lines});
    EXPECT_EQ(reader.bytes_read(), 0U);
    EXPECT_EQ(read_all(reader), "1@1 f:1 name='a'\n2@2 f:2 name='b'");
    EXPECT_EQ(reader.bytes_read(), kInput.size());
}

TEST(JsonLinesReader, GoesOnAfterBeingMoved) {
    auto first =
        ListingReader::from_memory("f", "{\"name\":\"a\"}\n{\"name\":\"b\"}", {.format = InputFormat::json_lines});
    Listing listing;
    std::vector<Issue> issues;
    ASSERT_TRUE(first.next(listing, issues));
    ListingReader second = std::move(first);
    EXPECT_EQ(read_all(second), "2@2 f:2 name='b'");
}

}  // namespace
}  // namespace grainside::testing_listing
