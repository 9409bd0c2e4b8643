// The changes that the page asks for, as edits of a dossier's text. Thread-safe.
#ifndef GRAINSIDE_TOOLS_DESK_DOSSIER_CHANGE_H
#define GRAINSIDE_TOOLS_DESK_DOSSIER_CHANGE_H

#include <string>

#include "desk/json_request.h"
#include "grainside/evidence_book.h"

namespace grainside::desk {

inline constexpr std::size_t kMostChanges = 200;  // of one request

// `text` after the changes of README.md (`changes`: a list, done in its order). Whether the result is a dossier is
// asked by who reads it. Throws DeskError 400: "bad-request", "no-such-place" (a part, reading or line that is not
// there), "does-not-fit", "not-yaml", "listing-file" (the words stand in a file of their own), "words-differ".
std::string changed_text(std::string text, const JsonValue& changes, const EvidenceBook& evidence);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_DOSSIER_CHANGE_H
