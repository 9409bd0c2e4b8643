// grainside price: what it prints of a sample, with changes and of several; calls that are wrong; records by their
// schemas.
#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include "cli_test.h"
#include "schema_validation.h"

namespace grainside::tests {
namespace {

const std::vector<std::string> kSchemas = {"cost_line", "cost_end", "cost_seller"};

constexpr const char* kTote =
    "sample: {what: Tote, category: bag, seller: Ferrow and Tide, price: 122.00 EUR}\n"
    "costs:\n"
    "  sales_tax: 22 %\n"
    "  materials:\n"
    "    - {item: body leather, part: body, material: leather, area: 6 sq ft, cutting_yield: 75 %, price: 5 EUR/sq "
    "ft}\n"
    "  labour: {time: 1 h, rate: 10 EUR/h}\n";

class Price : public CliTest {
protected:
    void SetUp() override {
        CliTest::SetUp();
        write_file("tote.yaml", kTote);
    }
};

// 6 sq ft at 75 % are 8 bought, 40.00; with an hour at 10.00 they are 50.00; the net price is 100.00.
TEST_F(Price, AddsUp) {
    const ProcessResult result = run({"price", "tote.yaml"});
    EXPECT_EQ(result.status, 0) << result.err;
    EXPECT_EQ(result.err, "");
    for (const char* line : {"    body leather (body)                              40.00\n",
                             "      6 sq ft at 5 EUR/sq ft, cutting yield 75 %\n",
                             "  = total                                            50.00\n",
                             "  122.00 EUR; 100.00 EUR without sales tax of 22 %\n", "  at most 2.00 times the total\n",
                             "  - hardware\n  - overhead\n  - packing\n", "This is not legal advice"}) {
        EXPECT_NE(result.out.find(line), std::string::npos) << line << '\n' << result.out;
    }
}

TEST_F(Price, PutsValuesInPlaceOfOthers) {
    const ProcessResult result = run({"price", "--what-if", "body leather: price 10 EUR/sq ft", "--what-if",
                                      "hardware: amount 10 EUR", "tote.yaml"});
    EXPECT_EQ(result.status, 0) << result.err;
    EXPECT_NE(result.out.find("  - body leather: price 10 EUR/sq ft\n"), std::string::npos) << result.out;
    EXPECT_NE(result.out.find("  total                                        50.00                      100.00\n"),
              std::string::npos)
        << result.out;
}

TEST_F(Price, ComparesSellers) {
    write_file("other.yaml", "sample: {what: Belt, seller: Oxmoor, price: 40 USD}\ncosts: {materials: 10 USD}\n");
    write_file("third.yaml",
               "sample: {what: Clutch, seller: Ferrow and Tide, price: 61 EUR}\ncosts: {materials: 5 EUR}\n");
    const ProcessResult result = run({"price", "tote.yaml", "other.yaml", "third.yaml"});
    EXPECT_EQ(result.status, 0) << result.err;
    const std::string compared = result.out.substr(result.out.find("\nCompared"));
    const std::size_t ferrow = compared.find("  Ferrow and Tide\n    tote ");
    const std::size_t third = compared.find("\n    third ");
    const std::size_t oxmoor = compared.find("  Oxmoor\n    other ");
    EXPECT_NE(ferrow, std::string::npos) << compared;
    EXPECT_LT(ferrow, third);
    EXPECT_LT(third, oxmoor);
    EXPECT_NE(compared.find("10.00 USD"), std::string::npos);
    EXPECT_NE(compared.find("5.00 EUR"), std::string::npos);
    EXPECT_EQ(run({"price", "tote.yaml"}).out.find("Compared"), std::string::npos);
}

struct WrongRow {
    const char* name;
    std::string change;
    std::string err;
};

TEST_F(Price, TellsWrongChanges) {
    const WrongRow rows[] = {
        {"no_item", "price 9 EUR",
         "grainside: error: --what-if: 'price 9 EUR' is not written as 'ITEM: KEY VALUE'\n  hint: see `grainside price "
         "--help`\n"},
        {"no_value", "body leather: price",
         "grainside: error: --what-if: 'body leather: price' is not written as 'ITEM: KEY VALUE'\n  hint: see "
         "`grainside price --help`\n"},
        {"near_item", "body lether: price 9 EUR/sq ft",
         "grainside: --what-if: error: body lether: the dossier has no such line of costs (in tote.yaml) "
         "[unknown-item]\n"
         "  hint: did you mean `body leather`?\n"},
        {"key", "body leather: prise 9 EUR/sq ft",
         "grainside: --what-if: error: body leather: there is no value `prise` (in tote.yaml) [unknown-key]\n"
         "  hint: did you mean `price`?\n"},
        {"currency", "body leather: price 9 GBP/sq ft",
         "grainside: --what-if: error: body leather: GBP cannot be added to EUR without a rate (in tote.yaml) "
         "[missing-exchange]\n"
         "  hint: say what one is worth: `exchange: {GBP: 0.95-1.05}`, with the rate of the day\n"},
        {"no_key", "freight: 5 EUR",
         "grainside: --what-if: error: freight: there is no value `5` (in tote.yaml) [unknown-key]\n"
         "  hint: write `freight: amount 5 EUR`\n"},
        {"no_key_of_work", "labour: 12 EUR/h",
         "grainside: --what-if: error: labour: there is no value `12` (in tote.yaml) [unknown-key]\n"
         "  hint: write `labour: rate 12 EUR/h`\n"},
        {"no_key_of_the_price", "sample: 90 EUR",
         "grainside: --what-if: error: sample: there is no value `90` (in tote.yaml) [unknown-key]\n"
         "  hint: write `sample: price 90 EUR`\n"},
    };
    for (const WrongRow& row : rows) {
        const ProcessResult result = run({"price", "--what-if", row.change, "tote.yaml"});
        EXPECT_EQ(result.status, 2) << row.name;
        EXPECT_EQ(result.out, "") << row.name;
        EXPECT_EQ(result.err, row.err) << row.name;
    }
}

TEST_F(Price, LeavesOtherDossiersAlone) {
    write_file("broken.yaml", "sample: {price: 3}\ncosts: {packing: 4 EUR/m}\n");
    const ProcessResult result = run({"price", "broken.yaml", "missing.yaml", "tote.yaml"});
    EXPECT_EQ(result.status, 2);
    EXPECT_EQ(result.err.rfind("grainside: broken.yaml:1:17: error: `3` names no currency [bad-price]\n", 0), 0U)
        << result.err;
    EXPECT_EQ(result.out, run({"price", "tote.yaml"}).out);
}

TEST_F(Price, WritesRecordsThatFitTheirSchemas) {
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(GRAINSIDE_DOSSIERS)) {
        if (entry.path().extension() == ".yaml") files.push_back(entry.path().string());
    }
    std::sort(files.begin(), files.end());
    std::vector<std::string> arguments = {"price", "--format", "jsonl"};
    arguments.insert(arguments.end(), files.begin(), files.end());
    const ProcessResult all = run(arguments);
    EXPECT_EQ(all.status, 0) << all.err;
    const std::string changed =
        run({"price", "--format", "jsonl", "--what-if", "packing: amount 3-4 EUR", "tote.yaml"}).out;
    for (const char* member : {"\"what_if\":", "\"unusual\":[{", "\"gaps\":[{", "\"duty_base\":", "\"on_record\":false",
                               "\"usual\":[{", "\"floor_only\":true", "\"floor_only\":false", "\"seller\":"}) {
        EXPECT_NE((all.out + changed).find(member), std::string::npos) << member << " is not tried";
    }
    const ProcessResult result = validate_records(kSchemas, all.out + changed, folder());
    EXPECT_EQ(result.status, 0) << result.out << result.err;
}

struct RefusedRow {
    const char* name;
    std::string schema, from, to;
};

TEST_F(Price, HasSchemasThatRefuseOtherRecords) {
    const std::string records = run({"price", "--format", "jsonl", "tote.yaml"}).out;
    const std::string line = records.substr(0, records.find('\n'));
    std::string end = records.substr(0, records.size() - 1);
    end = end.substr(end.rfind('\n') + 1);
    const std::string pair = run({"price", "--format", "jsonl", "tote.yaml", "tote.yaml"}).out;
    const std::string seller = pair.substr(pair.rfind("{\"seller\""));
    const RefusedRow rows[] = {
        {"group", "cost_line", "\"group\":\"materials\"", "\"group\":\"stuff\""},
        {"currency", "cost_line", "\"currency\":\"EUR\"", "\"currency\":\"Euro\""},
        {"amount", "cost_line", "\"u\":0,", ""},
        {"negative", "cost_line", "\"value\":40", "\"value\":-40"},
        {"part", "cost_line", "\"part\":\"body\"", "\"part\":\"nose\""},
        {"no_total", "cost_end", "\"total\":", "\"totals\":"},
        {"digest", "cost_end", "\"rule_book\":\"", "\"rule_book\":\"x"},
        {"price_without_net", "cost_end", "\"net\":100,", ""},
        {"gap_without_name", "cost_end", "\"what\":\"hardware\",", ""},
        {"nothing_on_record", "cost_end", "\"on_record\":true", "\"on_record\":false"},
        {"no_sample", "cost_seller", "\"samples\":[{", "\"samples\":[],\"more\":[{"},
        {"multiple_without_net", "cost_seller", "\"net\":100,", ""},
    };
    const std::pair<std::string, std::string> good[] = {
        {"cost_line", line}, {"cost_end", end}, {"cost_seller", seller}};
    for (const auto& [schema, record] : good) {
        EXPECT_EQ(validate_records({schema}, record, folder()).status, 0) << record;
        for (const RefusedRow& row : rows) {
            if (row.schema != schema) continue;
            std::string wrong = record;
            const std::size_t at = wrong.find(row.from);
            ASSERT_NE(at, std::string::npos) << row.name << '\n' << record;
            wrong.replace(at, row.from.size(), row.to);
            EXPECT_EQ(validate_records({schema}, wrong, folder()).status, 1) << row.name;
        }
    }
}

}  // namespace
}  // namespace grainside::tests
