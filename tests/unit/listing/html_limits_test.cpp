#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

#include "listing/html_source.h"
#include "reading.h"

namespace grainside::testing_listing {
namespace {

std::string repeated(std::string_view text, std::size_t times) {
    std::string out;
    out.reserve(text.size() * times);
    for (std::size_t i = 0; i < times; ++i) out += text;
    return out;
}

// Pages of 1 to 4 MB that would take a reader minutes to hours whose time grows with the square: the test would run
// into its time limit.
struct HostileRow {
    std::string_view name;
    std::string (*page)();
    std::string_view want;
};
void PrintTo(const HostileRow& row, std::ostream* out) {
    *out << row.name;
}

std::string attributes(std::string_view separator) {
    std::string page = "<p><a ";
    for (std::size_t i = 0; i < 400000; ++i) page.append("a").append(std::to_string(i)).append(separator);
    return page + ">x</a>";
}

constexpr std::size_t kMany = 400000;
constexpr HostileRow kHostile[] = {
    {"nested_blocks", [] { return repeated("<div>", kMany) + "x"; },
     "1:1 warning page-too-deep\n1@1 f:1 description='x'"},
    {"nested_inline", [] { return repeated("<b>", kMany) + "x"; },
     "1:1 warning page-too-deep\n1@1 f:1 description='x'"},
    {"nested_and_unmatched", [] { return repeated("<b>", 500) + repeated("</x></div>", kMany) + "x"; },
     "1@1 f:1 description='x'"},
    {"nested_and_closed_elsewhere", [] { return "<x>" + repeated("<div>", 500) + repeated("</x>", kMany) + "x"; },
     "1@1 f:1 description='x'"},
    {"scope_far_down", [] { return "<div><table><tr><td>" + repeated("<i>", 500) + repeated("</div>", kMany) + "x"; },
     "1@1 f:1 description='x'"},
    {"paragraphs_without_end", [] { return repeated("<p>", kMany) + "x"; }, "1@1 f:1 description='x'"},
    {"items_without_end", [] { return "<ul>" + repeated("<li>", kMany) + "x"; }, "1@1 f:1 description='- x'"},
    {"attributes", [] { return attributes(" "); }, "1:1 warning page-too-large-tag\n1@1 f:1 description='x'"},
    {"attributes_with_values", [] { return attributes("='>' "); },
     "1:1 warning page-too-large-tag\n1@1 f:1 description='x'"},
    {"long_value", [] { return "<p title='" + repeated("<b>", kMany) + "'>x"; }, "1@1 f:1 description='x'"},
    {"quotes", [] { return "<p>x<a " + repeated("\"'", kMany); }, "1@1 f:1 description='x'"},
    {"comments_not_closed", [] { return "<p>x" + repeated("<!-- ", kMany); }, "1@1 f:1 description='x'"},
    {"scripts_not_closed", [] { return "<p>x" + repeated("<script></", kMany); }, "1@1 f:1 description='x'"},
    {"classes", [] { return "<p class='" + repeated("a-b ", kMany) + "'>x"; }, "1@1 f:1 description='x'"},
    {"hidden_one_in_another", [] { return "<p>x" + repeated("<i hidden>y", kMany); },
     "1:1 warning page-too-deep\n1@1 f:1 description='x'"},
    {"hidden_side_by_side", [] { return "<p>x" + repeated("<i hidden>y</i>", kMany); }, "1@1 f:1 description='x'"},
    {"headings_about_others", [] { return "<p>x" + repeated("<h2>Reviews</h2>y", 100000); }, "1@1 f:1 description='x'"},
    {"terms_without_rows", [] { return "<dl><dt>x<dd>" + repeated("<dl>", kMany); },
     "1:1 warning page-too-deep\n1@1 f:1 description='x'"},
    {"scripts_of_data", [] { return repeated("<script type=application/ld+json>[]</script>", 100000) + "x"; },
     "1@1 f:1 description='x'"},
    {"nested_data",
     [] { return "<script type=application/ld+json>" + repeated("[", kMany) + repeated("]", kMany) + "</script>x"; },
     "1@1 f:1 description='x'"},
    {"nested_graphs",
     [] {
         return "<script type=application/ld+json>" + repeated("{\"@graph\":[", 200000) + repeated("]}", 200000) +
                "</script>x";
     },
     "1@1 f:1 description='x'"},
};

class HostilePage : public testing::TestWithParam<HostileRow> {};

TEST_P(HostilePage, IsReadInLinearTime) {
    EXPECT_EQ(read_memory(GetParam().page(), InputFormat::html), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, HostilePage, testing::ValuesIn(kHostile),
                         [](const auto& row) { return std::string(row.param.name); });

std::string read_with_limit(std::string_view page, std::size_t max_bytes) {
    auto bytes = listing::ByteSource::from_memory("f", page);
    listing::IssueSink sink("f");
    listing::HtmlSource source(bytes, sink, max_bytes);
    std::vector<Issue> issues;
    sink.begin(issues);
    Listing listing;
    std::string out = source.next(listing) ? dump(listing) : "none";
    for (const Issue& issue : issues) out += "\n" + dump(issue);
    return out;
}

TEST(HtmlLimits, APageOfTheLargestSizeIsReadAndALargerOneIsNot) {
    EXPECT_EQ(read_with_limit("<p>x", 4), "1@1 f:1 description='x'");
    EXPECT_EQ(read_with_limit("<p>xy", 4), "none\n0:0 error record-too-large");
}

TEST(HtmlLimits, MoreItemsThanAPageMayHaveAreReported) {
    const std::string page = repeated("<p itemscope itemtype=https://schema.org/Product><b itemprop=name>T</b>", 70000);
    auto reader = ListingReader::from_memory("f", page, {.format = InputFormat::html});
    Listing listing;
    std::vector<Issue> issues;
    std::size_t count = 0;
    while (reader.next(listing, issues)) ++count;
    EXPECT_EQ(count, listing::PageItems::kMost);
    ASSERT_EQ(issues.size(), 1U);
    EXPECT_EQ(issues[0].code, "record-too-large");
}

TEST(HtmlLimits, MoreProductsThanAPageMayHaveAreReported) {
    const std::string page = "<script type=application/ld+json>[{\"@type\":\"Product\",\"name\":\"T\"}" +
                             repeated(",{\"@type\":\"Product\",\"name\":\"T\"}", 10000) + "]</script>";
    auto reader = ListingReader::from_memory("f", page, {.format = InputFormat::html});
    Listing listing;
    std::vector<Issue> issues;
    std::size_t count = 0;
    while (reader.next(listing, issues)) ++count;
    EXPECT_EQ(count, listing::LinkedData::kMostProducts);
    ASSERT_EQ(issues.size(), 1U);
    EXPECT_EQ(issues[0].code, "record-too-large");
}

}  // namespace
}  // namespace grainside::testing_listing
