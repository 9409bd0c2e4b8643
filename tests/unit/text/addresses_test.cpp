// What of a text is an address, and what stays of it. Words are dumped folded (token_dump.h); an address in running
// text is a word without letters, shown as its bytes in brackets.
#include "text/addresses.h"

#include <gtest/gtest.h>

#include <cstddef>
#include <string>
#include <string_view>

#include "support/allocations.h"
#include "text/tokenizer.h"
#include "token_dump.h"

namespace grainside::text {
namespace {

struct Row {
    std::string_view name;
    std::string_view text;
    std::string_view want;
};

constexpr Row kRows[] = {
    {"link", "the [green](https://x.example/eco-leather) bag", "the _<open> green <close> _bag"},
    {"link_with_title", "[tan](a.html \"vegan leather\") bag", "<open> tan <close> _bag"},
    {"link_with_other_title", "[tan]( a.html  'vegan' ) bag", "<open> tan <close> _bag"},
    {"title_in_the_next_line", "[t](a.b \"ve\ngan\")",
     "<open> t <close> <open> a b _<quote> ve <line> gan <quote> <close>"},
    {"picture", "![suede](img/suede.jpg) tote", "<exclamation> <open> suede <close> _tote"},
    {"picture_in_a_link", "[![tan](suede.jpg)](/suede) x", "<open> <exclamation> <open> tan <close> <close> _x"},
    {"pointed_target", "[tan](<my suede.jpg>) x", "<open> tan <close> _x"},
    {"brackets_in_target", "[tan](a_(suede).jpg) x", "<open> tan <close> _x"},
    {"no_target", "[tan]() x", "<open> tan <close> _x"},
    {"fragment", "[tan](#suede)", "<open> tan <close>"},
    {"words_behind_brackets", "[body](suede) x", "<open> body <close> <open> suede <close> _x"},
    {"prose_behind_brackets", "[body](suede, incl. lining)",
     "<open> body <close> <open> suede <comma> _incl <stop> _lining <close>"},
    {"target_without_end", "[tan](img/suede", "<open> tan <close> <open> img <slash> suede"},
    {"mail", "ask eco-leather@shop.example now", "ask _[eco-leather@shop.example] _now"},
    {"mail_before_stop", "ask tan@shop.example.", "ask _[tan@shop.example] <stop>"},
    {"mail_in_brackets", "(tan@a-b.shop.example)", "<open> [tan@a-b.shop.example] <close>"},
    {"mail_with_plus", "_a.b+suede@x.example", "[a.b+suede@x.example]"},
    {"account_name", "see @suede.bags, 5 @ 6.5", "see _suede bags <comma> _#5 _#6.5"},
    {"no_domain", "suede@shop x", "suede shop _x"},
    {"scheme", "see https://x.example/suede?a=(tan)&b=c#d. Tan",
     "see _[https://x.example/suede?a=(tan)&b=c#d] <stop> _tan^"},
    {"scheme_in_capitals", "HTTPS://X.example/suede tan", "[HTTPS://X.example/suede] _tan"},
    {"scheme_in_brackets", "(ftp://x.example/suede) tan", "<open> [ftp://x.example/suede] <close> _tan"},
    {"scheme_with_letters_of_elsewhere", "http://x.example/d\u00E9j\u00E0-suede\u2014tan",
     "[http://x.example/d\u00E9j\u00E0-suede] <dash> tan"},
    {"references", "http://x.example/?a&amp;suede&nbsp;tan", "[http://x.example/?a&amp;suede] _tan"},
    {"in_a_tag", "<a href=\"https://x.example/suede\">tan</a> x", "_tan _x"},
    {"www", "see www.suede.example/tan, x", "see _[www.suede.example/tan] <comma> _x"},
    {"no_www", "awww.suede www. tan", "awww suede _www <stop> _tan"},
    {"no_scheme", "suede:// tan", "suede <colon> <pipe> _tan"},
    {"hyphen_before", "tan-https://x.example/y z", "tan -[https://x.example/y] _z"},
    {"two", "a@b.example c@d.example", "[a@b.example] _[c@d.example]"},
    {"two_that_touch", "http://a.example](b.html)", "[http://a.example] <close>"},
    {"alone", "https://x.example/suede", "[https://x.example/suede]"},
    {"nothing", "soft suede: tan.", "soft _suede <colon> _tan <stop>"},
};

std::string dump(std::string_view text, const Tokens& tokens) {
    std::string out;
    for (const Token& token : tokens.list) {
        if (!out.empty()) out += ' ';
        out += dump_token(tokens, token);
        if (token.kind == TokenKind::word && token.folded_length == 0) {
            out += '[';
            out += text.substr(token.start, token.end - token.start);
            out += ']';
        }
    }
    return out;
}

class AddressesTest : public testing::TestWithParam<Row> {};

TEST_P(AddressesTest, SayNothing) {
    Tokens tokens;
    for (const auto tokenizer : {tokenize, tokenize_plainly}) {
        tokenizer(GetParam().text, tokens);
        pass_over_addresses(GetParam().text, tokens);
        EXPECT_EQ(dump(GetParam().text, tokens), GetParam().want) << GetParam().text;
    }
}

INSTANTIATE_TEST_SUITE_P(Rows, AddressesTest, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

// Signs of addresses that none follows: were one of these quadratic, the test would run for hours.
TEST(AddressesTest, CostLinearTime) {
    constexpr std::size_t kUnits = 200000;
    for (const std::string_view unit : {"](", "](a", "](<", "](a \"", "](a '\"", "](a (", "://", "a://,", "1a://", "@",
                                        "a@", "@a.", "a@b", "www.", "awww.", "&", "www.&", "w"}) {
        std::string text;
        for (std::size_t i = 0; i < kUnits; ++i) text += unit;
        Tokens tokens;
        tokenize(text, tokens);
        const std::size_t before = tokens.list.size();
        pass_over_addresses(text, tokens);
        EXPECT_LE(tokens.list.size(), before) << unit;
    }
}

TEST(AddressesTest, AllocateNothing) {
    const std::string_view text = "a [b](c.html) d@e.example https://f.example/g";
    Tokens tokens;
    tokenize(text, tokens);
    const std::size_t before = support::allocations().count;
    pass_over_addresses(text, tokens);
    EXPECT_EQ(support::allocations().count - before, 0U);
    EXPECT_EQ(tokens.list.size(), 6U);
}

}  // namespace
}  // namespace grainside::text
