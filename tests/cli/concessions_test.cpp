// check and judge with --concessions: what is conceded, what counts again, what is stale, and the exit status.
#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "cli_test.h"
#include "schema_validation.h"
#include "small_dossiers.h"

namespace grainside::tests {
namespace {

// Two misleading findings: vegan-called-leather on 'Vegan leather', solid-on-plating on 'solid gold-plated'.
const char* const kFeed =
    "{\"sku\": \"b-7\", \"name\": \"Vegan leather bag\", \"description\": \"With a solid gold-plated buckle.\"}\n"
    "{\"sku\": \"b-8\", \"name\": \"Vegan leather purse\"}\n";

std::string entry(std::string_view rule, std::string_view narrowed, std::string_view until) {
    return "- {rule: " + std::string(rule) + ", " + std::string(narrowed) +
           ", reason: old labels, owner: packaging, until: " + std::string(until) + "}\n";
}

class Concession : public CliTest {
protected:
    void SetUp() override {
        CliTest::SetUp();
        write_file("feed.jsonl", kFeed);
    }
    ProcessResult check(const std::string& concessions, std::vector<std::string> more = {}) const {
        write_file("agreed.yaml", concessions);
        std::vector<std::string> arguments = {"check", "--format", "jsonl", "--concessions", "agreed.yaml"};
        arguments.insert(arguments.end(), more.begin(), more.end());
        if (std::find(more.begin(), more.end(), "--concessions-on") == more.end()) {
            arguments.insert(arguments.end(), {"--concessions-on", "2026-11-26"});
        }
        arguments.emplace_back("feed.jsonl");
        return run(std::move(arguments));
    }
};

const std::string kVegan = entry("vegan-called-leather", "words: vegan-leather", "2026-11-26");
const std::string kPlating = entry("solid-on-plating", "listing: b-7, field: description", "2027-01-31");

struct ConcededRow {
    std::string_view name;
    std::string concessions;
    std::vector<std::string> more;
    int status;
    std::size_t conceded;
    std::string_view codes;  // of what standard error says, in order
};

TEST_F(Concession, DecidesTheExitStatus) {
    const std::string expired = entry("vegan-called-leather", "words: Vegan Leather", "2026-11-25");
    const std::string unused = entry("vegan-called-leather", "words: plant leather", "2027-01-01");
    const std::string old_unused = entry("vegan-called-leather", "listing: b-9", "2026-01-01");
    const std::string one_listing = entry("vegan-called-leather", "listing: b-8", "2027-01-01");
    const std::string old_purse = entry("vegan-called-leather", "listing: b-8", "2026-01-01");
    const std::string limit = entry("coat-of-leather-eu", "listing: b-7", "2027-01-01");
    const ConcededRow rows[] = {
        {"none", "", {}, 1, 0, ""},
        {"some", kVegan, {}, 1, 2, ""},
        {"all", kVegan + kPlating, {}, 0, 3, ""},
        {"on_its_last_day", kVegan + kPlating, {"--concessions-on", "2026-11-26"}, 0, 3, ""},
        {"a_day_later", kVegan + kPlating, {"--concessions-on", "2026-11-27"}, 1, 1, "concession-ran-out"},
        {"expired", expired + kPlating, {}, 1, 1, "concession-ran-out"},
        {"expired_below_the_grade", expired + kPlating, {"--fail-at", "contradicted"}, 0, 1, "concession-ran-out"},
        {"expired_may_not_be",
         expired + kPlating,
         {"--fail-at", "contradicted", "--no-stale-concessions"},
         1,
         1,
         "concession-ran-out"},
        {"unused", kVegan + kPlating + unused, {}, 0, 3, "concession-unused"},
        {"unused_may_not_be", kVegan + kPlating + unused, {"--no-stale-concessions"}, 1, 3, "concession-unused"},
        {"none_stale", kVegan + kPlating, {"--no-stale-concessions"}, 0, 3, ""},
        {"expired_and_unused", kVegan + kPlating + old_unused, {}, 0, 3, "concession-unused"},
        // Two meet one finding: neither is unused; where one ran out, the other still holds.
        {"narrower_first", kVegan + kPlating + one_listing, {}, 0, 3, ""},
        {"another_still_holds", kVegan + kPlating + old_purse, {}, 0, 3, "concession-ran-out"},
        {"one_listing", one_listing, {}, 1, 1, ""},
        // Only `judge` could meet it.
        {"of_a_limit", kVegan + kPlating + limit, {"--no-stale-concessions"}, 0, 3, ""},
        {"quiet", kVegan + kPlating, {"--quiet"}, 0, 0, ""},
        {"unreadable_too", kVegan + kPlating, {"missing.jsonl"}, 2, 3, ""},
    };
    for (const ConcededRow& row : rows) {
        const ProcessResult result = check(row.concessions, row.more);
        EXPECT_EQ(result.status, row.status) << row.name << '\n' << result.out << result.err;
        EXPECT_EQ(count_of(result.out, ",\"concession\":{"), row.conceded) << row.name << '\n' << result.out;
        EXPECT_EQ(count_of(result.err, "[concession-"), row.codes.empty() ? 0U : 1U) << row.name << result.err;
        EXPECT_NE(result.err.find(row.codes), std::string::npos) << row.name;
        if (row.name == "quiet") continue;
        EXPECT_EQ(validate_records({"finding", "closing"}, result.out, folder()).status, 0) << row.name;
    }
}

TEST_F(Concession, IsToldInRecords) {
    const ProcessResult result = check(kVegan + entry("solid-on-plating", "listing: b-7", "2026-11-01"));
    EXPECT_NE(result.out.find(",\"markets\":[],\"concession\":{\"reason\":\"old labels\",\"owner\":\"packaging\","
                              "\"until\":\"2026-11-26\"}}\n"),
              std::string::npos)
        << result.out;
    EXPECT_NE(result.out.find(",\"expired_concession\":{\"reason\":\"old labels\",\"owner\":\"packaging\","
                              "\"until\":\"2026-11-01\"}}\n"),
              std::string::npos);
    EXPECT_NE(result.out.find(R"({"listing":"b-7","claims":2,"findings":1,"conceded":1,"worst":"misleading"})"),
              std::string::npos)
        << result.out;
    EXPECT_NE(result.out.find(R"("listing":"b-8","claims":1,"findings":0,"conceded":1,"worst":null})"),
              std::string::npos);
}

TEST_F(Concession, IsToldToPeople) {
    write_file("agreed.yaml", kVegan + entry("solid-on-plating", "listing: b-7", "2026-11-01"));
    const ProcessResult result =
        run({"check", "--concessions", "agreed.yaml", "--concessions-on", "2026-11-26", "feed.jsonl"});
    EXPECT_NE(result.out.find("      conceded     until 2026-11-26 by packaging: old labels\n"), std::string::npos)
        << result.out;
    EXPECT_NE(result.out.find("      ran out      the concession of packaging held until 2026-11-01: old labels\n"),
              std::string::npos);
    EXPECT_NE(result.out.find("1 finding: 1 misleading; 1 conceded; 2 claims\n"), std::string::npos);
    EXPECT_NE(result.out.find("no findings; 1 conceded; 1 claim\n"), std::string::npos);
    EXPECT_NE(result.out.find("2 listings, 1 with findings: 1 misleading; 2 conceded; 3 claims\n"), std::string::npos);
    EXPECT_EQ(result.err,
              "grainside: agreed.yaml:2: warning: the concession for `solid-on-plating` (listing 'b-7') ran out on "
              "2026-11-01; 1 finding counts again [concession-ran-out]\n"
              "  hint: mend the listing, or agree on another last day\n");
}

TEST_F(Concession, IsASuppressionInALog) {
    write_file("agreed.yaml", kVegan + entry("solid-on-plating", "listing: b-7", "2026-11-01"));
    const ProcessResult result = run(
        {"check", "--format", "sarif", "--concessions", "agreed.yaml", "--concessions-on", "2026-11-26", "feed.jsonl"});
    EXPECT_EQ(count_of(result.out,
                       "\"suppressions\":[{\"kind\":\"external\",\"status\":\"accepted\","
                       "\"justification\":\"old labels\",\"properties\":{\"owner\":\"packaging\","
                       "\"until\":\"2026-11-26\"}}]"),
              2U)
        << result.out;
    EXPECT_EQ(count_of(result.out, "\"suppressions\":"), 2U);
    EXPECT_EQ(count_of(result.out, "\"expired_concession\":{"), 1U);
    EXPECT_EQ(count_of(result.out, "\"descriptor\":{\"id\":\"concession-ran-out\"}"), 1U);
    EXPECT_NE(result.out.find("\"executionSuccessful\":true"), std::string::npos);
    write_file("test.sarif", result.out);
    ProcessCall call;
    call.program = GRAINSIDE_PYTHON;
    call.arguments = {GRAINSIDE_SARIF_FOLDER "/check_log.py", GRAINSIDE_SARIF_FOLDER "/sarif-schema-2.1.0.json", ".",
                      "test.sarif"};
    call.folder = folder();
    const ProcessResult valid = run_process(call);
    EXPECT_EQ(valid.status, 0) << valid.out << valid.err;
}

TEST_F(Concession, ReportsEveryFaultOfEveryFile) {
    write_file("a.yaml", "- {rule: vegan-called-lether, words: x, reason: r, owner: o, until: 2026-02-30}\n");
    write_file("b.yaml", "- {rule: solid-on-plating, reason: r, owner: o, until: 2026-12-31}\n");
    write_file("d.yaml", "- {rule: solid-on-plating, words: x, reason: r, owner: o, until: 31.12.2026}\n");
    const ProcessResult result = run({"check", "--concessions", "a.yaml", "--concessions", "b.yaml", "--concessions",
                                      "c.yaml", "--concessions", "d.yaml", "feed.jsonl"});
    EXPECT_EQ(result.status, 2);
    EXPECT_EQ(result.out, "");
    EXPECT_EQ(count_of(result.err, ": error: "), 5U) << result.err;
    for (const char* text : {"a.yaml:1:10: error: there is no rule `vegan-called-lether` [unknown-rule]",
                             "hint: did you mean `vegan-called-leather`?", "a.yaml:1:69: error: expected a day",
                             "d.yaml:1:66: error: expected a day", "YYYY-MM-DD, as in `2026-12-31`",
                             "b.yaml:1:3: error: this would concede every finding of its rule [too-wide]",
                             "c.yaml: error: the file of concessions cannot be read [unreadable]"}) {
        EXPECT_NE(result.err.find(text), std::string::npos) << text << '\n' << result.err;
    }
}

TEST_F(Concession, IsInertWhateverItHolds) {
    const ProcessResult result = check(
        "- {rule: vegan-called-leather, words: vegan leather, reason: \"\\e[31m \\u202E<b>\", owner: \"\\e]0;x\\a\", "
        "until: 2027-01-01}\n"
        "- {rule: solid-on-plating, listing: \"\\e[2J\\u202E\", reason: r, owner: o, until: 2027-01-01}\n");
    write_file("page.txt", "");
    for (const std::string& text :
         {result.out, result.err, run({"check", "--concessions", "agreed.yaml", "feed.jsonl"}).out}) {
        EXPECT_EQ(text.find('\x1B'), std::string::npos) << text;
        EXPECT_EQ(text.find("\xE2\x80\xAE"), std::string::npos) << text;
    }
    EXPECT_NE(result.err.find("(listing '?[2J?"
                              "?"
                              "?')"),
              std::string::npos)
        << result.err;
}

TEST_F(Concession, HoldsForVerdicts) {
    write_small_evidence("book");
    write_file("clear.yaml", kClearDossier);
    const std::vector<std::string> judge = {"judge", "--rules", "book", "--concessions-on", "2026-11-26"};
    const auto run_judge = [&](const std::string& concessions, std::vector<std::string> more) {
        write_file("agreed.yaml", concessions);
        std::vector<std::string> arguments = judge;
        arguments.insert(arguments.end(), more.begin(), more.end());
        arguments.insert(arguments.end(), {"--concessions", "agreed.yaml", "clear.yaml"});
        return run(arguments);
    };
    const std::string cotton = entry("readings/contradicted", "words: Cotton, listing: clear", "2027-01-01");
    const ProcessResult records = run_judge(cotton, {"--format", "jsonl"});
    EXPECT_EQ(records.status, 0) << records.out << records.err;
    EXPECT_EQ(count_of(records.out, "\"concession\":{"), 2U) << records.out;
    EXPECT_NE(records.out.find("\"verdicts\":1,\"conceded\":2,"), std::string::npos) << records.out;
    EXPECT_NE(records.out.find("\"worst\":\"unsupported\""), std::string::npos);
    EXPECT_EQ(validate_records({"verdict", "judgement_end"}, records.out, folder()).status, 0);

    const ProcessResult view = run_judge(cotton, {});
    EXPECT_NE(view.out.find("conceded     until 2027-01-01 by packaging: old labels\n"), std::string::npos) << view.out;
    EXPECT_NE(view.out.find("rule         readings/contradicted\n"), std::string::npos);
    EXPECT_NE(view.out.find("1 verdict: 1 unsupported; 2 conceded\n"), std::string::npos);

    const ProcessResult expired =
        run_judge(entry("readings/contradicted", "words: cotton", "2026-11-25"), {"--format", "jsonl"});
    EXPECT_EQ(expired.status, 1);
    EXPECT_EQ(count_of(expired.out, "\"expired_concession\":{"), 2U);
    EXPECT_NE(expired.err.find("2 findings count again"), std::string::npos) << expired.err;
    EXPECT_EQ(validate_records({"verdict", "judgement_end"}, expired.out, folder()).status, 0);

    const ProcessResult unused =
        run_judge(cotton + entry("readings/inconclusive", "words: cotton", "2027-01-01"), {"--no-stale-concessions"});
    EXPECT_EQ(unused.status, 1);
    EXPECT_NE(unused.err.find("[concession-unused]"), std::string::npos);

    const ProcessResult log = run_judge(cotton, {"--format", "sarif"});
    EXPECT_EQ(log.status, 0);
    EXPECT_EQ(count_of(log.out, "\"suppressions\":["), 2U) << log.out;
}

TEST_F(Concession, SchemaRefusesOthers) {
    const std::string conceded = R"(,"concession":{"reason":"r","owner":"o","until":"2027-01-01"}})";
    const std::string finding =
        R"({"listing":"a","field":"name","start":0,"end":4,"words":"Silk","part":"body","kind":"material","says":"silk",)"
        R"("grade":"vague","basis":"wording","rule":"r","because":"B.","sources":["s"],"markets":[])";
    EXPECT_EQ(validate_records({"finding"}, finding + conceded, folder()).status, 0);
    for (const char* wrong : {R"(,"concession":{"reason":"r","owner":"o"}})", R"(,"concession":true})",
                              R"(,"concession":{"reason":"r","owner":"o","until":"soon"}})",
                              R"(,"concession":{"reason":"r","owner":"o","until":"2027-01-01"},"expired_concession":)"
                              R"({"reason":"r","owner":"o","until":"2026-01-01"}})"}) {
        EXPECT_EQ(validate_records({"finding"}, finding + wrong, folder()).status, 1) << wrong;
    }
    const std::string closing = R"({"listing":"a","claims":1,"findings":0,"conceded":1,"worst":null})";
    EXPECT_EQ(validate_records({"closing"}, closing, folder()).status, 0);
    EXPECT_EQ(
        validate_records({"closing"}, R"({"listing":"a","claims":1,"findings":0,"conceded":-1,"worst":null})", folder())
            .status,
        1);
}

}  // namespace
}  // namespace grainside::tests
