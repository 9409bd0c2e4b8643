// Who offers a product: schema.org Offer.seller, Product's offers, Product.brand.
#include <vector>

#include "reading.h"

namespace grainside::testing_listing {
namespace {

class Seller : public testing::TestWithParam<Row> {};

const Row kSellerRows[] = {
    {"none", R"({"name":"a"})", ""},
    {"brand_text", R"({"name":"a","brand":"B"})", "B"},
    {"brand_object", R"({"name":"a","brand":{"@type":"Brand","name":"B"}})", "B"},
    {"offer_before_brand", R"({"brand":"B","name":"a","offers":{"seller":{"@type":"Organization","name":"S"}}})", "S"},
    {"offer_text", R"({"offers":[{"price":1},{"seller":"S"},{"seller":"T"}],"name":"a","brand":"B"})", "S"},
    {"own_before_brand", R"({"name":"a","seller":"S","brand":"B"})", "S"},
    {"offer_before_own", R"({"name":"a","seller":"S","offers":{"seller":"O"}})", "O"},
    {"empty_offer_seller", R"({"name":"a","offers":{"seller":""},"brand":"B"})", "B"},
    {"escaped", R"({"name":"a","brand":"B\u00e9"})", "B\xC3\xA9"},
};

TEST_P(Seller, IsWhatTheRowSays) {
    auto reader = ListingReader::from_memory("f", GetParam().input, {.format = InputFormat::json_lines});
    Listing listing;
    std::vector<Issue> issues;
    ASSERT_TRUE(reader.next(listing, issues));
    EXPECT_EQ(listing.seller, GetParam().want);
    EXPECT_TRUE(issues.empty());
}
INSTANTIATE_TEST_SUITE_P(Rows, Seller, testing::ValuesIn(kSellerRows), row_name);

}  // namespace
}  // namespace grainside::testing_listing
