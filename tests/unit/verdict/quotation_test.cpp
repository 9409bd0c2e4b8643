// What stands in a quotation. How marks are set: common practice of English, German and French print, no source.
#include "verdict/quotation.h"

#include <gtest/gtest.h>

#include <ostream>
#include <string>
#include <string_view>

namespace grainside::verdict {
namespace {

struct QuotationRow {
    std::string_view name;
    std::string_view text;  // the words in [ ]
    bool quoted;
};
std::ostream& operator<<(std::ostream& out, const QuotationRow& row) {
    return out << row.name;
}

constexpr QuotationRow kRows[] = {
    {"none", "Tote in [vegan leather].", false},
    {"straight", "One buyer: \"I love this [vegan leather] bag.\"", true},
    {"curly", "One buyer: \xE2\x80\x9CI love this [vegan leather] bag.\xE2\x80\x9D", true},
    {"low_high", "Eine Kundin: \xE2\x80\x9EI love this [vegan leather] bag.\xE2\x80\x9C", true},
    {"angle", "Une cliente : \xC2\xAB I love this [vegan leather] bag. \xC2\xBB", true},
    {"words_in_front_alone", "\"My [vegan leather]\"", true},
    {"words_behind_alone", "\"[vegan leather] forever\"", true},
    {"scare_quotes", "Tote in \"[vegan leather]\".", false},
    {"scare_quotes_curly", "Tote in \xE2\x80\x9C[vegan leather]\xE2\x80\x9D.", false},
    {"scare_quotes_with_a_mark", "Tote in \"[vegan leather].\"", false},
    {"never_closed", "One buyer: \"I love this [vegan leather] bag.", false},
    {"never_closed_curly", "One buyer: \xE2\x80\x9CI love this [vegan leather] bag.", false},
    {"never_opened", "I love this [vegan leather] bag.\" So true.", false},
    {"closed_before", "The \"Calla\" tote in [vegan leather].", false},
    {"opened_behind", "Tote in [vegan leather], the \"Calla\".", false},
    {"between_two", "The \"Calla\" tote in [vegan leather], colour \"Olive\".", false},
    {"between_two_curly",
     "The \xE2\x80\x9C"
     "Calla\xE2\x80\x9D in [vegan leather], \xE2\x80\x9COlive\xE2\x80\x9D.",
     false},
    {"between_two_low_high",
     "Die \xE2\x80\x9E"
     "Calla\xE2\x80\x9C in [vegan leather], \xE2\x80\x9EOlive\xE2\x80\x9C.",
     false},
    {"second_of_two", "The \"Calla\": \"I love this [vegan leather] bag.\"", true},
    {"inches", "Strap 14\" of [vegan leather], 20\" long", false},
    {"inches_before_a_quotation", "A 14\" bag. \"I love this [vegan leather] bag.\"", true},
    {"inches_before_a_name", "A 14\" bag in [vegan leather], the \"Calla\"", false},
    {"other_line", "\"I love\n[vegan leather] bags.\"", false},
    {"other_line_crlf", "\"I love\r\n[vegan leather] bags.\"", false},
    {"quoted_line", "Belt.\n> I love this [vegan leather] bag. - Ada, customer", true},
    {"quoted_twice", "> > I love this [vegan leather] bag.", true},
    {"line_behind_a_quoted_one", "> I love it.\nTote in [vegan leather].", false},
    {"greater_than", "> 80 % [vegan leather]", false},
    {"greater_than_within", "Care > [vegan leather]", false},
    {"apostrophes", "Women's [vegan leather] bag, men's too", false},
};

class QuotationTest : public testing::TestWithParam<QuotationRow> {};

TEST_P(QuotationTest, TellsWhatIsQuoted) {
    std::string text(GetParam().text);
    const std::size_t open = text.find('[');
    text.erase(open, 1);
    const std::size_t close = text.find(']', open);
    text.erase(close, 1);
    EXPECT_EQ(stands_in_quotation(text, open, close), GetParam().quoted);
}

INSTANTIATE_TEST_SUITE_P(Rows, QuotationTest, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

// 600 bytes to either side: a mark further off is another sentence's.
TEST(Quotation, LooksNoFurtherThanItSays) {
    const auto quoted = [](std::size_t bytes) {
        const std::string text = '"' + std::string(bytes, 'x') + "leather now\"";
        return stands_in_quotation(text, 1 + bytes, 8 + bytes);
    };
    EXPECT_TRUE(quoted(599));
    EXPECT_FALSE(quoted(600));
}

}  // namespace
}  // namespace grainside::verdict
