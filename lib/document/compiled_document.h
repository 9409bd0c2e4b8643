// The compiled form of a set of documents: bytes that are used in place.
//
// Layout, all numbers little-endian 32 bit: magic "GSDB", version, byte order mark 0x01020304, total size, checksum of
// all that follows (FNV-1a, 64 bit, two words), number of documents; per document: name offset and length, first record
// and record count, strings offset and length; then the NodeRecord array (aligned to 8), then the string block.
#ifndef GRAINSIDE_DOCUMENT_COMPILED_DOCUMENT_H
#define GRAINSIDE_DOCUMENT_COMPILED_DOCUMENT_H

#include <span>
#include <string>
#include <vector>

#include "document/document.h"
#include "document/faults.h"

namespace grainside::document {

// Encodes documents; the same documents give the same bytes.
std::string compile_documents(std::span<const Document> documents);

// Documents that point into `bytes`, which must outlive them and be aligned to 8. Every offset, link and kind is
// checked before anything is used; damage is reported as "damaged-book" and gives an empty vector. Links must point
// forward, so a damaged file can make no loop.
std::vector<Document> open_compiled(std::span<const char> bytes, Faults& faults);

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_COMPILED_DOCUMENT_H
