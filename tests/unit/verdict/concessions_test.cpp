// Concessions: a bad entry for each fault with its exact place, what meets a finding, what is stale, and the cost.
#include "grainside/concessions.h"

#include <gtest/gtest.h>

#include <chrono>
#include <string>
#include <string_view>
#include <vector>

#include "support/built_in_evidence.h"
#include "support/fault_dump.h"

namespace grainside {
namespace {

Result<Concessions> parsed(std::string text) {
    return Concessions::parse("agreed.yaml", std::move(text), support::built_in_evidence());
}

std::string faults_of(std::string text) {
    const auto read = parsed(std::move(text));
    return read ? std::string() : support::dump_places(read.issues());
}

Concessions agreed(std::string text) {
    auto read = parsed(std::move(text));
    EXPECT_TRUE(read) << support::dump_places(read.issues());
    return std::move(read).value();
}

struct FaultRow {
    std::string_view name;
    std::string text;
    std::string_view want;
};

std::string entry(std::string_view what) {
    return "- {" + std::string(what) + ", reason: r, owner: o, until: 2026-12-31}\n";
}

const FaultRow kFaults[] = {
    {"empty", "", ""},
    {"comment", "# nothing is conceded\n", ""},
    {"empty_list", "[]\n", ""},
    {"right", entry("rule: vegan-called-leather, listing: b-7"), ""},
    {"right_words", entry("rule: vegan-called-leather, words: vegan leather, field: additionalProperty.Lining"), ""},
    {"limit", entry("rule: coat-of-leather-eu, listing: b-7"), ""},
    {"readings", entry("rule: readings/inconclusive, listing: b-7"), ""},
    {"no_list", "rule: vegan-called-leather\n", "1:1 wrong-type"},
    {"no_mapping", "- vegan-called-leather\n", "1:3 wrong-type"},
    {"unknown_key", entry("rule: vegan-called-leather, listing: b-7, word: x"), "1:46 unknown-key"},
    {"no_rule", entry("listing: b-7"), "1:3 missing-key"},
    {"unknown_rule", entry("rule: vegan-called-lether, listing: b-7"), "1:10 unknown-rule"},
    {"readings_never_vague", entry("rule: readings/vague, listing: b-7"), "1:10 unknown-rule"},
    {"too_wide", entry("rule: vegan-called-leather"), "1:3 too-wide"},
    {"field_is_too_wide", entry("rule: vegan-called-leather, field: name"), "1:3 too-wide"},
    {"unknown_field", entry("rule: vegan-called-leather, listing: b-7, field: title"), "1:53 unknown-field"},
    {"attribute_without_name", entry("rule: vegan-called-leather, listing: b, field: additionalProperty."),
     "1:51 unknown-field"},
    {"empty_words", entry("rule: vegan-called-leather, words: ''"), "1:39 missing-key"},
    {"no_words", entry("rule: vegan-called-leather, words: '%!'"), "1:39 no-words"},
    {"words_are_a_list", entry("rule: vegan-called-leather, words: [a]"), "1:39 wrong-type"},
    {"no_reason", "- {rule: vegan-called-leather, listing: b, owner: o, until: 2026-12-31}\n", "1:3 missing-key"},
    {"empty_reason", "- {rule: vegan-called-leather, listing: b, reason: '', owner: o, until: 2026-12-31}\n",
     "1:52 missing-key"},
    {"no_owner", "- {rule: vegan-called-leather, listing: b, reason: r, until: 2026-12-31}\n", "1:3 missing-key"},
    {"no_day", "- {rule: vegan-called-leather, listing: b, reason: r, owner: o}\n", "1:3 missing-key"},
    {"no_such_day", "- {rule: vegan-called-leather, listing: b, reason: r, owner: o, until: 2026-02-29}\n",
     "1:72 wrong-type"},
    {"forever", "- {rule: vegan-called-leather, listing: b, reason: r, owner: o, until: forever}\n", "1:72 wrong-type"},
    {"duplicate",
     entry("rule: vegan-called-leather, words: vegan leather") +
         entry("rule: vegan-called-leather, words: Vegan-Leather"),
     "2:3 duplicate-concession"},
    {"narrower_is_no_duplicate",
     entry("rule: vegan-called-leather, words: vegan leather") +
         entry("rule: vegan-called-leather, words: vegan leather, listing: b-7"),
     ""},
    {"every_fault", entry("rule: no-such-rule, words: x") + "- {rule: vegan-called-leather, wrods: x, until: soon}\n",
     "1:10 unknown-rule; 2:3 missing-key; 2:3 missing-key; 2:3 too-wide; 2:32 unknown-key; 2:49 wrong-type"},
    {"syntax", "- {rule: [\n", "1:3 wrong-type; 1:3 yaml-syntax"},
    {"alias", "- &a {rule: vegan-called-leather}\n- *a\n", "1:3 alias; 2:3 alias"},
};

TEST(ConcessionFaults, HaveTheirPlaces) {
    for (const FaultRow& row : kFaults) EXPECT_EQ(faults_of(row.text), row.want) << row.name;
}

TEST(ConcessionFaults, SayWhatToDo) {
    for (const FaultRow& row : kFaults) {
        const Result<Concessions> read = parsed(row.text);
        for (const Issue& issue : read.issues()) {
            for (const std::string_view code : {"unknown-rule", "unknown-field", "too-wide", "no-words"}) {
                EXPECT_TRUE(issue.code != code || !issue.hint.empty()) << row.name << ": " << issue.message;
            }
        }
    }
}

TEST(ConcessionFaults, KnowLongTexts) {
    const auto with = [](std::size_t reason, std::size_t owner) {
        return "- {rule: vegan-called-leather, words: x, reason: " + std::string(reason, 'r') +
               ", owner: " + std::string(owner, 'o') + ", until: 2026-12-31}\n";
    };
    EXPECT_EQ(faults_of(with(kMaxConcessionReason, kMaxConcessionOwner)), "");
    EXPECT_EQ(faults_of(with(kMaxConcessionReason + 1, 1)), "1:50 too-long");
    EXPECT_EQ(faults_of(with(1, kMaxConcessionOwner + 1)), "1:60 too-long");
}

struct MeetRow {
    std::string_view name, narrowed, listing, field, text;
    std::size_t conceded;
};

// The rule vegan-called-leather on a listing of one field.
constexpr MeetRow kMeets[] = {
    {"words", "words: vegan leather", "b-7", "name", "Vegan Leather bag", 1},
    {"words_hyphen", "words: Vegan-leather", "b-7", "name", "vegan leather bag", 1},
    {"words_twice", "words: vegan leather", "b-7", "description", "Vegan leather bag. Vegan leather strap.", 2},
    {"part_of_words", "words: vegan", "b-7", "name", "Vegan leather bag", 0},
    {"more_words", "words: vegan leather bag", "b-7", "name", "Vegan leather bag", 0},
    {"listing", "listing: b-7", "b-7", "name", "Vegan leather bag", 1},
    {"other_listing", "listing: b-7", "b-77", "name", "Vegan leather bag", 0},
    {"listing_capitals_matter", "listing: B-7", "b-7", "name", "Vegan leather bag", 0},
    {"field", "listing: b-7, field: name", "b-7", "name", "Vegan leather bag", 1},
    {"other_field", "listing: b-7, field: description", "b-7", "name", "Vegan leather bag", 0},
    {"all_three", "listing: b-7, field: name, words: vegan leather", "b-7", "name", "Vegan leather bag", 1},
    {"all_but_words", "listing: b-7, field: name, words: eco leather", "b-7", "name", "Vegan leather bag", 0},
    {"nothing_found", "words: vegan leather", "b-7", "name", "Imitation leather bag", 0},
    {"empty_id", "words: vegan leather", "", "name", "Vegan leather bag", 1},
};

TEST(ConcessionLedger, MeetsWhatIsNamed) {
    Checker checker(support::built_in_book());
    for (const MeetRow& row : kMeets) {
        const Concessions concessions = agreed("- {rule: vegan-called-leather, " + std::string(row.narrowed) +
                                               ", reason: r, owner: o, until: 2026-12-31}\n");
        ConcessionLedger ledger(concessions, "2026-11-26");
        Listing listing;
        listing.id = row.listing;
        listing.fields = {{row.field, row.text}};
        const CheckResult& result = checker.check(listing);
        const Conceded& conceded = ledger.of_findings(support::built_in_book(), listing, result);
        EXPECT_EQ(conceded.matches.size(), result.findings.size()) << row.name;
        EXPECT_EQ(conceded.count, row.conceded) << row.name;
        EXPECT_EQ(conceded.worst, row.conceded == result.findings.size() ? Grade::consistent : Grade::misleading)
            << row.name;
        EXPECT_EQ(ledger.stale(true).size(), row.conceded == 0 ? 1U : 0U) << row.name;
    }
}

// What it holds against the words of a finding and a listing's id may hold any byte: none passes for another.
TEST(ConcessionLedger, KeepsTextsApart) {
    const Concessions concessions =
        agreed("- {rule: vegan-called-leather, listing: \"b1:x\", reason: r, owner: o, until: 2026-12-31}\n");
    ConcessionLedger ledger(concessions, "2026-11-26");
    Checker checker(support::built_in_book());
    for (const std::string_view id : {"b", "b1:", "4:b1:x", "b1:x "}) {
        Listing listing;
        listing.id = id;
        listing.fields = {{"name", "Vegan leather bag"}};
        EXPECT_EQ(ledger.of_findings(support::built_in_book(), listing, checker.check(listing)).count, 0U) << id;
    }
}

TEST(ConcessionLedger, TellsStaleOnesInTheOrderOfTheFile) {
    const Concessions concessions =
        agreed(entry("rule: solid-on-plating, listing: never") +
               "- {rule: vegan-called-leather, words: vegan leather, reason: r, owner: o, until: 2026-11-25}\n" +
               entry("rule: readings/contradicted, listing: b-7"));
    ConcessionLedger ledger(concessions, "2026-11-26");
    Checker checker(support::built_in_book());
    Listing listing;
    listing.id = "b-7";
    listing.fields = {{"name", "Vegan leather bag"}, {"description", "A vegan leather bag."}};
    const Conceded& conceded = ledger.of_findings(support::built_in_book(), listing, checker.check(listing));
    ASSERT_EQ(conceded.matches.size(), 2U);
    EXPECT_EQ(conceded.matches[0].concession, 1U);
    EXPECT_FALSE(conceded.stands(0));
    EXPECT_EQ(conceded.count, 0U);
    const std::vector<Issue> stale = ledger.stale(true);
    EXPECT_EQ(support::dump_files(stale), "agreed.yaml:1:0 concession-unused\nagreed.yaml:2:0 concession-ran-out\n");
    EXPECT_NE(stale[1].message.find("2 findings count again"), std::string::npos) << stale[1].message;
    EXPECT_EQ(stale[0].severity, Issue::Severity::warning);
    EXPECT_EQ(ledger.stale(false).size(), 3U);
}

// 10,000 concessions on the rule at hand cost a finding no more than a few hundred times nothing would: both runs are
// measured here, so that a slow machine changes neither side alone. A walk over the list would cost thousands.
TEST(ConcessionLedger, CostsNoMoreWithManyConcessions) {
    std::string many;
    for (int i = 0; i < 10'000; ++i) {
        many += "- {rule: vegan-called-leather, listing: 'sku-" + std::to_string(i) +
                "', reason: old labels, owner: packaging, until: 2026-12-31}\n";
    }
    const Concessions concessions[] = {agreed(entry("rule: vegan-called-leather, listing: sku-7")),
                                       agreed(std::move(many))};
    Checker checker(support::built_in_book());
    Listing listing;
    listing.id = "sku-7";
    listing.fields = {{"name", "Vegan leather bag"}};
    const CheckResult& result = checker.check(listing);
    double seconds[2] = {};
    for (int round = 0; round < 5; ++round) {
        for (int at = 0; at < 2; ++at) {
            ConcessionLedger ledger(concessions[at], "2026-11-26");
            const auto begin = std::chrono::steady_clock::now();
            for (int i = 0; i < 2000; ++i) {
                ASSERT_EQ(ledger.of_findings(support::built_in_book(), listing, result).count, 1U);
            }
            const double took = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
            if (round == 0 || took < seconds[at]) seconds[at] = took;
        }
    }
    EXPECT_LT(seconds[1], 20 * seconds[0]);
}

TEST(ConcessionLimits, RefuseTooMany) {
    std::string text;
    for (std::size_t i = 0; i < kMaxConcessions; ++i) {
        text += "- {rule: readings/unsupported, listing: " + std::to_string(i) +
                ", reason: r, owner: o, until: 2026-12-31}\n";
    }
    text += entry("rule: readings/unsupported, listing: one more") + entry("rule: readings/unsupported, listing: two");
    EXPECT_EQ(faults_of(text), std::to_string(kMaxConcessions + 1) + ":3 too-many-concessions");
}

}  // namespace
}  // namespace grainside
