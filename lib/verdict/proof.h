// Proving a rule book: every rule flags the texts that its file says it must, passes the others, and offers wording
// that passes.
#ifndef GRAINSIDE_VERDICT_PROOF_H
#define GRAINSIDE_VERDICT_PROOF_H

#include <cstdint>
#include <string>
#include <vector>

#include "grainside/checker.h"
#include "grainside/listing.h"
#include "grainside/rule_book.h"

namespace grainside {
inline namespace v0 {

struct ProofFault {
    std::string rule;
    std::string file;
    std::uint32_t line = 0;  // of the example
    std::string text;        // the example's text
    std::string message;     // what was expected and what came
};

struct ProofReport {
    std::uint32_t rules = 0;
    std::uint32_t examples = 0;
    std::vector<ProofFault> faults;
};

// Under which market and on which day the examples of `rule` are checked: its first market and its first day in force.
CheckOptions options_of_proof(const RuleInfo& rule);

// The listing that an example stands for.
Listing listing_of(const ProofText& example);

// The example on one line: 'name: ... | material: ... | ...'.
std::string one_line_of(const ProofText& example);

// Checks each example under its rule's markets and on its first day in force, against the whole book: a text to flag
// must give exactly one finding, by this rule and on the words named; a text to pass must give none at all; a suggested
// wording must give none either. `rule` limits the proof to one rule; empty = all.
ProofReport prove(const RuleBook& book, const std::string& rule = {});

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_VERDICT_PROOF_H
