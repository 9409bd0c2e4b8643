// Documents on file as an option of the commands that grade, and what is said of those that cover nothing.
#ifndef GRAINSIDE_TOOLS_PROOF_OPTIONS_H
#define GRAINSIDE_TOOLS_PROOF_OPTIONS_H

#include <CLI/CLI.hpp>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "diagnostics.h"
#include "grainside/checker.h"
#include "grainside/dossier.h"

namespace grainside::tools {

struct ProofOptions {
    std::vector<std::string> files;
};

void add_proofs(CLI::App& command, ProofOptions& options);

// The documents of a call with an account of their use. Not thread-safe.
class ProofsOfCall {
public:
    // Gives them to `check`. False where a file has a fault: every one has been reported then.
    bool load(const ProofOptions& options, const RuleBook& book, CheckOptions& check, Diagnostics& diagnostics);

    // An account of its own over the same documents, for another thread; `add` takes it over.
    ProofsOfCall share() const;
    void add(const ProofsOfCall& shared);

    // CheckResult::proofs_met of a listing. Of a dossier its own documents that cover nothing are reported at once.
    void add(std::span<const std::uint32_t> met);
    void add(const Dossier& dossier, std::span<const std::uint32_t> met, Diagnostics& diagnostics);

    // Warns of each document of the call that covered no claim.
    void report_unused(Diagnostics& diagnostics) const;

private:
    std::shared_ptr<const FiledProofs> proofs_;
    std::optional<ProofLedger> ledger_;
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_PROOF_OPTIONS_H
