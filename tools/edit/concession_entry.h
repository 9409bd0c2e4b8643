// A new entry for the file of concessions, with what a person has to fill in left open.
#ifndef GRAINSIDE_TOOLS_EDIT_CONCESSION_ENTRY_H
#define GRAINSIDE_TOOLS_EDIT_CONCESSION_ENTRY_H

#include <string>
#include <string_view>

#include "edit/remark.h"

namespace grainside::tools::edit {

// What is put behind the end of `file`, so that it stays one list: an entry without reason, owner and last day, which
// is a fault at each of them until they are written.
std::string concession_entry(const ConcessionKey& key, std::string_view file);

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_CONCESSION_ENTRY_H
