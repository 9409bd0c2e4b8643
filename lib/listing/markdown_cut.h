// Markdown: the first top heading is the name, the rest the description.
#ifndef GRAINSIDE_LISTING_MARKDOWN_CUT_H
#define GRAINSIDE_LISTING_MARKDOWN_CUT_H

#include <string_view>
#include <vector>

#include "grainside/listing.h"

namespace grainside::listing {

// A heading as CommonMark 0.30 has it in sections 4.2 ('# Name') and 4.3 (a paragraph underlined with '==='), at the
// top level only and outside of fenced code. An empty one is passed over. Text before the heading is a description of
// its own, so that every field is an exact slice of `file`; blank parts give no field.
std::vector<Field> cut_markdown(std::string_view file);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_MARKDOWN_CUT_H
