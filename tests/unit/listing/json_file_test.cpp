#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/json_array_source.h"
#include "reading.h"

namespace grainside::testing_listing {
namespace {

class JsonFileTest : public testing::TestWithParam<Row> {};

constexpr Row kRows[] = {
    {"one_object", "{\n \"name\": \"a\"\n}\n", "1@1 f:1 name='a'"},
    {"object_after_space", "\n\n  {\"name\":\"a\"}", "1@1 f:1 name='a'"},
    {"list", R"([{"name":"a"},{"name":"b"}])", "1@1 f:1 name='a'\n2@1 f:2 name='b'"},
    {"list_over_lines", "\n[\n  {\"name\":\"a\"},\n  {\n   \"name\":\"b\"\n  }\n]\n",
     "1@3 f:1 name='a'\n2@4 f:2 name='b'"},
    {"empty_list", " [ ] ", ""},
    {"brackets_in_texts", R"([{"name":"a]}\"[{"},{"name":"\\"}])",
     R"(1@1 f:1 name='a]}"[{')"
     "\n"
     R"(2@1 f:2 name='\')"},
    {"graph", "{\"@graph\":[\n{\"name\":\"a\"},\n{\"name\":\"b\"}]}", "1@2 f:1 name='a'\n2@3 f:2 name='b'"},
    {"list_of_graphs", R"([{"@graph":[{"name":"a"},{"name":"b"}]},{"name":"c"}])",
     "1@1 f:1 name='a'\n2@1 f:2 name='b'\n3@1 f:3 name='c'"},
    {"wrapped", "{\"products\":[\n{\"name\":\"a\"},\n{\"name\":\"b\"}],\"total\":2}",
     "1@2 f:1 name='a'\n2@3 f:2 name='b'"},
    {"wrapped_behind_other_members",
     "{\n \"page\": {\"of\": [1, 2]}, \"seller\": \"s\", \"@type\": \"DataFeed\", \"tags\": [\"x\"],\n \"items\": "
     "[{\"name\": \"a\"}]\n}",
     "1@3 f:1 name='a'"},
    {"wrapped_rubbish_among_products", R"({"products":[{"name":"a"},7,{"name":"b"}]})",
     "1@1 f:1 name='a'\n1:27 error not-an-object\n3@1 f:3 name='b'"},
    {"wrapped_broken_product",
     "{\"products\":[\n{\"name\":\"a\"},\n{\"name\":\"b\" \"x\"},\n{\"name\":\"c\"}\n],\"total\":3}",
     "1@2 f:1 name='a'\n3:13 error json-syntax\n3@4 f:3 name='c'"},
    {"wrapped_cut_off", "{\"products\":[{\"name\":\"a\"},\n{\"name\":\"b", "1@1 f:1 name='a'\n2:9 error json-syntax"},
    {"wrapped_broken_behind", "{\"products\":[{\"name\":\"a\"}],\n\"total\":x}",
     "2:9 error json-syntax\n1@1 f:1 name='a'"},
    {"wrapped_text_behind", "{\"products\":[{\"name\":\"a\"}]}\n{", "2:1 error json-syntax\n1@1 f:1 name='a'"},
    {"wrapped_beside_facets", R"({"facets":[{"key":"colour"}],"products":[{"sku":"s","name":"a"}]})", "1@1 s name='a'"},
    {"wrapped_twice", R"({"bags":[{"name":"a"}],"belts":[{"name":"b"}]})", "1:9 error several-lists"},
    {"product_with_lists", R"({"images":[{"name":"x"}],"name":"a","reviews":[{"name":"y"}]})", "1@1 f:1 name='a'"},
    {"product_by_its_type", R"({"@type":"Product","reviews":[{"name":"y"}]})", "1:1 error no-text"},
    {"product_with_a_written_name", R"({"n\u0061me":"a","reviews":[{"name":"y"}]})", "1@1 f:1 name='a'"},
    {"wrapped_without_texts", R"({"rows":[{"title":"a"}]})", "1:10 error no-text"},
    {"wrapped_empty", R"({"products":[]})", "1:1 error no-text"},
    {"graph_of_other_types",
     "{\"@context\":\"https://schema.org\",\"@graph\":[\n{\"@type\":\"Organization\",\"name\":\"o\"},\n"
     "{\"@type\":\"Product\",\"name\":\"a\"}],\"name\":\"page\"}",
     "2@3 f:2 name='a'"},
    {"graph_with_a_broken_node", "{\"@graph\":[\n{\"name\":\"a\"},\n{\"name\":\"b\" \"x\"},\n{\"name\":\"c\"}\n]}",
     "1@2 f:1 name='a'\n3:13 error json-syntax\n3@4 f:3 name='c'"},
    {"empty", "", "1:1 error json-syntax"},
    {"blank", " \n", "1:1 error json-syntax"},
    {"text", "\"x\"", "1:1 error not-an-object"},
    {"prose", "Tote bag", "1:1 error json-syntax"},
    {"rubbish_among_products", R"([1,{"name":"a"},[2],"x",null,{"name":"b"}])",
     "1:2 error not-an-object\n2@1 f:2 name='a'\n1:17 error not-an-object\n1:21 error not-an-object\n"
     "1:25 error not-an-object\n6@1 f:6 name='b'"},
    {"broken_in_the_middle", "[\n{\"name\":\"a\"},\n{\"name\":\"b\" \"x\"},\n{\"name\":\"c\"}\n]",
     "1@2 f:1 name='a'\n3:13 error json-syntax\n3@4 f:3 name='c'"},
    {"quote_missing", "[\n  {\"name\":\"a\"},\n  {\"name\":\"b},\n  {\"name\":\"c\"},\n  {\"name\":\"d\"}\n]",
     "1@2 f:1 name='a'\n3:15 error json-syntax\n3@4 f:3 name='c'\n4@5 f:4 name='d'"},
    {"brace_missing", "[\n  {\"name\":\"a\",\n  {\"name\":\"b\"}\n]", "3:3 error json-syntax\n2@3 f:2 name='b'"},
    {"cut_off_after_product", "[{\"name\":\"a\"}", "1@1 f:1 name='a'\n1:14 error json-syntax"},
    {"cut_off_in_product", "[{\"name\":\"a\"},\n{\"name\":\"b", "1@1 f:1 name='a'\n2:9 error json-syntax"},
    {"comma_missing", "[{\"name\":\"a\"}\n{\"name\":\"b\"}]",
     "1@1 f:1 name='a'\n2:1 error json-syntax\n2@2 f:2 name='b'"},
    {"comma_after_last", R"([{"name":"a"},])", "1@1 f:1 name='a'\n1:14 error json-syntax"},
    {"comma_before_first", R"([,{"name":"a"}])", "1:2 error json-syntax\n1@1 f:1 name='a'"},
    {"text_after_list", "[{\"name\":\"a\"}]\n[", "1@1 f:1 name='a'\n2:1 error json-syntax"},
    {"lost", R"([{"name":"a"} x {"name":"b"}])", "1@1 f:1 name='a'\n1:15 error json-syntax"},
    {"not_utf8", "[{\"name\":\"a\"},\n{\"name\":\"\xFFq\"}]",
     "1@1 f:1 name='a'\n2:10 warning not-utf8\n2@2 f:2 name=' q'"},
};

