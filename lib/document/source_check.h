// What must hold of a source text before a YAML parser sees it.
//
// The parser takes one control character for the end of its input and guesses encodings from the first bytes, so
// such texts must not reach it. Thread-safe.
#ifndef GRAINSIDE_DOCUMENT_SOURCE_CHECK_H
#define GRAINSIDE_DOCUMENT_SOURCE_CHECK_H

#include <string_view>

#include "document/faults.h"

namespace grainside::document {

// Reports bytes that are not UTF-8 ("not-utf8") and characters that YAML 1.2 does not allow ("yaml-syntax"; its
// production [1] c-printable, and carriage returns without a line feed), the first one of each line. True if there is
// none.
bool check_source(std::string_view file, std::string_view text, Faults& faults);

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_SOURCE_CHECK_H
