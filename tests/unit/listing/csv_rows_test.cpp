// RFC 4180, section 2, rule by rule; what spreadsheets do beyond it; faults and how reading goes on behind them.
#include <unistd.h>

#include <string>
#include <string_view>
#include <vector>

#include "grainside/source_place.h"
#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/table_source.h"
#include "reading.h"
#include "support/allocations.h"

namespace grainside::testing_listing {
namespace {

class CsvRows : public testing::TestWithParam<Row> {};
using namespace std::string_view_literals;

const Row kCsvRows[] = {
    // RFC 4180, section 2.
    {"rule_1_lines_end_with_crlf", "name,sku\r\naaa,1\r\nzzz,2\r\n", "1@2 1 name='aaa'\n2@3 2 name='zzz'"},
    {"rule_2_last_line_without_end", "name,sku\r\naaa,1\r\nzzz,2", "1@2 1 name='aaa'\n2@3 2 name='zzz'"},
    {"rule_3_header", "name,Lining\r\naaa,bbb\r\n", "1@2 f:1 name='aaa' additionalProperty.Lining='bbb'"},
    {"rule_4_spaces_are_part", "name,sku\r\n aaa ,1\r\n", "1@2 1 name=' aaa '"},
    {"rule_5_quoted_or_not", "name,\"sku\"\r\n\"aaa\",1\r\nzzz,\"2\"\r\n", "1@2 1 name='aaa'\n2@3 2 name='zzz'"},
    {"rule_6_line_break_comma_inside", "name,sku\r\n\"b\r\nb,b\",1\r\nzzz,2\r\n",
     "1@2 1 name='b\\x0D\\nb,b'\n2@4 2 name='zzz'"},
    {"rule_7_doubled_quotes", "name,sku\r\n\"b\"\"bb\",1\r\n\"\"\"q\"\"\",2\r\n\"\"\"\",3\r\n",
     "1@2 1 name='b\"bb'\n2@3 2 name='\"q\"'\n3@4 3 name='\"'"},
    // What spreadsheets write (common practice, no source).
    {"line_feeds", "name,sku\naaa,1\n\n\nzzz,2\n", "1@2 1 name='aaa'\n2@5 2 name='zzz'"},
    {"byte_order_mark", "\xEF\xBB\xBFname,sku\naaa,1\n", "1@2 1 name='aaa'"},
    {"semicolons", "name;sku\na,b;1\n", "1@2 1 name='a,b'"},
    {"semicolon_within_quoted_heading", "\"name\",\"a;b\"\nx,y\n", "1@2 f:1 name='x' additionalProperty.a;b='y'"},
    {"tabs", "name\tsku\na,b\t1\n", "1@2 1 name='a,b'"},
    {"one_column", "name\na\n\nb\n", "1@2 f:1 name='a'\n2@4 f:2 name='b'"},
    {"blanks_behind_quote", "name,sku\n\"a\" ,1\n\"b\",\"2\"  \r\n", "1@2 1 name='a'\n2@3 2 name='b'"},
    {"quote_within_bare_value", "name,sku\n5\" belt,1\n", "1@2 1 name='5\" belt'"},
    {"empty_rows_of_separators", "name,sku\na,1\n,\n,\n", "1@2 1 name='a'"},
    {"rows_of_pictures", "name,sku,image\na,1,x\n,1,y\n,1,z\nb,2,\n",
     "1@2 1 name='a'\n4@5 2 name='b'\n3:1 warning no-text"},
    {"nul", "name,sku\na\0b,1\n"sv, "2:2 warning nul-byte\n1@2 1 name='a\\x00b'"},
    {"not_utf8", "name,sku\nG\xFCrtel,1\n", "2:2 warning not-utf8\n1@2 1 name='G\xFCrtel'"},
    {"utf16", "\xFF\xFEn\0a\0"sv, "1:1 error not-utf8"},
    {"line_that_says_the_separator", "sep=;\r\nname;sku\r\na,b;1\r\n", "1@3 1 name='a,b'"},
    {"line_that_says_a_tab", "\xEF\xBB\xBFSEP=\t\nname\tsku;x\na\t1\n",
     "1@3 f:1 name='a' additionalProperty.sku;x='1'"},
    {"line_that_says_a_bar_quoted", "\"sep=|\"\nname|sku\n\na|1\nb|2|3\n", "1@4 1 name='a'\n5:5 error row-too-wide"},
    {"line_that_says_no_separator", "sep=#\nname#sku\na#1\n", "1:5 error no-such-separator"},
    {"column_that_begins_alike", "sep=;name;sku\n1;a;2\n", "1@2 2 additionalProperty.sep=='1' name='a'"},
    {"nothing_but_such_a_line", "sep=;", "2:1 error no-header"},
    // Faults.
    {"empty", "", "1:1 error no-header"},
    {"only_blank_lines", "\n\r\n", "1:1 error no-header"},
    {"header_alone", "name,sku\n", ""},
    {"carriage_returns_alone", "name,sku\ra,1\rb,2\r", "1:9 error lone-carriage-return"},
    {"text_behind_quote", "name,sku\n\"5\" belt,1\nb,2\n", "2:5 error text-behind-quote\n2@3 2 name='b'"},
    {"too_wide", "name,sku\na,b,c,1\nb,2\n", "2:5 error row-too-wide\n2@3 2 name='b'"},
    {"too_short", "name,sku,Lining\na\nb,2,c\n",
     "2:2 warning row-too-short\n1@2 f:1 name='a'\n2@3 2 name='b' additionalProperty.Lining='c'"},
    {"unclosed_at_end", "name,sku\na,1\nb,\"2\nc,3\nd,4\n",
     "1@2 1 name='a'\n3:3 error unclosed-quote\n3@4 3 name='c'\n4@5 4 name='d'"},
    {"stray_quote_met_by_the_next", "name,sku\n\"a,1\nb,\"2\"\nc,3\n",
     "3:4 error text-behind-quote\n2@3 2 name='b'\n3@4 3 name='c'"},
    {"stray_quote_swallows_rows", "name,sku\n\"a,1\nb,2\nc,3\"\nd,4\n",
     "2:1 error unclosed-quote\n2@3 2 name='b'\n3@4 3\" name='c'\n4@5 4 name='d'"},
    {"rows_with_breaks_may_be_short", "name,sku,Lining\n\"a\nb c\"\nd,1,e\n",
     "3:5 warning row-too-short\n1@2 f:1 name='a\\nb c'\n2@4 1 name='d' additionalProperty.Lining='e'"},
    // The second line is too wide by itself, too.
    {"wide_with_breaks_resumes", "name,sku\n\"a\nb,2\",x,y\nc,3\n",
     "3:8 error row-too-wide\n3:6 error row-too-wide\n3@4 3 name='c'"},
};

TEST_P(CsvRows, IsWhatTheRowSays) {
    EXPECT_EQ(read_memory(GetParam().input, InputFormat::csv), GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, CsvRows, testing::ValuesIn(kCsvRows), row_name);

TEST(TsvRows, HaveTabsAndQuotes) {
    EXPECT_EQ(read_memory("name\tsku\na,b\t1\n\"c\td\"\t2\n", InputFormat::tsv),
              "1@2 1 name='a,b'\n2@3 2 name='c\\x09d'");
    EXPECT_EQ(read_memory("sep=;\nname;sku\na;1\n", InputFormat::tsv), "1@3 1 name='a'");
}

TEST(CsvSeparator, IsWhatTheCallerSays) {
    auto reader = ListingReader::from_memory("f", "name|a,b\nx|y\n", {.format = InputFormat::csv, .separator = '|'});
    EXPECT_EQ(read_all(reader), "1@2 f:1 name='x' additionalProperty.a,b='y'");
    auto wrong = ListingReader::from_memory("f", "name\nx\n", {.format = InputFormat::csv, .separator = '"'});
    EXPECT_EQ(read_all(wrong), "0:0 error no-such-separator");
    for (const std::string_view said : {"sep=;\n", "sep=#\n"}) {
        const std::string text = std::string(said) + "name|a;b\nx|y\n";
        auto both = ListingReader::from_memory("f", text, {.format = InputFormat::csv, .separator = '|'});
        EXPECT_EQ(read_all(both), "1@3 f:1 name='x' additionalProperty.a;b='y'") << said;
    }
}

std::string read_table(listing::ByteSource bytes, std::size_t max_record) {
    listing::IssueSink sink("f");
    const ReadOptions options{.format = InputFormat::csv};
    listing::TableSource source(bytes, sink, options, max_record);
    std::string out;
    Listing listing;
    for (;;) {
        std::vector<Issue> issues;
        sink.begin(issues);
        const bool found = source.next(listing);
        for (const Issue& issue : issues) out += dump(issue) + "\n";
        if (!found) return out;
        out += dump(listing) + "\n";
    }
}

// Every row above through a pipe, in blocks of every size, and with records bounded to a few bytes.
TEST(CsvRows, AreTheSameWithEveryBlockSize) {
    for (const Row& row : kCsvRows) {
        for (const std::size_t max_record : {std::size_t{9}, std::size_t{14}, std::size_t{1} << 20}) {
            const std::string want = read_table(listing::ByteSource::from_memory("f", row.input), max_record);
            for (std::size_t block = 1; block <= row.input.size() + 1; ++block) {
                int ends[2];
                ASSERT_EQ(::pipe(ends), 0);
                ASSERT_EQ(::write(ends[1], row.input.data(), row.input.size()), static_cast<ssize_t>(row.input.size()));
                ::close(ends[1]);
                ASSERT_EQ(read_table(listing::ByteSource::from_descriptor(ends[0], true, "f", block), max_record), want)
                    << row.name << ", blocks of " << block << ", records of " << max_record;
            }
        }
    }
}

TEST(CsvRows, StrayQuoteDoesNotSwallowTheRest) {
    std::string text = "name,sku\na,\"1\n";
    for (int i = 0; i < 1000; ++i) text += "b,2\n";
    const std::string read = read_table(listing::ByteSource::from_memory("f", text), 500);
    EXPECT_TRUE(read.starts_with("2:3 error unclosed-quote\n2@3 2 name='b'\n3@4 2 name='b'\n")) << read.substr(0, 200);
    EXPECT_TRUE(read.ends_with("1001@1002 2 name='b'\n"));
}

// Each line is in quotes both for a row that began before and for one that begins there, so every row is too wide in
// the end: without a bound each would be read to there again.
TEST(CsvRows, WorkIsLinear) {
    std::string text = "name,sku";
    for (int i = 0; i < 2000; ++i) text += ",c" + std::to_string(i);
    text += "\n\"\n";
    constexpr int kLines = 100000;
    for (int i = 0; i < kLines; ++i) text += "x\",\"\n";
    auto reader = ListingReader::from_memory("f", text, {.format = InputFormat::csv});
    Listing listing;
    std::vector<Issue> issues;
    // 100,000 lines times 2,000 columns of 5 bytes would be a gigabyte read again; the bound is 128 MiB.
    while (reader.next(listing, issues)) issues.clear();
    EXPECT_FALSE(issues.empty());
}

TEST(CsvRows, NothingIsAllocatedForARowAfterWarmingUp) {
    std::string text = "name,description,Lining,sku,price\n";
    for (std::size_t i = 0; i < 600; ++i) {
        text += "Tote,\"a \"\"b\"\" " + std::string(i % 50 * 40, 'x') + "\",cotton," + (i % 3 == 0 ? "s" : "") + ",1\n";
    }
    auto reader = ListingReader::from_memory("m", text, {.format = InputFormat::csv});
    Listing listing;
    std::vector<Issue> issues;
    for (int i = 0; i < 200; ++i) ASSERT_TRUE(reader.next(listing, issues));
    const std::size_t before = support::allocations().count;
    for (int i = 0; i < 400; ++i) ASSERT_TRUE(reader.next(listing, issues));
    EXPECT_EQ(support::allocations().count - before, 0U);
    EXPECT_TRUE(issues.empty());
}

// Spans, cut from the file and unquoted by hand, are the words.
TEST(CsvPlaces, AreThoseOfTheFile) {
    constexpr std::string_view kText = "\xEF\xBB\xBFname,Lining\n\"a \"\"b\"\" calf\",goat\n";
    auto reader = ListingReader::from_memory("f", kText, {.format = InputFormat::csv});
    Listing listing;
    std::vector<Issue> issues;
    ASSERT_TRUE(reader.next(listing, issues));
    SourcePlaces places;
    const auto span_of = [&](std::size_t field, std::string_view words) {
        const std::size_t at = listing.fields[field].text.find(words);
        const auto region = places.find(listing, field, at, at + words.size());
        if (!region) return std::string("nowhere");
        return std::to_string(region->from.line) + ":" + std::to_string(region->from.column) + " " +
               std::string(kText.substr(region->bytes.start, region->bytes.end - region->bytes.start));
    };
    EXPECT_EQ(span_of(0, "calf"), "2:10 calf");
    EXPECT_EQ(span_of(0, "\"b\""), "2:4 \"\"b\"\"");
    EXPECT_EQ(span_of(1, "goat"), "2:16 goat");
}

}  // namespace
}  // namespace grainside::testing_listing
