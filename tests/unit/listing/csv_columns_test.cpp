// What the columns of a table are taken for: by their names and by what the caller says.
#include <string>
#include <vector>

#include "reading.h"

namespace grainside::testing_listing {
namespace {

struct ColumnRow {
    std::string_view name;
    std::string_view header;  // the values below it are 1, 2, 3 ...
    std::vector<ColumnMapping> columns;
    std::string_view want;
};
void PrintTo(const ColumnRow& row, std::ostream* out) {
    *out << row.name;
}

class CsvColumns : public testing::TestWithParam<ColumnRow> {};

const ColumnRow kColumnRows[] = {
    {"plain_names", "SKU,Title,Body,Price", {}, "1@2 1 name='2' description='3'"},
    {"words_and_marks", "Product_Name,ITEM-NUMBER,image link", {}, "1@2 2 name='1'"},
    {"german",
     "Artikel-Nr.;Bezeichnung;Beschreibung;Obermaterial;Preis",
     {},
     "1@2 1 name='2' description='3' material='4'"},
    {"latin_1_capitals", "name,W\xC3\x84HRUNG", {}, "1@2 f:1 name='1'"},
    {"others_are_properties",
     "name,Lining,SEO title",
     {},
     "1@2 f:1 name='1' additionalProperty.Lining='2' additionalProperty.SEO title='3'"},
    {"best_id", "name,handle,id,sku", {}, "1@2 4 name='1'"},
    {"language_and_region", "name,lang,market", {}, "1@2 f:1 [2 3] name='1'"},
    {"mapped",
     "Was,Futter,Preis,name",
     {{"Was", "name"}, {"Futter", "additionalProperty.Lining"}, {"preis", "property"}, {"NAME", "skip"}},
     "1@2 f:1 name='1' additionalProperty.Lining='2' additionalProperty.Preis='3'"},
    {"all_others", "a,b,c", {{"b", "name"}, {"*", "skip"}}, "1@2 f:1 name='2'"},
    {"exact_before_words", "titel,Titel", {{"Titel", "id"}}, "1@2 2 name='1'"},
    {"twice", "name,name", {}, "1:1 warning column-twice\n1@2 f:1 name='1' name='2'"},
    {"without_name", "name,,", {}, "1:1 warning column-without-name\n1@2 f:1 name='1'"},
    {"no_such_column", "name,b", {{"x", "skip"}, {"y", "id"}}, "1:1 error no-such-column\n1:1 error no-such-column"},
    {"no_such_member", "name", {{"name", "titel"}}, "0:0 error no-such-member"},
    {"nothing_known", "a,b", {}, "1:1 error no-text-column"},
    {"only_properties_if_said",
     "a,b",
     {{"a", "property"}},
     "1@2 f:1 additionalProperty.a='1' additionalProperty.b='2'"},
    {"no_text", "sku,price", {}, "1:1 error no-text-column"},
};

TEST_P(CsvColumns, AreWhatTheRowSays) {
    const ColumnRow& row = GetParam();
    const char separator = row.header.find(';') == std::string_view::npos ? ',' : ';';
    std::string text(row.header);
    text += "\n1";
    int value = 1;
    for (const char c : row.header) {
        if (c == separator) text += separator + std::to_string(++value);
    }
    auto reader = ListingReader::from_memory("f", text, {.format = InputFormat::csv, .columns = row.columns});
    EXPECT_EQ(read_all(reader), row.want);
}
INSTANTIATE_TEST_SUITE_P(Rows, CsvColumns, testing::ValuesIn(kColumnRows),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(CsvColumns, SellerBeforeBrand) {
    auto reader = ListingReader::from_memory("f", "name,Brand,Shop\na,b,c\nd,e,\n", {.format = InputFormat::csv});
    Listing listing;
    std::vector<Issue> issues;
    ASSERT_TRUE(reader.next(listing, issues));
    EXPECT_EQ(listing.seller, "c");
    ASSERT_TRUE(reader.next(listing, issues));
    EXPECT_EQ(listing.seller, "e");
}

TEST(CsvColumns, ErrorTellsTheColumnsInertly) {
    auto reader = ListingReader::from_memory("f", "a\x1B[31m,b\n1,2\n", {.format = InputFormat::csv});
    Listing listing;
    std::vector<Issue> issues;
    EXPECT_FALSE(reader.next(listing, issues));
    ASSERT_EQ(issues.size(), 1U);
    EXPECT_NE(issues[0].message.find("its columns are 'a?[31m', 'b'"), std::string::npos) << issues[0].message;
}

}  // namespace
}  // namespace grainside::testing_listing
