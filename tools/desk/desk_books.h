// What the desk judges by. Plain references; what they point at outlives the desk.
#ifndef GRAINSIDE_TOOLS_DESK_DESK_BOOKS_H
#define GRAINSIDE_TOOLS_DESK_DESK_BOOKS_H

#include <string>
#include <vector>

#include "grainside/evidence_book.h"
#include "grainside/rule_book.h"

namespace grainside::desk {

struct DeskBooks {
    const RuleBook& rules;
    const EvidenceBook& evidence;
    // Of the call; empty: by the listing's region, and its day or today.
    std::vector<std::string> markets = {};
    std::string on = {};
};

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_DESK_BOOKS_H
