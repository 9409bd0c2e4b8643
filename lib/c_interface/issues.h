// Issues on their way to C.
#ifndef GRAINSIDE_C_INTERFACE_ISSUES_H
#define GRAINSIDE_C_INTERFACE_ISSUES_H

#include <string>
#include <vector>

#include "c_interface/border.h"
#include "grainside/result.h"

struct GrainsideIssues {
    std::vector<grainside::Issue> issues;
    std::vector<std::string> wholes;  // each as to_text gives it
};

namespace grainside::c_interface {

// Puts them where the caller asked for them, if it did and if there are any. Throws std::bad_alloc and then gives
// nothing.
void give_issues(std::vector<Issue> issues, GrainsideIssues** to);

}  // namespace grainside::c_interface

#endif  // GRAINSIDE_C_INTERFACE_ISSUES_H
