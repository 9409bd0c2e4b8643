#include "listing/page_others.h"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <string>

#include "listing/html_element.h"

namespace grainside::listing {
namespace {

// Common practice of those who write pages, no source; a word is whole between '-', '_' and capitals.
constexpr std::string_view kOtherWords[] = {
    "review",     "reviews",      "rating",    "ratings",      "testimonial",    "testimonials", "related",
    "recommend",  "recommended",  "upsell",    "upsells",      "recommendation", "crosssell",    "recommendations",
    "crosssells", "breadcrumb",   "cookie",    "breadcrumbs",  "cookies",        "consent",      "newsletter",
    "comments",   "minicart",     "similar",   "bestseller",   "bestsellers",    "bewertung",    "bewertungen",
    "empfehlung", "avis",         "opiniones", "empfehlungen", "recensioni",     "correlati",    "relacionados",
    "similaires", "announcement", "nav",       "navbar",       "menu",           "megamenu",     "footer",
    "promo",      "banner",       "feedback",  "testimony"};
constexpr std::string_view kOtherPairs[] = {"also like",    "also bought",     "also viewed", "cross sell",
                                            "cross sells",  "recently viewed", "mini cart",   "bought together",
                                            "product card", "product tile"};
// "has-reviews" on the whole product does not make the product a review.
constexpr std::string_view kOnlySaying[] = {"has", "with", "no", "show", "hide", "is", "js", "without", "enable"};

constexpr std::string_view kPanelWords[] = {"accordion",   "tab",      "tabs",     "tabcontent", "panel",
                                            "collapsible", "collapse", "tabpanel", "foldable",   "toggle"};
constexpr std::size_t kLongestToken = 64;
constexpr std::size_t kMostClassBytes = 1024;  // of a class attribute

// Lower case, ASCII letters; others as UTF-8.
constexpr std::string_view kOtherHeadings[] = {"you may also",
                                               "you might also",
                                               "customers also",
                                               "people also",
                                               "others also",
                                               "related products",
                                               "related items",
                                               "similar products",
                                               "similar items",
                                               "recommended for you",
                                               "our recommendations",
                                               "recently viewed",
                                               "customer reviews",
                                               "product reviews",
                                               "reviews",
                                               "customer ratings",
                                               "ratings",
                                               "what our customers say",
                                               "what customers say",
                                               "frequently bought",
                                               "more from",
                                               "more bags",
                                               "complete the look",
                                               "shop the look",
                                               "pairs well with",
                                               "goes well with",
                                               "best sellers",
                                               "bestsellers",
                                               "testimonials",
                                               "write a review",
                                               "das k\xC3\xB6nnte",
                                               "\xC3\xA4hnliche",
                                               "\xC3\x84hnliche",
                                               "kundenbewertung",
                                               "bewertungen",
                                               "zuletzt angesehen",
                                               "kunden kauften",
                                               "passend dazu",
                                               "vous aimerez",
                                               "vous pourriez",
                                               "avis",
                                               "produits similaires",
                                               "produits associ",
                                               "potrebbe",
                                               "recensioni",
                                               "prodotti correlati",
                                               "prodotti simili",
                                               "te puede",
                                               "productos relacionados",
                                               "productos similares",
                                               "opiniones",
                                               "valoraciones"};
constexpr std::size_t kLongestHeading = 80;

bool is_letter_byte(char c) {
    return (lower(c) >= 'a' && lower(c) <= 'z') || static_cast<unsigned char>(c) >= 0x80;
}

bool is_capital(char c) {
    return c >= 'A' && c <= 'Z';
}

// "relatedProducts-list" as " related products list ".
std::string spread(std::string_view token) {
    std::string out = " ";
    for (std::size_t i = 0; i < token.size(); ++i) {
        const bool begins_word = is_capital(token[i]) && i > 0 && !is_capital(token[i - 1]);
        if (!is_letter_byte(token[i]) || begins_word) {
            if (out.back() != ' ') out += ' ';
            if (!begins_word) continue;
        }
        out += lower(token[i]);
    }
    if (out.back() != ' ') out += ' ';
    return out;
}

template <std::size_t Count>
bool has_any(const std::string& words, const std::string_view (&wanted)[Count]) {
    return std::any_of(std::begin(wanted), std::end(wanted), [&](std::string_view word) {
        const std::size_t at = words.find(word);
        return at != std::string::npos && words[at - 1] == ' ' && words[at + word.size()] == ' ';
    });
}

template <typename Test>
bool any_token(std::string_view names, Test test) {
    names = names.substr(0, kMostClassBytes);
    std::size_t at = 0;
    while (at < names.size()) {
        std::size_t end = at;
        while (end < names.size() && !is_html_space(names[end])) ++end;
        if (end > at && test(names.substr(at, end - at))) return true;
        at = end + 1;
    }
    return false;
}

bool token_names_other_things(std::string_view token) {
    if (token.size() > kLongestToken) return false;
    const std::string words = spread(token);
    return (has_any(words, kOtherWords) || has_any(words, kOtherPairs)) && !has_any(words, kOnlySaying);
}

}  // namespace

bool names_other_things(std::string_view class_or_id) {
    return any_token(class_or_id, token_names_other_things);
}

bool names_folded_panel(std::string_view class_names) {
    return any_token(class_names, [](std::string_view token) {
        return token.size() <= kLongestToken && has_any(spread(token), kPanelWords);
    });
}

bool heads_other_things(std::string_view heading) {
    if (heading.size() > kLongestHeading) return false;
    std::string words(heading);
    std::transform(words.begin(), words.end(), words.begin(), lower);
    return std::any_of(std::begin(kOtherHeadings), std::end(kOtherHeadings), [&](std::string_view phrase) {
        const std::size_t at = words.find(phrase);
        return at != std::string::npos && (at == 0 || !is_letter_byte(words[at - 1]));
    });
}

}  // namespace grainside::listing
