// GET /methods: the tests that the book knows, and what each of them asks to be written down. Thread-safe.
#ifndef GRAINSIDE_TOOLS_DESK_METHODS_ANSWER_H
#define GRAINSIDE_TOOLS_DESK_METHODS_ANSWER_H

#include <string>

#include "desk/desk_books.h"

namespace grainside::desk {

// The JSON of the answer.
std::string methods_answer(const DeskBooks& books);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_METHODS_ANSWER_H
