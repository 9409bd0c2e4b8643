// The default book in its two encodings, and from many threads.
#include <gtest/gtest.h>

#include <string>
#include <thread>
#include <type_traits>
#include <vector>

#include "grainside/checker.h"
#include "labelled_file.h"
#include "support/claim_dump.h"

namespace grainside::rules {
namespace {

static_assert(!std::is_copy_constructible_v<RuleBook> && !std::is_copy_assignable_v<RuleBook>);
static_assert(std::is_nothrow_move_constructible_v<RuleBook> && std::is_nothrow_move_assignable_v<RuleBook>);
static_assert(std::is_nothrow_move_constructible_v<Checker> && std::is_nothrow_move_assignable_v<Checker>);

const RuleBook& built_in() {
    static const RuleBook book = std::move(RuleBook::built_in()).value();
    return book;
}

const std::vector<scoring::LabelledListing>& corpus() {
    static const std::vector<scoring::LabelledListing> listings =
        std::move(scoring::read_labelled_file(GRAINSIDE_CORPUS_FOLDER "/open_a.jsonl")).value();
    return listings;
}

// Claims and findings of the whole corpus, one a line.
std::string dump_corpus(const RuleBook& book, const CheckOptions& options) {
    Checker checker(book, options);
    std::string text;
    for (const scoring::LabelledListing& labelled : corpus()) {
        const Listing listing = labelled.listing();
        const CheckResult& result = checker.check(listing);
        text += labelled.id + "\n" + support::dump_claims(book, listing, result) + "\n" +
                support::dump_findings(book, listing, result) + "\n";
        for (const Finding& finding : result.findings) text += checker.say_instead(listing, finding) + "\n";
    }
    return text;
}

TEST(BuiltInBook, IsTheYamlBook) {
    const Result<RuleBook> loaded = RuleBook::load(GRAINSIDE_RULES_FOLDER);
    ASSERT_TRUE(loaded) << to_text(loaded.issues().front());
    const RuleBook& yaml = loaded.value();
    EXPECT_EQ(yaml.digest(), built_in().digest());
    EXPECT_EQ(yaml.digest().size(), 16U);
    EXPECT_EQ(yaml.concept_count(), built_in().concept_count());
    EXPECT_EQ(yaml.term_form_count(), built_in().term_form_count());
    ASSERT_EQ(yaml.rules().size(), built_in().rules().size());
    for (std::size_t i = 0; i < yaml.rules().size(); ++i) EXPECT_EQ(yaml.rules()[i].id, built_in().rules()[i].id);
    ASSERT_GT(corpus().size(), 50U);
    for (const CheckOptions& options : {CheckOptions{}, CheckOptions{.markets = {"us"}, .on = "2024-06-01"},
                                        CheckOptions{.markets = {"it"}, .on = "2027-01-01"}}) {
        const std::string findings = dump_corpus(built_in(), options);
        EXPECT_GT(findings.size(), 10'000U);
        EXPECT_EQ(dump_corpus(yaml, options), findings);
    }
}

TEST(BuiltInBook, AnswersOnlyForItsOwnConcepts) {
    const ConceptId leather = built_in().find_concept("leather");
    EXPECT_EQ(built_in().concept_name(leather), "leather");
    EXPECT_EQ(built_in().concept_name(0), "");
    EXPECT_EQ(built_in().concept_name(65535), "");
    EXPECT_EQ(built_in().concept_wording(65535), "");
    EXPECT_EQ(built_in().find_concept("unobtainium"), 0);
    EXPECT_TRUE(built_in().is_a(built_in().find_concept("full-grain-leather"), leather));
    EXPECT_FALSE(built_in().is_a(65535, leather));
    EXPECT_FALSE(built_in().is_a(leather, 65535));
    EXPECT_EQ(built_in().find_rule("no-such-rule"), nullptr);
}

// Run it under the thread sanitizer: tools/checks/threads.
TEST(BuiltInBook, EightThreadsShareIt) {
    const std::string alone = dump_corpus(built_in(), {});
    std::vector<std::string> together(8);
    std::vector<std::thread> threads;
    for (std::string& text : together) threads.emplace_back([&text] { text = dump_corpus(built_in(), {}); });
    for (std::thread& thread : threads) thread.join();
    for (const std::string& text : together) EXPECT_EQ(text, alone);
}

}  // namespace
}  // namespace grainside::rules
