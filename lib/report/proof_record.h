// Documents on file in records and views. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_PROOF_RECORD_H
#define GRAINSIDE_REPORT_PROOF_RECORD_H

#include <string>
#include <string_view>

#include "grainside/checker.h"

namespace grainside::report {

// ,"KEY":{"document","laboratory","date","expires"?,"standard"?,"result"?,"file"?,"sha256"?,"why"?}
void append_proof_member(std::string& out, std::string_view key, const FiledProof& proof, std::string_view why = {});

// What a verdict or finding of this grade on a claim says of the documents on file: "on_file" of one that supports it,
// "on_file_overruled" of one that readings decide against, "not_lifted" of one that does not suffice, with "why";
// nothing where there is nothing to tell.
void append_filed_member(std::string& out, const RuleBook& book, const CheckResult& check, std::uint32_t claim,
                         Grade grade);

// "on file: Test report 4711, ..." in words: what `append_filed_member` says; empty where it says nothing.
std::string filed_line(const RuleBook& book, const CheckResult& check, std::uint32_t claim, Grade grade);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_PROOF_RECORD_H
