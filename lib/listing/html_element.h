// What the reader of pages has to know of an HTML element: how it breaks lines, what it closes, whether it is read.
#ifndef GRAINSIDE_LISTING_HTML_ELEMENT_H
#define GRAINSIDE_LISTING_HTML_ELEMENT_H

#include <cstdint>
#include <string_view>

namespace grainside::listing {

namespace html {
inline constexpr std::uint16_t kVoid = 1;       // has no content and no end tag
inline constexpr std::uint16_t kRaw = 2;        // what stands inside is text up to the end tag, whatever it looks like
inline constexpr std::uint16_t kBlock = 4;      // begins and ends a line, ends a <p>, and inline end tags stop at it
inline constexpr std::uint16_t kParagraph = 8;  // a blank line stands before and behind it
inline constexpr std::uint16_t kScope = 16;     // end tags inside close nothing outside
inline constexpr std::uint16_t kUnread = 32;    // no words about the goods: navigation, controls, what is not shown
inline constexpr std::uint16_t kHeading = 64;
}  // namespace html

// Those that have a part of their own in reading; `other` is every element that HTML does not name, and the inline
// ones.
enum class Element : std::uint8_t {
    other,
    address,
    article,
    aside,
    audio,
    base,
    blockquote,
    body,
    br,
    button,
    canvas,
    caption,
    center,
    col,
    datalist,
    dd,
    details,
    dialog,
    dir,
    div,
    dl,
    dt,
    embed,
    fieldset,
    figcaption,
    figure,
    footer,
    form,
    frame,
    h1,
    h2,
    h3,
    h4,
    h5,
    h6,
    head,
    header,
    hgroup,
    hr,
    html,
    iframe,
    img,
    input,
    label,
    legend,
    li,
    link,
    main,
    menu,
    meta,
    meter,
    nav,
    noembed,
    noframes,
    noscript,
    object,
    ol,
    optgroup,
    option,
    p,
    param,
    pre,
    progress,
    script,
    search,
    section,
    select,
    source,
    style,
    summary,
    svg,
    table,
    tbody,
    td,
    template_part,
    textarea,
    tfoot,
    th,
    thead,
    title,
    tr,
    track,
    ul,
    video,
    wbr,
    xmp
};
inline constexpr std::size_t kElements = static_cast<std::size_t>(Element::xmp) + 1;

struct ElementKind {
    std::string_view name;
    Element element = Element::other;
    std::uint16_t flags = 0;

    bool is(std::uint16_t flag) const noexcept { return (flags & flag) != 0; }
};

// `name` in any case. What is not listed is an inline element.
ElementKind element_kind(std::string_view name);

// Whether the two are alike but for the case of ASCII letters.
bool is_same_word(std::string_view a, std::string_view b);

constexpr char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}
// HTML standard, "ASCII whitespace".
constexpr bool is_html_space(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\f' || c == '\r';
}

// Calls `take` with each word of an attribute whose words are set apart by white space.
template <typename Take>
void each_html_word(std::string_view words, Take take) {
    std::size_t at = 0;
    while (at < words.size()) {
        std::size_t end = at;
        while (end < words.size() && !is_html_space(words[end])) ++end;
        if (end > at) take(words.substr(at, end - at));
        at = end + 1;
    }
}

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_HTML_ELEMENT_H
