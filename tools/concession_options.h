// Concessions as options of the commands that grade, and what is said of stale ones.
#ifndef GRAINSIDE_TOOLS_CONCESSION_OPTIONS_H
#define GRAINSIDE_TOOLS_CONCESSION_OPTIONS_H

#include <CLI/CLI.hpp>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "diagnostics.h"
#include "grainside/concessions.h"

namespace grainside::tools {

struct ConcessionOptions {
    std::vector<std::string> files;
    std::string on;         // YYYY-MM-DD; empty: today
    bool no_stale = false;  // stale ones make the call fail
};

void add_concessions(CLI::App& command, ConcessionOptions& options);

// The concessions of a call with an account of their use. Not thread-safe.
class ConcessionsOfCall {
public:
    // False where a file has a fault: every one has been reported then.
    bool load(const ConcessionOptions& options, const EvidenceBook& evidence, Diagnostics& diagnostics);

    // An account of its own over the same concessions, for another thread; `add` takes it over.
    ConcessionsOfCall share() const;
    void add(const ConcessionsOfCall& shared);

    // nullptr where the call has none.
    const Conceded* of_findings(const RuleBook& book, const Listing& listing, const CheckResult& result);
    const Conceded* of_verdicts(const RuleBook& book, const Listing* listing, const Judgement& judgement);

    // Warns of each stale one; true where that makes the call fail. `only_words`: see ConcessionLedger::stale.
    bool report_stale(bool only_words, Diagnostics& diagnostics) const;

private:
    std::shared_ptr<const Concessions> concessions_;
    std::string today_;
    std::optional<ConcessionLedger> ledger_;
    bool no_stale_ = false;
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CONCESSION_OPTIONS_H
