#include "text/fold_table.h"

namespace grainside::text {

#include "fold_table.inc"

}  // namespace grainside::text
