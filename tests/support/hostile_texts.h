// Texts in which one thing stands again and again: what would take quadratic time in a grammar that looks around.
#ifndef GRAINSIDE_TESTS_SUPPORT_HOSTILE_TEXTS_H
#define GRAINSIDE_TESTS_SUPPORT_HOSTILE_TEXTS_H

#include <cstddef>
#include <string>
#include <string_view>

namespace grainside::support {

struct HostileText {
    std::string_view name;
    std::string_view first, repeated, last;
};

inline constexpr HostileText kHostileTexts[] = {
    {"sentences", "", "PU leather. ", ""},
    {"one_sentence", "", "leather, ", ""},
    {"one_phrase", "", "leather ", ""},
    {"conjunctions", "", "leather and ", ""},
    {"lines_of_labels", "", "Lining: cotton\n", ""},
    {"shares", "", "1% cotton, ", ""},
    {"negators", "", "no leather, ", "or cotton"},
    {"comparisons", "", "like leather or ", ""},
    {"disagreeing_origins", "Made in Italy. ", "Made in China. ", ""},
    {"modifiers", "", "genuine ", "leather"},
    {"table", "", "| Lining | cotton ", "|"},
    {"open_brackets", "", "(leather ", ""},
    {"teaching", "leather ", "means ", ""},
    {"accessories", "", "dust bag and ", ""},
    {"numbers_in_a_phrase", "", "1.2-1.4 mm ", "leather"},
    {"statements_in_a_phrase", "", "waterproof ", ""},
    {"materials_in_a_phrase", "", "leather cotton ", ""},
    {"shares_in_a_phrase", "", "30% cotton ", ""},
    {"sold_separately", "", "not included ", ""},
    {"labels_in_a_line", "", "lining: ", ""},
    {"tied_to_a_sale", "leather ", "and not included ", ""},
    {"supplied", "", "supplied with a leather ", ""},
    {"shares_of_two_parts", "", "9% cotton lining, 9% silk handle, 9% goo, ", ""},
    {"praise", "", "premium leather. ", ""},
    {"brackets_behind_a_sale", "", "not included ( ", ""},
    {"lists_before_a_sale", "", "leather and ", "not included"},
    {"accessory_brackets", "", "tissue ( ", ""},
    {"colour_names", "the colour ", "is called ", ""},
    {"other_goods", "", "leather sofa ", ""},
    {"copulas", "", "leather is ", ""},
    {"tannage_labels", "", "tannage: chrome ", ""},
    {"with_and_without", "", "with no leather ", ""},
};

inline std::string repeated(const HostileText& row, std::size_t times) {
    std::string text(row.first);
    for (std::size_t i = 0; i < times; ++i) text += row.repeated;
    return text += row.last;
}

}  // namespace grainside::support

#endif  // GRAINSIDE_TESTS_SUPPORT_HOSTILE_TEXTS_H
