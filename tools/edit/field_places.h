// Where the words of a listing's field stand in the document that the listing was read from.
#ifndef GRAINSIDE_TOOLS_EDIT_FIELD_PLACES_H
#define GRAINSIDE_TOOLS_EDIT_FIELD_PLACES_H

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "edit/page_reading.h"
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

// One for each pass over a document. The text, and `page`, outlive it.
class FieldPlaces {
public:
    // `page`: of the same text where that is a saved page, to tell where of several places; else nullptr.
    explicit FieldPlaces(const TextPlaces& places, PageReading* page = nullptr) : places_(places), page_(page) {}

    FieldPlace find(const Listing& listing, std::size_t field, std::size_t start, std::size_t end);
    // Nothing where the words cannot stand at `where`, which is known without reading the page again.
    std::optional<FieldPlace> find_at(const TextSpan& where, const Listing& listing, std::size_t field,
                                      std::size_t start, std::size_t end);

private:
    // The visible text of a page has no places: the words are looked for, with so much around them as makes them stand
    // once; as bytes, and where tags, line ends or references stand between them, as words. Nothing is looked for in
    // longer texts.
    static constexpr std::size_t kMostSearched = std::size_t{1} << 20U;
    // A page says its description in its head, too, and its name many times.
    static constexpr std::size_t kMostPlaces = 6;
    struct Wanted {
        std::string_view field;  // its text
        std::size_t start;
        std::size_t end;
    };
    using Places = std::vector<TextSpan>;  // the likeliest first
    FieldPlace choose(const Places& found, const Listing& listing, std::size_t field, const Wanted& wanted);
    std::optional<FieldPlace> stated(const Listing& listing, std::size_t field, std::size_t start, std::size_t end);
    Places search(const Wanted& wanted);
    void search_bytes(const Wanted& wanted, std::size_t around, Places& found) const;
    // Whether the words around them stand there, too.
    bool search_words(const Wanted& wanted, Places& found);
    bool is_read_from(const PageField& where, const Wanted& wanted, const TextSpan& span);

    const TextPlaces& places_;
    PageReading* page_;
    text::Tokens document_;  // cut when first needed
    text::Tokens field_;
    SourcePlaces sources_;
};

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_FIELD_PLACES_H
