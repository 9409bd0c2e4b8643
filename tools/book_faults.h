// Naming the files of a rule folder as the caller of the folder would.
#ifndef GRAINSIDE_TOOLS_BOOK_FAULTS_H
#define GRAINSIDE_TOOLS_BOOK_FAULTS_H

#include <string>
#include <vector>

#include "grainside/result.h"

namespace grainside::tools {

// Issues of a book name files relative to its folder; here they get the folder before them. "" is the built-in book.
std::vector<Issue> with_folder(std::vector<Issue> issues, const std::string& folder);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_BOOK_FAULTS_H