TEST_P(JsonFileTest, GivesWhatTheRowSays) {
    EXPECT_EQ(read_memory(GetParam().input, InputFormat::json), GetParam().want);
}

TEST_P(JsonFileTest, IsTheSameAfterAMark) {
    EXPECT_EQ(read_memory("\xEF\xBB\xBF" + std::string(GetParam().input), InputFormat::json), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, JsonFileTest, testing::ValuesIn(kRows), row_name);

// Each of these asks at every element where the next one may begin. Quadratic time would be hours.
TEST(JsonFileLimits, HostileListsTakeLinearTime) {
    std::string only_openings = "[\n";
    std::string broken_alike = "[\n";
    for (std::size_t i = 0; i < 2000000; ++i) {
        only_openings += "{\n";
        broken_alike += "{x},\n";
    }
    std::string deeper_and_deeper = "[";
    for (std::size_t i = 0; i < 4000; ++i) deeper_and_deeper.append("\n").append(i, ' ').append("{x},");
    for (const std::string* text : {&only_openings, &broken_alike, &deeper_and_deeper}) {
        const std::string got = read_memory(*text, InputFormat::json);
        EXPECT_TRUE(got.ends_with("error too-many-issues")) << got.substr(0, 100);
    }
    std::string members = "{";
    for (std::size_t i = 0; i < 1000000; ++i) members += "\"m\":[{}],";
    EXPECT_EQ(read_memory(members + "\"m\":[{}]}", InputFormat::json), "1:6 error several-lists");
    const std::string openings = "{\"m\":[{\"name\":\"a\"},\n" + only_openings.substr(1);
    EXPECT_TRUE(read_memory(openings, InputFormat::json).ends_with("error too-many-issues"));
    const std::string backslashes = std::string("[\"").append(5000000, '\\');
    EXPECT_EQ(read_memory(backslashes, InputFormat::json), "1:2 error json-syntax");
    const std::string quotes = std::string("[").append(5000001, '"');
    EXPECT_EQ(read_memory(quotes, InputFormat::json), "1:2 error not-an-object\n1:4 error json-syntax");
}

// The structure of schema.org's Product with an offer, a rating and properties, as the vocabulary describes it
// (https://schema.org/Product); the content is invented.
TEST(JsonFileStandards, ProductOfSchemaOrg) {
    constexpr std::string_view kProduct = R"({
  "@context": "https://schema.org",
  "@type": "Product",
  "@id": "https://shop.example/p/7#product",
  "aggregateRating": {"@type": "AggregateRating", "ratingValue": "3.5", "reviewCount": "11"},
  "brand": {"@type": "Brand", "name": "Invented"},
  "name": "Weekend bag in waxed canvas",
  "description": "Waxed canvas with trim of bridle leather.\nLined in \"ticking\".",
  "image": ["https://shop.example/7a.jpg", "https://shop.example/7b.jpg"],
  "material": ["Cotton", "Leather"],
  "category": "Luggage > Weekend bags",
  "additionalProperty": [
    {"@type": "PropertyValue", "propertyID": "trim", "name": "Trim", "value": "bridle leather"},
    {"@type": "PropertyValue", "name": "Thickness", "value": 3.50, "unitText": "mm", "unitCode": "MMT"}
  ],
  "offers": {
    "@type": "Offer",
    "availability": "https://schema.org/InStock",
    "price": "220.00",
    "priceCurrency": "GBP",
    "eligibleRegion": {"@type": "Country", "name": "GB"}
  },
  "review": [{"@type": "Review", "author": "A", "reviewRating": {"@type": "Rating", "ratingValue": 1}}],
  "inLanguage": "en-GB"
})";
    EXPECT_EQ(read_memory(kProduct, InputFormat::json),
              "1@1 https://shop.example/p/7#product [en-GB GB] name='Weekend bag in waxed canvas' "
              "description='Waxed canvas with trim of bridle leather.\\nLined in \"ticking\".' material='Cotton' "
              "material='Leather' category='Luggage > Weekend bags' additionalProperty.Trim='bridle leather' "
              "additionalProperty.Thickness='3.50 mm'");
}

