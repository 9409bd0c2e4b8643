// Rules of one market: what they take from their model, where they stand, and what is refused.
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "support/fault_dump.h"
#include "support/small_rules.h"

namespace grainside::rules {
namespace {

constexpr std::string_view kSources =
    "- {source: law, cite: A law, says: It says., how: seen}\n"
    "- {source: act, cite: An act, says: It says more., how: memory}\n";
constexpr std::string_view kMarkets = "- {market: us}\n- {market: eu}\n- {market: it, within: eu}\n";
constexpr std::string_view kModel =
    "- rule: model\n  title: T\n  grade: vague\n  when: {says: leather}\n  unless: {marked: imitation}\n"
    "  because: B.\n  remedy: R.\n  leave_out: yes\n  sources: law\n  proof:\n"
    "    flags: [{text: a, words: a}, {text: b, words: b}, {text: c, words: c}]\n"
    "    passes: [{text: d}, {text: e}, {text: f}]\n";

std::string load(const std::map<std::string, std::string>& market_files, BookData& book) {
    std::map<std::string, std::string> files = {{"sources.yaml", std::string(kSources)},
                                                {"markets.yaml", std::string(kMarkets)},
                                                {"wording/stuff.yaml", std::string(kModel)}};
    files.insert(market_files.begin(), market_files.end());
    document::Faults faults;
    support::load_small_rules(files, book, faults);
    return support::dump_places(faults.take());
}

std::size_t index_of(const BookData& book, std::string_view id) {
    return static_cast<std::size_t>(
        std::find_if(book.rules.begin(), book.rules.end(), [id](const RuleInfo& rule) { return rule.id == id; }) -
        book.rules.begin());
}

TEST(MarketRules, TakeWhatTheyDoNotState) {
    BookData book;
    ASSERT_EQ(load({{"markets/us.yaml",
                     "- rule: model-us\n  like: model\n  grade: misleading\n"
                     "  in_force: {from: 2012-10-11}\n  sources: act\n"}},
                   book),
              "");
    const std::size_t at = index_of(book, "model-us");
    ASSERT_LT(at, book.rules.size());
    const RuleInfo& rule = book.rules[at];
    EXPECT_EQ(rule.like, "model");
    EXPECT_EQ(rule.group, "stuff");
    EXPECT_EQ(rule.title, "T");
    EXPECT_EQ(rule.because, "B.");
    EXPECT_EQ(rule.remedy, "R.");
    EXPECT_TRUE(rule.leave_out);
    EXPECT_EQ(rule.grade, Grade::misleading);
    EXPECT_EQ(rule.markets, std::vector<std::string>{"us"});
    EXPECT_EQ(rule.from, "2012-10-11");
    EXPECT_EQ(rule.file, "markets/us.yaml");
    ASSERT_EQ(rule.sources.size(), 1U);
    EXPECT_EQ(book.sources[rule.sources[0]].id, "act");
    EXPECT_EQ(rule.flags.size(), 3U);
    EXPECT_EQ(book.compiled[at].when.size(), 1U);
    EXPECT_EQ(book.compiled[at].unless.size(), 1U);
}

// Italian law before that of the Union, which holds there too.
TEST(MarketRules, StandRightBeforeTheirModelTheNarrowerMarketFirst) {
    BookData book;
    ASSERT_EQ(load({{"markets/us.yaml", "- {rule: model-us, like: model, sources: act}\n"},
                    {"markets/it.yaml", "- {rule: model-it, like: model, sources: act}\n"},
                    {"markets/eu.yaml", "- {rule: model-eu, like: model, sources: act}\n"},
                    {"wording/other.yaml",
                     "- rule: other\n" + std::string(kModel).substr(std::string_view("- rule: model\n").size())}},
                   book),
              "");
    std::string order;
    for (const RuleInfo& rule : book.rules) order += rule.id + " ";
    EXPECT_EQ(order, "other model-it model-us model-eu model ");
}

// What it states itself takes the place of the model's; exceptions alone add to them.
TEST(MarketRules, AddTheirOwnExceptions) {
    BookData book;
    ASSERT_EQ(load({{"markets/us.yaml",
                     "- {rule: model-us, like: model, sources: act, because: Other., remedy: Name it., "
                     "unless: {marked: look}, unless_beside: {says: cotton}}\n"}},
                   book),
              "");
    const std::size_t at = index_of(book, "model-us");
    EXPECT_EQ(book.rules[at].because, "Other.");
    EXPECT_EQ(book.rules[at].remedy, "Name it.");
    EXPECT_FALSE(book.rules[at].leave_out) << "wording, remedy and leave_out come from one of the two, not from both";
    EXPECT_EQ(book.compiled[at].unless.size(), 2U);
    EXPECT_EQ(book.compiled[at].unless_beside.size(), 1U);
    EXPECT_EQ(book.compiled[index_of(book, "model")].unless.size(), 1U);
}

struct Row {
    std::string_view name, file, text, want;
};

constexpr Row kFaults[] = {
    {"right", "markets/us.yaml", "- {rule: r, like: model, sources: law}\n", ""},
    {"its_own_market_may_be_named", "markets/us.yaml", "- {rule: r, like: model, markets: us, sources: law}\n", ""},
    {"a_file_of_no_market", "markets/mars.yaml", "- {rule: r, like: model, sources: law}\n", "1:1 unknown-market"},
    {"another_market", "markets/us.yaml", "- {rule: r, like: model, markets: eu, sources: law}\n", "1:35 other-market"},
    {"no_such_model", "markets/us.yaml", "- {rule: r, like: modal, sources: law}\n", "1:19 unknown-rule"},
    {"a_model_that_has_a_model", "markets/us.yaml",
     "- {rule: r, like: model, sources: law}\n- {rule: q, like: r, sources: law}\n", "2:19 unknown-rule"},
    {"no_source", "markets/us.yaml", "- {rule: r, like: model}\n", "1:3 missing-key"},
    {"a_condition_of_its_own", "markets/us.yaml", "- {rule: r, like: model, when: {says: cotton}, sources: law}\n",
     "1:32 stated-twice"},
    {"another_statement_of_its_own", "markets/us.yaml",
     "- {rule: r, like: model, beside: {says: cotton}, sources: law}\n", "1:34 stated-twice"},
    {"the_id_of_its_model", "markets/us.yaml", "- {rule: model, like: model, sources: law}\n", "1:10 duplicate-rule"},
    {"a_rule_without_a_group", "markets/us.yaml",
     "- {rule: r, title: T, grade: vague, when: {says: leather}, because: B., sources: law, proof: {flags: "
     "[{text: a, words: a}, {text: b, words: b}, {text: c, words: c}], passes: [{text: d}, {text: e}, {text: f}]}}\n",
     "1:3 missing-key"},
};

class MarketRuleFaults : public testing::TestWithParam<Row> {};

TEST_P(MarketRuleFaults, AreToldWithTheirPlace) {
    BookData book;
    EXPECT_EQ(load({{std::string(GetParam().file), std::string(GetParam().text)}}, book), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, MarketRuleFaults, testing::ValuesIn(kFaults),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace grainside::rules
