// POST /words: a text that somebody types, checked by its words alone. Thread-safe.
#ifndef GRAINSIDE_TOOLS_DESK_WORDS_ANSWER_H
#define GRAINSIDE_TOOLS_DESK_WORDS_ANSWER_H

#include <string>

#include "desk/desk_books.h"
#include "desk/json_request.h"

namespace grainside::desk {

// Longer texts are no listing, and the page waits for the answer.
inline constexpr std::size_t kMostWordsBytes = std::size_t{256} << 10;

// The JSON of the answer. Throws DeskError.
std::string words_answer(const DeskBooks& books, const JsonValue& request);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_WORDS_ANSWER_H
