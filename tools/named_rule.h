// Rules that a call names.
#ifndef GRAINSIDE_TOOLS_NAMED_RULE_H
#define GRAINSIDE_TOOLS_NAMED_RULE_H

#include <string>

#include "diagnostics.h"
#include "grainside/rule_book.h"

namespace grainside::tools {

// True where `book` has no rule `id`; that has been reported then, with the one that was probably meant.
bool report_unknown_rule(const RuleBook& book, const std::string& id, Diagnostics& diagnostics);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_NAMED_RULE_H
