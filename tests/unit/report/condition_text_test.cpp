// Conditions in words: every mark and every rule of the built-in book is told, and nothing of the YAML shows through.
#include "report/condition_text.h"

#include <gtest/gtest.h>

#include <string>

#include "grainside/claim.h"
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
