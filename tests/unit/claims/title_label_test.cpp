// A title that a text labels against the same title in the listing's name.
#include <gtest/gtest.h>

#include <ostream>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "grainside/checker.h"
#include "support/claim_dump.h"

namespace grainside::claims {
namespace {

const RuleBook& book() {
    static const RuleBook built_in = std::move(RuleBook::built_in()).value();
    return built_in;
}

std::string findings_of(std::vector<Field> fields) {
    Listing listing;
    listing.fields = std::move(fields);
    Checker checker(book());
    return support::dump_findings(book(), listing, checker.check(listing));
}

// `text` says in one field what `name` and `rest` say in two; `rest` is the material field where it holds no mark.
struct Row {
    std::string_view name, text, title, rest, want;
};
void PrintTo(const Row& row, std::ostream* out) {
    *out << row.name;
}

constexpr std::string_view kRealLeather = "misleading leather-title-plastic-text 'Real leather'";
constexpr std::string_view kLeather = "misleading leather-title-plastic-text 'Leather'";

constexpr Row kRows[] = {
    {"lines", "Name: Real leather wallet\nMaterial: PU", "Real leather wallet", "PU", kRealLeather},
    {"title_behind_its_material", "Material: PU\nTitle: Real leather wallet", "Real leather wallet", "PU",
     kRealLeather},
    {"bullets", "- Product: Real leather wallet\n- Material: PU", "Real leather wallet", "PU", kRealLeather},
    {"html_list", "<ul><li>Item: Real leather wallet</li><li>Material: PU</li></ul>", "Real leather wallet", "PU",
     kRealLeather},
    {"html_table",
     "<table><tr><th>Product name</th><td>Leather tote</td></tr><tr><th>Upper</th><td>PU</td></tr></table>",
     "Leather tote", "Upper: PU", kLeather},
    {"rows", "| Title | Real leather wallet |\n| Material | PU |", "Real leather wallet", "PU", kRealLeather},
    {"one_line", "SKU: 12, Name: Real leather wallet, Material: PU", "Real leather wallet", "PU", kRealLeather},
    {"pipes", "Item name: Real leather wallet | Material: PU", "Real leather wallet", "PU", kRealLeather},
    {"semicolon", "Name: Real leather wallet; Material: PU", "Real leather wallet", "PU", kRealLeather},
    {"dashes", "Title - Leather bag\nShell - PU", "Leather bag", "Shell: PU", kLeather},
    {"brackets", "[Name] Real leather wallet\n[Material] PU", "Real leather wallet", "PU", kRealLeather},
    {"line_of_its_own", "Name:\nReal leather wallet\nMaterial:\nPU", "Real leather wallet", "PU", kRealLeather},
    {"heading", "## Product title\n\nReal leather wallet\n\n## Material\n\nPU", "Real leather wallet", "PU",
     kRealLeather},
    {"belt", "Name: Leather belt\nOuter: PU", "Leather belt", "Outer: PU",
     "misleading part-leather-other-material 'Leather'"},
    {"german", "Titel: Handtasche aus Leder\nObermaterial: PU", "Handtasche aus Leder", "Obermaterial: PU",
     "misleading leather-title-plastic-text 'Leder'"},
    {"french", "Nom du produit : Sac en cuir\nMati\u00E8re : PU", "Sac en cuir", "Mati\u00E8re : PU",
     "misleading leather-title-plastic-text 'cuir'"},
    {"italian", "Nome: Borsa in pelle\nMateriale: PU", "Borsa in pelle", "Materiale: PU",
     "misleading leather-title-plastic-text 'pelle'"},
    {"spanish", "Nombre: Bolso de piel\nMaterial exterior: PU", "Bolso de piel", "Material exterior: PU",
     "misleading leather-title-plastic-text 'piel'"},
    {"polish", "Nazwa: Torebka sk\u00F3ra\nMateria\u0142: PU", "Torebka sk\u00F3ra", "Materia\u0142: PU",
     "misleading leather-title-plastic-text 'sk\u00F3ra'"},
    {"japanese", "\u5546\u54C1\u540D\uFF1A\u672C\u9769\n\u7D20\u6750\uFF1APU", "\u672C\u9769", "\u7D20\u6750\uFF1APU",
     "misleading leather-title-plastic-text '\u672C\u9769'"},
    {"honest", "Name: Real leather wallet\nMaterial: cowhide", "Real leather wallet", "cowhide", ""},
    {"of_the_other_part", "Name: Real leather wallet\nLining: polyester", "Real leather wallet", "Lining: polyester",
     ""},
    {"gift_box_of_a_title", "Name: Real leather wallet PU gift box", "Real leather wallet PU gift box", "", ""},
};

class TitleLabel : public testing::TestWithParam<Row> {};

TEST_P(TitleLabel, ReadsAsTheNameDoes) {
    const Row& row = GetParam();
    EXPECT_EQ(findings_of({{"description", std::string(row.text)}}), row.want) << row.text;
    const bool plain =
        row.rest.find(':') == std::string_view::npos && row.rest.find("\uFF1A") == std::string_view::npos;
    EXPECT_EQ(
        findings_of({{"name", std::string(row.title)}, {plain ? "material" : "description", std::string(row.rest)}}),
        row.want);
}

INSTANTIATE_TEST_SUITE_P(Rows, TitleLabel, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(TitleLabel, AsAnAttributeToo) {
    EXPECT_EQ(findings_of({{"description", "Goes with any belt."},
                           {"additionalProperty.Product name", "Real leather wallet"},
                           {"additionalProperty.Upper material", "PU"}}),
              kRealLeather);
}

}  // namespace
}  // namespace grainside::claims
