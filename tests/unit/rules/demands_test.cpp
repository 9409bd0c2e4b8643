// Demands: a bad entry for each fault with its exact place, which of them a concept takes, and what the default book
// still lacks.
#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <string>
#include <string_view>

#include "rules/book_data.h"
#include "support/fault_dump.h"
#include "support/small_rules.h"

namespace grainside::rules {
namespace {

struct Row {
    std::string_view name, text, want;
};

constexpr Row kFaults[] = {
    {"empty", "", ""},
    {"right", "- {supports: waterproof, of: textile, standard: ISO 811, number: a column, sources: law}\n", ""},
    {"no_list", "supports: waterproof\n", "1:1 wrong-type"},
    {"no_mapping", "- waterproof\n", "1:3 wrong-type"},
    {"nothing", "- {}\n", "1:3 missing-key; 1:3 missing-key; 1:3 missing-key"},
    {"unknown_key", "- {supports: waterproof, standard: s, number: n, sources: law, note: x}\n", "1:64 unknown-key"},
    {"unknown_concept", "- {supports: watertite, standard: s, number: n, sources: law}\n", "1:14 unknown-concept"},
    {"unknown_source", "- {supports: waterproof, standard: s, number: n, sources: [law, lore]}\n",
     "1:65 unknown-source"},
    {"no_standard_published", "- {supports: waterproof, number: n, sources: law}\n", ""},
    {"empty_standard", "- {supports: waterproof, standard: '', number: n, sources: law}\n", "1:36 missing-key"},
    {"empty_goods", "- {supports: waterproof, of: '', standard: s, number: n, sources: law}\n", "1:30 missing-key"},
    {"list_for_a_number", "- {supports: waterproof, standard: s, number: [n], sources: law}\n", "1:47 wrong-type"},
    {"twice",
     "- {supports: waterproof, standard: s, number: n, sources: law}\n"
     "- {supports: waterproof, standard: s, number: m, sources: law}\n",
     "2:3 duplicate-demand"},
    {"twice_for_other_goods",
     "- {supports: waterproof, standard: s, number: n, sources: law}\n"
     "- {supports: waterproof, of: leather, standard: s, number: m, sources: law}\n",
     ""},
    {"unknown_twice_is_not_the_same_twice",
     "- {supports: watertite, standard: s, number: n, sources: law}\n"
     "- {supports: watertyte, standard: s, number: n, sources: law}\n",
     "1:14 unknown-concept; 2:14 unknown-concept"},
    {"all_at_once",
     "- {supports: watertite, standard: s, number: n, sources: lore}\n- {supports: waterproof, sources: law}\n",
     "1:14 unknown-concept; 1:58 unknown-source; 2:3 missing-key"},
};

std::map<std::string, std::string> files_with(std::string_view demands) {
    return {{"sources.yaml", "- {source: law, cite: A law, says: It says., how: seen}\n"},
            {"demands.yaml", std::string(demands)}};
}

class DemandFaults : public testing::TestWithParam<Row> {};

TEST_P(DemandFaults, AreToldWithTheirPlace) {
    BookData book;
    document::Faults faults;
    support::load_small_rules(files_with(GetParam().text), book, faults);
    EXPECT_EQ(support::dump_places(faults.take()), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, DemandFaults, testing::ValuesIn(kFaults),
                         [](const auto& row) { return std::string(row.param.name); });

// The standards demanded for a concept, in order.
std::string standards_of(const RuleBook& book, std::string_view says) {
    std::string text;
    for (const Demand& demand : book.demands_for(book.find_concept(says))) text += demand.standard + ' ';
    return text;
}

TEST(Demands, AreThoseOfTheNearestConceptAbove) {
    const auto files = files_with(
        "- {supports: performance, standard: any, number: n, sources: law}\n"
        "- {supports: water-resistant, standard: second, number: n, sources: law}\n"
        "- {supports: waterproof, standard: third, number: n, sources: law}\n"
        "- {supports: sweat-resistant, standard: own, number: n, sources: law}\n"
        "- {supports: waterproof, standard: fourth, number: n, sources: law}\n"
        "- {supports: trait-hide-word, standard: later, number: n, sources: law}\n"
        "- {supports: trait-grain-altered, standard: sooner, number: n, sources: law}\n");
    const support::RuleFolder folder(files);
    const auto book = RuleBook::load(folder.path());
    ASSERT_TRUE(book) << support::dump_files(book.issues());
    EXPECT_EQ(standards_of(book.value(), "waterproof"), "third fourth ");
    EXPECT_EQ(standards_of(book.value(), "water-resistant"), "second ");
    EXPECT_EQ(standards_of(book.value(), "water-repellent"), "second ");
    EXPECT_EQ(standards_of(book.value(), "sweat-resistant"), "own ");
    EXPECT_EQ(standards_of(book.value(), "rfid-blocking"), "any ");
    // Its parents are grain-leather, trait-grain-altered and trait-hide-word, in that order.
    EXPECT_EQ(standards_of(book.value(), "nubuck"), "sooner ");
    EXPECT_EQ(standards_of(book.value(), "polyurethane"), "");
    EXPECT_EQ(standards_of(book.value(), "no-such-concept"), "");
}

// Ways up double with every step of such a lattice; each of its concepts is looked at once all the same.
TEST(Demands, AreLookedForOnceInEachConceptAbove) {
    const support::RuleFolder folder(files_with("- {supports: waterproof, standard: s, number: n, sources: law}\n"));
    {
        std::ofstream concepts(folder.path() / "concepts.yaml", std::ios::app);
        concepts << "- {concept: knot-0, kind: performance}\n";
        for (int step = 1; step <= 48; ++step) {
            for (const char* side : {"left", "right"}) {
                concepts << "- {concept: " << side << "-" << step << ", is: knot-" << step - 1 << "}\n";
            }
            concepts << "- {concept: knot-" << step << ", is: [left-" << step << ", right-" << step << "]}\n";
        }
    }
    const auto book = RuleBook::load(folder.path());
    ASSERT_TRUE(book) << support::dump_files(book.issues());
    EXPECT_EQ(standards_of(book.value(), "knot-48"), "");
}

bool asks_only_says(const ClaimCondition& condition) {
    return condition.marked == 0 && condition.marked_all == 0 && condition.unmarked == 0 && !condition.quantity;
}

// What a rule of grade unsupported can flag and nothing is demanded for.
std::string gaps_of(const RuleBook& book) {
    const BookData& data = book.data();
    const auto& tree = data.vocabulary.concepts;
    std::string gaps;
    for (std::size_t id = 1; id < tree.size(); ++id) {
        const auto says = static_cast<ConceptId>(id);
        const auto flagged = [&](std::size_t rule) {
            if (data.rules[rule].grade != Grade::unsupported) return false;
            bool any = false;
            for (const ClaimCondition& when : data.compiled[rule].when) {
                const bool kind = (when.kinds >> static_cast<unsigned>(tree[says].kind) & 1U) != 0;
                any = any || (kind && when.says.contains(says));
            }
            for (const ClaimCondition& unless : data.compiled[rule].unless) {
                if (asks_only_says(unless) && unless.says.contains(says)) return false;
            }
            return any;
        };
        for (std::size_t rule = 0; rule < data.rules.size(); ++rule) {
            if (!flagged(rule) || !book.demands_for(says).empty()) continue;
            gaps += tree[says].name + ' ';
            break;
        }
    }
    return gaps;
}

// NOTE: to be enabled together with the full content of demands.yaml.
TEST(Demands, OfTheDefaultBookLeaveNoGap) {
    const auto book = RuleBook::built_in();
    ASSERT_TRUE(book);
    EXPECT_EQ(gaps_of(book.value()), "");
}

}  // namespace
}  // namespace grainside::rules
