// A wording in its place: case, articles, words that would stand twice, formatting.
#include "verdict/fitted_edit.h"

#include <gtest/gtest.h>

#include <ostream>
#include <string>
#include <string_view>
#include <variant>

namespace grainside::verdict {
namespace {

struct FitRow {
    std::string_view name;
    std::string_view text;  // the words in [ ]; before a noun where they stand in [< >], before a stuff alone in [= =]
    std::string_view wording;  // "" = left out
    std::string_view want;     // the text afterwards, or "!" and why there is no edit
};
std::ostream& operator<<(std::ostream& out, const FitRow& row) {
    return out << row.name;
}

std::string fitted(const FitRow& row) {
    std::string text(row.text);
    const std::size_t open = text.find('[');
    const bool before_stuff = text[open + 1] == '=';
    const bool before_noun = text[open + 1] == '<' || before_stuff;
    text.erase(open, before_noun ? 2 : 1);
    const std::size_t close = text.find(before_stuff ? "=]" : before_noun ? ">]" : "]", open);
    text.erase(close, before_noun ? 2 : 1);
    const std::string_view words = std::string_view(text).substr(open);
    const bool is_name = words.starts_with("Italian") || words.starts_with("Made in");
    const auto edit = fit({text, open, close, before_noun, before_stuff, is_name}, std::string(row.wording));
    if (const auto* why = std::get_if<NoFit>(&edit)) return "!" + std::string(*why);
    const auto& made = std::get<FittedEdit>(edit);
    return text.replace(made.start, made.end - made.start, made.wording);
}

// What an editor would expect; 'a' and 'an' go by sound, as every English grammar has it.
constexpr FitRow kRows[] = {
    {"small", "tote in [vegan leather]", "imitation leather", "tote in imitation leather"},
    {"sentence", "Nice. [Vegan leather] here.", "imitation leather", "Nice. Imitation leather here."},
    {"sentence_of_one_word", "[Leatherette] on cotton.", "imitation leather", "Imitation leather on cotton."},
    {"title", "Soleil Tote in [Vegan Leather]", "imitation leather", "Soleil Tote in Imitation Leather"},
    {"title_of_one_word", "Evening Clutch in [Python], Black", "calf leather", "Evening Clutch in Calf Leather, Black"},
    {"title_keeps_small_words", "Bag in [Vegan Leather]", "a sheet of PVC", "Bag in A Sheet of PVC"},
    {"title_behind_apostrophe", "Men's [Leather] Belt Black", "coated fabric", "Men's Coated Fabric Belt Black"},
    {"no_title_in_a_sentence", "[Horsehide] key wallet", "cowhide leather", "Cowhide leather key wallet"},
    {"capitals", "NEW [PU LEATHER] BAG", "imitation leather (polyurethane)",
     "NEW IMITATION LEATHER (POLYURETHANE) BAG"},
    {"name_in_capitals", "made of [PU leather]", "imitation leather", "made of imitation leather"},
    {"name_in_capitals_begins", "[PU leather] bag", "imitation leather", "Imitation leather bag"},
    {"name_alone", "shell of [ABS], grey", "polycarbonate", "shell of polycarbonate, grey"},
    {"name_alone_among_capitals", "SHELL OF [ABS] PLASTIC", "polycarbonate", "SHELL OF POLYCARBONATE PLASTIC"},
    {"own_capitals_stay", "a [steel] pin", "316L stainless steel", "a 316L stainless steel pin"},
    {"bullet", "\xE2\x80\xA2 [Genuine leather], soft", "split leather", "\xE2\x80\xA2 Split leather, soft"},
    {"article_an", "A [vegan leather] bag", "imitation leather", "An imitation leather bag"},
    {"article_a", "in an [alligator] skin", "calf leather", "in a calf leather skin"},
    {"article_capital", "An [alligator] bag", "calf leather", "A calf leather bag"},
    {"article_in_capitals", "IN A [VEGAN LEATHER] BAG", "imitation leather", "IN AN IMITATION LEATHER BAG"},
    {"article_stays", "a [real leather] bag", "split leather", "a split leather bag"},
    {"article_by_sound_hour", "a [day] pack", "hourly", "an hourly pack"},
    {"article_by_sound_unit", "an [oiled] lining", "uniform", "a uniform lining"},
    {"article_by_sound_letters", "a [wooden] board", "MDF", "an MDF board"},
    {"article_by_sound_letters_p", "an [oak] board", "PU", "a PU board"},
    {"article_eight", "a [9 oz] hide", "8 oz", "an 8 oz hide"},
    {"article_unimitated", "a [vegan] hide", "unimitated", "an unimitated hide"},
    {"no_article_of_a_letter", "vitamin A [serum] bag", "oil", "vitamin A oil bag"},
    {"article_not_twice", "with a [silk lining]", "a polyester lining", "with a polyester lining"},
    {"the_article_stays", "with the [silk lining]", "a polyester lining", "with the polyester lining"},
    {"no_double_in_front", "imitation [PU leather] bag", "imitation leather", "imitation leather bag"},
    {"no_double_behind", "the cover is [aniline] leather", "corrected grain leather",
     "the cover is corrected grain leather"},
    {"no_double_all_of_it", "Strap: [full grain] split leather", "split leather", "Strap: split leather"},
    {"no_double_in_other_case", "[FULL GRAIN] Split leather", "split leather", "Split leather"},
    {"no_double_over_a_comma", "Fully machine stitched, [handmade] with love", "machine stitched",
     "Fully machine stitched with love"},
    {"no_double_of_a_share", "Lining: [linen], 100% cotton", "cotton", "Lining: 100% cotton"},
    {"a_share_of_another_word", "Lining: [linen], 100% cottonette", "cotton", "Lining: cotton, 100% cottonette"},
    {"no_double_over_a_comma_behind", "made of [genuine leather], split leather", "split leather",
     "made of split leather"},
    {"article_across_straight_marks", "A \"[vegan leather]\" tote", "imitation leather",
     "An \"imitation leather\" tote"},
    {"article_across_curly_marks", "in a \xE2\x80\x9C[vegan leather]\xE2\x80\x9D tote", "imitation leather",
     "in an \xE2\x80\x9Cimitation leather\xE2\x80\x9D tote"},
    {"article_across_angle_marks", "an \xC2\xAB[eel]\xC2\xBB tote", "cowhide",
     "a \xC2\xAB"
     "cowhide\xC2\xBB tote"},
    {"article_across_emphasis", "a **[vegan leather]** tote", "imitation leather", "an **imitation leather** tote"},
    {"article_across_a_tag", "A <b>[vegan leather]</b> tote", "imitation leather", "An <b>imitation leather</b> tote"},
    {"article_across_marks_stays", "a \"[vegan leather]\" tote", "cowhide", "a \"cowhide\" tote"},
    {"no_article_before_a_bullet", "vitamin a * [vegan leather]", "imitation leather", "vitamin a * imitation leather"},
    {"superlative_of_a_noun", "The [<finest leather>] bag you can buy", "imitation leather",
     "!the words around belong to the superlative that would go"},
    {"superlative_of_a_stuff", "made of the [finest leather].", "imitation leather", "made of imitation leather."},
    {"superlative_begins", "The [finest leather] here.", "imitation leather", "Imitation leather here."},
    {"superlative_begins_in_capitals", "THE [FINEST LEATHER]", "imitation leather", "IMITATION LEATHER"},
    {"superlative_of_several", "one of the [finest leathers]", "imitation leather",
     "!the words around belong to the superlative that would go"},
    {"superlative_behind_an_owner", "the world's [finest leather]", "imitation leather",
     "!the words around belong to the superlative that would go"},
    {"superlative_behind_our", "our [finest leather]", "imitation leather", "our imitation leather"},
    {"superlative_stays", "the [finest leather] bag", "finest split leather", "the finest split leather bag"},
    {"no_superlative", "the [honest leather] bag", "split leather", "the split leather bag"},
    {"superlative_goes", "cut from the [=finest=] leather", "", "cut from leather"},
    {"superlative_goes_at_the_head", "The [=finest=] leather.", "", "Leather."},
    {"superlative_of_a_noun_does_not_go", "The [<finest>] leather bag", "",
     "!the words around belong to the superlative that would go"},
    {"superlative_over_lines", "the\n[=finest=] leather", "", "!a line ends between the words"},
    {"before_noun_longer", "[<Italian leather>] satchel", "leather tanned in Pakistan",
     "!the wording does not fit before the noun that follows"},
    {"before_noun_short_brackets_fit", "[<Cork leather>] case", "imitation leather (cork)",
     "Imitation leather (cork) case"},
    {"before_noun_notice_in_brackets_fits", "[<Nickel-free>] clasp", "silver (contains nickel)",
     "Silver (contains nickel) clasp"},
    {"before_noun_long_brackets_go", "An [<apple leather>] loop", "imitation leather (sheet with filler)",
     "An imitation leather loop"},
    {"long_brackets_at_the_end", "Loop of [apple leather].", "imitation leather (sheet with filler)",
     "Loop of imitation leather (sheet with filler)."},
    {"before_noun_alike_fits", "[<Made in Italy>] bag", "made in China", "Made in China bag"},
    {"title_of_an_origin", "Satchel in Leather, [Made in Italy]", "made in China", "Satchel in Leather, Made in China"},
    {"at_the_end_longer_fits", "satchel in [Italian leather].", "leather tanned in Pakistan",
     "satchel in leather tanned in Pakistan."},
    {"out", "made of [<luxury>] leather.", "", "made of leather."},
    {"out_takes_the_capital", "[<Luxury>] leather tote", "", "Leather tote"},
    {"out_of_a_title", "Tote in [<Luxury>] Leather", "", "Tote in Leather"},
    {"out_at_an_item", "- [<Premium>] calf", "", "- Calf"},
    {"out_mends_the_article", "an [<eco-friendly>] bag", "", "a bag"},
    {"out_mends_the_article_to_an", "a [<premium>] ostrich bag", "", "an ostrich bag"},
    {"out_not_alone", "It is [durable].", "", "!without the words the phrase around them has to be written anew"},
    {"out_not_behind_and", "soft and [<luxury>] leather", "",
     "!without the words the phrase around them has to be written anew"},
    {"out_not_before_and", "[<durable>] and soft leather", "",
     "!without the words the phrase around them has to be written anew"},
    {"out_not_behind_a_comma", "soft, [<luxury>] leather", "",
     "!without the words the phrase around them has to be written anew"},
    {"out_not_behind_very", "a very [<luxurious>] leather", "",
     "!without the words the phrase around them has to be written anew"},
    {"out_not_behind_an_adverb", "truly [<luxurious>] leather", "",
     "!without the words the phrase around them has to be written anew"},
    {"out_not_behind_is", "this is [<luxury>] leather", "",
     "!without the words the phrase around them has to be written anew"},
    {"out_before_a_line_end", "made of [<luxury>]\nleather", "", "made of\nleather"},
    {"out_not_of_a_whole_line", "made of\n[<luxury>]\nleather", "", "!a line ends between the words"},
    {"out_not_over_lines", "made of [<heavy\nduty>] leather", "", "!a line ends between the words"},
    {"bracket_that_says_it", "Upper: [nubuck] (microfibre), new", "microfibre", "Upper: microfibre, new"},
    {"bracket_that_says_its_share", "Lined in [Silk] (100% viscose).", "viscose", "Lined in 100% viscose."},
    {"bracket_that_says_other", "Upper: [leather] (PU)", "polyurethane", "Upper: polyurethane (PU)"},
    {"bracket_that_says_more", "Upper: [nubuck] (soft microfibre)", "microfibre",
     "Upper: microfibre (soft microfibre)"},
    {"bracket_that_is_open", "Upper: [nubuck] (microfibre", "microfibre", "Upper: microfibre (microfibre"},
    {"quotation_marks", "our [\"genuine\" leather] bag", "split leather", "!formatting stands between the words"},
    {"curly_quotation_marks", "our [\xE2\x80\x9Cgenuine\xE2\x80\x9D leather] bag", "split leather",
     "!formatting stands between the words"},
    {"quotation_marks_around", "our \"[genuine leather]\" bag", "split leather", "our \"split leather\" bag"},
    {"emphasis", "our [**genuine** leather] bag", "split leather", "!formatting stands between the words"},
    {"emphasis_around", "our **[genuine leather]** bag", "split leather", "our **split leather** bag"},
    {"tag", "our [genuine<br>leather] bag", "split leather", "!formatting stands between the words"},
    {"line_end_stays", "our [vegan\nleather] bag", "imitation leather", "our imitation\nleather bag"},
    {"line_end_stays_crlf", "our [vegan\r\n  leather] bag", "imitation leather", "our imitation\r\n  leather bag"},
    {"line_end_with_one_word", "our [real\nleather] bag", "polyurethane", "!a line ends between the words"},
    {"line_end_behind_the_article", "It is a\n[vegan leather] bag", "imitation leather",
     "It is an\nimitation leather bag"},
    {"part_of_a_word", "top-[grain leather] sofa", "split leather", "!the words are only a part of a longer word"},
    {"before_a_hyphen", "[Down]-filled pad", "polyester", "Polyester-filled pad"},
    {"before_a_hyphen_not_twice", "[Solid gold]-plated clasp", "plated metal",
     "!the words are only a part of a longer word"},
    {"no_double_at_the_head", "[Genuine cowhide], split leather.", "split leather", "Split leather."},
    {"alone", "[Bamboo]", "viscose made from bamboo", "Viscose made from bamboo"},
};

class FitTest : public testing::TestWithParam<FitRow> {};

TEST_P(FitTest, GivesWhatTheRowSays) {
    EXPECT_EQ(fitted(GetParam()), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, FitTest, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

// What a person is shown as 'write X' is a word, also where only its first letter changes.
TEST(Fit, PutsWholeWordsInPlace) {
    const std::string_view text = "Premium saffiano-look leather bag";
    const auto edit = std::get<FittedEdit>(fit({text, 0, 7, true, false, false}, ""));
    EXPECT_EQ(edit.wording, "Saffiano");
    EXPECT_EQ(text.substr(edit.start, edit.end - edit.start), "Premium saffiano");

    const std::string_view twice = "Luxury, luxury leather";
    const auto beside = std::get<FittedEdit>(fit({twice, 0, 6, false, false, false}, "luxury"));
    EXPECT_EQ(beside.wording, "Luxury");
    EXPECT_EQ(twice.substr(beside.start, beside.end - beside.start), "Luxury, luxury");
}

}  // namespace
}  // namespace grainside::verdict
