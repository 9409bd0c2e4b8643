#include "exit_status.h"

namespace grainside::tools {

int exit_status(const Outcome& outcome) noexcept {
    if (outcome.any_error) return 2;
    if (outcome.reader_gone) return 0;
    return outcome.reached ? 1 : 0;
}

}  // namespace grainside::tools
