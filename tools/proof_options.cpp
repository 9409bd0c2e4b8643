#include "proof_options.h"

#include <filesystem>
#include <utility>

#include "evidence/dossier_data.h"

namespace grainside::tools {

void add_proofs(CLI::App& command, ProofOptions& options) {
    command
        .add_option("--proofs", options.files,
                    "YAML file of documents on file that support claims;\nmay be given again")
        ->type_name("FILE")
        ->allow_extra_args(false);
}

bool ProofsOfCall::load(const ProofOptions& options, const RuleBook& book, CheckOptions& check,
                        Diagnostics& diagnostics) {
    if (options.files.empty()) return true;
    const std::vector<std::filesystem::path> files(options.files.begin(), options.files.end());
    Result<FiledProofs> read = FiledProofs::read(files, book);
    if (!read) {
        diagnostics.report(read.issues());
        return false;
    }
    proofs_ = std::make_shared<const FiledProofs>(std::move(read).value());
    ledger_.emplace(*proofs_);
    check.proofs = proofs_;
    return true;
}

ProofsOfCall ProofsOfCall::share() const {
    ProofsOfCall shared;
    shared.proofs_ = proofs_;
    if (proofs_) shared.ledger_.emplace(*proofs_);
    return shared;
}

void ProofsOfCall::add(const ProofsOfCall& shared) {
    if (ledger_ && shared.ledger_) ledger_->add(*shared.ledger_);
}

void ProofsOfCall::add(std::span<const std::uint32_t> met) {
    if (ledger_) ledger_->add(met);
}

void ProofsOfCall::add(const Dossier& dossier, std::span<const std::uint32_t> met, Diagnostics& diagnostics) {
    add(met);
    const std::shared_ptr<const FiledProofs>& own = dossier.data().proofs;
    if (!own) return;
    // Where the call has documents too, the dossier's stand behind them.
    const std::size_t before = proofs_ ? proofs_->all().size() : 0;
    std::vector<std::uint32_t> own_met;
    for (const std::uint32_t proof : met) {
        if (proof >= before) own_met.push_back(static_cast<std::uint32_t>(proof - before));
    }
    ProofLedger ledger(*own);
    ledger.add(own_met);
    diagnostics.report(ledger.unused());
}

void ProofsOfCall::report_unused(Diagnostics& diagnostics) const {
    if (ledger_) diagnostics.report(ledger_->unused());
}

}  // namespace grainside::tools
