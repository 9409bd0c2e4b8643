// What the attributes of a tag say of the text in it.
#ifndef GRAINSIDE_LISTING_TAG_MEANING_H
#define GRAINSIDE_LISTING_TAG_MEANING_H

#include <optional>
#include <string_view>

#include "listing/html_tag.h"

namespace grainside::listing {

// Whether the page marks its text as somebody else's: a review or rating of schema.org in microdata, or a block
// quotation that names its source (HTML standard, "blockquote").
bool marks_words_of_others(const HtmlTag& tag);

// Whether a shopper does not see it, but for what opens at a click.
bool is_hidden(const HtmlTag& tag);

// Of an ARIA role: navigation, a dialog and the like, never words of the listing.
bool has_unread_role(std::string_view role);

// Of a script's type: JSON-LD, with parameters or not.
bool is_linked_data(std::string_view type);

// The attribute that holds the value of a property, as the HTML standard says of each element; but of links, times and
// data it names what a program reads, and we take the words that a shopper does. Nothing: the value is the text.
std::optional<Attribute> value_attribute(Element element);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_TAG_MEANING_H
