// The tags and texts of an HTML page one after the other, as slices of it.
//
// It follows the tokenization stage of the HTML standard, without building anything, and knows to the byte where each
// thing stands. libxml2 2.9.14 was tried for this and left: its HTML reader compares each attribute with all of its
// tag and each end tag with all that is open, so that half a megabyte of attributes takes it 23 seconds.
#ifndef GRAINSIDE_LISTING_HTML_TOKENIZER_H
#define GRAINSIDE_LISTING_HTML_TOKENIZER_H

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "listing/html_element.h"

namespace grainside::listing {

// The attributes that a reader of pages asks for; others are passed over.
enum class Attribute : std::uint8_t {
    aria_hidden,
    charset,
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

struct HtmlToken {
    enum class Kind : std::uint8_t {
        text,      // character references are not resolved
        raw_text,  // what stands in an element of html::kRaw; before it came its start tag, behind it comes its end tag
        start_tag,
        end_tag,
        end
    };
    Kind kind = Kind::end;
    bool closes_itself = false;  // "/>", which only XML and foreign elements obey
    ElementKind element;         // of tags, and of raw text the element that it stands in
    std::size_t at = 0;          // where the token begins in the page
    std::string_view text;       // of texts
    // Values as written, the first of each name. Those that are there are told by `has`, for a value may be empty.
    std::array<std::string_view, kAttributes> values{};
    std::uint32_t present = 0;

    bool has(Attribute which) const noexcept { return (present >> static_cast<unsigned>(which) & 1U) != 0; }
    // "" where it is not there.
    std::string_view value(Attribute which) const noexcept {
        return has(which) ? values[static_cast<std::size_t>(which)] : std::string_view{};
    }
};

// Time is linear in the page, memory constant. Not thread-safe.
class HtmlTokenizer {
public:
    // `page` outlives the tokenizer and its tokens. `is_xml`: "/>" ends every element and CDATA is text, as in XHTML.
    explicit HtmlTokenizer(std::string_view page, bool is_xml = false) : page_(page), is_xml_(is_xml) {}

    // False at the end.
    bool next(HtmlToken& token);

private:
    bool markup(HtmlToken& token);
    void pass_declaration(HtmlToken& token);
    bool tag(HtmlToken& token, std::size_t name_at, bool is_end);
    void attributes(HtmlToken& token);
    std::string_view attribute_value();
    void raw_text(HtmlToken& token);
    void pass_to(std::string_view mark, std::size_t from);
    bool at_end() const { return at_ >= page_.size(); }

    std::string_view page_;
    bool is_xml_;
    std::size_t at_ = 0;
    ElementKind raw_;  // the element whose text comes next
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_HTML_TOKENIZER_H
