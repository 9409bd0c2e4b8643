#include <gtest/gtest.h>

#include <cstdint>
#include <optional>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "document/faults.h"
#include "tree_dump.h"

namespace grainside::document {
namespace {

// What each reader makes of one value; "-" = refused with "wrong-type" at the value.
struct Row {
    std::string_view name, value, integer, number, yes_no, date;
};

constexpr Row kRows[] = {
    {"digit", "7", "7", "7", "-", "-"},
    {"zero", "0", "0", "0", "-", "-"},
    {"negative", "-12", "-12", "-12", "-", "-"},
    {"octal_in_other_readers", "010", "-", "-", "-", "-"},
    {"octal_of_yaml_1_2", "0o10", "-", "-", "-", "-"},
    {"hexadecimal", "0x10", "-", "-", "-", "-"},
    {"exponent", "1e3", "-", "-", "-", "-"},
    {"fraction", "0.5", "-", "0.5", "-", "-"},
    {"negative_fraction", "-1.25", "-", "-1.25", "-", "-"},
    {"no_digit_before_the_point", ".5", "-", "-", "-", "-"},
    {"no_digit_after_the_point", "5.", "-", "-", "-", "-"},
    {"zeros_before_the_point", "00.5", "-", "-", "-", "-"},
    {"two_points", "1.2.3", "-", "-", "-", "-"},
    {"comma", "'1,5'", "-", "-", "-", "-"},
    {"plus", "+1", "-", "-", "-", "-"},
    {"minus_alone", "'-'", "-", "-", "-", "-"},
    {"two_minuses", "--1", "-", "-", "-", "-"},
    {"nan", "nan", "-", "-", "-", "-"},
    {"nan_of_yaml", ".nan", "-", "-", "-", "-"},
    {"inf", "inf", "-", "-", "-", "-"},
    {"inf_of_yaml", "-.inf", "-", "-", "-", "-"},
    {"underscore", "1_000", "-", "-", "-", "-"},
    {"sexagesimal_of_yaml_1_1", "1:30", "-", "-", "-", "-"},
    {"with_unit", "12 mm", "-", "-", "-", "-"},
    {"largest", "9223372036854775807", "9223372036854775807", "9.22337e+18", "-", "-"},
    {"too_large_for_an_integer", "9223372036854775808", "-", "9.22337e+18", "-", "-"},
    {"in_quotes", "\"7\"", "-", "-", "-", "-"},
    {"arabic_digit", "\xD9\xA7", "-", "-", "-", "-"},
    {"yes", "yes", "-", "-", "yes", "-"},
    {"no", "no", "-", "-", "no", "-"},
    {"yes_in_quotes", "'yes'", "-", "-", "-", "-"},
    {"yes_in_capitals", "Yes", "-", "-", "-", "-"},
    {"true_", "true", "-", "-", "-", "-"},
    {"on", "on", "-", "-", "-", "-"},
    {"y", "y", "-", "-", "-", "-"},
    {"null_", "null", "-", "-", "-", "-"},
    {"list", "[1]", "-", "-", "-", "-"},
    {"mapping", "{a: 1}", "-", "-", "-", "-"},
    {"day", "1996-10-03", "-", "-", "-", "1996-10-03"},
    {"day_in_quotes", "'1996-10-03'", "-", "-", "-", "1996-10-03"},
    {"leap_day", "2024-02-29", "-", "-", "-", "2024-02-29"},
    {"leap_day_of_a_fourth_century", "2000-02-29", "-", "-", "-", "2000-02-29"},
    {"no_leap_day", "2023-02-29", "-", "-", "-", "-"},
    {"no_leap_day_in_1900", "1900-02-29", "-", "-", "-", "-"},
    {"day_31_of_30", "2026-09-31", "-", "-", "-", "-"},
    {"day_0", "2026-09-00", "-", "-", "-", "-"},
    {"month_0", "2026-00-10", "-", "-", "-", "-"},
    {"month_13", "2026-13-01", "-", "-", "-", "-"},
    {"year_0", "0000-01-01", "-", "-", "-", "-"},
    {"first_day", "0001-01-01", "-", "-", "-", "0001-01-01"},
    {"last_day", "9999-12-31", "-", "-", "-", "9999-12-31"},
    {"day_without_zeros", "2026-9-1", "-", "-", "-", "-"},
    {"day_with_time", "2026-09-01T00", "-", "-", "-", "-"},
    {"day_with_slashes", "2026/09/01", "-", "-", "-", "-"},
    {"day_the_other_way_round", "01-09-2026", "-", "-", "-", "-"},
};

std::string text_of(std::optional<std::int64_t> value) {
    return value ? std::to_string(*value) : "-";
}
std::string text_of(std::optional<double> value) {
    if (!value) return "-";
    std::ostringstream out;
    out << *value;
    return out.str();
}
std::string text_of(std::optional<bool> value) {
    return !value ? "-" : *value ? "yes" : "no";
}
std::string text_of(std::optional<std::string_view> value) {
    return std::string(value.value_or("-"));
}

class ScalarReaders : public testing::TestWithParam<Row> {
protected:
    template <typename Value>
    void expect(std::optional<Value> (*read)(const Document&, Node, Faults&), std::string_view want) {
        const Document document = parse_good("a: " + std::string(GetParam().value) + "\n");
        Faults faults;
        EXPECT_EQ(text_of(read(document, document.root().find("a"), faults)), want);
        EXPECT_EQ(dump(faults.take()), want == "-" ? "1:4 wrong-type" : "");
    }
};

TEST_P(ScalarReaders, Integer) {
    expect(read_integer, GetParam().integer);
}
TEST_P(ScalarReaders, Number) {
    expect(read_number, GetParam().number);
}
TEST_P(ScalarReaders, YesNo) {
    expect(read_yes_no, GetParam().yes_no);
}
TEST_P(ScalarReaders, Date) {
    expect(read_date, GetParam().date);
}

INSTANTIATE_TEST_SUITE_P(Rows, ScalarReaders, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

struct MessageRow {
    std::string_view name, value, message, hint;
};

const std::string kLongText = "'" + std::string(39, 'a') + "\xC3\xA9 and more'";
const std::string kLongMessage = "expected a whole number, found `" + std::string(39, 'a') + "...`";
const std::string kManyDigits(400, '9');
const std::string kManyMessage = "expected a whole number, found `" + std::string(40, '9') + "...`";

const MessageRow kMessages[] = {
    {"text", "x", "expected a whole number, found `x`", "digits only, as in `12`"},
    {"nothing", "", "expected a whole number, found nothing", ""},
    {"list", "[1]", "expected a whole number, found a list", ""},
    {"mapping", "{b: 1}", "expected a whole number, found a mapping", ""},
    {"quotes", "'1'", "expected a whole number, found `1`", "write it without quotes"},
    {"range", kManyDigits, kManyMessage, "the number is out of range"},
    {"long_text_is_cut_at_a_character", kLongText, kLongMessage, "write it without quotes"},
};

class ReaderMessages : public testing::TestWithParam<MessageRow> {};

TEST_P(ReaderMessages, SayWhatWasFound) {
    const Document document = parse_good("a: " + std::string(GetParam().value) + "\n");
    Faults faults;
    EXPECT_EQ(read_integer(document, document.root().find("a"), faults), std::nullopt);
    const std::vector<Issue> issues = faults.take();
    ASSERT_EQ(issues.size(), 1u);
    EXPECT_EQ(issues[0].message, GetParam().message);
    EXPECT_EQ(issues[0].hint, GetParam().hint);
}

INSTANTIATE_TEST_SUITE_P(Rows, ReaderMessages, testing::ValuesIn(kMessages),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(ReadNumber, OutOfRange) {
    const Document document = parse_good("a: " + kManyDigits + "\n");
    Faults faults;
    EXPECT_EQ(read_number(document, document.root().find("a"), faults), std::nullopt);
    EXPECT_EQ(dump(faults.take()), "1:4 wrong-type");
}

TEST(ReadNumber, MissingValue) {
    const Document document = parse_good("a: 1\n");
    Faults faults;
    EXPECT_EQ(read_number(document, document.root().find("b"), faults), std::nullopt);
    const std::vector<Issue> issues = faults.take();
    ASSERT_EQ(dump(issues), "0:0 wrong-type");
    EXPECT_EQ(issues[0].message, "expected a number, it is missing");
}

TEST(ReadWords, OneOrMany) {
    const Document document = parse_good("one: full grain\nmany: [a, 'b', \"\"]\nnone: []\n");
    Faults faults;
    using Words = std::vector<std::string_view>;
    EXPECT_EQ(read_words(document, document.root().find("one"), faults), Words{"full grain"});
    EXPECT_EQ(read_words(document, document.root().find("many"), faults), (Words{"a", "b", ""}));
    EXPECT_EQ(read_words(document, document.root().find("none"), faults), Words{});
    EXPECT_EQ(dump(faults.take()), "");
}

TEST(ReadWords, ReportsEachMemberThatIsNoText) {
    const Document document = parse_good("a: [x, , [y], {z: 1}, w]\nb: {c: 1}\nd:\n");
    Faults faults;
    using Words = std::vector<std::string_view>;
    EXPECT_EQ(read_words(document, document.root().find("a"), faults), (Words{"x", "w"}));
    EXPECT_EQ(read_words(document, document.root().find("b"), faults), Words{});
    EXPECT_EQ(read_words(document, document.root().find("d"), faults), Words{});
    EXPECT_EQ(dump(faults.take()), "1:8 wrong-type; 1:10 wrong-type; 1:15 wrong-type; 2:4 wrong-type; 3:1 wrong-type");
}

}  // namespace
}  // namespace grainside::document
