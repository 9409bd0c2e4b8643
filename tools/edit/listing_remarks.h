// An open document of listings: what `grainside check` finds, at the words, and the better wordings.
#ifndef GRAINSIDE_TOOLS_EDIT_LISTING_REMARKS_H
#define GRAINSIDE_TOOLS_EDIT_LISTING_REMARKS_H

#include <string>
#include <vector>

#include "edit/check_context.h"
#include "edit/remark.h"
#include "edit/wording_edit.h"
#include "grainside/listing_reader.h"
#include "grainside/reword.h"

namespace grainside::tools::edit {

// `name` is what ids of listings without one of their own are made of.
struct ListingDocument {
    const TextPlaces& places;
    std::string name;
    InputFormat format = InputFormat::text;
};

// In no order.
std::vector<Remark> listing_remarks(const ListingDocument& document, const CheckContext& context);

// What `grainside reword` would write, and words that a person may leave out, of edits that meet `where`.
std::vector<WordingEdit> listing_wordings(const ListingDocument& document, const CheckContext& context,
                                          const TextSpan& where);

// Shared with dossiers. An edit that follows one of two statements which disagree is a person's choice.
Standing standing_of(const Edit& edit);
// Of edits made with RewordOptions::leave_out_all, those that take words out where `known` has no edit.
std::vector<Edit> only_left_out(const std::vector<Edit>& edits, const std::vector<Edit>& known);
WordingEdit wording_edit(const Edit& edit, Standing standing, const TextSpan& span, std::string new_text,
                         const RuleBook& book);

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
