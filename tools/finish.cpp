#include "finish.h"

#include "exit_status.h"

namespace grainside::tools {

int finish(Output& output, Diagnostics& diagnostics, bool reached) {
    const Output::State state = output.finish();
    diagnostics.progress().clear();
    if (state == Output::State::failed) diagnostics.error("standard output cannot be written: " + output.failure());
    return exit_status({reached, diagnostics.any_errors(), state == Output::State::reader_gone});
}

}  // namespace grainside::tools
