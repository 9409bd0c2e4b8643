#include "grainside/line_partitions.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "reading.h"
#include "support/temporary_folder.h"

namespace grainside::testing_listing {
namespace {

using namespace std::string_literals;
using namespace std::string_view_literals;

// Of a program by the first of its lines, a text by all of them.
const std::string kControls =
    "\1\2\3\4\5\6\7\0{\"name\":\"a\"}\n{\"name\":\""s + std::string(200, 'b') + "\"}\n{\"name\":\"c\"}\n";

struct Source {
    std::string_view name;
    std::string_view bytes;
};
void PrintTo(const Source& source, std::ostream* out) {
    *out << source.name;
}

// Whatever moves the number of a record or a line: here a part must go on where the one before ended.
const Source kSources[] = {
    {"plain", "{\"name\":\"a\"}\n{\"name\":\"b\"}\n{\"name\":\"c\"}\n"},
    {"no_end_of_line", "{\"name\":\"a\"}\n{\"name\":\"b\"}"},
    {"carriage_returns", "{\"name\":\"a\"}\r\n\r\n{\"name\":\"b\"}\r\n"},
    {"blank_lines", "\n\n{\"name\":\"a\"}\n \t\n\n{\"name\":\"b\"}\n\n"},
    {"only_blank_lines", "\n\n\n"},
    {"broken_lines", "{\"name\":\n{\"name\":\"b\"}\n[1]\n{\"sku\":\"s\"}\n{\"name\":\"c\"}\n"},
    {"graph",
     "{\"@graph\":[{\"name\":\"a\"},{\"@type\":\"Brand\",\"name\":\"x\"},{\"name\":\"b\"}]}\n{\"name\":\"c\"}\n"},
    {"empty_graph", "{\"@graph\":[]}\n{\"name\":\"c\"}\n"},
    {"escaped_graph", "{\"@gr\\u0061ph\":[{\"name\":\"a\"},{\"name\":\"b\"}]}\n{\"name\":\"c\"}\n"},
    {"graph_that_is_text", "{\"name\":\"@graph [1,2]\"}\n{\"name\":\"c\"}\n"},
    {"graph_that_is_no_list", "{\"@graph\":{\"name\":\"a\"},\"name\":\"b\"}\n{\"name\":\"c\"}\n"},
    {"broken_graph", "{\"@graph\":[{\"name\":\"a\"},{\"name\":\"b\"]}\n{\"name\":\"c\"}\n"},
    {"graph_not_utf8", "{\"@graph\":[{\"name\":\"\xFF\"},{\"name\":\"b\"}]}\n{\"name\":\"c\"}\n"},
    {"byte_order_marks",
     "\xEF\xBB\xBF{\"name\":\"a\"}\n\xEF\xBB\xBF{\"name\":\"b\"}\n\xEF\xBB\xBF\n{\"name\":\"c\"}\n"},
    {"mark_of_utf16_inside", "{\"name\":\"a\"}\n\xFF\xFE\n{\"name\":\"b\"}\n"},
    {"utf16", "\xFF\xFE{\0\"\0\n\0}\0\n\0"sv},
    {"packed", "\x1F\x8B\x08\0\0\n\n{\"name\":\"a\"}\n"sv},
    {"mark_of_gzip_inside", "{\"name\":\"a\"}\n\x1F\x8B\x08\n{\"name\":\"b\"}\n"},
    {"mark_of_pdf_inside", "{\"name\":\"a\"}\n%PDF-\n{\"name\":\"b\"}\n"},
    {"picture", "\x89PNG\r\n\x1A\n\0\0\n{\"name\":\"b\"}\n"sv},
    {"controls_in_the_first_line", kControls},
    {"nul_bytes", "{\"name\":\"a\0b\"}\n\0\n{\"name\":\"b\"}\n"sv},
};

class LinePartitions : public testing::TestWithParam<Source> {};

TEST_P(LinePartitions, ReadTogetherLikeTheWhole) {
    const support::TemporaryFolder folder;
    folder.write("f", GetParam().bytes);
    const std::string_view whole = GetParam().bytes;
    const std::string want = read_memory(whole, InputFormat::json_lines);
    for (std::uint64_t bytes = 0; bytes <= whole.size() + 1; ++bytes) {
        const auto parts = plan_line_partitions((folder.path() / "f").string(), bytes);
        ASSERT_TRUE(parts);
        std::string got;
        std::uint64_t end = 0;
        for (const LinePartition& part : parts.value()) {
            ASSERT_EQ(part.start.byte, end);
            ASSERT_GT(part.end, end);
            end = part.end;
            ReadOptions options;
            options.format = InputFormat::json_lines;
            options.start = part.start;
            auto reader =
                ListingReader::from_memory("f", whole.substr(part.start.byte, part.end - part.start.byte), options);
            const std::string text = read_all(reader);
            if (!got.empty() && !text.empty()) got += '\n';
            got += text;
        }
        EXPECT_EQ(end, whole.size());
        EXPECT_EQ(got, want) << "parts of " << bytes << " bytes";
    }
}

INSTANTIATE_TEST_SUITE_P(Sources, LinePartitions, testing::ValuesIn(kSources),
                         [](const auto& one) { return std::string(one.param.name); });

TEST(LinePartitionsOf, AnEmptyFileAreNone) {
    const support::TemporaryFolder folder;
    folder.write("f", "");
    const auto parts = plan_line_partitions((folder.path() / "f").string(), 1);
    ASSERT_TRUE(parts);
    EXPECT_TRUE(parts.value().empty());
}

TEST(LinePartitionsOf, PlacesInTheFileAreThoseOfTheWhole) {
    ReadOptions options;
    options.format = InputFormat::json_lines;
    options.start = {.record = 7, .line = 9, .byte = 1000};
    auto reader = ListingReader::from_memory("f", "{\"name\":\"a\"}\n", options);
    Listing listing;
    std::vector<Issue> issues;
    ASSERT_TRUE(reader.next(listing, issues));
    EXPECT_EQ(listing.id, "f:7");
    EXPECT_EQ(listing.record, 7U);
    EXPECT_EQ(listing.line, 9U);
    EXPECT_EQ(listing.source.start, 1000U);
    EXPECT_EQ(listing.source.line, 9U);
    EXPECT_EQ(listing.fields.at(0).origin.start, 1000U + "{\"name\":\""sv.size());
}

TEST(LinePartitionsOf, WhatCannotBeReadTwiceIsRefused) {
    const support::TemporaryFolder folder;
    const auto code_of = [](const std::string& path) {
        const auto parts = plan_line_partitions(path, 1);
        return parts ? std::string() : parts.issues().at(0).code;
    };
    EXPECT_EQ(code_of("-"), "not-a-file");
    EXPECT_EQ(code_of("/dev/null"), "not-a-file");
    EXPECT_EQ(code_of(folder.path().string()), "is-directory");
    EXPECT_EQ(code_of((folder.path() / "nothing").string()), "cannot-open");
}

}  // namespace
}  // namespace grainside::testing_listing
