// grainside rules examine: remarks, coverage, further texts, records against their schemas.
#include <string>
#include <vector>

#include "cli_test.h"
#include "schema_validation.h"

namespace grainside::tests {
namespace {

const std::string kDossier = std::string(GRAINSIDE_DOSSIERS) + "/coat_near_the_limit.yaml";

class Examine : public CliTest {
protected:
    void SetUp() override {
        CliTest::SetUp();
        write_small_book("book");
    }

    // A rule that nothing can meet, and one that always speaks in another's place.
    void break_book() const {
        std::string rules = read_file(folder() / "book/wording/rules.yaml");
        const std::string proof =
            "  because: B.\n  sources: seen-law\n  proof:\n    flags: [{text: Silk., words: Silk}, {text: Of silk., "
            "words: silk}, {text: A silk., words: silk}]\n    passes: [{text: Wood.}, {text: Stone.}, {text: "
            "Paper.}]\n";
        rules += "- rule: nothing-at-all\n  title: N\n  grade: vague\n  when: {says: silk, not_says: silk}\n" + proof;
        rules +=
            "- rule: cotton-forbidden\n  title: \"C \\e[2J\"\n  grade: misleading\n  when: {says: cotton}\n" + proof;
        write_file("book/wording/rules.yaml", rules);
    }
};

TEST_F(Examine, TellsErrorsAndNotesWithTheirPlaces) {
    const ProcessResult good = run({"rules", "examine", "--rules", "book"});
    EXPECT_EQ(good.status, 0) << good.out;
    EXPECT_EQ(good.err, "");
    EXPECT_NE(good.out.find("book/wording/rules.yaml:43: note: rule 'silk-beside-linen': this text to flag differs by "
                            "one word or none from that of line 42: Of silk. Linen. [examples-alike]\n  hint: "),
              std::string::npos)
        << good.out;
    EXPECT_NE(good.out.find("\n4 rules, 24 texts, 0 errors, "), std::string::npos) << good.out;

    break_book();
    const ProcessResult broken = run({"rules", "examine", "--rules", "book"});
    EXPECT_EQ(broken.status, 1) << broken.err;
    EXPECT_EQ(broken.err, "");
    EXPECT_NE(broken.out.find("error: rule 'nothing-at-all' can never speak: `when` can hold for no claim: `not_says` "
                              "takes away all that `says` asks for [dead-rule]\n"),
              std::string::npos)
        << broken.out;
    EXPECT_NE(broken.out.find("book/wording/rules.yaml:18: error: rule 'cotton-named' never speaks in no market, us, "
                              "eu: each time 'cotton-forbidden' (wording/rules.yaml:"),
              std::string::npos)
        << broken.out;
    EXPECT_EQ(broken.out.find('\x1B'), std::string::npos);
}

TEST_F(Examine, TellsOfOneRule) {
    break_book();
    const ProcessResult one = run({"rules", "examine", "nothing-at-all", "--rules", "book"});
    EXPECT_EQ(one.status, 1);
    EXPECT_EQ(one.out.find("cotton-named"), std::string::npos) << one.out;
    const ProcessResult sound = run({"rules", "examine", "plastic-named", "--rules", "book"});
    EXPECT_EQ(sound.status, 0) << sound.out;
    const ProcessResult none = run({"rules", "examine", "plastic-name", "--rules", "book"});
    EXPECT_EQ(none.status, 2);
    EXPECT_EQ(none.err, "grainside: error: there is no rule 'plastic-name'\n  hint: did you mean `plastic-named`?\n");
}

TEST_F(Examine, AsksFurtherTexts) {
    write_file("listings.jsonl", "{\"name\": \"Cotton\"}\n{\"name\": \"Silk\"}\n");
    const ProcessResult result = run({"rules", "examine", "--rules", "book", "--over", "listings.jsonl"});
    EXPECT_EQ(result.status, 0) << result.err;
    EXPECT_NE(result.out.find("\n4 rules, 26 texts, 0 errors, "), std::string::npos) << result.out;
    const ProcessResult missing = run({"rules", "examine", "--rules", "book", "--over", "listings.jsonl", "none.txt"});
    EXPECT_EQ(missing.status, 2);
    EXPECT_NE(missing.err.find("none.txt"), std::string::npos) << missing.err;
}

TEST_F(Examine, TellsWhatConditionsCameOutAs) {
    const ProcessResult result = run({"rules", "examine", "cotton-named", "--rules", "book", "--coverage"});
    EXPECT_EQ(result.status, 0) << result.err;
    EXPECT_EQ(result.out,
              "book/wording/rules.yaml:18: cotton-named\n"
              "  when says                    true false\n"
              "1 condition, 24 texts, 0 dossiers, 0 gaps\n");
    const ProcessResult limits = run({"rules", "examine", "--coverage", "--over", kDossier});
    EXPECT_EQ(limits.status, 0) << limits.err;
    EXPECT_NE(limits.out.find("\nlimits/leather_coating.yaml:"), std::string::npos);
    EXPECT_NE(limits.out.find(": never unknown\n"), std::string::npos);
    EXPECT_NE(limits.out.find(" texts, 1 dossier, "), std::string::npos);
}

TEST_F(Examine, WritesRecordsThatFitTheirSchemas) {
    break_book();
    const ProcessResult remarks = run({"rules", "examine", "--rules", "book", "--format", "jsonl"});
    EXPECT_EQ(remarks.status, 1);
    EXPECT_GT(lines_of(remarks.out).size(), 4U);
    const ProcessResult fit = validate_records({"remark", "examination_end"}, remarks.out, folder());
    EXPECT_EQ(fit.status, 0) << fit.out << fit.err;
    const ProcessResult coverage = run({"rules", "examine", "--format", "jsonl", "--coverage", "--over", kDossier});
    EXPECT_EQ(coverage.status, 0) << coverage.err;
    EXPECT_NE(coverage.out.find("{\"limit\":"), std::string::npos);
    const ProcessResult fits = validate_records({"coverage", "coverage_end"}, coverage.out, folder());
    EXPECT_EQ(fits.status, 0) << fits.out << fits.err;
    EXPECT_EQ(
        validate_records({"remark"}, R"({"severity":"warning","code":"dead-rule","message":"a","hint":"b"})", folder())
            .status,
        1);
}

}  // namespace
}  // namespace grainside::tests
