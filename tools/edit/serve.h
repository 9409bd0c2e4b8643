// A session on standard input and output.
#ifndef GRAINSIDE_TOOLS_EDIT_SERVE_H
#define GRAINSIDE_TOOLS_EDIT_SERVE_H

#include <cstdint>

#include "edit/workspace.h"

namespace grainside::tools::edit {

// Until 'exit', the end of the input, a reader of the output that has gone, or the end of the client's process, which
// `client_process` names where the client does not (0: nobody does). Returns the exit status: 0 behind 'shutdown', else
// 1; 2 where the input cannot be read or the output not be written. Nothing but messages is written to standard output.
int serve(WorkspaceOptions options, std::int64_t client_process);

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_SERVE_H
