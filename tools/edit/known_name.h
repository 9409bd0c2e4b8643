// What a name of the rule book stands for: a rule, a source, a concept, a test method, a limit, a candidate.
#ifndef GRAINSIDE_TOOLS_EDIT_KNOWN_NAME_H
#define GRAINSIDE_TOOLS_EDIT_KNOWN_NAME_H

#include <optional>
#include <string>
#include <string_view>

#include "edit/remark.h"
#include "edit/rule_books.h"

namespace grainside::tools::edit {

// Nothing where the book has no such name.
std::optional<Told> told_of_name(const LoadedBook& book, std::string_view name);

// An outcome of the method that a reading names; nothing where that has none such.
std::optional<Told> told_of_outcome(const LoadedBook& book, std::string_view method, std::string_view outcome);

// The same in few words, to stand beside the name in a list; empty where it has none.
std::string detail_of_name(const LoadedBook& book, std::string_view name);

// The method named by `method: ID` nearest before `offset`, within the reading there; empty where there is none.
std::string_view method_before(std::string_view yaml, std::size_t offset);

// Letters, digits, hyphens and underscores around `offset`.
TextSpan name_at(std::string_view text, std::size_t offset);

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_KNOWN_NAME_H
