// Open files of a rule book, and of concessions: faults, and rules that do not do what their file says.
#ifndef GRAINSIDE_TOOLS_EDIT_BOOK_REMARKS_H
#define GRAINSIDE_TOOLS_EDIT_BOOK_REMARKS_H

#include <string_view>
#include <vector>

#include "edit/check_context.h"
#include "edit/remark.h"
#include "edit/rule_books.h"

namespace grainside::tools::edit {

// Of the file `file` of the book that was read. Its faults; those of other files in one remark at the beginning, as far
// as there are none here; without any, what the proof of its rules gives.
std::vector<Remark> rule_file_remarks(std::string_view file, const BookReading& reading, const TextPlaces& places);

// REQUIRES: the book has an evidence half.
std::vector<Remark> concession_remarks(const TextPlaces& places, const CheckContext& context);

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_BOOK_REMARKS_H
