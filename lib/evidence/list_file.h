// Files that a call names and that hold one list of entries: concessions, proofs on file. Thread-safe.
#ifndef GRAINSIDE_EVIDENCE_LIST_FILE_H
#define GRAINSIDE_EVIDENCE_LIST_FILE_H

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

#include "document/faults.h"

namespace grainside::evidence {

// The bytes for parse_yaml. Nothing, with a fault "unreadable", for a folder, a pipe, and what cannot be read. `what`
// completes "the file of ...".
std::optional<std::string> read_list_file(const std::filesystem::path& file, std::string_view what,
                                          document::Faults& faults);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_LIST_FILE_H
