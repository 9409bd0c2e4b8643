// Reading small files of a folder that somebody else may change. Thread-safe.
#ifndef GRAINSIDE_TOOLS_DESK_WHOLE_FILE_H
#define GRAINSIDE_TOOLS_DESK_WHOLE_FILE_H

#include <cstddef>
#include <optional>
#include <string>

#include "desk/owned_descriptor.h"

namespace grainside::desk {

// Opens `file` in `folder` for reading; not open, with errno set, where it is missing, a link or no regular file (a
// pipe would wait for a writer).
OwnedDescriptor open_regular(int folder, const std::string& file);

// The bytes from where the descriptor stands to the end: at most `most` and one more. Nothing, with errno set, where
// reading fails.
std::optional<std::string> read_all(int descriptor, std::size_t most);

// False, with errno set, where not everything could be written.
bool write_all(int descriptor, std::string_view bytes);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_WHOLE_FILE_H
