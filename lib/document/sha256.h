// SHA-256 (FIPS 180-4) of texts and files, as 64 hexadecimal digits: by it a reader can tell that a listing, a dossier
// or a picture is the one that a report speaks of. Thread-safe.
#ifndef GRAINSIDE_DOCUMENT_SHA256_H
#define GRAINSIDE_DOCUMENT_SHA256_H

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace grainside::document {

std::string sha256_of(std::string_view bytes);

// Nothing where the file cannot be read to its end. Reads in blocks: memory does not grow with the file.
std::optional<std::string> sha256_of_file(const std::filesystem::path& file);

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_SHA256_H
