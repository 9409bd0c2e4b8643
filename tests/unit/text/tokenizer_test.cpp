#include "text/tokenizer.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "text/utf8.h"
#include "token_dump.h"

namespace grainside::text {
namespace {

struct Row {
    std::string_view name;
    std::string_view text;
    std::string_view want;  // dump_tokens
};

constexpr Row kWords[] = {
    {"nothing", "", ""},
    {"spaces_only", "   ", ""},
    {"one_word", "leather", "leather"},
    {"capitals", "Full Grain PU A4 a4B", "full^ _grain^ _pu^^ _a4^ _a4b"},
    {"digits_do_not_spoil_capitals", "PU2 X9Y", "pu2^^ _x9y^^"},
    {"apostrophe_inside", "men's women\u2019s rock'n'roll", "mens _womens _rocknroll"},
    {"apostrophe_outside", "'real' the cows' hide", "real _the _cows _hide"},
    {"two_apostrophes_cut", "a''b", "a b"},
    {"hyphen", "full-grain leather", "full -grain _leather"},
    {"hyphen_kinds", "a\u2010b c\u2011d e\u2212f", "a -b _c -d _e -f"},
    {"hyphen_chain", "non-chrome-tanned", "non -chrome -tanned"},
    {"hyphen_left_open", "top- and full -grain", "top _and _full _grain"},
    {"hyphen_after_a_mark", "(PU)-coated 100%-wool", "<open> pu^^ <close> coated _#100 <percent> wool"},
    {"hyphen_before_a_tag_does_not_join", "full-<b>grain", "full _grain"},
    {"soft_hyphen_inside", "lea\u00ADther", "leather"},
    {"soft_hyphen_before_hyphen", "full\u00AD-grain", "full -grain"},
    {"underscore_cuts", "full_grain", "full grain"},
    {"long_words",
     "abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyz "
     "ABCDEFGHIJKLMNOPQRSTUVWXYZABCDEFGHIJKLMNOPQRSTUVWXYZABCDEFGHIJKLMNOPQRSTUVWXYZ",
     "abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyz "
     "_abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyz^^"},
    {"trade_mark_signs_cut", "Supple\u2122 Soft\u00AE\u00A9X", "supple^ _soft^ x^"},
};

constexpr Row kNumbers[] = {
    {"integer", "304", "#304"},
    {"decimal", "1.4 mm", "#1.4 _mm"},
    {"decimal_comma", "1,4 mm", "#1,4 _mm"},
    {"grouped", "1,000.50", "#1,000.50"},
    {"unit_joined", "1.4mm 316L", "#1.4 mm _#316 l^"},
    {"leading_dot_is_nought_point", ".5 mm v.5", "#0.5 _mm _v #5"},
    {"at_the_end_of_a_sentence", "is 304.", "is _#304 <stop>"},
    {"list_of_numbers", "1, 2,x", "#1 <comma> _#2 <comma> x"},
    {"percent", "100% 50 % 30\uFF05", "#100 <percent> _#50 _<percent> _#30 <percent>"},
    {"range_with_hyphen", "1.2-1.4", "#1.2 -#1.4"},
    {"range_with_en_dash", "1.2\u20131.4 mm", "#1.2 -#1.4 _mm"},
    {"range_with_tilde", "1.2~1.4 2\uFF5E3", "#1.2 -#1.4 _#2 -#3"},
    {"range_with_spaces_is_a_dash", "1.2 - 1.4", "#1.2 _<dash> _#1.4"},
    {"word_to_number", "a\u20134", "a <dash> #4"},
    {"superscript_after_a_unit", "g/m\u00B2 cm\u00B3", "g <slash> m2 _cm3"},
    {"superscript_as_footnote", "leather\u00B2 10\u00B2", "leather _#10"},
    {"subscript", "CO\u2082 Fe\u2082O\u2083", "co2^^ _fe2o3^"},
    {"fraction", "\u00BD 2\u00BD\u2033", "#1/2 _#2 #1/2 <quote>"},
    {"unit_in_one_character", "1.4\u339C \u33A1", "#1.4 mm _m2"},
    {"digits_of_other_scripts", "\u0661\u0662 \uFF13\uFF0E\uFF15", "#12 _#3.5"},
    {"keycap", "1\uFE0F\u20E3", "#1"},
    {"apostrophe_ends_a_number", "5' 1'000", "#5 _#1 #000"},
};

constexpr Row kMarks[] = {
    {"every_ascii_mark", "a , ! ? ; : / \\ + & ( [ { ) ] } | * \"",
     "a _<comma> _<exclamation> _<question> _<semicolon> _<colon> _<slash> _<slash> _<plus> _<ampersand> _<open> "
     "_<open> _<open> _<close> _<close> _<close> _<pipe> _<asterisk> _<quote>"},
    {"slashes", "soft // tan/soft//tan", "soft _<pipe> _tan <slash> soft <pipe> tan"},
    {"signs_without_a_token", "a $ ^ = @ ~ < > ` _ \u20AC b", "a _b"},
    {"stop_before_space_and_end", "Soft. Strong.", "soft^ <stop> _strong^ <stop>"},
    {"stop_before_closing_marks", "(Soft.) \"Soft.\" 'Soft.'",
     "<open> soft^ <stop> <close> _<quote> soft^ <stop> <quote> _soft^ <stop>"},
    {"stop_before_a_tag", "Soft.<b>x", "soft^ <stop> _x"},
    {"dots_inside", "e.g., U.S.A-made www.x.org", "e g <comma> _u^ s^ a^ -made _www x org"},
    {"ellipsis", "soft...strong\u2026 x", "soft <stop> strong <stop> _x"},
    {"dash_with_spaces", "Lining - cotton", "lining^ _<dash> _cotton"},
    {"long_dashes", "bag\u2014soft bag \u2013 soft", "bag <dash> soft _bag _<dash> _soft"},
    {"two_hyphens", "bag--soft", "bag <dash> soft"},
    {"curly_and_angle_quotes", "\u201Creal\u201D \u00ABvrai\u00BB \u201Eecht\u201C",
     "<quote> real <quote> _<quote> vrai <quote> _<quote> echt <quote>"},
    {"east_asian", "\u76AE\u3001\u9769\u3002\uFF08\u725B\uFF09\uFF0C\uFF01",
     "\u76AE <comma> \u9769 <stop> <open> \u725B <close> <comma> <exclamation>"},
    {"stars_around_words_are_gaps", "a **b** c* d", "a _b _c <asterisk> _d"},
    {"hash_in_a_line_is_a_gap", "a # b #c", "a _b _c"},
    {"bullet_in_a_line_separates", "soft \u2022 strong \u00B7 light col\u00B7lecci\u00F3",
     "soft _<pipe> _strong _<pipe> _light _col leccio"},
};

constexpr Row kLines[] = {
    {"line_end", "a\nb", "a <line> b"},
    {"blank_line", "a\n\nb", "a <blank> b"},
    {"blank_line_with_spaces", "a \n  \n\t b", "a _<blank> _b"},
    {"none_before_the_first_token", "\n\na", "a"},
    {"other_line_ends", "a\u2028b\u0085c", "a <line> b <line> c"},
    {"bullets", "- a\n* b\n+ c\n\u2022 d\n\u2713 e\n\u2013 f",
     "<bullet> _a <line> <bullet> _b <line> <bullet> _c <line> <bullet> _d <line> <bullet> _e <line> <bullet> _f"},
    {"pictographs_at_the_start_of_a_line", "\U0001F30A a \u2764 b\n\U0001F331\uFE0F c\n\u2728d",
     "<bullet> _a _b <line> <bullet> _c <line> <bullet> d"},
    {"bullet_without_space", "-a\n-2 b", "<bullet> a <line> <bullet> #2 _b"},
    {"numbered_items", "1. a\n12) b", "<bullet> _a <line> <bullet> _b"},
    {"numbers_that_number_nothing", "1.5 a\n2)\n2024. b\na 1. b",
     "#1.5 _a <line> #2 <close> <line> #2024 <stop> _b <line> a _#1 <stop> _b"},
    {"headings", "# a\n###### b\n####### c\n#d", "<heading> _a <line> <heading> _b <line> _c <line> d"},
    {"rules", "a\n---\nb\n=====\nc\n***\nd", "a <blank> b <blank> c <blank> d"},
    {"table", "| a | b |\n| --- | --- |\n|--|",
     "<pipe> _a _<pipe> _b _<pipe> <line> <pipe> _<pipe> _<pipe> <line> <pipe> <pipe>"},
    {"emphasis", "**a** _b_ `c`", "a _b _c"},
};

constexpr Row kMarkup[] = {
    {"inline_tag_cuts", "full<b>grain</b>leather", "full _grain _leather"},
    {"attributes", "a<a href=\"x>y\" title='<b>'>b", "a _b"},
    {"quote_that_is_no_value", "a<p don't>b", "a <blank> b"},
    {"quote_never_closed", "a<b title=\"x>b", "a _b"},
    {"blocks", "<p>a</p><div>b</div>c", "a <blank> b <blank> c"},
    {"breaks", "a<br>b<BR/><br />c<br>\nd", "a <line> b <blank> c <line> d"},
    {"items", "<ul><li>a</li>\n<li>\u2022 b</li></ul>c", "<bullet> a <line> <bullet> <bullet> _b <blank> c"},
    {"headings", "x<h2 class=q>a</h2>b", "x <blank> <heading> a <blank> b"},
    {"cells", "<tr><td>a</td><td>b</td></tr><tr><th>c", "<pipe> a _<pipe> b _<line> <pipe> c"},
    {"not_a_tag", "a<b a < b 5<6", "a b _a _b _#5 #6"},
    {"unfinished_tag", "a <b class", "a _b _class"},
    {"tag_in_an_unfinished_tag", "<a <b>c", "a _c"},
    {"comment", "a<!-- <b> -- x>y -->b", "a _b"},
    {"unfinished_comment", "a<!-- b", "a <exclamation> <dash> _b"},
    {"script_and_style", "a<script>x</b></SCRIPT >b<style a=b>c</style>d", "a _b _d"},
    {"unfinished_script", "a<script>b", "a _b"},
    {"declaration", "<!DOCTYPE html><?xml x?>a", "_a"},
    {"character_data", "<![CDATA[a]]>", "_a <close> <close>"},
    {"named_references", "caf&eacute; a&nbsp;b &amp; &lt;b&gt; &quot; men&rsquo;s",
     "cafe _a _b _<ampersand> _b _<quote> _mens"},
    {"numeric_references", "caf&#233; &#x43;&#X44; &#8226; x&#150;y&#0;z", "cafe _cd^^ _<pipe> _x <dash> y z"},
    {"references_that_are_none", "a&b &nbsp &; &#; &#x; &#12 &unknown;",
     "a <ampersand> b _<ampersand> nbsp _<ampersand> <semicolon> _<ampersand> <semicolon> _<ampersand> x <semicolon> "
     "_<ampersand> #12 _<ampersand> unknown <semicolon>"},
    {"soft_hyphen_reference", "lea&shy;ther", "leather"},
    {"line_end_references", "a&#13;&#10;b", "a <line> b"},
};

constexpr Row kFolding[] = {
    {"accents", "Cr\u00E8me CR\u00C8ME cre\u0300me", "creme^ _creme^^ _creme"},
    {"sharp_s_and_ligatures", "Stra\u00DFe \uFB01ne", "strasse^ _fine"},
    {"full_width", "\uFF30\uFF35\u3000\uFF4C\uFF45", "pu^^ _le"},
    {"mathematical_letters", "\U0001D40B\U0001D41E\U0001D41A", "lea^"},
    {"enclosed_letters", "\u24C5\u24CA \U0001F13F", "pu _p"},
    {"zero_width_characters", "l\u200Be\u200Ca\u2060t\uFEFFh\u202Eer", "leather"},
    {"cyrillic_in_latin", "le\u0430ther L\u0415\u0410\u0422\u041DER", "leather! _leather^^!"},
    {"greek_in_latin", "\u039D\u03B1ppa", "nappa^!"},
    {"armenian_in_latin", "c\u0585tton", "cotton!"},
    {"look_alike_by_reference", "le&#1072;ther", "leather!"},
    {"look_alike_with_dropped_characters", "le\u0430\u0301\u00AD't\u200Bher", "leather!"},
    {"wholly_cyrillic", "\u043A\u043E\u0436\u0430", "\u043A\u043E\u0436\u0430"},
    {"cyrillic_beside_latin", "PU-\u043A\u043E\u0436\u0430", "pu^^ -\u043A\u043E\u0436\u0430"},
    {"micron_is_greek", "5 \u00B5m", "#5 _\u03BCm"},
    {"han_is_one_word", "\u771F\u76AE\u9769", "\u771F\u76AE\u9769"},
    {"hangul_composes", "\u1100\u1161\u11BC \uAC15 \u1100\uAC00", "\uAC15 _\uAC15 _\u1100\uAC00"},
    {"emoji_are_gaps", "bag\U0001F45C\u200D\uFE0Fsoft", "bag soft"},
    {"not_utf8", "a\xFFz \xC3 b\xED\xA0\x80q\xC0\xAF\xF4\x90\x80\x80", "a z _b q"},
    {"nul_is_a_gap", std::string_view("a\0b", 3), "a b"},
};

class TokenizerTest : public testing::TestWithParam<Row> {};

std::string tokens_of(std::string_view text, void (*tokenizer)(std::string_view, Tokens&)) {
    Tokens tokens;
    tokenizer(text, tokens);
    return dump_tokens(tokens);
}

TEST_P(TokenizerTest, FindsTheTokens) {
    EXPECT_EQ(tokens_of(GetParam().text, tokenize), GetParam().want);
}

TEST_P(TokenizerTest, PlainTokenizerFindsThemToo) {
    EXPECT_EQ(tokens_of(GetParam().text, tokenize_plainly), GetParam().want);
}

// Wherever the words fall in the blocks of the fast path.
TEST_P(TokenizerTest, PlaceInTheTextDoesNotMatter) {
    for (std::size_t shift = 0; shift < 70; ++shift) {
        const std::string text = std::string(shift, ' ') + "x\n" + std::string(GetParam().text);
        const std::string got = tokens_of(text, tokenize);
        EXPECT_EQ(got, tokens_of(text, tokenize_plainly));
    }
}

TEST_P(TokenizerTest, CarriageReturnsDoNotMatter) {
    std::string text;
    for (const char c : GetParam().text) text += c == '\n' ? std::string("\r\n") : std::string(1, c);
    EXPECT_EQ(tokens_of(text, tokenize), GetParam().want);
}

TEST_P(TokenizerTest, ZeroWidthCharactersDoNotMatter) {
    const std::string_view original = GetParam().text;
    if (original.find_first_of("<&") != std::string_view::npos) return;
    std::string text;
    for (std::size_t at = 0; at < original.size();) {
        const std::uint32_t length = std::max(decode_utf8(original, at).length, 1U);
        text += original.substr(at, length);
        text += "\u200B";
        at += length;
    }
    EXPECT_EQ(tokens_of(text, tokenize), GetParam().want);
}

// As a page's source would have it: every character but those of ASCII words as a reference.
TEST_P(TokenizerTest, ReferencesStandForTheirCharacters) {
    const std::string_view original = GetParam().text;
    if (original.find_first_of("<&") != std::string_view::npos) return;
    std::string text;
    for (std::size_t at = 0; at < original.size();) {
        const Decoded decoded = decode_utf8(original, at);
        const std::uint32_t length = std::max(decoded.length, 1U);
        // References to C1 controls are read as windows-1252.
        const bool as_is = decoded.length == 0 || (decoded.code >= 0x80 && decoded.code < 0xA0);
        text += as_is ? std::string(original.substr(at, length)) : "&#" + std::to_string(decoded.code) + ";";
        at += length;
    }
    EXPECT_EQ(tokens_of(text, tokenize), GetParam().want);
}

std::string name_of(const testing::TestParamInfo<Row>& info) {
    return std::string(info.param.name);
}

INSTANTIATE_TEST_SUITE_P(Words, TokenizerTest, testing::ValuesIn(kWords), name_of);
INSTANTIATE_TEST_SUITE_P(Numbers, TokenizerTest, testing::ValuesIn(kNumbers), name_of);
INSTANTIATE_TEST_SUITE_P(Marks, TokenizerTest, testing::ValuesIn(kMarks), name_of);
INSTANTIATE_TEST_SUITE_P(Lines, TokenizerTest, testing::ValuesIn(kLines), name_of);
INSTANTIATE_TEST_SUITE_P(Markup, TokenizerTest, testing::ValuesIn(kMarkup), name_of);
INSTANTIATE_TEST_SUITE_P(Folding, TokenizerTest, testing::ValuesIn(kFolding), name_of);

class TokenizerSpanTest : public testing::TestWithParam<Row> {};

constexpr Row kSpans[] = {
    {"words_and_marks", "Full-grain, soft.", "|Full|grain|,|soft|.|"},
    {"accent_and_soft_hyphen_inside", "cafe\u0301 lea\u00ADther\u00AD x", "|cafe\u0301|lea\u00ADther|x|"},
    {"references", "a caf&eacute; &amp; b", "|a|caf&eacute;|&amp;|b|"},
    {"apostrophes", "'men's'", "|men's|"},
    {"numbers", "1.4mm .5", "|1.4|mm|.5|"},
    {"fraction", "2\u00BD", "|2|\u00BD|"},
    {"item_takes_the_tag_and_line_end_none", "a<li>b", "|a||<li>|b|"},
    {"line_ends_run_together", "a \n <br> \n b", "|a|\n <br> \n|b|"},
    {"list_number", "12) b", "|12)|b|"},
    {"runs_of_marks", "a--b ... x\n### y", "|a|--|b|...|x|\n|###|y|"},
};

TEST_P(TokenizerSpanTest, CoverTheWords) {
    Tokens tokens;
    tokenize(GetParam().text, tokens);
    EXPECT_EQ(dump_spans(tokens, GetParam().text), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, TokenizerSpanTest, testing::ValuesIn(kSpans), name_of);

// "it's" folds to 'its': only the flag tells them apart, however long either is written.
TEST(TokenizerTest, TellsAnInnerApostrophe) {
    for (const std::string_view with : {"it's", "it\u2019s", "IT&rsquo;S", "i\u00ADt's"}) {
        Tokens tokens;
        tokenize(with, tokens);
        ASSERT_EQ(tokens.list.size(), 1U) << with;
        EXPECT_NE(tokens.list[0].flags & flag::kApostrophe, 0) << with;
    }
    for (const std::string_view without : {"its", "'its'", "its'", "i\u00ADts", "&#105;ts", "\uFF49\uFF54\uFF53"}) {
        Tokens tokens;
        tokenize(without, tokens);
        ASSERT_EQ(tokens.list.size(), 1U) << without;
        EXPECT_EQ(tokens.folded_text(tokens.list[0]), "its") << without;
        EXPECT_EQ(tokens.list[0].flags & flag::kApostrophe, 0) << without;
    }
}

TEST(TokenizerTest, FoldedLengthIsCapped) {
    Tokens tokens;
    const std::string text(100000, 'a');
    tokenize(text, tokens);
    ASSERT_EQ(tokens.list.size(), 1U);
    EXPECT_EQ(tokens.list[0].end, text.size());
    EXPECT_EQ(tokens.folded_text(tokens.list[0]), std::string(65535, 'a'));
}

TEST(TokenizerTest, SixteenBytesPastEveryFormCanBeRead) {
    for (const std::string_view text : {"a", "caf\u00E9", "le\u0430ther \uFDFA", "1", ".5"}) {
        Tokens fresh;
        for (const auto tokenizer : {tokenize, tokenize_plainly}) {
            tokenizer(text, fresh);
            for (const Token& token : fresh.list) {
                EXPECT_LE(token.folded_offset + token.folded_length + 16U, fresh.folded.size()) << text;
            }
        }
    }
}

}  // namespace
}  // namespace grainside::text
