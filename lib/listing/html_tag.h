// A start tag of a page, and those of its attributes that a reader of pages asks for.
#ifndef GRAINSIDE_LISTING_HTML_TAG_H
#define GRAINSIDE_LISTING_HTML_TAG_H

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "listing/html_element.h"

namespace grainside::listing {

// Others are passed over.
enum class Attribute : std::uint8_t {
    aria_hidden,
    charset,
    cite,
    class_names,
    content,
    data,
    datetime,
    hidden,
    href,
    id,
    itemprop,
    itemscope,
    itemtype,
    lang,
    name,
    open,
    property,
    role,
    src,
    style,
    type,
    value,
    xml_lang
};
inline constexpr std::size_t kAttributes = static_cast<std::size_t>(Attribute::xml_lang) + 1;

struct HtmlTag {
    ElementKind element;
    std::size_t at = 0;  // where it begins in the page
    bool closes_itself = false;
    // Values with their character references as written, the first of each name. Those that are there are told by
    // `has`, for a value may be empty. They live as long as the call that hands the tag over.
    std::array<std::string_view, kAttributes> values{};
    std::uint32_t present = 0;

    bool has(Attribute which) const noexcept { return (present >> static_cast<unsigned>(which) & 1U) != 0; }
    // "" where it is not there.
    std::string_view value(Attribute which) const noexcept {
        return has(which) ? values[static_cast<std::size_t>(which)] : std::string_view{};
    }
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_HTML_TAG_H
