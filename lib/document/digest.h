// What a set of documents says, as a number.
#ifndef GRAINSIDE_DOCUMENT_DIGEST_H
#define GRAINSIDE_DOCUMENT_DIGEST_H

#include <cstdint>
#include <initializer_list>
#include <span>
#include <string_view>

#include "document/document.h"

namespace grainside::document {

// XXH3, 64 bit, over names, keys and texts, places in the files left out: enough to tell two honest sets apart, and no
// protection from a forger.
std::uint64_t digest_of(std::span<const Document> documents);

// The same over texts in their order; where one ends and the next begins counts.
std::uint64_t digest_of(std::initializer_list<std::string_view> texts);

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_DIGEST_H
