// The fold table of all Unicode, generated at build time by make_fold_table.cpp.
//
// Two steps: a page number for every 256 code points, then the entry in its page. Equal pages are stored once; most of
// the large scripts fold to themselves, so that the table has some hundred kilobytes and the pages in use stay cached.
#ifndef GRAINSIDE_TEXT_FOLD_TABLE_H
#define GRAINSIDE_TEXT_FOLD_TABLE_H

#include <cstddef>
#include <cstdint>
#include <string_view>

#include "text/character.h"

namespace grainside::text {

extern const std::uint8_t kFoldPages[];
extern const FoldEntry kFoldEntries[];
extern const char kFoldLongForms[];

// REQUIRES: code <= 0x10FFFF.
inline const FoldEntry& fold_entry(char32_t code) {
    return kFoldEntries[(std::size_t{kFoldPages[code >> 8]} << 8) | (code & 0xFFU)];
}

// REQUIRES: entry.length > FoldEntry::kShortForm.
inline std::string_view long_form(const FoldEntry& entry) {
    return {kFoldLongForms + (entry.bytes[0] | (std::size_t{entry.bytes[1]} << 8)), entry.length};
}

}  // namespace grainside::text

#endif  // GRAINSIDE_TEXT_FOLD_TABLE_H
