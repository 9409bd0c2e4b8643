// Conditions in words: every mark and every rule of the built-in book is told, and nothing of the YAML shows through.
#include "report/condition_text.h"

#include <gtest/gtest.h>

#include <set>
#include <string>
#include <string_view>

#include "document/yaml_document.h"
#include "grainside/claim.h"
#include "report/claim_condition_text.h"
#include "report/mark_text.h"
#include "rules/book_data.h"

namespace grainside::report {
namespace {

TEST(MarkTexts, KnowEveryMark) {
    const Result<RuleBook> book = RuleBook::built_in();
    ASSERT_TRUE(book);
    const MarkTexts marks(book.value().data());
    for (int bit = 0; bit < kMarkCount; ++bit) {
        const std::string name(name_of(static_cast<Mark>(1U << bit)));
        EXPECT_NE(marks.marked(name), name);
        EXPECT_EQ(marks.marked(name).find("of the class"), std::string::npos) << name << " has no words in the book";
    }
    EXPECT_EQ(marks.marked("imitation"), "with 'faux', 'imitation', 'artificial' or the like before it");
    EXPECT_EQ(marks.unmarked("imitation"), "without 'faux', 'imitation', 'artificial' or the like before it");
    EXPECT_EQ(marks.unmarked("title"), "not in the listing's name");
}

TEST(ConditionTexts, TellEveryRule) {
    const Result<RuleBook> book = RuleBook::built_in();
    ASSERT_TRUE(book);
    const ConditionTexts conditions(book.value());
    for (const RuleInfo& rule : book.value().rules()) {
        const std::vector<ConditionStep> steps = conditions.steps_of(rule);
        ASSERT_FALSE(steps.empty()) << rule.id;
        EXPECT_EQ(steps.front().lead, "It flags") << rule.id;
        for (const ConditionStep& step : steps) {
            const std::string sentence = sentence_of(step);
            for (const char* odd : {"trait-", "_", "{", "  ", ", ,", "says ,", " or or ", "the  "}) {
                EXPECT_EQ(sentence.find(odd), std::string::npos) << rule.id << ": " << sentence;
            }
        }
    }
}

// What each key adds to the sentence of a condition that asks for leather; `says` itself is what the others add to.
struct KeyRow {
    std::string_view key, value, told;
};
constexpr KeyRow kKeys[] = {
    {"says_only", "suede", "suede"},
    {"not_says", "suede", "but not suede"},
    {"called", "suede", "borrowing the noun of suede"},
    {"not_called", "suede", "not borrowing the noun of suede"},
    {"borrowed", "yes", "borrowing a noun"},
    {"kind", "species", "species claim"},
    {"part", "lining", "of the lining"},
    {"not_part", "lining", "not of the lining"},
    {"category", "belt", "of the category belt"},
    {"not_category", "belt", "another category than belt"},
    {"marked", "title", "in the listing's name"},
    {"marked_all", "[title, result]", "in the listing's name and"},
    {"unmarked", "title", "not in the listing's name"},
    {"negated", "yes", "denied"},
    {"hedged", "yes", "hedged"},
    {"quantity", "yes", "with a number"},
    {"look_alike", "yes", "letters of another script"},
    {"share", "{from: 10, to: 20}", "from 10 to 20"},
    {"of_total", "{from: 10}", "at least 10"},
    {"millimetres", "{from: 2}", "at least 2"},
    {"in_place", "italy", "naming italy or a place in it"},
    {"place", "different", "another country"},
    {"differs", "yes", "of something else"},
    {"later", "yes", "standing behind it"},
};

std::string text_of(const RuleBook& book, const std::string& yaml) {
    document::Faults faults;
    const auto document = document::parse_yaml("a.yaml", yaml, faults);
    if (!document) return "no YAML";
    return claim_condition_text(book.data(), MarkTexts(book.data()), document->root(), "a");
}

TEST(ConditionTexts, TellEveryKey) {
    const Result<RuleBook> book = RuleBook::built_in();
    ASSERT_TRUE(book);
    const std::string without = text_of(book.value(), "says: leather\n");
    std::set<std::string_view> told = {"says", "reach"};
    for (const KeyRow& row : kKeys) {
        const std::string with =
            text_of(book.value(), "says: leather\n" + std::string(row.key) + ": " + std::string(row.value) + '\n');
        EXPECT_NE(with.find(row.told), std::string::npos) << row.key << ": " << with;
        EXPECT_EQ(without.find(row.told), std::string::npos) << row.key;
        told.insert(row.key);
    }
    // A key that a rule uses and nobody told would be missing from what readers see of it.
    const auto check = [&](document::Node condition, const std::string& rule, bool beside) {
        for (const document::Node asked : condition) {
            EXPECT_TRUE(told.contains(asked.key())) << rule << " asks for `" << asked.key() << "`";
        }
        if (!beside) return;
        const document::Node reach = condition.find("reach");
        EXPECT_FALSE(reach.exists() && reach_text(reach.text()).empty()) << rule << ": " << reach.text();
    };
    for (const rules::CompiledRule& rule : book.value().data().compiled) {
        for (const char* key : {"when", "unless", "beside", "unless_beside"}) {
            const document::Node clause = rule.entry.find(key);
            const bool beside = std::string_view(key).ends_with("beside");
            const std::string id(rule.entry.find("rule").text());
            if (clause.is_mapping()) check(clause, id, beside);
            if (!clause.is_sequence()) continue;
            for (const document::Node one : clause) check(one, id, beside);
        }
    }
}

// A rule that is like another one tells the same condition, and its own exceptions behind it.
TEST(ConditionTexts, TellTheConditionOfTheModel) {
    const Result<RuleBook> book = RuleBook::built_in();
    ASSERT_TRUE(book);
    const ConditionTexts conditions(book.value());
    std::size_t twins = 0;
    for (const RuleInfo& rule : book.value().rules()) {
        if (rule.like.empty()) continue;
        const RuleInfo* model = book.value().find_rule(rule.like);
        ASSERT_NE(model, nullptr);
        EXPECT_EQ(sentence_of(conditions.steps_of(rule).front()), sentence_of(conditions.steps_of(*model).front()))
            << rule.id;
        ++twins;
    }
    EXPECT_GT(twins, 0U);
}

}  // namespace
}  // namespace grainside::report
