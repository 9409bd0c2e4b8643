// Where the words of a listing's field stand in the document that the listing was read from.
#ifndef GRAINSIDE_TOOLS_EDIT_FIELD_PLACES_H
#define GRAINSIDE_TOOLS_EDIT_FIELD_PLACES_H

#include <cstddef>
#include <string_view>

#include "edit/text_places.h"
#include "grainside/listing.h"
#include "grainside/source_place.h"
#include "text/token.h"

namespace grainside::tools::edit {

struct FieldPlace {
    TextSpan span;
    // Whether exactly these bytes are the words; else they were looked for, or only the listing's beginning is known,
    // and nothing is written there.
    bool exact = false;
};

// One for each pass over a document. The text outlives it.
class FieldPlaces {
public:
    explicit FieldPlaces(const TextPlaces& places) : places_(places) {}

    FieldPlace find(const Listing& listing, std::size_t field, std::size_t start, std::size_t end);

private:
    // The visible text of a page has no places: the words are looked for, with so much around them as makes them stand
    // once; as bytes, and where tags, line ends or references stand between them, as words. Nothing is looked for in
    // longer texts.
    static constexpr std::size_t kMostSearched = std::size_t{1} << 20U;
    TextSpan search(std::string_view field, std::size_t start, std::size_t end);
    TextSpan search_words(std::string_view field, std::size_t start, std::size_t end);

    const TextPlaces& places_;
    text::Tokens document_;  // cut when first needed
    text::Tokens field_;
    SourcePlaces sources_;
};

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_FIELD_PLACES_H
