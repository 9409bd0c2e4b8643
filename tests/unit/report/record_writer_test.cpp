#include <gtest/gtest.h>
#include <simdjson.h>

#include <limits>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/report.h"
#include "small_book.h"

namespace grainside::report {
namespace {

std::string findings_of(const Listing& listing) {
    Checker checker(small_book(), us_options());
    std::string out;
    RecordWriter(small_book()).write_findings(listing, checker.check(listing), checker, out);
    return out;
}

std::string claims_of(const Listing& listing, const CheckResult& result) {
    std::string out;
    RecordWriter(small_book()).write_claims(listing, result, out);
    return out;
}

void expect_json_lines(const std::string& text, std::size_t lines) {
    std::size_t count = 0;
    simdjson::dom::parser parser;
    for (std::size_t from = 0; from < text.size(); ++count) {
        const std::size_t to = text.find('\n', from);
        ASSERT_NE(to, std::string::npos) << "the last line is not ended";
        EXPECT_EQ(parser.parse(text.substr(from, to - from)).error(), simdjson::SUCCESS)
            << text.substr(from, to - from);
        from = to + 1;
    }
    EXPECT_EQ(count, lines);
}

struct Row {
    std::string_view name, text, want;
};

constexpr Row kFindings[] = {
    {"none", "Wood.", R"({"listing":"l1","claims":0,"findings":0,"worst":null}
)"},
    {"claims_without_findings", "Waterproof.", R"({"listing":"l1","claims":1,"findings":0,"worst":null}
)"},
    {"everything_of_a_rule", "Soft polyurethane.",
     R"({"listing":"l1","field":"description","start":5,"end":17,"words":"polyurethane",)"
     R"("part":"body","kind":"material",)"
     R"("says":"polyurethane","grade":"misleading","basis":"wording","rule":"plastic-named",)"
     R"("because":"Polyurethane is a \"plastic\", says the rule of the tests.","say_instead":"body of plastic sheet",)"
     R"("sources":["seen-law","unseen-standard"],"markets":["us","eu"],"from_memory":true}
{"listing":"l1","claims":1,"findings":1,"worst":"misleading"}
)"},
    {"only_what_must_be", "Cotton.",
     R"({"listing":"l1","field":"description","start":0,"end":6,"words":"Cotton","part":"body","kind":"material",)"
     R"("says":"cotton","grade":"vague","basis":"wording","rule":"cotton-named","because":"Cotton tells little.",)"
     R"("sources":["seen-law"],"markets":[]}
{"listing":"l1","claims":1,"findings":1,"worst":"vague"}
)"},
    {"cross_check", "Silk. Linen.",
     R"({"listing":"l1","field":"description","start":0,"end":4,"words":"Silk","part":"body","kind":"material",)"
     R"("says":"silk","grade":"misleading","basis":"cross-check","rule":"silk-beside-linen",)"
     R"("because":"Silk here, linen there.","sources":["seen-law","seen-law-twin"],"markets":[],)"
     R"("against":{"field":"description","start":6,"end":11,"words":"Linen","says":"linen"}}
{"listing":"l1","claims":2,"findings":1,"worst":"misleading"}
)"},
    {"worst_of_several", "Cotton. Then polyurethane.",
     R"({"listing":"l1","field":"description","start":0,"end":6,"words":"Cotton","part":"body","kind":"material",)"
     R"("says":"cotton","grade":"vague","basis":"wording","rule":"cotton-named","because":"Cotton tells little.",)"
     R"("sources":["seen-law"],"markets":[]}
{"listing":"l1","field":"description","start":13,"end":25,"words":"polyurethane","part":"body","kind":"material",)"
     R"("says":"polyurethane","grade":"misleading","basis":"wording","rule":"plastic-named",)"
     R"("because":"Polyurethane is a \"plastic\", says the rule of the tests.","say_instead":"body of plastic sheet",)"
     R"("sources":["seen-law","unseen-standard"],"markets":["us","eu"],"from_memory":true}
{"listing":"l1","claims":2,"findings":2,"worst":"misleading"}
)"},
};

class FindingRecords : public testing::TestWithParam<Row> {};

