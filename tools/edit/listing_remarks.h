// An open document of listings: what `grainside check` finds, at the words, and the better wordings.
#ifndef GRAINSIDE_TOOLS_EDIT_LISTING_REMARKS_H
#define GRAINSIDE_TOOLS_EDIT_LISTING_REMARKS_H

#include <string>
#include <vector>

#include "edit/check_context.h"
#include "edit/remark.h"
#include "edit/wording_edit.h"
#include "grainside/listing_reader.h"

namespace grainside::tools::edit {

// `name` is what ids of listings without one of their own are made of.
struct ListingDocument {
    const TextPlaces& places;
    std::string name;
    InputFormat format = InputFormat::text;
};

// In no order.
std::vector<Remark> listing_remarks(const ListingDocument& document, const CheckContext& context);

// What `grainside reword` would write, of edits that meet `where`.
std::vector<WordingEdit> listing_wordings(const ListingDocument& document, const CheckContext& context,
                                          const TextSpan& where);

// Of one listing that was checked already, with its words placed by `place_of` (field, start, end). Shared with
// dossiers, whose listing stands in YAML.
struct FoundWords {
    std::string words;  // on one line
    Grade grade = Grade::vague;
    std::string because;
    std::string say_instead;
    std::string remedy;
    std::string demands;
};
// "'vegan leather' is misleading. The ... Say instead: 'imitation leather'."
std::string message_of(const FoundWords& found);
// The words of `field` on one line, cut where they are long.
std::string shown_words(std::string_view text);

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_LISTING_REMARKS_H
