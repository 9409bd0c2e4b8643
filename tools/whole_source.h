// All bytes of an input at once.
#ifndef GRAINSIDE_TOOLS_WHOLE_SOURCE_H
#define GRAINSIDE_TOOLS_WHOLE_SOURCE_H

#include <optional>
#include <string>

#include "diagnostics.h"

namespace grainside::tools {

// For a source that cannot be read twice (standard input, a pipe) and for a file whose text is needed as one. "-" is
// standard input. Nothing, with an error, where it cannot be opened, is larger than kMaxWholeFileBytes or cannot be
// read to its end: a part is never taken for the whole.
std::optional<std::string> whole_source(const std::string& input, Diagnostics& diagnostics);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_WHOLE_SOURCE_H
