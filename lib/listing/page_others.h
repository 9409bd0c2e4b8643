// What on a shop's page speaks of other goods or for other people: reviews, recommendations, and the page's own
// furniture.
#ifndef GRAINSIDE_LISTING_PAGE_OTHERS_H
#define GRAINSIDE_LISTING_PAGE_OTHERS_H

#include <string_view>

namespace grainside::listing {

// By the words of a class or id attribute, as authors of pages name things: "product-reviews", "relatedProducts",
// "upsell". A name that only says that something has or shows such a part ("has-reviews") does not count.
bool names_other_things(std::string_view class_or_id);

// By the words of a class, whether this is a part that the page folds away until somebody clicks: a tab, an accordion.
bool names_folded_panel(std::string_view class_names);

// By a heading: "You may also like", "Customer reviews (12)", in the languages of the shops that we read.
bool heads_other_things(std::string_view heading);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_PAGE_OTHERS_H
