// Better wordings as bytes of a saved page.
#ifndef GRAINSIDE_TOOLS_EDIT_PAGE_EDITS_H
#define GRAINSIDE_TOOLS_EDIT_PAGE_EDITS_H

#include <string_view>
#include <vector>

#include "edit/field_places.h"
#include "edit/listing_remarks.h"
#include "edit/page_reading.h"
#include "grainside/listing.h"
#include "grainside/reword.h"
#include "source_edits.h"

namespace grainside::tools::edit {

// One for each pass over a document.
class PageEdits {
public:
    explicit PageEdits(const ListingDocument& document)
        : page_(document.places.text()),
          reading_(page_, document.name, kMostBytesRead),
          fields_(document.places, &reading_) {}

    // At `where`, one or none: the words have to stand between two tags, and the page, read again, says what the edit
    // says, and all else as it did. REQUIRES: `edit` is one of `listing`, which was read from the page.
    std::vector<SourceEdit> find(const TextSpan& where, const Listing& listing, const Edit& edit);

private:
    // A page of a megabyte with 200 edits that are all asked for.
    static constexpr std::size_t kMostBytesRead = std::size_t{256} << 20;

    std::string_view page_;
    PageReading reading_;
    FieldPlaces fields_;
};

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_PAGE_EDITS_H
