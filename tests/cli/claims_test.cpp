// grainside claims.
#include "cli_test.h"

namespace grainside::tests {
namespace {

using Claims = CliTest;

TEST_F(Claims, AreATable) {
    write_small_book("book");
    const ProcessResult result = run_with_input({"claims", "--rules", "book"}, "Lining: cotton. Polyurethane.");
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(result.err, "");
    EXPECT_EQ(result.out,
              "<stdin>:1: 2 claims\n"
              "  part    kind      says          words\n"
              "  body    material  polyurethane  Polyurethane\n"
              "  lining  material  cotton        cotton\n\n");
}

TEST_F(Claims, AreRecords) {
    write_small_book("book");
    const ProcessResult result = run_with_input({"claims", "--rules", "book", "--format", "jsonl"},
                                                R"({"sku": "S1", "material": "Polyurethane"})");
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(result.out,
              R"({"listing":"S1","field":"material","start":0,"end":12,"words":"Polyurethane","part":"body",)"
              R"("kind":"material","says":"polyurethane","negated":false,"hedged":false})"
              "\n");
}

TEST_F(Claims, NeverExitWithOne) {
    const ProcessResult result = run_with_input({"claims"}, "Genuine PU leather tote");
    EXPECT_EQ(result.status, 0);
    EXPECT_NE(result.out.find("polyurethane, called leather"), std::string::npos) << result.out;
}

TEST_F(Claims, ExitWithTwoWhereARecordIsBroken) {
    write_file("feed.jsonl", "{\"name\": \"Leather tote\"}\n[\n{\"name\": \"Leather belt\"}\n");
    const ProcessResult result = run({"claims", "--format", "jsonl", "feed.jsonl"});
    EXPECT_EQ(result.status, 2);
    EXPECT_EQ(lines_of(result.out).size(), 2U) << result.out;
    EXPECT_NE(result.err.find("grainside: feed.jsonl:2:2: error: "), std::string::npos) << result.err;
}

}  // namespace
}  // namespace grainside::tests
