// What may stand at the caret in YAML of ours: keys, names, units. It is what the reader itself would have taken: a
// word that no list has is put at the caret, the text is read, and the reader tells which names it knew in that place
// (document::Faults::watch).
#ifndef GRAINSIDE_TOOLS_EDIT_COMPLETION_H
#define GRAINSIDE_TOOLS_EDIT_COMPLETION_H

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "edit/text_places.h"

namespace grainside::tools::edit {

// Reads a text with `word` in it, and gives the names that were known in its place.
using NamesInPlace = std::function<std::vector<std::string>(const std::string& text, const std::string& word)>;

struct Completion {
    TextSpan span;                   // what is replaced: the word at the caret
    std::vector<std::string> names;  // in the reader's order
    bool keys = false;               // they are keys of a mapping ...
    bool needs_colon = false;        // ... behind which no colon stands yet
};

// Empty where the text is no YAML, or nothing is known of the place.
Completion complete(std::string_view text, std::size_t caret, const NamesInPlace& names_in_place);

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_COMPLETION_H
