// The rule book that a call asks for.
#ifndef GRAINSIDE_TOOLS_LOAD_BOOK_H
#define GRAINSIDE_TOOLS_LOAD_BOOK_H

#include <optional>
#include <string>

#include "diagnostics.h"
#include "grainside/evidence_book.h"
#include "grainside/rule_book.h"

namespace grainside::tools {

// The book of `folder`, or the built-in one where that is empty. Nothing where it cannot be loaded: every fault has
// been reported then, with its file as one would open it from here.
std::optional<RuleBook> load_book(const std::string& folder, Diagnostics& diagnostics);

// The evidence half of `book`, which was loaded from `folder` and must outlive it. Nothing where it has faults: they
// have been reported then.
std::optional<EvidenceBook> load_evidence(const RuleBook& book, const std::string& folder, Diagnostics& diagnostics);

// The same of a folder that may hold rules on wording only: nothing, and no fault, where it has no file of the evidence
// half.
std::optional<EvidenceBook> load_evidence_if_any(const RuleBook& book, const std::string& folder,
                                                 Diagnostics& diagnostics);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_LOAD_BOOK_H
