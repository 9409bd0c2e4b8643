// Real output against the JSON Schemas of tools/schema, by a validator that is not ours (python3-jsonschema).
#include <string>
#include <vector>

#include "cli_test.h"
#include "schema_validation.h"

namespace grainside::tests {
namespace {

class Schema : public CliTest {
protected:
    ProcessResult validate(const std::vector<std::string>& schemas, const std::string& text) const {
        return validate_records(schemas, text, folder());
    }
};

// Something of everything: shares, a range, denial, origin, a hedge, look-alike letters, a cross-check, odd bytes.
const char* const kFeed =
    "{\"sku\": \"S1\", \"name\": \"Genuine PU leather tote\", \"description\": \"Outer: 60% polyurethane, 30% "
    "polyester. "
    "Waterproof, eco-friendly. Not bonded leather. Made in Italy.\", \"offers\": {\"eligibleRegion\": \"US\"}}\n"
    "{\"@id\": \"urn:x\", \"name\": \"Leather backpack\", \"description\": \"Made of nylon. Leather 1.2-1.4 mm.\", "
    "\"additionalProperty\": [{\"name\": \"Lining \\u001b\", \"value\": \"cotton\"}]}\n"
    "{\"name\": \"Genuine PU le\xD0\xB0ther tote\", \"material\": \"up to 80 % cotton\", \"category\": \"bag\"}\n"
    "{\"name\": \"Genuine PU leather \\u0000 tote\"}\n"
    "{\"name\": \"Tote\"}\n";

TEST_F(Schema, HoldsForListings) {
    const ProcessResult result = validate({"listing"}, kFeed);
    EXPECT_EQ(result.status, 0) << result.out << result.err;
}

TEST_F(Schema, HoldsForClaims) {
    const ProcessResult claims = run_with_input({"claims", "--format", "jsonl"}, kFeed);
    EXPECT_GT(lines_of(claims.out).size(), 8U);
    const ProcessResult result = validate({"claim"}, claims.out);
    EXPECT_EQ(result.status, 0) << result.out << result.err;
}

TEST_F(Schema, HoldsForFindings) {
    const ProcessResult findings = run_with_input({"check", "--format", "jsonl"}, kFeed);
    EXPECT_GT(lines_of(findings.out).size(), 8U);
    const ProcessResult result = validate({"finding", "closing"}, findings.out);
    EXPECT_EQ(result.status, 0) << result.out << result.err;
}

TEST_F(Schema, HoldsForTheSmallBook) {
    write_small_book("book");
    const std::string text = "{\"name\": \"Silk, linen, cotton, polyurethane\"}\n";
    const ProcessResult findings =
        run_with_input({"check", "--format", "jsonl", "--rules", "book", "--market", "us"}, text);
    EXPECT_NE(findings.out.find("\"against\":"), std::string::npos) << findings.out;
    EXPECT_NE(findings.out.find("\"from_memory\":true"), std::string::npos);
    EXPECT_NE(findings.out.find("\"say_instead\":"), std::string::npos);
    const ProcessResult result = validate({"finding", "closing"}, findings.out);
    EXPECT_EQ(result.status, 0) << result.out << result.err;
}

TEST_F(Schema, RefusesOtherRecords) {
    EXPECT_EQ(validate({"closing"}, R"({"listing":"a","claims":1,"findings":0,"worst":null})").status, 0);
    for (const char* wrong :
         {R"({"listing":"a","claims":1,"findings":0,"worst":"vague"})",
          R"({"listing":"a","claims":1,"findings":1,"worst":null})", R"({"listing":"a","claims":1,"findings":0})",
          R"({"listing":"a","claims":-1,"findings":0,"worst":null})",
          R"({"listing":"a","claims":1,"findings":0,"worst":null,"more":1})"}) {
        EXPECT_EQ(validate({"closing"}, wrong).status, 1) << wrong;
    }
    EXPECT_EQ(validate({"claim"}, R"({"listing":"a"})").status, 1);
    EXPECT_EQ(validate({"finding"}, R"({"listing":"a"})").status, 1);
    EXPECT_EQ(validate({"listing"}, R"({"description":1})").status, 1);
    EXPECT_EQ(validate({"listing"}, R"({"sku":"a"})").status, 1);
}

}  // namespace
}  // namespace grainside::tests
