// What open documents are checked by.
#ifndef GRAINSIDE_TOOLS_EDIT_CHECK_CONTEXT_H
#define GRAINSIDE_TOOLS_EDIT_CHECK_CONTEXT_H

#include <string>

#include "edit/rule_books.h"
#include "grainside/checker.h"
#include "grainside/concessions.h"

namespace grainside::tools::edit {

struct CheckContext {
    const LoadedBook* book = nullptr;
    CheckOptions options;  // of listings: with the day
    std::string asked_on;  // the day that the call names; empty: none, and a dossier has its own
    std::string today;
    const Concessions* agreed = nullptr;  // nullptr: none
};

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_CHECK_CONTEXT_H