TEST_P(FindingRecords, AreAsDescribed) {
    EXPECT_EQ(findings_of(listing_of({{"description", GetParam().text}})), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, FindingRecords, testing::ValuesIn(kFindings),
                         [](const auto& row) { return std::string(row.param.name); });

struct ClaimRow {
    std::string_view name;
    Claim claim;
    std::string_view want;  // behind "says"
};

Claim claim_with(void (*change)(Claim&)) {
    Claim claim;
    claim.end = 4;
    claim.says = small_book().find_concept("polyurethane");
    change(claim);
    return claim;
}

std::vector<ClaimRow> claim_rows() {
    return {
        {"plain", claim_with([](Claim&) {}), R"("negated":false,"hedged":false})"},
        {"denied", claim_with([](Claim& claim) { claim.negated = true; }), R"("negated":true,"hedged":false})"},
        {"hedged", claim_with([](Claim& claim) { claim.hedged = true; }), R"("negated":false,"hedged":true})"},
        {"called", claim_with([](Claim& claim) { claim.called = small_book().find_concept("leather"); }),
         R"("negated":false,"hedged":false,"called":"leather"})"},
        {"place", claim_with([](Claim& claim) { claim.place = small_book().find_concept("place"); }),
         R"("negated":false,"hedged":false,"place":"place"})"},
        {"share", claim_with([](Claim& claim) {
             claim.quantity = Quantity{60, 60, Unit::percent};
         }),
         R"("negated":false,"hedged":false,"quantity":{"low":60,"high":60,"unit":"percent"}})"},
        {"range", claim_with([](Claim& claim) {
             claim.quantity = Quantity{1.2, 1.4, Unit::millimetre};
         }),
         R"("negated":false,"hedged":false,"quantity":{"low":1.2,"high":1.4,"unit":"millimetre"}})"},
        {"no_number", claim_with([](Claim& claim) {
             claim.quantity = Quantity{1, std::numeric_limits<double>::infinity(), Unit::percent};
         }),
         R"("negated":false,"hedged":false})"},
        {"look_alike", claim_with([](Claim& claim) { claim.look_alike = true; }),
         R"("negated":false,"hedged":false,"look_alike":true})"},
    };
}

TEST(ClaimRecords, AreAsDescribed) {
    for (const ClaimRow& row : claim_rows()) {
        CheckResult result;
        result.mentions = {row.claim};
        EXPECT_EQ(claims_of(listing_of({{"name", "Some words"}}), result),
                  R"({"listing":"l1","field":"name","start":0,"end":4,"words":"Some","part":"whole","kind":"material",)"
                  R"("says":"polyurethane",)" +
                      std::string(row.want) + "\n")
            << row.name;
    }
}

TEST(ClaimRecords, LeaveMentionsOut) {
    CheckResult result;
    result.mentions = {claim_with([](Claim& claim) { claim.kind = Kind::quality; }),
                       claim_with([](Claim& claim) { claim.kind = Kind::craft; })};
    EXPECT_EQ(claims_of(listing_of({{"name", "Some words"}}), result), "");
}

TEST(FindingRecords, CountLookAlikes) {
    CheckResult result;
    result.mentions = {claim_with([](Claim& claim) { claim.look_alike = true; }),
                       claim_with([](Claim& claim) { claim.kind = Kind::quality, claim.look_alike = true; })};
    result.claim_count = 1;
    std::string out;
    const Checker checker(small_book());
    RecordWriter(small_book()).write_findings(listing_of({{"name", "Some words"}}), result, checker, out);
    EXPECT_EQ(out, R"({"listing":"l1","claims":1,"findings":0,"worst":null,"look_alikes":1}
)");
}

// Whatever a listing holds: every line parses, and nothing that a terminal obeys comes out.
TEST(HostileRecords, Parse) {
    const std::string big(std::size_t{1} << 20, 'x');
    const std::string nul("a\0b polyurethane", 16);
    const std::vector<std::string> texts = {"\x1B[2J\x1B]0;title\x07 polyurethane \xE2\x80\xAE", nul,
                                            "\xFF\xFE polyurethane \xC3", "\"}\n{\"listing\":\"forged\"} polyurethane",
                                            big + " polyurethane"};
    for (const std::string& text : texts) {
        const std::string out = findings_of(listing_of({{"additionalProperty." + text, text}}, text));
        expect_json_lines(out, 2);
        EXPECT_EQ(out.find('\x1B'), std::string::npos);
        EXPECT_EQ(out.find('\0'), std::string::npos);
        EXPECT_TRUE(simdjson::validate_utf8(out));
    }
}

TEST(HostileRecords, GiveWordsOfAMegabyte) {
    const std::string text = std::string(std::size_t{1} << 20, '\x1B') + "\xFF";
    CheckResult result;
    Claim claim;
    claim.end = static_cast<std::uint32_t>(text.size());
    claim.says = small_book().find_concept("cotton");
    result.mentions = {claim};
    Finding finding;
    finding.rule = rule_index("cotton-named");
    finding.end = claim.end;
    result.findings = {finding};
    std::string out;
    const Checker checker(small_book());
    RecordWriter(small_book()).write_findings(listing_of({{"name", text}}), result, checker, out);
    expect_json_lines(out, 2);
    EXPECT_NE(out.find("\\u001b\xEF\xBF\xBD\""), std::string::npos);
}

TEST(RecordWriterMove, KeepsItsBook) {
    RecordWriter first(small_book());
    const RecordWriter second(std::move(first));
    const Listing listing = listing_of({{"name", "Cotton."}});
    Checker checker(small_book());
    std::string out;
    second.write_findings(listing, checker.check(listing), checker, out);
    expect_json_lines(out, 2);
}

}  // namespace
}  // namespace grainside::report
