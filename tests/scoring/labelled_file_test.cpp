#include "labelled_file.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace grainside::scoring {
namespace {

// A record whose listing is fixed and whose labels are `members`.
std::string record(std::string_view members) {
    return fmt::format(R"({{"id": "t-1", {}"listing": {{"@type": "Product", "name": "Calf belt, calf lined",)"
                       R"( "description": "A caf\u00e9-brown belt.", "additionalProperty": [)"
                       R"({{"@type": "PropertyValue", "name": "Reverse", "value": "calf"}},)"
                       R"({{"@type": "PropertyValue", "name": "Reverse", "value": "calf and suede"}}]}}}})",
                       members);
}

struct PlaceRow {
    std::string_view name, label, want;  // want: "field:start-end", or the fault
};

std::string place_of(std::string_view label) {
    const auto read = read_labelled_bytes("f.jsonl", record(fmt::format(R"("traps": [{{{}}}], )", label)));
    if (!read) {
        std::string faults;
        for (const Issue& issue : read.issues()) faults += issue.message;
        return faults;
    }
    const Span span = read.value().at(0).traps.value().at(0).span;
    return fmt::format("{}:{}-{}", span.field, span.start, span.end);
}

class LabelPlaceTest : public testing::TestWithParam<PlaceRow> {};

TEST_P(LabelPlaceTest, IsFoundOrTold) {
    EXPECT_EQ(place_of(GetParam().label), GetParam().want);
}

constexpr PlaceRow kPlaces[] = {
    {"first", R"("field": "name", "words": "Calf belt")", "0:0-9"},
    {"as_written", R"("field": "name", "words": "calf")", "0:11-15"},
    {"bytes_not_letters", R"("field": "description", "words": "brown")", "1:8-13"},
    {"decoded", R"("field": "description", "words": "caf\u00e9")", "1:2-7"},
    {"attribute", R"("field": "additionalProperty.Reverse", "words": "calf")", "2:0-4"},
    {"second_attribute_of_a_name", R"("field": "additionalProperty.Reverse", "words": "calf", "nth": 2)", "3:0-4"},
    {"nth_within_a_field", R"("field": "name", "words": "l", "nth": 3)", "0:13-14"},
    {"too_few", R"("field": "name", "words": "calf", "nth": 2)",
     "t-1: \"calf\" (occurrence 2) does not stand in name, which holds 1"},
    {"other_case", R"("field": "name", "words": "CALF")",
     "t-1: \"CALF\" (occurrence 1) does not stand in name, which holds 0"},
    {"no_such_field", R"("field": "material", "words": "calf")",
     "t-1: the listing has no field 'material' for \"calf\""},
    {"no_words", R"("field": "name")", "t-1: a label has no words"},
    {"nth_from_one", R"("field": "name", "words": "calf", "nth": 0)", "t-1: 'nth' of \"calf\" is no number from 1"},
};

INSTANTIATE_TEST_SUITE_P(Rows, LabelPlaceTest, testing::ValuesIn(kPlaces),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(LabelledFileTest, ReadsEveryMember) {
    const auto read = read_labelled_bytes(
        "f.jsonl",
        record(R"("honest": true,)"
               R"( "claims": [{"field": "name", "words": "Calf", "part": "strap", "kind": "species",)"
               R"( "says": "calf-leather", "negated": true}],)"
               R"( "findings": [{"field": "name", "words": "belt", "grade": "vague", "markets": ["us", "fr"]}], )"));
    ASSERT_TRUE(read) << to_text(read.issues().front());
    const LabelledListing& listing = read.value().at(0);
    EXPECT_EQ(listing.id, "t-1");
    EXPECT_EQ(listing.line, 1U);
    EXPECT_TRUE(listing.honest);
    const LabelledClaim& claim = listing.claims.value().at(0);
    EXPECT_EQ(claim.part, Part::strap);
    EXPECT_EQ(claim.kind, Kind::species);
    EXPECT_TRUE(claim.negated);
    EXPECT_EQ(claim.says, "calf-leather");
    EXPECT_EQ(listing.words(claim.span), "Calf");
    const LabelledFinding& finding = listing.findings.value().at(0);
    EXPECT_EQ(finding.grade, Grade::vague);
    EXPECT_EQ(finding.markets, (std::vector<std::string>{"us", "fr"}));
    EXPECT_FALSE(listing.traps.has_value()) << "a list that is not there is not an empty one";
    EXPECT_EQ(listing.listing().fields.size(), 4U);
}

struct FaultRow {
    std::string_view name, bytes, want;  // "line code message" of each fault
};

class LabelledFaultTest : public testing::TestWithParam<FaultRow> {};

TEST_P(LabelledFaultTest, IsTold) {
    const auto read = read_labelled_bytes("f.jsonl", GetParam().bytes);
    std::string faults;
    for (const Issue& issue : read.issues())
        faults += fmt::format("{} {}: {}\n", issue.line, issue.code, issue.message);
    EXPECT_EQ(faults, GetParam().want);
}

constexpr FaultRow kFaults[] = {
    {"none", R"({"id": "x", "listing": {"name": "Belt"}})", ""},
    {"blank_lines_count", "\n  \r\n[]\n", "3 json-syntax: a record is an object\n"},
    {"no_listing", R"({"id": "x"})", "1 label: the record has no object 'listing'\n"},
    {"unknown_names",
     R"({"id": "x", "listing": {"name": "Belt"}, "claims": [)"
     R"({"field": "name", "words": "Belt", "part": "sleeve", "kind": "colour"}],)"
     R"( "findings": [{"field": "name", "words": "Belt", "grade": "bad"}]})",
     "1 label: \"Belt\": 'sleeve' is no part\n"
     "1 label: \"Belt\": 'colour' is no kind\n"
     "1 label: \"Belt\": 'bad' is no grade\n"},
    {"not_a_list", R"({"id": "x", "listing": {"name": "Belt"}, "traps": {}})", "1 label: 'traps' is not a list\n"},
    {"every_line_is_told", "{\"id\": \"x\"}\n{\"id\": \"y\"}\n",
     "1 label: the record has no object 'listing'\n2 label: the record has no object 'listing'\n"},
};

INSTANTIATE_TEST_SUITE_P(Rows, LabelledFaultTest, testing::ValuesIn(kFaults),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(LabelledFileTest, TellsOfAFileThatIsNotThere) {
    const auto read = read_labelled_file("no/such/file.jsonl");
    ASSERT_FALSE(read);
    EXPECT_EQ(read.issues().front().code, "cannot-open");
}

}  // namespace
}  // namespace grainside::scoring
