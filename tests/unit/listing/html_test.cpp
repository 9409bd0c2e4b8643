#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

#include "reading.h"

namespace grainside::testing_listing {
namespace {

using namespace std::string_view_literals;

class HtmlTest : public testing::TestWithParam<Row> {};

TEST_P(HtmlTest, GivesWhatTheRowSays) {
    EXPECT_EQ(read_memory(GetParam().input, InputFormat::html), GetParam().want);
}

// Tags, texts and what ends what: HTML standard, sections "Tokenization" and "Tree construction", from memory.
constexpr Row kMarkup[] = {
    {"paragraphs", "<p>Full grain.<p>Cotton lining.", "1@1 f:1 description='Full grain.\\n\\nCotton lining.'"},
    {"spaces_are_one", "<p>Full\n   grain\t leather", "1@1 f:1 description='Full grain leather'"},
    {"pre_keeps_lines", "<pre>Full grain\nCotton</pre>", "1@1 f:1 description='Full grain\\nCotton'"},
    {"break", "<p>Full grain<br>Cotton<br/>Brass", "1@1 f:1 description='Full grain\\nCotton\\nBrass'"},
    {"inline_joins", "<p>full<b> grain</b> lea<i>ther</i>", "1@1 f:1 description='full grain leather'"},
    {"items", "<ul><li>Cotton<li>Brass</ul>", "1@1 f:1 description='- Cotton\\n- Brass'"},
    {"items_nested", "<ul><li>Body<ul><li>Calf</ul><li>Brass</ul>",
     "1@1 f:1 description='- Body\\n\\n- Calf\\n\\n- Brass'"},
    {"item_without_words", "<ul><li><li>Brass</ul><p>x", "1@1 f:1 description='- Brass\\n\\nx'"},
    {"headings", "<h2>Body</h2>Calf<h3>Lining</h3>Cotton",
     "1@1 f:1 description='## Body\\n\\nCalf\\n\\n## Lining\\n\\nCotton'"},
    {"references", "<p>14&Prime; &amp; 3&nbsp;mm caf&eacute; &#8211; &#x2713; &nope; & x",
     "1@1 f:1 description='14\xE2\x80\xB3 & 3\xC2\xA0mm caf\xC3\xA9 \xE2\x80\x93 \xE2\x9C\x93 &nope; & x'"},
    {"reference_windows_1252", "<p>a &#150; b", "1@1 f:1 description='a \xE2\x80\x93 b'"},
    {"less_than_is_text", "<p>1 < 2 <3 </ x", "1@1 f:1 description='1 < 2 <3'"},
    {"comment", "<p>a<!-- <p>leather --> --b<!-->c<!--->d<!-- x --!>e", "1@1 f:1 description='a --bcde'"},
    {"comment_not_closed", "<p>a<!-- leather", "1@1 f:1 description='a'"},
    {"declarations", "<!DOCTYPE html><?php x ?><![CDATA[y]]><p>a</%z>b", "1@1 f:1 description='ab'"},
    {"tag_not_closed", "<p>a<b leather", "1@1 f:1 description='a'"},
    {"quotes_hide_tags", "<p data-x='<b>\">' title=\"leather>\">a", "1@1 f:1 description='a'"},
    {"script_is_no_text", "<script>if (a < b) '</p>leather'</script><p>a", "1@1 f:1 description='a'"},
    {"script_not_closed", "<p>a<script>leather", "1@1 f:1 description='a'"},
    {"quote_in_a_value", "<p title=it's>a<b \"x>b</b><i 'hidden'>c", "1@1 f:1 description='abc'"},
    {"names_that_are_none", "<p @click=\"open = true; hidden\" #hidden (hidden)=1 =hidden>a",
     "1@1 f:1 description='a'"},
    {"slash_in_a_value", "<a href=x/>a</a><div hidden/>leather</div>b", "1@1 f:1 description='a\\n\\nb'"},
    {"raw_text_with_tags", "<p>a<noscript><div></noscript>b<textarea></p><nav></textarea>c<iframe><!--</iframe>d",
     "1@1 f:1 description='abcd'"},
    {"unclosed_inside", "<nav><div>x</nav><p>a<section><div>b</section>c<footer><div>x</footer>d",
     "1@1 f:1 description='a\\n\\nb\\n\\nc\\n\\nd'"},
    {"end_tag_across_a_section",
     "<section hidden><p>x<section>x</p>x</section>x</section>a<span><main>b</span>c</main>d",
     "1@1 f:1 description='bc'"},
    {"new_void_elements", "<video><source src=x><track></video>a<wbr>b<p>c", "1@1 f:1 description='ab\\n\\nc'"},
    {"paragraph_in_a_heading", "<h1><p>Tote</p></h1><b hidden><p>x</p>x</b><p>a",
     "1@1 f:1 name='Tote' description='a'"},
    {"html_and_body_twice", "<html lang=de><body><p>a<html lang=en></body></html><body>b</html><p>c",
     "1@1 f:1 [de ] description='ab\\n\\nc'"},
    {"reference_across_a_comment", "<p>a &am<!-- -->p; b&am<?x?>p;", "1@1 f:1 description='a &amp; b&amp;'"},
    {"reference_across_tags", "<p>a &am</x>p; b&am</p >p;", "1@1 f:1 description='a &amp; b&am\\n\\np;'"},
    {"name_with_a_tag_in_it", "<table><tr><td<b>>Body<td>Calf</table><script'>a",
     "1@1 f:1 description='>Body\\nCalf\\n\\na'"},
    {"reference_of_a_reference", "<p>&amp;eacute;<b title='&amp;'>&lt;i&gt;", "1@1 f:1 description='&eacute;<i>'"},
    {"capitals", "<P>a<SCRIPT>x</Script ><STYLE>y</STYLE>b", "1@1 f:1 description='ab'"},
    {"nul_is_left_out", "<p>lea\0ther"sv, "1:7 warning nul-byte\n1@1 f:1 description='leather'"},
    {"controls_are_left_out", "<p>a\x01\x02\x1B[1mb", "1@1 f:1 description='a[1mb'"},
    {"misnested_inline", "<div><a><div>a</a>b</div>c</div>d", "1@1 f:1 description='ab\\nc\\nd'"},
    {"unmatched_end_tags", "</div></p></x><p>a</ul></table>b", "1@1 f:1 description='ab'"},
    {"xhtml_closes_itself", "<?xml version='1.0'?><html><div/><script/><p>a<![CDATA[ <b> ]]></p></html>",
     "1@1 f:1 description='a <b>'"},
    {"html_does_not", "<div/>a<script/>b", "1@1 f:1 description='a'"},
    {"line_is_that_of_main", "\n\n<div>x</div>\n<main>\na</main>", "1@4 f:1 description='a'"},
    {"empty", "", "1:1 error no-text"},
    {"no_words", "<html><body><img alt='leather'></body></html>", "1:1 error no-text"},
    {"mark", "\xEF\xBB\xBF<p>caf\xC3\xA9", "1@1 f:1 description='caf\xC3\xA9'"},
    {"utf16", "\xFF\xFE<\0p\0"sv, "1:1 error not-utf8"},
};
INSTANTIATE_TEST_SUITE_P(Markup, HtmlTest, testing::ValuesIn(kMarkup), row_name);

// Encoding standard, index windows-1252; HTML standard, "determining the character encoding"; from memory.
constexpr Row kEncodings[] = {
    {"stated_windows_1252", "<meta charset=windows-1252><p>caf\xE9 \x96 \x80",
     "1@1 f:1 description='caf\xC3\xA9 \xE2\x80\x93 \xE2\x82\xAC'"},
    {"latin1_is_windows_1252", "<meta charset='ISO-8859-1'><p>\x93x\x94",
     "1@1 f:1 description='\xE2\x80\x9Cx\xE2\x80\x9D'"},
    {"http_equiv", "<meta http-equiv=Content-Type content='text/html; charset=windows-1252'><p>caf\xE9",
     "1@1 f:1 description='caf\xC3\xA9'"},
    {"latin9", "<meta charset=iso-8859-15><p>\xA4", "1@1 f:1 description='\xE2\x82\xAC'"},
    {"shift_jis", "<meta charset=Shift_JIS><p>\x8A\x76", "1@1 f:1 description='\xE9\x9D\xA9'"},
    {"cyrillic", "<meta charset=windows-1251><p>\xEA\xEE\xE6\xE0",
     "1@1 f:1 description='\xD0\xBA\xD0\xBE\xD0\xB6\xD0\xB0'"},
    {"not_stated", "<p>caf\xE9", "1:7 warning not-utf8\n1@1 f:1 description='caf\xC3\xA9'"},
    {"states_utf8_is_not", "<meta charset=utf-8>\n<p>caf\xE9 x",
     "2:7 warning not-utf8\n1@1 f:1 description='caf\xEF\xBF\xBD x'"},
    {"states_latin1_is_utf8", "<meta charset=latin1><p>caf\xC3\xA9", "1@1 f:1 description='caf\xC3\xA9'"},
    {"unknown_label", "<meta charset='../evil//TRANSLIT'><p>caf\xE9",
     "1:41 warning not-utf8\n1@1 f:1 description='caf\xC3\xA9'"},
    {"illegal_in_stated", "<meta charset=shift_jis><p>a\xFF\x62",
     "1@1 f:1 description='a\xEF\xBF\xBD"
     "b'"},
};
INSTANTIATE_TEST_SUITE_P(Encodings, HtmlTest, testing::ValuesIn(kEncodings), row_name);

// What a shopper reads: our decisions (DEVELOPERS.md, 'A page').
constexpr Row kMainText[] = {
    {"title_h1", "<title>Shop</title><meta property=og:title content=Og><h1>Tote</h1><p>a",
     "1@1 f:1 name='Tote' description='a'"},
    {"title_og", "<title>Shop</title><meta property=og:title content='To&amp;te'><p>a",
     "1@1 f:1 name='To&te' description='a'"},
    {"title_title", "<title>Tote\n</title><p>a", "1@1 f:1 name='Tote' description='a'"},
    {"title_of_main_first", "<h1>Shop</h1><main><h1>Tote</h1>a</main>", "1@1 f:1 name='Tote' description='a'"},
    {"header_has_none", "<header><h1>Shop</h1></header><main><h2>Tote</h2>a</main>",
     "1@1 f:1 description='## Tote\\n\\na'"},
    {"header_of_the_product", "<main><header><h1>Tote</h1><p>a</header>b</main>",
     "1@1 f:1 name='Tote' description='a\\n\\nb'"},
    {"main", "<body>x<main>a</main>y", "1@1 f:1 description='a'"},
    {"role_main", "<body>x<div role=main>a</div>y", "1@1 f:1 description='a'"},
    {"only_article", "<body>x<article>a</article>y", "1@1 f:1 description='a'"},
    {"article_with_title", "<article>x</article><article><h1>Tote</h1>a</article>",
     "1@1 f:1 name='Tote' description='a'"},
    {"articles_in_main_are_cards", "<main><h1>Tote</h1>a<article>x</article><article>y</article></main>",
     "1@1 f:1 name='Tote' description='a'"},
    {"one_article_in_main_is_not", "<main><h1>Tote</h1><article>a</article></main>",
     "1@1 f:1 name='Tote' description='a'"},
    {"not_read",
     "<nav>x</nav><header>x</header><aside>x</aside><p>a<footer>x</footer><select><option>x</select><button>x</button>"
     "<label>x</label><textarea>x</textarea><svg><text>x</text></svg><template>x</template><noscript>x</noscript>"
     "<iframe>x</iframe><dialog>x</dialog><div role=navigation>x</div>",
     "1@1 f:1 description='a'"},
    {"hidden",
     "<p>a<i hidden>x</i><i style='color:red; DISPLAY : none'>x</i><i aria-hidden=true>x</i>"
     "<i style=visibility:hidden>x</i><i hidden=until-found>b</i>",
     "1@1 f:1 description='ab'"},
    {"panels_open_at_a_click", "<p>a<div role=tabpanel hidden>b</div><details><summary>c</summary>d</details>",
     "1@1 f:1 description='a\\n\\nb\\n\\nc\\nd'"},
    {"page_waits_for_its_script", "<body style='visibility:hidden'><p>a", "1@1 f:1 description='a'"},
    {"by_class",
     "<p>a<div class='box product-reviews'>x</div><div id=relatedProducts>x</div><div class=interview>b</div>",
     "1@1 f:1 description='a\\n\\nb'"},
    {"class_that_says_it_has_some", "<div class=has-reviews>a</div>", "1@1 f:1 description='a'"},
    {"not_what_holds_the_title", "<div class='product related'><h1>Tote</h1>a</div>",
     "1@1 f:1 name='Tote' description='a'"},
    {"accordion_opens_at_a_click", "<p>a<div class='box accordion-content' style='display:none'>b</div>",
     "1@1 f:1 description='a\\n\\nb'"},
    {"spans_side_by_side", "<p><span>Lining</span><span>Cotton</span> lea<span>ther</span>y",
     "1@1 f:1 description='Lining Cotton leathery'"},
    // The HTML standard, "blockquote": its text is of another source, whose address `cite` has. With the source named
    // inside it is common practice, no source.
    {"quotation_with_its_source", "<p>a<blockquote cite='https://x.example/7'><p>x</blockquote>b",
     "1@1 f:1 description='a\\n\\nb'"},
    {"quotation_that_names_its_source",
     "<p>a<blockquote><p>x</p><footer>by <cite>A. Customer</cite></footer></blockquote>b",
     "1@1 f:1 description='a\\n\\nb'"},
    {"quotation_of_the_seller", "<p>a<blockquote>b</blockquote><p>as in <cite>c</cite>",
     "1@1 f:1 description='a\\n\\nb\\n\\nas in c'"},
    {"quotation_round_the_title", "<blockquote cite=x><h1>Tote</h1>a</blockquote>",
     "1@1 f:1 name='Tote' description='a'"},
    // https://schema.org/Review.
    {"review_in_microdata", "<p>a<div itemscope itemtype='https://schema.org/Review'><p itemprop=reviewBody>x</div>b",
     "1@1 f:1 description='a\\n\\nb'"},
    {"review_of_a_product",
     "<div itemscope itemtype=https://schema.org/Product><b itemprop=name>T</b><p itemprop=description>d</p><div "
     "itemprop=review itemscope><p itemprop=name>x</p>y</div><p itemprop=aggregateRating itemscope>4 of 5</p></div>",
     "1@1 f:1 name='T' description='d'"},
    {"review_body_alone", "<p>a<p itemprop=reviewBody>x<p>b", "1@1 f:1 description='a\\n\\nb'"},
    {"announcement", "<div class=announcement-bar>x</div><p>a", "1@1 f:1 description='a'"},
    {"controls_part_words", "<p>a<button>x</button>b <span hidden>x</span>c<span hidden> x</span>d",
     "1@1 f:1 description='a b c d'"},
    {"by_heading", "<h1>Tote</h1><p>a<h2>Customer Reviews (3)</h2><p>x<h3>Good</h3>x<h2>Care</h2>b",
     "1@1 f:1 name='Tote' description='a\\n\\n## Care\\n\\nb'"},
    {"by_heading_to_the_end_of_the_section",
     "<section>a<div><h2>You may also like</h2></div><p>x</section><section>b</section>",
     "1@1 f:1 description='a\\n\\nb'"},
    {"language_and_seller", "<html lang=de-AT><meta property=og:site_name content=S><p>a",
     "1@1 f:1 [de-AT ] description='a'"},
};
INSTANTIATE_TEST_SUITE_P(MainText, HtmlTest, testing::ValuesIn(kMainText), row_name);

constexpr Row kPairs[] = {
    {"rows", "<p>a<table><tr><th>Lining:<td>Cotton<tr><td>Body<td>Calf</table>",
     "1@1 f:1 description='a' additionalProperty.Lining='Cotton' additionalProperty.Body='Calf'"},
    {"terms", "<dl><dt>Lining<dd>Cotton<dd>Silk<dt>Body</dt><dd>Calf</dl>",
     "1@1 f:1 additionalProperty.Lining='Cotton' additionalProperty.Lining='Silk' additionalProperty.Body='Calf'"},
    {"head_of_columns", "<table><tr><th>Size<th>cm<tr><td>S<td>30</table>",
     "1@1 f:1 description='Size | cm' additionalProperty.S='30'"},
    {"three_cells", "<table><tr><td>S<td>30<td>20</table>", "1@1 f:1 description='S | 30 | 20'"},
    {"question", "<dl><dt>Is it leather?<dd>Yes.</dl>", "1@1 f:1 description='Is it leather?\\nYes.'"},
    {"list_in_a_cell", "<table><tr><td>Parts<td><ul><li>Calf<li>Brass</ul></table>",
     "1@1 f:1 additionalProperty.Parts='Calf\\n- Brass'"},
    {"table_in_a_cell", "<table><tr><td><table><tr><td>Body<td>Calf</table><td>x<td>y</table>",
     "1@1 f:1 description='x | y' additionalProperty.Body='Calf'"},
    {"not_in_the_footer", "<p>a<footer><dl><dt>Phone<dd>1</dl></footer>", "1@1 f:1 description='a'"},
};
INSTANTIATE_TEST_SUITE_P(Pairs, HtmlTest, testing::ValuesIn(kPairs), row_name);

// HTML standard, "Microdata" (items, names, values), from memory; the vocabulary is that of schema.org's Product.
constexpr Row kMicrodata[] = {
    {"properties",
     "<div itemscope itemtype='https://schema.org/Product'><h1 itemprop=name>Tote</h1>x<meta itemprop=sku content=t1>"
     "<p itemprop=description>Calf &amp; <b>brass</b>.</p><span itemprop=material>Calf</span>"
     "<span itemprop=category>Bags</span></div>",
     "1@1 t1 name='Tote' description='Calf & brass.' material='Calf' category='Bags'"},
    {"brand_is_no_field_but_the_seller",
     "<p itemscope itemtype=http://schema.org/Product><b itemprop=name>Tote</b><i itemprop=brand>B</i>",
     "1@1 f:1 name='Tote' description='ToteB'"},
    {"two_names_of_one_value", "<p itemscope itemtype=https://schema.org/Product><b itemprop='name material'>Calf</b>",
     "1@1 f:1 name='Calf' material='Calf' description='Calf'"},
    {"additional",
     "<div itemscope itemtype=https://schema.org/Product><b itemprop=name>T</b><p itemprop=additionalProperty "
     "itemscope>"
     "<i itemprop=name>Thick</i> <i itemprop=value>1.4</i><i itemprop=unitText>mm</i></div>",
     "1@1 f:1 name='T' additionalProperty.Thick='1.4 mm' description='T\\n\\nThick 1.4mm'"},
    {"offer",
     "<div itemscope itemtype=https://schema.org/Product><b itemprop=name>T</b><div itemprop=offers itemscope>"
     "<meta itemprop=eligibleRegion content=DE><i itemprop=seller itemscope><i itemprop=name>S</i></i></div></div>",
     "1@1 f:1 [ DE] name='T' description='T\\nS'"},
    {"nested_belongs_to_its_own",
     "<div itemscope itemtype=https://schema.org/Product><b itemprop=name>T</b><div itemprop=isRelatedTo itemscope "
     "itemtype=https://schema.org/Product><b itemprop=name>U</b></div></div>",
     "1@1 f:1 name='T' description='T\\nU'"},
    {"several",
     "<div itemscope itemtype=https://schema.org/Product><b itemprop=name>T</b></div>\n"
     "<div itemscope itemtype=https://schema.org/Product><b itemprop=name>U</b></div>",
     "1@1 f:1 name='T'\n2@2 f:2 name='U'"},
    {"list",
     "<ul itemscope itemtype=https://schema.org/ItemList><li itemprop=itemListElement itemscope><p itemprop=item "
     "itemscope "
     "itemtype=https://schema.org/Product><b itemprop=name>T</b></ul>",
     "1@1 f:1 name='T' description='- T'"},
    {"reviewed_item_is_none",
     "<p itemscope itemtype=https://schema.org/Review><b itemprop=itemReviewed itemscope "
     "itemtype=https://schema.org/Product><i itemprop=name>T</i></b></p>",
     "1@1 f:1 description='T'"},
    {"related_by_class",
     "<p>a<div class=related><p itemscope itemtype=https://schema.org/Product><b itemprop=name>T</b></div>",
     "1@1 f:1 description='a'"},
    {"hidden_words_inside", "<p itemscope itemtype=https://schema.org/Product><b itemprop=name>T<i hidden>x</i></b>",
     "1@1 f:1 name='T' description='T'"},
    {"rows_are_added",
     "<div itemscope itemtype=https://schema.org/Product><b itemprop=name>T</b><p itemprop=description>d</p></div>"
     "<table><tr><td>Body<td>Calf</table>",
     "1@1 f:1 name='T' description='d' additionalProperty.Body='Calf'"},
    {"no_product", "<p itemscope itemtype=https://schema.org/Person><b itemprop=name>T</b>", "1@1 f:1 description='T'"},
};
INSTANTIATE_TEST_SUITE_P(Microdata, HtmlTest, testing::ValuesIn(kMicrodata), row_name);

#define GRAINSIDE_DATA(json) "<script type=application/ld+json>" json "</script>"

// schema.org's Product, ItemList and ProductGroup in JSON-LD.
constexpr Row kLinkedData[] = {
    {"product", GRAINSIDE_DATA(R"({"@type":"Product","sku":"t1","name":"Tote","description":"Calf."})"),
     "1@1 t1 name='Tote' description='Calf.'"},
    {"type_attribute", R"(<script type=" Application/LD+JSON; charset=utf-8">{"@type":"Product","name":"T"}</script>)",
     "1@1 f:1 name='T'"},
    {"list_of_types", GRAINSIDE_DATA(R"({"@type":["Thing","https://schema.org/Product"],"name":"T"})"),
     "1@1 f:1 name='T'"},
    {"array",
     "<p>\n" GRAINSIDE_DATA("[{\"@type\":\"Product\",\"name\":\"T\"},\n{\"@type\":\"Product\",\"name\":\"U\"}]"),
     "1@2 f:1 name='T'\n2@3 f:2 name='U'"},
    {"graph", GRAINSIDE_DATA(R"({"@graph":[{"@type":"WebPage","name":"x"},{"@type":"Product","name":"T"}]})"),
     "1@1 f:1 name='T'"},
    {"main_entity", GRAINSIDE_DATA(R"({"@type":"ItemPage","mainEntity":{"@type":"Product","name":"T"}})"),
     "1@1 f:1 name='T'"},
    {"item_list",
     GRAINSIDE_DATA(
         R"({"@type":"ItemList","itemListElement":[{"@type":"ListItem","item":{"@type":"Product","name":"T"}}]})"),
     "1@1 f:1 name='T'"},
    {"list_beside_a_product",
     GRAINSIDE_DATA(R"({"itemListElement":[{"item":{"@type":"Product","name":"U"}}]})")
         GRAINSIDE_DATA(R"({"@type":"Product","name":"T"})"),
     "1@1 f:1 name='T'"},
    {"variants_that_say_something",
     GRAINSIDE_DATA(R"({"@type":"ProductGroup","name":"T","hasVariant":[{"@type":"Product","name":"T black"},)"
                    R"({"@type":"Product","name":"T suede","material":"Suede"}]})"),
     "1@1 f:1 name='T'\n2@1 f:2 name='T suede' material='Suede'"},
    {"other_products_of_a_product",
     GRAINSIDE_DATA(R"({"@type":"Product","name":"T","isRelatedTo":{"@type":"Product","name":"U"}})"),
     "1@1 f:1 name='T'"},
    {"wrapped", GRAINSIDE_DATA("\n//<![CDATA[\n{\"@type\":\"Product\",\"name\":\"T\"}\n//]]>\n"), "1@3 f:1 name='T'"},
    {"in_a_comment_is_not_there", "<!--" GRAINSIDE_DATA(R"({"@type":"Product","name":"T"})") "--><p>a",
     "1@1 f:1 description='a'"},
    {"broken", "<p>a\n<script type=application/ld+json>\n{\"@type\":\"Product\",\n\"name\":T}</script>",
     "4:8 warning json-syntax\n1@1 f:1 description='a'"},
    {"broken_beside_whole", GRAINSIDE_DATA("{") GRAINSIDE_DATA(R"({"@type":"Product","name":"T"})"),
     "1:35 warning json-syntax\n1@1 f:1 name='T'"},
    {"without_words", GRAINSIDE_DATA(R"({"@type":"Product","sku":"t1"})") "<p>a", "1@1 f:1 description='a'"},
    {"before_microdata",
     "<p itemscope itemtype=https://schema.org/Product><b itemprop=name>U</b></p>" GRAINSIDE_DATA(
         R"({"@type":"Product","name":"T","description":"d"})"),
     "1@1 f:1 name='T' description='d'"},
    {"visible_text_where_it_has_none", GRAINSIDE_DATA(R"({"@type":"Product","name":"T"})") "<h1>U</h1><p>Calf.",
     "1@1 f:1 name='T' description='Calf.'"},
    {"visible_text_where_it_breaks_off",
     GRAINSIDE_DATA(R"({"@type":"Product","name":"T","description":"Cal..."})") "<p>Calf and brass.",
     "1@1 f:1 name='T' description='Calf and brass.'"},
    {"visible_text_beyond_what_it_has",
     GRAINSIDE_DATA(
         R"({"@type":"Product","name":"T","description":"Calf tote. Two handles."})") "<p>9.00<p>CALF\n tote. "
                                                                                      "<b>Two</b> "
                                                                                      "handles.</p><ul><li>Lining: "
                                                                                      "pigskin</ul><p>Waterproof.",
     "1@1 f:1 name='T' description='Calf tote. Two handles.' description='9.00\\n\\n- Lining: "
     "pigskin\\n\\nWaterproof.'"},
    {"visible_text_that_holds_some_of_its_sentences",
     GRAINSIDE_DATA(
         R"({"@type":"Product","name":"T","description":"A slim belt for every day. Strap of calf."})") "<p>9.00<p>A "
                                                                                                        "slim belt for "
                                                                                                        "every day. "
                                                                                                        "Strap of "
                                                                                                        "pigskin.",
     "1@1 f:1 name='T' description='A slim belt for every day. Strap of calf.' description='9.00\\n\\nStrap of "
     "pigskin.'"},
    {"visible_text_that_holds_too_little_of_it",
     GRAINSIDE_DATA(
         R"({"@type":"Product","name":"T","description":"For her. Strap of calf."})") "<p>For her. Strap of pigskin.",
     "1@1 f:1 name='T' description='For her. Strap of calf.'"},
    {"visible_text_says_no_more",
     GRAINSIDE_DATA(R"({"@type":"Product","name":"T","description":"Calf tote"})") "<p>Calf tote<p>Calf tote",
     "1@1 f:1 name='T' description='Calf tote'"},
    {"visible_text_goes_on_in_the_sentence",
     GRAINSIDE_DATA(R"({"@type":"Product","name":"T","description":"Calf tote with a"})") "<p>Calf tote with a split "
                                                                                          "lining.",
     "1@1 f:1 name='T' description='Calf tote with a split lining.'"},
    {"visible_text_says_something_else",
     GRAINSIDE_DATA(R"({"@type":"Product","name":"T","description":"tote"})") "<p>Calf tote and strap.",
     "1@1 f:1 name='T' description='tote'"},
    {"visible_text_beside_several",
     GRAINSIDE_DATA(R"([{"@type":"Product","name":"T","description":"a."},{"@type":"Product","name":"U"}])") "<p>a. b.",
     "1@1 f:1 name='T' description='a.'\n2@1 f:2 name='U'"},
    {"rows_that_it_lacks",
     GRAINSIDE_DATA(
         R"({"@type":"Product","name":"T","description":"d","material":"Calf",)"
         R"("additionalProperty":{"name":"Lining","value":"Cotton twill"}})") "<table><tr><td>LINING:<td>Cotton  "
                                                                              "Twill<tr><td>Material<td>calf<tr><td>"
                                                                              "Lining<td>Silk</table>",
     "1@1 f:1 name='T' description='d' material='Calf' additionalProperty.Lining='Cotton twill' "
     "additionalProperty.Lining='Silk'"},
    {"no_rows_of_several",
     GRAINSIDE_DATA(
         R"([{"@type":"Product","name":"T"},{"@type":"Product","name":"U"}])") "<table><tr><td>Body<td>Calf</table>",
     "1@1 f:1 name='T'\n2@1 f:2 name='U'"},
    {"language_of_the_page", "<html lang=de>" GRAINSIDE_DATA(R"({"@type":"Product","name":"T"})"),
     "1@1 f:1 [de ] name='T'"},
    {"language_of_its_own", "<html lang=de>" GRAINSIDE_DATA(R"({"@type":"Product","name":"T","inLanguage":"fr"})"),
     "1@1 f:1 [fr ] name='T'"},
};
INSTANTIATE_TEST_SUITE_P(LinkedData, HtmlTest, testing::ValuesIn(kLinkedData), row_name);

#undef GRAINSIDE_DATA

}  // namespace
}  // namespace grainside::testing_listing
