// Claims as one line each, so that a table row can hold them and a difference reads itself.
#ifndef GRAINSIDE_TESTS_SUPPORT_CLAIM_DUMP_H
#define GRAINSIDE_TESTS_SUPPORT_CLAIM_DUMP_H

#include <string>

#include "grainside/checker.h"

namespace grainside::support {

// "kind says part [denied] [hedged] [called=NOUN] [place=COUNTRY] [quantity=N or N..M unit] 'words'", one claim a line
// in the order of the text, joined by newlines. Mentions that are no claims are left out.
std::string dump_claims(const RuleBook& book, const Listing& listing, const CheckResult& result);

// "grade rule 'words'", one finding a line.
std::string dump_findings(const RuleBook& book, const Listing& listing, const CheckResult& result);

}  // namespace grainside::support

#endif  // GRAINSIDE_TESTS_SUPPORT_CLAIM_DUMP_H
