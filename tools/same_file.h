// Whether two names mean one file.
#ifndef GRAINSIDE_TOOLS_SAME_FILE_H
#define GRAINSIDE_TOOLS_SAME_FILE_H

#include <string>

namespace grainside::tools {

// By device and inode, so that links and other spellings of a path are seen. "-" is standard input. False where one of
// them does not exist.
bool is_same_file(const std::string& one, const std::string& other);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_SAME_FILE_H