TEST(JsonFileLimits, FileAndRecord) {
    constexpr std::string_view kInput = R"([{"name":"a"},{"name":"long enough"},{"name":"c"}])";
    const auto codes = [&](std::size_t max_file, std::size_t max_record) {
        auto bytes = listing::ByteSource::from_memory("f", kInput);
        listing::IssueSink sink("f");
        listing::JsonArraySource source(bytes, sink, max_file, max_record);
        std::string out;
        Listing listing;
        std::vector<Issue> issues;
        sink.begin(issues);
        while (source.next(listing)) out += dump(listing) + "\n";
        for (const Issue& issue : issues) out += dump(issue) + "\n";
        return out;
    };
    EXPECT_EQ(codes(kInput.size(), 100), "1@1 f:1 name='a'\n2@1 f:2 name='long enough'\n3@1 f:3 name='c'\n");
    EXPECT_EQ(codes(kInput.size() - 1, 100), "0:0 error file-too-large\n");
    EXPECT_EQ(codes(kInput.size(), 12), "1@1 f:1 name='a'\n3@1 f:3 name='c'\n1:15 error record-too-large\n");
}

// The limit of a record is one of its products, not of the list that holds them.
TEST(JsonFileLimits, WrappedListMayBeLargerThanARecord) {
    for (const std::string_view name : {"products", "@graph"}) {
        const std::string input = "{\"" + std::string(name) + R"(":[{"name":"a"},{"name":"b"}]})";
        auto bytes = listing::ByteSource::from_memory("f", input);
        listing::IssueSink sink("f");
        listing::JsonArraySource source(bytes, sink, input.size(), 12);
        Listing listing;
        std::vector<Issue> issues;
        sink.begin(issues);
        std::size_t listings = 0;
        while (source.next(listing)) ++listings;
        EXPECT_EQ(listings, 2U) << name;
        EXPECT_TRUE(issues.empty()) << name;
    }
}

}  // namespace
}  // namespace grainside::testing_listing
