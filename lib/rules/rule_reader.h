// One entry of a rule file.
#ifndef GRAINSIDE_RULES_RULE_READER_H
#define GRAINSIDE_RULES_RULE_READER_H

#include <string>

#include "document/document.h"
#include "document/faults.h"
#include "grainside/rule_book.h"
#include "rules/book_data.h"

namespace grainside::rules {

// A rule with its compiled conditions.
struct ReadRule {
    RuleInfo info;
    CompiledRule compiled;
};

// Reads a rule. Where it is `like` another one, `model` is that one, from which it takes the conditions and every text
// that it does not state itself; its own `unless` and `unless_beside` add to those of the model. `own_market` is the
// market of the file, empty for a file of rules that hold everywhere: it is the rule's where the entry names none.
// Faults: those of the conditions, "unknown-key", "missing-key", "unknown-source", "unknown-market", "unknown-grade",
// "bad-date", "bad-template", "thin-proof", "unused-words", "other-market", "stated-twice", "wrong-type".
ReadRule read_rule(const document::Document& document, document::Node node, const BookData& book, const ReadRule* model,
                   const std::string& own_market, document::Faults& faults);

}  // namespace grainside::rules

#endif  // GRAINSIDE_RULES_RULE_READER_H
