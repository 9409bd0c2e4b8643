// The compiled form of a set of documents: bytes that are used in place.
//
// Layout, all numbers 32 bit in the byte order of the machine that compiled it: magic "GSDB", version, byte order mark
// 0x01020304, total size, checksum of all that follows (FNV-1a, 64 bit, low word first), number of documents; per
// document: name offset and length, first record and record count, strings offset and length; then the NodeRecord array
// (aligned to 8; each document's records follow those of the one before), then the string block, filled up with zeros
// to a multiple of 8. Offsets of names and strings count from the start of the string block; those in a record count
// from its document's strings. Source text and the places of keys are left out.
#ifndef GRAINSIDE_DOCUMENT_COMPILED_DOCUMENT_H
#define GRAINSIDE_DOCUMENT_COMPILED_DOCUMENT_H

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "document/document.h"
#include "document/faults.h"

namespace grainside::document {

// Encodes documents; the same documents give the same bytes. The size is a multiple of 8.
// REQUIRES: all documents together stay below 4 GiB.
std::string compile_documents(std::span<const Document> documents);

// Documents that point into `bytes`, which must outlive them and be aligned to 8. Every offset, link and kind is
// checked before anything is used; damage is reported as "damaged-book" and gives an empty vector. The trees keep what
// document.h promises (forward links, one parent each, bounded depth), so a damaged file can make no loop and no walk
// without end. That strings are UTF-8 is not checked.
std::vector<Document> open_compiled(std::span<const char> bytes, Faults& faults);

// The digest_of the documents that these bytes were made from, as it was when they were; 0 where there is no header.
std::uint64_t compiled_digest(std::span<const char> bytes);

// Writes the total size and the checksum that belong to `bytes` into its header; compile_documents does it last, tests
// do it after doing damage on purpose. Leaves bytes that are too short for a header alone.
void seal_compiled(std::string& bytes);

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_COMPILED_DOCUMENT_H
