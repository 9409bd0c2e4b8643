// A better wording as an edit of the open document.
#ifndef GRAINSIDE_TOOLS_EDIT_WORDING_EDIT_H
#define GRAINSIDE_TOOLS_EDIT_WORDING_EDIT_H

#include <string>

#include "edit/text_places.h"

namespace grainside::tools::edit {

enum class Standing {
    best,       // what a client may take unasked
    by_itself,  // told as one of several, and taken with all others, as `grainside reword` takes it
    by_choice,  // only a person can tell whether it is true, or whether the words should go
};

struct WordingEdit {
    TextSpan span;
    std::string new_text;  // as the document has to write it, with its escapes
    std::string words;     // what is replaced, and by what, for people
    std::string wording;   // empty: it is left out
    std::string code;      // of the remark that it answers
    std::string left_out;  // the remark's own words, where these are taken out
    Standing standing = Standing::best;
};

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_WORDING_EDIT_H
