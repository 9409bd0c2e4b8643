#include "concession_options.h"

#include <filesystem>
#include <utility>

#include "calendar.h"
#include "judged_for.h"

namespace grainside::tools {

void add_concessions(CLI::App& command, ConcessionOptions& options) {
    command
        .add_option("--concessions", options.files,
                    "YAML file of findings that may stand until a day, with\nreason and owner; may be given again")
        ->type_name("FILE")
        ->allow_extra_args(false);
    add_day(command, "--concessions-on", options.on, "Take concessions as they hold on this day (default:\ntoday)");
    command.add_flag("--no-stale-concessions", options.no_stale,
                     "Exit with 1 also where a concession has run out or met\nno finding");
}

bool ConcessionsOfCall::load(const ConcessionOptions& options, const EvidenceBook& evidence, Diagnostics& diagnostics) {
    if (options.files.empty()) return true;
    const std::vector<std::filesystem::path> files(options.files.begin(), options.files.end());
    Result<Concessions> read = Concessions::read(files, evidence);
    if (!read) {
        diagnostics.report(read.issues());
        return false;
    }
    concessions_ = std::make_shared<const Concessions>(std::move(read).value());
    today_ = options.on.empty() ? today() : options.on;
    ledger_.emplace(*concessions_, today_);
    no_stale_ = options.no_stale;
    return true;
}

ConcessionsOfCall ConcessionsOfCall::share() const {
    ConcessionsOfCall shared;
    shared.concessions_ = concessions_;
    shared.today_ = today_;
    if (concessions_) shared.ledger_.emplace(*concessions_, today_);
    return shared;
}

void ConcessionsOfCall::add(const ConcessionsOfCall& shared) {
    if (ledger_ && shared.ledger_) ledger_->add(*shared.ledger_);
}

const Conceded* ConcessionsOfCall::of_findings(const RuleBook& book, const Listing& listing,
                                               const CheckResult& result) {
    return ledger_ ? &ledger_->of_findings(book, listing, result) : nullptr;
}

const Conceded* ConcessionsOfCall::of_verdicts(const RuleBook& book, const Listing* listing,
                                               const Judgement& judgement) {
    return ledger_ && listing != nullptr && judgement.check != nullptr
               ? &ledger_->of_verdicts(book, *listing, judgement)
               : nullptr;
}

bool ConcessionsOfCall::report_stale(bool only_words, Diagnostics& diagnostics) const {
    if (!ledger_) return false;
    const std::vector<Issue> stale = ledger_->stale(only_words);
    diagnostics.report(stale);
    return no_stale_ && !stale.empty();
}

}  // namespace grainside::tools
