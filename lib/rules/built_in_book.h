// The default rule book, compiled into the library.
#ifndef GRAINSIDE_RULES_BUILT_IN_BOOK_H
#define GRAINSIDE_RULES_BUILT_IN_BOOK_H

#include <span>

namespace grainside::rules {

// The compiled form of rules/ (document/compiled_document.h), aligned to 8, for the life of the process.
std::span<const char> built_in_book() noexcept;

}  // namespace grainside::rules

#endif  // GRAINSIDE_RULES_BUILT_IN_BOOK_H
