// Words of a field found again in the bytes of their source.
#include "grainside/source_place.h"

#include <gtest/gtest.h>
#include <simdjson.h>

#include <cstddef>
#include <filesystem>
#include <iterator>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "reading.h"

namespace grainside::testing_listing {
namespace {

struct PlaceRow {
    std::string_view name;
    InputFormat format;
    std::string_view input;
    std::string_view words;
    std::string_view want;  // "LINE:COLUMN-LINE:COLUMN START 'BYTES'", "" = no place
};
void PrintTo(const PlaceRow& row, std::ostream* out) {
    *out << row.name;
}

std::string place_of(std::string_view input, InputFormat format, std::string_view words) {
    ListingReader reader = ListingReader::from_memory("f", input, {format});
    SourcePlaces places;
    Listing listing;
    std::vector<Issue> issues;
    while (reader.next(listing, issues)) {
        for (std::size_t i = 0; i < listing.fields.size(); ++i) {
            const std::size_t at = listing.fields[i].text.find(words);
            if (at == std::string_view::npos) continue;
            const auto region = places.find(listing, i, at, at + words.size());
            if (!region) return {};
            const auto size = static_cast<std::size_t>(region->bytes.end - region->bytes.start);
            return std::to_string(region->from.line) + ":" + std::to_string(region->from.column) + "-" +
                   std::to_string(region->to.line) + ":" + std::to_string(region->to.column) + " " +
                   std::to_string(region->bytes.start) + " '" +
                   std::string(input.substr(static_cast<std::size_t>(region->bytes.start), size)) + "'";
        }
    }
    return "not found";
}

class SourcePlaceTest : public testing::TestWithParam<PlaceRow> {};

// Counted by hand. Escapes: RFC 8259, section 7; columns: SARIF 2.1.0, section 3.14.17, "unicodeCodePoints".
constexpr PlaceRow kRows[] = {
    {"text", InputFormat::text, "A\nred calf bag", "calf", "2:5-2:9 6 'calf'"},
    {"text_behind_mark", InputFormat::text, "\xEF\xBB\xBFred calf", "red", "1:1-1:4 3 'red'"},
    {"text_crlf", InputFormat::text, "A\r\ncalf\r\n", "calf", "2:1-2:5 3 'calf'"},
    {"text_over_lines", InputFormat::text, "full\ngrain", "full\ngrain", "1:1-2:6 0 'full\ngrain'"},
    {"text_counts_code_points", InputFormat::text, "na\xC3\xAFve \xF0\x9F\x91\x9C calf", "calf", "1:9-1:13 12 'calf'"},
    {"text_combining_mark_counts", InputFormat::text, "e\xCC\x81 calf", "calf", "1:4-1:8 4 'calf'"},
    {"text_invalid_bytes", InputFormat::text, "\xFF\xFE calf", "calf", "not found"},
    {"markdown_heading", InputFormat::markdown, "Draft\n\n# Calf tote #\n\nNappa.\n", "Calf tote",
     "3:3-3:12 9 'Calf tote'"},
    {"markdown_behind_heading", InputFormat::markdown, "Draft\n\n# Calf tote #\n\nNappa.\n", "Nappa",
     "5:1-5:6 22 'Nappa'"},
    {"markdown_before_heading", InputFormat::markdown,
     "\xEF\xBB\xBF"
     "Draft\n\n# Calf tote #\n",
     "Draft", "1:1-1:6 3 'Draft'"},
    {"json", InputFormat::json, "{\n  \"name\": \"Calf tote\"\n}", "tote", "2:17-2:21 18 'tote'"},
    {"json_escape_before", InputFormat::json, R"({"name":"a\n\u00e9\t\"calf"})", "calf", "1:23-1:27 22 'calf'"},
    {"json_escape_inside", InputFormat::json, R"({"name":"a c\u0061lf b"})", "calf", "1:12-1:21 11 'c\\u0061lf'"},
    {"json_escape_at_both_ends", InputFormat::json, R"({"name":"a \u0063al\u0066 b"})", "calf",
     "1:12-1:26 11 '\\u0063al\\u0066'"},
    {"json_surrogates", InputFormat::json, R"({"name":"\ud83d\udc5c calf"})", "calf", "1:23-1:27 22 'calf'"},
    {"json_surrogates_themselves", InputFormat::json, R"({"name":"a \ud83d\uDC5C calf"})", "\xF0\x9F\x91\x9C",
     "1:12-1:24 11 '\\ud83d\\uDC5C'"},
    {"json_three_bytes", InputFormat::json, R"({"name":"\u20ac\/\b\f\r calf"})", "calf", "1:25-1:29 24 'calf'"},
    {"json_in_list", InputFormat::json, R"({"material":["wool", "calf"]})", "calf", "1:23-1:27 22 'calf'"},
    {"json_in_object", InputFormat::json, R"({"material":{"@value":"x","name":"calf"}})", "calf",
     "1:35-1:39 34 'calf'"},
    {"json_property", InputFormat::json, R"({"additionalProperty":{"value":"calf","name":"Lining"}})", "calf",
     "1:33-1:37 32 'calf'"},
    {"json_true", InputFormat::json, R"({"additionalProperty":{"name":"Real hide","value":true}})", "true",
     "1:51-1:55 50 'true'"},
    {"json_number_with_unit", InputFormat::json,
     R"({"additionalProperty":{"name":"Thickness","value":1.4,"unitText":"mm"}})", "mm", "1:51-1:54 50 '1.4'"},
    {"json_array", InputFormat::json, "[\n{\"name\":\"a\"},\n\n  {\"name\":\"calf\"}]", "calf", "4:12-4:16 28 'calf'"},
    {"json_array_behind_mark", InputFormat::json, "\xEF\xBB\xBF [{\"name\":\"calf\"}]", "calf", "1:12-1:16 14 'calf'"},
    {"json_graph", InputFormat::json, "\n{\"@graph\":\n [{\"name\":\"calf\"}]}", "calf", "3:12-3:16 23 'calf'"},
    {"json_graph_in_copy", InputFormat::json,
     "[{\"name\":\"\xC3\xA9\"}, {\"x\":\"\xFF\",\"@graph\":[{\"name\":\"calf\"}]}]", "calf", "1:44-1:48 44 'calf'"},
    {"lines", InputFormat::json_lines, "{\"name\":\"a\"}\n\n{\"name\":\"calf\"}\n", "calf", "3:10-3:14 23 'calf'"},
    {"lines_crlf", InputFormat::json_lines, "{\"name\":\"a\"}\r\n{\"name\":\"calf\"}\r\n", "calf",
     "2:10-2:14 23 'calf'"},
    {"lines_mark_in_the_middle", InputFormat::json_lines,
     "\xEF\xBB\xBF{\"name\":\"a\"}\n\xEF\xBB\xBF{\"name\":\"calf\"}\n", "calf", "2:10-2:14 28 'calf'"},
    {"lines_behind_broken", InputFormat::json_lines, "{\"name\n{\"name\":\"calf\"}", "calf", "2:10-2:14 16 'calf'"},
    {"lines_graph", InputFormat::json_lines, "{}\n{\"@graph\":[{\"name\":\"a\"},{\"name\":\"calf\"}]}\n", "calf",
     "2:34-2:38 36 'calf'"},
    {"lines_graph_in_copy", InputFormat::json_lines, "{}\n {\"\xFF\":1,\"@graph\":[{\"name\":\"calf\"}]}\n", "calf",
     "2:28-2:32 30 'calf'"},
};

TEST_P(SourcePlaceTest, IsWhatTheRowSays) {
    const PlaceRow& row = GetParam();
    EXPECT_EQ(place_of(row.input, row.format, row.words), row.want);
}

INSTANTIATE_TEST_SUITE_P(Rows, SourcePlaceTest, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(SourcePlace, IsNowhereForFieldsOfAProgram) {
    Listing listing;
    listing.fields = {{"name", "calf"}};
    SourcePlaces places;
    EXPECT_FALSE(places.span(listing, 0, 0, 4));
    EXPECT_FALSE(places.find(listing, 0, 0, 4));
}

// Spans of a file's fields in random order, decoded by a reader that is not the library's, must be the texts again; and
// lines and columns must be what counting from the file's beginning gives.
void expect_decodes(const std::string& file, InputFormat format, std::size_t every) {
    std::mt19937 random(7);
    ListingReader reader = ListingReader::from_memory("f", file, {format});
    SourcePlaces places;
    simdjson::dom::parser parser;
    Listing listing;
    std::vector<Issue> issues;
    std::size_t spans = 0;
    SourcePosition counted;
    std::size_t counted_to = 0;
    while (reader.next(listing, issues)) {
        for (std::size_t i = 0; i < listing.fields.size(); ++i) {
            const std::string_view text = listing.fields[i].text;
            const auto border = [&] {
                std::size_t at = random() % (text.size() + 1);
                while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U) ++at;
                return at;
            };
            for (std::size_t n = 0; n <= text.size() / every; ++n) {
                const std::size_t a = n == 0 ? 0 : border();
                const std::size_t b = n == 0 ? text.size() : border();
                const auto region = places.find(listing, i, std::min(a, b), std::max(a, b));
                ASSERT_TRUE(region);
                const auto start = static_cast<std::size_t>(region->bytes.start);
                const std::string written = file.substr(start, static_cast<std::size_t>(region->bytes.end) - start);
                std::string_view decoded = written;
                const std::string document = "[\"" + written + "\"]";
                if (listing.fields[i].origin.writing == Writing::json_string) {
                    ASSERT_EQ(parser.parse(document).at(0).get(decoded), simdjson::SUCCESS) << written;
                }
                ASSERT_EQ(decoded, text.substr(std::min(a, b), std::max(a, b) - std::min(a, b)));
                ++spans;
                if (n != 0) continue;
                for (; counted_to < start; ++counted_to) {
                    if (file[counted_to] == '\n') {
                        counted = {counted.line + 1, 1};
                    } else if ((static_cast<unsigned char>(file[counted_to]) & 0xC0U) != 0x80U) {
                        ++counted.column;
                    }
                }
                ASSERT_EQ(region->from.line, counted.line);
                ASSERT_EQ(region->from.column, counted.column);
            }
        }
    }
    EXPECT_TRUE(issues.empty());
    EXPECT_GT(spans, 0U);
}

// The listings of a labelled file, a line each, as they are written there.
std::string listings_of(const std::filesystem::path& path) {
    auto records = simdjson::padded_string::load(path.string());
    simdjson::ondemand::parser parser;
    simdjson::ondemand::document_stream stream;
    EXPECT_EQ(parser.iterate_many(records.value()).get(stream), simdjson::SUCCESS);
    std::string lines;
    for (auto record : stream) lines += std::string(record["listing"].get_object().value().raw_json().value()) + "\n";
    return lines;
}

TEST(SourcePlace, DecodesToTheTextInTheCorpus) {
    std::size_t files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(GRAINSIDE_CORPUS)) {
        if (entry.path().extension() != ".jsonl") continue;
        SCOPED_TRACE(entry.path().filename());
        expect_decodes(listings_of(entry.path()), InputFormat::json_lines, 5);
        ++files;
    }
    EXPECT_GE(files, 10U);
}

// Long fields and files, so that the remembered steps are used.
TEST(SourcePlace, DecodesToTheTextInLongFields) {
    std::mt19937 random(1);
    constexpr std::string_view kPieces[] = {"calf ", "\\n",     "\\u00e9", "\\ud83d\\udc5c", "\xC3\xA9", "\\\"",
                                            "\\\\",  "\\u20ac", "a"};
    std::string array = "[";
    std::string lines;
    for (int record = 0; record < 5; ++record) {
        std::string object = "{\"name\":\"n\",\"description\":\"";
        for (int i = 0; i < 9000; ++i) object += kPieces[random() % std::size(kPieces)];
        object += "\",\"material\":\"\\u0063alf\"}";
        array += (record == 0 ? "" : record % 2 == 0 ? "," : ",\n") + object;
        lines += object + "\n";
    }
    expect_decodes(array + "]", InputFormat::json, 20);
    expect_decodes(lines, InputFormat::json_lines, 20);
}

}  // namespace
}  // namespace grainside::testing_listing
