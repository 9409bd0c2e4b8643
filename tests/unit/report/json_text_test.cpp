#include "report/json_text.h"

#include <gtest/gtest.h>
#include <simdjson.h>

#include <cstdint>
#include <limits>
#include <random>
#include <string>
#include <string_view>

#include "report/json_writer.h"

namespace grainside::report {
namespace {

std::string json_of(std::string_view text) {
    std::string out;
    append_json_string(out, text);
    return out;
}

// What a parser that is not ours reads back.
std::string parsed(const std::string& json) {
    simdjson::dom::parser parser;
    return std::string(std::string_view(parser.parse(json)));
}

struct Row {
    std::string_view name, text, want;
};

using namespace std::string_view_literals;

constexpr Row kRows[] = {
    {"empty", "", R"("")"},
    {"plain", "full grain", R"("full grain")"},
    {"quote", "8\" bag", R"("8\" bag")"},
    {"backslash", "a\\b", R"("a\\b")"},
    {"blanks", "a\tb\nc\rd", R"("a\tb\nc\rd")"},
    {"nul", "a\0b"sv, R"("a\u0000b")"},
    {"escape", "\x1B[2J", R"("\u001b[2J")"},
    {"last_control", "\x1F ", R"("\u001f ")"},
    {"delete", "a\x7Fz", R"("a\u007fz")"},
    {"c1", "\xC2\x9B", R"("\u009b")"},
    {"no_break_space_is_kept", "a\xC2\xA0z", "\"a\xC2\xA0z\""},
    {"accents", "caf\xC3\xA9 \xE9\x9D\xA9 \xF0\x9F\x91\x9C", "\"caf\xC3\xA9 \xE9\x9D\xA9 \xF0\x9F\x91\x9C\""},
    {"right_to_left_override", "\xE2\x80\xAE", R"("\u202e")"},
    {"isolate", "\xE2\x81\xA6", R"("\u2066")"},
    {"line_separator", "\xE2\x80\xA8", R"("\u2028")"},
    {"byte_order_mark", "\xEF\xBB\xBF", R"("\ufeff")"},
    {"stray_byte", "a\xFFz", "\"a\xEF\xBF\xBDz\""},
    {"cut_off", "ab\xE2\x80", "\"ab\xEF\xBF\xBD\xEF\xBF\xBD\""},
    {"overlong", "\xC0\x8A", "\"\xEF\xBF\xBD\xEF\xBF\xBD\""},
    {"surrogate", "\xED\xA0\x80", "\"\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD\""},
    {"quote_behind_eight", "12345678\"", R"("12345678\"")"},
    {"quote_in_second_eight", "12345678abc\"def", R"("12345678abc\"def")"},
};

class JsonString : public testing::TestWithParam<Row> {};

TEST_P(JsonString, Escapes) {
    EXPECT_EQ(json_of(GetParam().text), GetParam().want);
}

// A character that needs care is found wherever it stands among eight bytes.
TEST_P(JsonString, EscapesAtEveryPlace) {
    const std::string inside(GetParam().want.substr(1, GetParam().want.size() - 2));
    for (std::size_t before = 0; before < 17; ++before) {
        const std::string plain(before, 'x');
        EXPECT_EQ(json_of(plain + std::string(GetParam().text) + plain), '"' + plain + inside + plain + '"');
    }
}

INSTANTIATE_TEST_SUITE_P(Rows, JsonString, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

// RFC 8259 as simdjson reads it, on random bytes: well-formed text comes back unchanged; other text comes back
// well-formed, with U+FFFD in it.
TEST(JsonStringAgainstParser, ReadsBackTheSame) {
    std::mt19937 random(20240611);
    std::uint32_t well_formed = 0;
    for (int round = 0; round < 20000; ++round) {
        std::string text;
        const bool ascii = round % 2 == 0;
        for (std::size_t length = random() % 40; length > 0; --length) {
            text += static_cast<char>(random() % (ascii ? 128 : 256));
        }
        const std::string json = json_of(text);
        ASSERT_TRUE(simdjson::validate_utf8(json)) << testing::PrintToString(text);
        const std::string back = parsed(json);
        if (simdjson::validate_utf8(text)) {
            ++well_formed;
            ASSERT_EQ(back, text);
        } else {
            ASSERT_NE(back.find("\xEF\xBF\xBD"), std::string::npos) << testing::PrintToString(text);
        }
    }
    EXPECT_GT(well_formed, 10000U);
}

TEST(JsonStringAgainstParser, TakesAMegabyte) {
    const std::string word(std::size_t{1} << 20, '\x1B');
    EXPECT_EQ(parsed(json_of(word)), word);
}

struct NumberRow {
    std::string_view name;
    double number;
    std::string_view want;
};

constexpr NumberRow kNumbers[] = {
    {"zero", 0, "0"},           {"whole", 60, "60"},        {"fraction", 0.15, "0.15"},
    {"negative", -2.5, "-2.5"}, {"large", 1e300, "1e+300"},
};

class JsonNumber : public testing::TestWithParam<NumberRow> {};

TEST_P(JsonNumber, IsShortest) {
    std::string out;
    append_json_number(out, GetParam().number);
    EXPECT_EQ(out, GetParam().want);
    simdjson::dom::parser parser;
    EXPECT_EQ(double(parser.parse(out)), GetParam().number);
}

INSTANTIATE_TEST_SUITE_P(Rows, JsonNumber, testing::ValuesIn(kNumbers),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(JsonNumber, TakesTheLargestInteger) {
    std::string out;
    append_json_number(out, std::numeric_limits<std::uint64_t>::max());
    EXPECT_EQ(out, "18446744073709551615");
}

TEST(JsonWriter, SetsCommas) {
    std::string out;
    JsonWriter json(out);
    json.begin_object();
    json.member("id", std::string_view("a\"b"));
    json.optional_member("left_out", "");
    json.optional_member("kept", "x");
    json.key("list");
    json.begin_array();
    json.value(std::uint64_t{1});
    json.value(0.5);
    json.begin_array();
    json.end_array();
    json.begin_object();
    json.end_object();
    json.value_bool(true);
    json.end_array();
    json.key("last");
    json.value_bool(false);
    json.end_object();
    EXPECT_EQ(out, R"({"id":"a\"b","kept":"x","list":[1,0.5,[],{},true],"last":false})");
    simdjson::dom::parser parser;
    EXPECT_EQ(parser.parse(out).error(), simdjson::SUCCESS);
}

}  // namespace
}  // namespace grainside::report
