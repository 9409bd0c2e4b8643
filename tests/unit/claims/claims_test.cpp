// Texts and the claims that they hold, as written and under changes that must not matter.
#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "claim_rows.h"
#include "claims/segment.h"
#include "grainside/checker.h"
#include "support/claim_dump.h"
#include "support/transform.h"

namespace grainside::claims {
namespace {

using support::kTransforms;
using support::Transform;

const RuleBook& book() {
    static const RuleBook built_in = std::move(RuleBook::built_in()).value();
    return built_in;
}

std::string claims_of(const Row& row, Transform transform) {
    const std::size_t bar = row.text.starts_with("| ") ? std::string_view::npos : row.text.find(" | ");
    std::string field = "description";
    std::string text = apply(transform, row.text);
    if (bar != std::string_view::npos) {
        field = row.text.substr(0, bar);
        if (field != "name" && field != "material") field.insert(0, "additionalProperty.");
        text = apply(transform, row.text.substr(bar + 3));
    }
    Listing listing;
    listing.fields.push_back({field, text});
    static Checker checker(book());
    return support::dump_claims(book(), listing, checker.check(listing));
}

class ClaimsTest : public testing::TestWithParam<Row> {};

TEST_P(ClaimsTest, AreFound) {
    EXPECT_EQ(claims_of(GetParam(), Transform::none), GetParam().want) << "in: " << GetParam().text;
}

TEST_P(ClaimsTest, ChangesThatMustNotMatterDoNot) {
    for (const Transform transform : kTransforms) {
        if (transform == Transform::none) continue;
        EXPECT_EQ(claims_of(GetParam(), transform), support::apply_to_dump(transform, GetParam().want))
            << "under " << name_of(transform) << " in: " << apply(transform, GetParam().text);
    }
}

std::string name_of_row(const testing::TestParamInfo<Row>& info) {
    return std::string(info.param.name);
}

INSTANTIATE_TEST_SUITE_P(Identity, ClaimsTest, testing::ValuesIn(identity_rows()), name_of_row);
INSTANTIATE_TEST_SUITE_P(Parts, ClaimsTest, testing::ValuesIn(part_rows()), name_of_row);
INSTANTIATE_TEST_SUITE_P(Denial, ClaimsTest, testing::ValuesIn(denial_rows()), name_of_row);
INSTANTIATE_TEST_SUITE_P(NotAClaim, ClaimsTest, testing::ValuesIn(not_a_claim_rows()), name_of_row);
INSTANTIATE_TEST_SUITE_P(Numbers, ClaimsTest, testing::ValuesIn(number_rows()), name_of_row);
INSTANTIATE_TEST_SUITE_P(Borders, ClaimsTest, testing::ValuesIn(border_rows()), name_of_row);
INSTANTIATE_TEST_SUITE_P(Statements, ClaimsTest, testing::ValuesIn(statement_rows()), name_of_row);

// Addresses (text/addresses.h) are written in plain letters without references, so that these stand as written only.
constexpr Row kAddresses[] = {
    {"mail_address", "Mail us at eco-leather@shop.example.", ""},
    {"web_address", "Tote. See https://shop.example/vegan-leather?of=suede for more.", ""},
    {"target_of_a_link", "The [tan](https://shop.example/full-grain-leather \"vegan leather\") tote.", ""},
    {"words_of_a_link", "The [suede](https://shop.example/vegan-leather) tote.", "material suede body 'suede'"},
    {"words_of_a_picture", "![suede](img/vegan-leather.jpg) A tote.", "material suede body 'suede'"},
};

class AddressClaims : public testing::TestWithParam<Row> {};

TEST_P(AddressClaims, AreNone) {
    EXPECT_EQ(claims_of(GetParam(), Transform::none), GetParam().want) << "in: " << GetParam().text;
}

INSTANTIATE_TEST_SUITE_P(Rows, AddressClaims, testing::ValuesIn(kAddresses), name_of_row);

// Lines wrapped at a page's width (text/wrapped_lines.h). In capitals nothing tells a wrapped line from a new one, so
// that these stand as written only.
constexpr Row kWrapped[] = {
    {"within_a_term", "The whole body of this roomy bag is made of full\ngrain leather that lasts.",
     "grain full-grain-leather body 'full\ngrain leather'"},
    {"carriage_return", "The whole body of this roomy bag is made of full\r\ngrain leather that lasts.",
     "grain full-grain-leather body 'full\r\ngrain leather'"},
    {"short_line", "Made of full\ngrain leather", "grain grain-leather body 'grain leather'"},
    {"long_only_by_references", "Made&#32;of&#32;full&#32;&#32;&#32;&#32;&#32;\ngrain leather",
     "grain grain-leather body 'grain leather'"},
    {"made_in", "This roomy bag for every day of the week is Made in\nPortugal by hand.",
     "origin made-in whole place=portugal 'Made in\nPortugal'"},
    {"made_in_a_short_line", "Made in\nPortugal", ""},
    {"behind_a_measure", "Cut by hand, with a strap drop of about 55 cm\nLeather lining",
     "material leather lining 'Leather'"},
};
class WrappedClaims : public testing::TestWithParam<Row> {};
TEST_P(WrappedClaims, AreFound) {
    EXPECT_EQ(claims_of(GetParam(), Transform::none), GetParam().want) << "in: " << GetParam().text;
}
INSTANTIATE_TEST_SUITE_P(Rows, WrappedClaims, testing::ValuesIn(kWrapped), name_of_row);

class KnownGaps : public testing::TestWithParam<Row> {};

TEST_P(KnownGaps, StillFail) {
    EXPECT_NE(claims_of(GetParam(), Transform::none), GetParam().want) << "mended: move this row to its group";
}

INSTANTIATE_TEST_SUITE_P(Rows, KnownGaps, testing::ValuesIn(known_gap_rows()), name_of_row);
GTEST_ALLOW_UNINSTANTIATED_PARAMETERIZED_TEST(KnownGaps);

// rules/README.md, section 10, Marks: what stands before a statement marks it, and with nothing else.
TEST(Modifiers, MarkAStatementEachInItsWay) {
    const struct {
        std::string_view text;
        Mark mark;
    } rows[] = {{"Genuine gold-plated buckle.", Mark::genuine},
                {"Solid gold-plated buckle.", Mark::solid},
                {"Pure gold-plated buckle.", Mark::pure},
                {"All gold-plated buckle.", Mark::all},
                {"More sustainable bag.", Mark::more_than}};
    constexpr std::uint32_t kModifiers =
        bit(Mark::genuine) | bit(Mark::solid) | bit(Mark::pure) | bit(Mark::all) | bit(Mark::more_than);
    Checker checker(book());
    for (const auto& row : rows) {
        Listing listing;
        listing.fields.push_back({"description", row.text});
        const CheckResult& result = checker.check(listing);
        ASSERT_EQ(result.mentions.size(), 1U) << row.text;
        EXPECT_EQ(result.mentions[0].marks & kModifiers, bit(row.mark)) << row.text;
    }
}

TEST(Brackets, MarkWhatTheyExplainAndWhatExplains) {
    const struct {
        std::string_view text;
        std::vector<std::uint32_t> want;  // of each claim
    } rows[] = {{"Bag in leather (polyurethane).", {bit(Mark::explained), bit(Mark::bracketed)}},
                {"Coat with a fur trim (100% acrylic).", {bit(Mark::explained), bit(Mark::bracketed)}},
                {"Bag in leather, polyurethane.", {0, 0}},
                {"Bag in leather (soft polyurethane).", {0, 0}},
                {"Bag in leather (roomy). Lining (cotton).", {0, 0}}};
    Checker checker(book());
    for (const auto& row : rows) {
        Listing listing;
        listing.fields.push_back({"description", row.text});
        std::vector<std::uint32_t> found;
        for (const Claim& claim : checker.check(listing).mentions) {
            found.push_back(claim.marks & (bit(Mark::explained) | bit(Mark::bracketed)));
        }
        EXPECT_EQ(found, row.want) << row.text;
    }
}

// design.md 10: 'The leather is imported' speaks of the leather, and the product is not said to be.
TEST(Origin, OfAMaterialIsNotOfTheProduct) {
    const struct {
        std::string_view text;
        bool of_material;
    } rows[] = {{"Leather is imported.", true},
                {"The leather is imported.", true},
                {"Our leather is imported.", true},
                {"Roomy; leather is imported.", true},
                {"The dye on the leather is imported.", false},
                {"The bag is imported.", false},
                {"Is imported.", false}};
    Checker checker(book());
    for (const auto& row : rows) {
        Listing listing;
        listing.fields.push_back({"description", row.text});
        bool found = false;
        for (const Claim& claim : checker.check(listing).mentions) {
            if (claim.kind != Kind::origin) continue;
            found = true;
            EXPECT_EQ(claim.has(Mark::on_material), row.of_material) << row.text;
        }
        EXPECT_TRUE(found) << row.text;
    }
}

// rules/README.md, section 5: a noun of a category that neither title nor category names tells of another product.
TEST(OtherGoods, AreThoseThatTheTitleDoesNotName) {
    const auto claims_of_text = [](std::string_view title, std::string_view text) {
        Listing listing;
        listing.fields.push_back({"name", title});
        listing.fields.push_back({"description", text});
        Checker checker(book());
        return support::dump_claims(book(), listing, checker.check(listing));
    };
    EXPECT_EQ(claims_of_text("Wallet", "Wool sofa."), "");
    EXPECT_EQ(claims_of_text("Sofa", "Wool wallet."), "");
    EXPECT_EQ(claims_of_text("Wallet and sofa", "Wool sofa."), "material wool body 'Wool'");
    EXPECT_EQ(claims_of_text("Wallet and sofa", "Wool wallet."), "material wool body 'Wool'");
}

// What is equal for what stands in one phrase (claim.h) must not tie an answer to the listing's first phrase.
TEST(Answers, ArePhrasesOfTheirOwn) {
    Listing listing;
    listing.fields.push_back({"name", "Genuine leather bag"});
    listing.fields.push_back({"description", "Q: Is the strap leather?\nA: Yes."});
    Checker checker(book());
    const CheckResult& result = checker.check(listing);
    ASSERT_EQ(result.mentions.size(), 2U);
    EXPECT_EQ(result.mentions[0].phrase, 0U);
    EXPECT_NE(result.mentions[1].phrase, 0U);
}

}  // namespace
}  // namespace grainside::claims
