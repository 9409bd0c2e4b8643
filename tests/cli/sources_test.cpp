// grainside sources: what the rules of a small book cite, and who cites it.
#include <string>
#include <string_view>

#include "cli_test.h"

namespace grainside::tests {
namespace {

class Sources : public CliTest {
protected:
    void SetUp() override {
        CliTest::SetUp();
        write_small_book("book");
    }
};

TEST_F(Sources, AreShownWithHowManyCiteThem) {
    const ProcessResult result = run({"sources", "--rules", "book"});
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(result.out, R"(seen-law
    Law of the tests, section 1
    Names must be true.
    seen; 4 rules

unseen-standard
    Standard of the tests
    Names should be plain.
    from memory; 1 rule

seen-law-twin
    Law of the tests, section 1
    Fibres must be named.
    seen; 1 rule
)");
}

TEST_F(Sources, AreThoseCitedForAMarket) {
    // Of the default book: a guide of the United States, and a standard of the European Union.
    const std::string america = run({"sources", "--market", "us", "--format", "jsonl"}).out;
    EXPECT_NE(america.find(R"("source":"us-16cfr24-1")"), std::string::npos);
    EXPECT_EQ(america.find(R"("source":"eu-en15987-fibre-share")"), std::string::npos);
    const std::string italy = run({"sources", "--market", "it", "--format", "jsonl"}).out;
    EXPECT_EQ(italy.find(R"("source":"us-16cfr24-1")"), std::string::npos);
    EXPECT_NE(italy.find(R"("source":"eu-en15987-fibre-share")"), std::string::npos);
}

TEST_F(Sources, IsShownWithAllThatCitesIt) {
    const ProcessResult result = run({"sources", "--rules", "book", "unseen-standard"});
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(result.out, R"(unseen-standard
    Standard of the tests
    Names should be plain.
    from memory; 1 rule

Rules
  - plastic-named (misleading; us, eu): A plastic is named
)");
}

TEST_F(Sources, AreRecords) {
    const ProcessResult result = run({"sources", "--rules", "book", "--format", "jsonl"});
    EXPECT_EQ(result.status, 0);
    const auto lines = lines_of(result.out);
    ASSERT_EQ(lines.size(), 3U);
    EXPECT_EQ(
        lines[2],
        R"({"source":"seen-law-twin","cite":"Law of the tests, section 1","says":"Fibres must be named.","how":"seen",)"
        R"("rules":["silk-beside-linen"],"limits":[],"methods":[],"alloys":[],"demands":0,"costs":0})");
}

TEST_F(Sources, OfAnUnknownNameAreAnError) {
    const ProcessResult result = run({"sources", "--rules", "book", "seen-lore"});
    EXPECT_EQ(result.status, 2);
    EXPECT_EQ(result.out, "");
    EXPECT_NE(result.err.find("there is no source 'seen-lore'"), std::string::npos) << result.err;
    EXPECT_NE(result.err.find("hint:"), std::string::npos) << result.err;
}

}  // namespace
}  // namespace grainside::tests
