#include "listing/html_element.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <iterator>

namespace grainside::listing {
namespace {

using namespace html;

// Source: HTML standard, "void elements", "special" elements and scopes of "the stack of open elements", and the
// rendering section for what is a block, from memory. Sorted for the search by halves. What is read and what is not is
// ours: a reader of the words that a shopper reads.
constexpr ElementKind kKinds[] = {
    {"address", Element::address, kBlock},
    {"article", Element::article, kBlock | kParagraph},
    {"aside", Element::aside, kBlock | kParagraph | kUnread},
    {"audio", Element::audio, kUnread},
    {"base", Element::base, kVoid},
    {"blockquote", Element::blockquote, kBlock | kParagraph},
    {"body", Element::body, kBlock | kScope},
    {"br", Element::br, kVoid},
    {"button", Element::button, kUnread},
    {"canvas", Element::canvas, kUnread},
    {"caption", Element::caption, kBlock | kScope},
    {"center", Element::center, kBlock},
    {"col", Element::col, kVoid},
    {"datalist", Element::datalist, kUnread},
    {"dd", Element::dd, kBlock},
    {"details", Element::details, kBlock | kParagraph},
    {"dialog", Element::dialog, kBlock | kUnread},
    {"dir", Element::dir, kBlock | kParagraph},
    {"div", Element::div, kBlock},
    {"dl", Element::dl, kBlock | kParagraph},
    {"dt", Element::dt, kBlock},
    {"embed", Element::embed, kVoid},
    {"fieldset", Element::fieldset, kBlock},
    {"figcaption", Element::figcaption, kBlock},
    {"figure", Element::figure, kBlock | kParagraph},
    {"footer", Element::footer, kBlock | kParagraph | kUnread},
    {"form", Element::form, kBlock},
    {"frame", Element::frame, kVoid},
    {"h1", Element::h1, kBlock | kParagraph | kHeading},
    {"h2", Element::h2, kBlock | kParagraph | kHeading},
    {"h3", Element::h3, kBlock | kParagraph | kHeading},
    {"h4", Element::h4, kBlock | kParagraph | kHeading},
    {"h5", Element::h5, kBlock | kParagraph | kHeading},
    {"h6", Element::h6, kBlock | kParagraph | kHeading},
    {"head", Element::head, kBlock},
    {"header", Element::header, kBlock | kParagraph},
    {"hgroup", Element::hgroup, kBlock},
    {"hr", Element::hr, kVoid | kBlock | kParagraph},
    {"html", Element::html, kBlock | kScope},
    {"iframe", Element::iframe, kRaw},
    {"img", Element::img, kVoid},
    {"input", Element::input, kVoid},
    {"label", Element::label, kUnread},
    {"legend", Element::legend, kUnread},
    {"li", Element::li, kBlock},
    {"link", Element::link, kVoid},
    {"main", Element::main, kBlock | kParagraph},
    {"menu", Element::menu, kBlock | kParagraph},
    {"meta", Element::meta, kVoid},
    {"meter", Element::meter, 0},
    {"nav", Element::nav, kBlock | kParagraph | kUnread},
    {"noembed", Element::noembed, kRaw},
    {"noframes", Element::noframes, kRaw},
    {"noscript", Element::noscript, kRaw},
    {"object", Element::object, kScope},
    {"ol", Element::ol, kBlock | kParagraph},
    {"optgroup", Element::optgroup, kUnread},
    {"option", Element::option, kUnread},
    {"p", Element::p, kBlock | kParagraph},
    {"param", Element::param, kVoid},
    {"pre", Element::pre, kBlock | kParagraph},
    {"progress", Element::progress, kUnread},
    {"script", Element::script, kRaw},
    {"search", Element::search, kBlock | kUnread},
    {"section", Element::section, kBlock | kParagraph},
    {"select", Element::select, kUnread},
    {"source", Element::source, kVoid},
    {"style", Element::style, kRaw},
    {"summary", Element::summary, kBlock},
    {"svg", Element::svg, kUnread},
    {"table", Element::table, kBlock | kParagraph | kScope},
    {"tbody", Element::tbody, kBlock},
    {"td", Element::td, kBlock | kScope},
    {"template", Element::template_part, kScope | kUnread},
    {"textarea", Element::textarea, kRaw},
    {"tfoot", Element::tfoot, kBlock},
    {"th", Element::th, kBlock | kScope},
    {"thead", Element::thead, kBlock},
    {"title", Element::title, kRaw},
    {"tr", Element::tr, kBlock},
    {"track", Element::track, kVoid},
    {"ul", Element::ul, kBlock | kParagraph},
    {"video", Element::video, kUnread},
    {"wbr", Element::wbr, kVoid},
    {"xmp", Element::xmp, kRaw},
};
static_assert(std::size(kKinds) + 1 == kElements);
static_assert(std::is_sorted(std::begin(kKinds), std::end(kKinds),
                             [](const ElementKind& a, const ElementKind& b) { return a.name < b.name; }));

constexpr std::size_t kLongestElement = 10;

}  // namespace

ElementKind element_kind(std::string_view name) {
    std::array<char, kLongestElement> folded{};
    if (name.size() > folded.size()) return {name};
    std::transform(name.begin(), name.end(), folded.begin(), lower);
    const std::string_view wanted(folded.data(), name.size());
    const auto* const found =
        std::lower_bound(std::begin(kKinds), std::end(kKinds), wanted,
                         [](const ElementKind& kind, std::string_view key) { return kind.name < key; });
    return found != std::end(kKinds) && found->name == wanted ? *found : ElementKind{name};
}

bool is_same_word(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](char x, char y) { return lower(x) == lower(y); });
}

}  // namespace grainside::listing
