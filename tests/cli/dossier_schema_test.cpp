// Records of judge, identify, plan and learn against the JSON Schemas of tools/schema.
#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include "cli_test.h"
#include "schema_validation.h"
#include "small_dossiers.h"

namespace grainside::tests {
namespace {

const std::vector<std::string> kVerdict = {"verdict", "judgement_end"};
const std::vector<std::string> kBelief = {"belief", "identity_end"};
const std::vector<std::string> kPlan = {"planned_test", "plan_end"};
const std::vector<std::string> kLearning = {"learnt_row", "learning_end"};

class DossierSchema : public CliTest {
protected:
    void expect_valid(const std::vector<std::string>& schemas, const std::string& records) const {
        EXPECT_NE(records, "");
        const ProcessResult result = validate_records(schemas, records, folder());
        EXPECT_EQ(result.status, 0) << result.out << result.err;
    }
    // Of all four commands; status 2 is for a dossier that could not be read.
    std::string records_of(std::vector<std::string> arguments, const std::vector<std::string>& files) const {
        arguments.insert(arguments.end(), {"--format", "jsonl"});
        arguments.insert(arguments.end(), files.begin(), files.end());
        const ProcessResult result = run(arguments);
        EXPECT_NE(result.status, 2) << result.err;
        return result.out;
    }
    void expect_all_valid(const std::vector<std::string>& rules, const std::vector<std::string>& files) const {
        const auto with = [&](std::vector<std::string> arguments) {
            arguments.insert(arguments.end(), rules.begin(), rules.end());
            return records_of(std::move(arguments), files);
        };
        for (const std::string rule : {"both-guarded", "simple-acceptance", "guarded-acceptance", "guarded-rejection"})
            expect_valid(kVerdict, with({"judge", "--decide", rule}));
        for (const std::string market : {"eu", "us"}) {
            expect_valid(kVerdict, with({"judge", "--market", market}));
            expect_valid(kPlan, with({"plan", "--market", market}));
        }
        expect_valid(kBelief, with({"identify"}));
        expect_valid(kPlan, with({"plan"}));
        expect_valid(kLearning, with({"learn"}));
    }
};

TEST_F(DossierSchema, HoldsForTheSmallBook) {
    write_small_evidence("book");
    const std::pair<std::string, const char*> shapes[] = {{"clear.yaml", kClearDossier},
                                                          {"thin.yaml", kThinDossier},
                                                          {"no_listing.yaml", kNoListingDossier},
                                                          {"bare.yaml", kBareDossier},
                                                          {"near.yaml", kNearDossier},
                                                          {"borne_out.yaml", kBorneOutDossier},
                                                          {"own_priors.yaml", kOwnPriorsDossier},
                                                          {"contradictory.yaml", kContradictoryDossier},
                                                          {"confirmed.yaml", kConfirmedDossier},
                                                          {"hostile.yaml", kHostileDossier}};
    std::vector<std::string> files;
    for (const auto& [file, text] : shapes) {
        write_file(file, text);
        files.push_back(file);
    }
    expect_all_valid({"--rules", "book"}, files);
    const std::string records = records_of({"judge", "--rules", "book"}, files);
    for (const char* member : {"\"contradictory\":true", "\"repeats\":", "\"next_test\":", "\"rule\":\"cotton-named\"",
                               "\"says\":\"undecided\"", "\"says\":\"met\",\"against\":", "\"worst\":null",
                               "\"unasked\":[{", "\"markets\":[\"eu\"]", "\"from_memory\":true", "\"say_instead\":"})
        EXPECT_NE(records.find(member), std::string::npos) << member << " is not tried";
    EXPECT_NE(records_of({"identify", "--rules", "book"}, files).find("\"own_priors\":true"), std::string::npos);
}

// The dossiers of corpus/dossiers, by the built-in book.
TEST_F(DossierSchema, HoldsForTheBuiltInBook) {
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(GRAINSIDE_DOSSIERS))
        if (entry.path().extension() == ".yaml") files.push_back(entry.path().string());
    std::sort(files.begin(), files.end());
    ASSERT_GE(files.size(), 10U);
    expect_all_valid({}, files);
    const std::string records = records_of({"judge"}, files);
    for (const char* member : {"\"say_instead\":", "\"says\":\"contradicts\"", "\"says\":\"unread\"",
                               "\"basis\":\"wording\"", "\"basis\":\"evidence\"", "\"grade\":\"consistent\""})
        EXPECT_NE(records.find(member), std::string::npos) << member << " is not tried";
}

struct RefusedRow {
    const char* name;
    std::string schema;
    std::string from;  // in a record that fits
    std::string to;
};

TEST_F(DossierSchema, RefusesOtherRecords) {
    const std::string digest = R"("rule_book":"0123456789abcdef")";
    const std::string methods = R"("methods":[{"method":"m","title":"T","cautions":["C."],"sources":["s"]}],)";
    const std::pair<std::string, std::string> good[] = {
        {"verdict",
         R"({"dossier":"a","listing":"a","field":"name","start":0,"end":4,"words":"Silk","part":"body",)"
         R"("kind":"material","says":"silk","negated":false,"grade":"contradicted","basis":"evidence","rule":"coat",)"
         R"("because":"B.","say_instead":"S","sources":["s"],"markets":["eu"],"from_memory":true,"probability":0.25,)"
         R"("probability_false":0.75,"probability_open":0,)"
         R"("readings":[{"part":"body","reading":1,"method":"m","outcome":"o","date":"2024-08-20","decibans":-3}],)"
         R"("limits":[{"limit":"coat","part":"body","quantity":"coat","value":"1 mm","bound":"above 0.15 mm",)"
         R"("says":"contradicts","against":0.9,"markets":[],"readings":[{"part":"body","reading":2,"method":"n"}]}],)"
         R"("would_change":["W."],"next_test":"m"})"},
        {"judgement_end", R"({"dossier":"a","claims":1,"verdicts":1,)"
                          R"("unasked":[{"part":"body","reading":1,"method":"m"}],"worst":"vague",)"
                          R"("decision_rule":"both-guarded",)" +
                              methods + digest + '}'},
        {"belief",
         R"({"dossier":"a","part":"body","frame":"sheet","asks":"what the sheet is","candidates":[)"
         R"({"candidate":"silk","prior":0.5,"probability":0.9},{"candidate":"wool","prior":0.5,"probability":0.1}],)"
         R"("conflict":0,"contradictory":false,"own_priors":true,"odd_ones":[],)"
         R"("readings":[{"part":"body","reading":1,"method":"m","decibans":3}]})"},
        {"identity_end", R"({"dossier":"a","parts":1,)" + methods + digest + '}'},
        {"planned_test",
         R"({"dossier":"a","step":1,"method":"m","title":"T","part":"body","harm":"none","who":"anyone","bits":0.5,)"
         R"("minutes":5,"cost":0,"about":["silk"],"cautions":[],"next":true})"},
        {"plan_end", R"({"dossier":"a","tests":1,"questions":1,"share_decided_now":0,"share_decided_after":0.5,)"
                     R"("minutes":5,"cost":0,)" +
                         digest + '}'},
        {"learnt_row", R"({"method":"m","frame":"sheet","candidate":"silk","seen":1,)"
                       R"("outcomes":[{"outcome":"o","seen":1,"before":0.9,"after":1}]})"},
        {"learning_end",
         R"({"dossiers":0,"before_any_reading":{"cases":0,"brier":0,"reliability":[]},)"
         R"("by_the_book":{"cases":0,"brier":0,"reliability":[]},"as_learnt":{"cases":0,"brier":2,"reliability":[]},)" +
             digest + '}'},
    };
    const RefusedRow rows[] = {
        {"grade", "verdict", "\"contradicted\"", "\"false\""},
        {"reading_from_1", "verdict", "\"reading\":1", "\"reading\":0"},
        {"share", "verdict", "_open\":0", "_open\":1.5"},
        {"no_share", "verdict", "\"probability_false\":0.75,", ""},
        {"markets", "verdict", "\"markets\":[\"eu\"],\"from", "\"from"},
        {"market", "verdict", "\"eu\"", "\"European Union\""},
        {"seen", "verdict", "\"from_memory\":true", "\"from_memory\":false"},
        {"offer", "verdict", "\"say_instead\":\"S\"", "\"say_instead\":\"\""},
        {"next_test", "verdict", "\"next_test\":\"m\"", "\"next_test\":\"\""},
        {"weight", "verdict", ",\"decibans\":-3", ""},
        {"day", "verdict", "2024-08-20", "20 August"},
        {"limit_without_value", "verdict", "\"value\":\"1 mm\",", ""},
        {"unread_with_value", "verdict", "\"contradicts\"", "\"unread\""},
        {"bound_without_quantity", "verdict", "\"quantity\":\"coat\",", ""},
        {"none_yet_worst", "judgement_end", "\"verdicts\":1", "\"verdicts\":0"},
        {"some_yet_no_worst", "judgement_end", "\"vague\"", "null"},
        {"unasked", "judgement_end", "\"reading\":1", "\"reading\":0"},
        {"nothing_on_unasked", "judgement_end", R"("unasked":[{"part":"body","reading":1,"method":"m"}],)", ""},
        {"method_twice", "judgement_end", "\"methods\":[",
         R"("methods":[{"method":"m","title":"T","cautions":["C."],"sources":["s"]},)"},
        {"method_without_source", "judgement_end", "\"sources\":[\"s\"]", "\"sources\":[]"},
        {"decision_rule", "judgement_end", "both-guarded", "strict"},
        {"digest", "judgement_end", "0123456789abcdef", "1"},
        {"one_candidate", "belief", R"(,{"candidate":"wool","prior":0.5,"probability":0.1})", ""},
        {"odd_one_without_conflict", "belief", "\"odd_ones\":[]",
         R"("odd_ones":[{"part":"body","reading":1,"method":"m"}])"},
        {"books_priors", "belief", "\"own_priors\":true", "\"own_priors\":false"},
        {"part", "belief", "\"body\",\"frame\"", "\"nose\",\"frame\""},
        {"parts", "identity_end", "\"parts\":1", "\"parts\":-1"},
        {"method_without_cautions", "identity_end", "\"cautions\":[\"C.\"],", ""},
        {"harm", "planned_test", "\"none\"", "\"a little\""},
        {"not_next", "planned_test", "\"next\":true", "\"next\":false"},
        {"who", "planned_test", "\"anyone\"", "\"nobody\""},
        {"decided", "plan_end", "0.5", "50"},
        {"unseen_row", "learnt_row", "\"seen\":1,\"outcomes\"", "\"seen\":0,\"outcomes\""},
        {"no_digest", "learning_end", ",\"rule_book\":\"0123456789abcdef\"", ""},
        {"brier", "learning_end", "\"brier\":2", "\"brier\":2.5"},
    };
    for (const auto& [schema, record] : good) {
        EXPECT_EQ(validate_records({schema}, record, folder()).status, 0) << schema;
        EXPECT_EQ(validate_records({schema}, "{\"more\":1," + record.substr(1), folder()).status, 1) << schema;
        for (const RefusedRow& row : rows) {
            if (row.schema != schema) continue;
            std::string wrong = record;
            const std::size_t at = wrong.find(row.from);
            ASSERT_NE(at, std::string::npos) << row.name;
            wrong.replace(at, row.from.size(), row.to);
            EXPECT_EQ(validate_records({schema}, wrong, folder()).status, 1) << row.name << '\n' << wrong;
        }
    }
}

}  // namespace
}  // namespace grainside::tests
