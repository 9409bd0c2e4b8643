// One result of a SARIF log.
#ifndef GRAINSIDE_REPORT_SARIF_RESULT_H
#define GRAINSIDE_REPORT_SARIF_RESULT_H

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "grainside/claim.h"
#include "grainside/concessions.h"
#include "grainside/finding.h"
#include "grainside/listing.h"
#include "grainside/rule_book.h"
#include "report/json_writer.h"
#include "text/token.h"

namespace grainside::report {

// Another place that a result speaks of.
struct SarifRelated {
    std::string message;   // inert and escaped as sarif_message_text does it
    std::string artifact;  // the artifact location's object; empty for a logical location only
    std::string region;    // the region's object; may be empty
    std::string field;     // of a listing; empty: no logical location
};

// What a result says, besides where it stands.
struct SarifResult {
    std::string_view rule;
    std::size_t rule_index = 0;
    const Listing* listing = nullptr;
    std::uint32_t field = 0;
    std::uint32_t start = 0;  // of the words, bytes in the field
    std::uint32_t end = 0;
    const Claim* claim = nullptr;
    std::string_view says;  // concept ids
    Grade grade = Grade::vague;
    Basis basis = Basis::wording;
    std::string_view because;      // as sarif_message_text has it
    std::string_view say_instead;  // may be empty
    std::string_view demands;      // "would support it: ...", as sarif_message_text has it; may be empty
    std::string filed;             // what documents on file make of it; may be empty, not inert
    std::string artifact;          // the artifact location's object; empty: none
    std::string region;            // may be empty
    std::vector<SarifRelated> related;
    const Concession* concession = nullptr;
    bool conceded = false;  // the concession is in force
};

// The fingerprints of one listing's results; equal ones are numbered. Not thread-safe.
class SarifFingerprints {
public:
    // Begins another listing. `input` names its source.
    void begin(std::string_view input, const Listing& listing);
    // "0123456789abcdef:1"
    std::string next(std::string_view rule, std::string_view field, std::string_view words);

private:
    std::string identity_;
    text::Tokens tokens_;
    std::string key_;
    std::unordered_map<std::uint64_t, std::uint32_t> seen_;
};

// A result object (SARIF 3.27) without anything behind it.
void append_sarif_result(const SarifResult& result, SarifFingerprints& fingerprints, std::string& out);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_SARIF_RESULT_H
