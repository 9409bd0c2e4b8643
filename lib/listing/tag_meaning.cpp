#include "listing/tag_meaning.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>

#include "listing/page_others.h"
#include "listing/product_type.h"

namespace grainside::listing {
namespace {

// "display : none" in any spelling.
bool style_hides(std::string_view style) {
    std::string folded;
    constexpr std::size_t kMostStyleBytes = 4096;
    for (const char c : style.substr(0, kMostStyleBytes)) {
        if (!is_html_space(c)) folded += lower(c);
    }
    return folded.find("display:none") != std::string::npos || folded.find("visibility:hidden") != std::string::npos;
}

}  // namespace

bool marks_words_of_others(const HtmlTag& tag) {
    // Review and the types below it that shops use, and what sums reviews up.
    constexpr std::array<std::string_view, 5> kTypes = {"Review", "UserReview", "CriticReview", "Rating",
                                                        "AggregateRating"};
    constexpr std::array<std::string_view, 4> kProperties = {"review", "reviews", "reviewBody", "aggregateRating"};
    if (tag.element.element == Element::blockquote && tag.has(Attribute::cite)) return true;
    const auto is_in = [](const auto& known, std::string_view word) {
        return std::find(known.begin(), known.end(), word) != known.end();
    };
    bool marks = false;
    each_html_word(tag.value(Attribute::itemtype),
                   [&](std::string_view type) { marks = marks || is_in(kTypes, type_name(type)); });
    each_html_word(tag.value(Attribute::itemprop),
                   [&](std::string_view name) { marks = marks || is_in(kProperties, name); });
    return marks;
}

bool is_hidden(const HtmlTag& tag) {
    // Pages hide themselves until their scripts have run, and show a tab's panel at a click: a shopper reads both.
    if (tag.element.element == Element::html || tag.element.element == Element::body ||
        tag.element.element == Element::main)
        return false;
    if (is_same_word(tag.value(Attribute::role), "tabpanel") || names_folded_panel(tag.value(Attribute::class_names))) {
        return false;
    }
    return (tag.has(Attribute::hidden) && !is_same_word(tag.value(Attribute::hidden), "until-found")) ||
           is_same_word(tag.value(Attribute::aria_hidden), "true") || style_hides(tag.value(Attribute::style));
}

bool has_unread_role(std::string_view role) {
    constexpr std::array<std::string_view, 8> kRoles = {"navigation", "banner", "contentinfo", "complementary",
                                                        "search",     "dialog", "alertdialog", "button"};
    return std::any_of(kRoles.begin(), kRoles.end(), [&](std::string_view known) { return is_same_word(role, known); });
}

bool is_linked_data(std::string_view type) {
    type = type.substr(0, type.find(';'));
    while (!type.empty() && is_html_space(type.back())) type.remove_suffix(1);
    while (!type.empty() && is_html_space(type.front())) type.remove_prefix(1);
    return is_same_word(type, "application/ld+json");
}

std::optional<Attribute> value_attribute(Element element) {
    switch (element) {
        case Element::meta:
            return Attribute::content;
        case Element::audio:
        case Element::embed:
        case Element::iframe:
        case Element::img:
        case Element::source:
        case Element::track:
        case Element::video:
            return Attribute::src;
        case Element::link:
            return Attribute::href;
        case Element::object:
            return Attribute::data;
        case Element::meter:
            return Attribute::value;
        default:
            return std::nullopt;
    }
}

}  // namespace grainside::listing
