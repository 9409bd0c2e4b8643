// Names of the book that a call asks for: whether there is one of that name, and else which was probably meant.
#ifndef GRAINSIDE_TOOLS_KNOWN_NAMES_H
#define GRAINSIDE_TOOLS_KNOWN_NAMES_H

#include <string>

#include "diagnostics.h"
#include "grainside/rule_book.h"

namespace grainside::tools {

// Each reports an error where there is none.
bool is_known_rule(const RuleBook& book, const std::string& id, Diagnostics& diagnostics);
bool is_known_group(const RuleBook& book, const std::string& group, Diagnostics& diagnostics);
bool is_known_source(const RuleBook& book, const std::string& id, Diagnostics& diagnostics);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_KNOWN_NAMES_H
