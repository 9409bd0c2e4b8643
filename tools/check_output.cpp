#include "check_output.h"

#include "terminal.h"

namespace grainside::tools {

CheckOutput::CheckOutput(const CheckCall& call, const RuleBook& book, const Checker& checker,
                         const CheckOptions& options, std::string& out)
    : book_(book), checker_(checker), out_(out) {
    if (call.quiet) return;
    if (call.shared.format == "jsonl") {
        records_.emplace(book);
    } else if (call.shared.format == "sarif") {
        log_.emplace(book, SarifRun{"check", options.markets, options.on});
    } else {
        view_ = view_options(call.shared.colour);
    }
}

void CheckOutput::begin() {
    if (log_) log_->begin(out_);
}

void CheckOutput::write(const std::string& input, const Listing& listing, const CheckResult& result,
                        const Conceded* conceded) {
    if (records_) {
        records_->write_findings(listing, result, checker_, out_, conceded);
    } else if (log_) {
        log_->write_findings(input, listing, result, checker_, out_, conceded);
    } else if (view_) {
        if (after_quiet_line_ && !result.findings.empty()) out_ += '\n';
        after_quiet_line_ = result.findings.empty();
        write_view(book_, listing, result, checker_, *view_, out_, conceded);
    }
}

void CheckOutput::end(const CheckTotals& totals, const Diagnostics& diagnostics) {
    if (log_) log_->end(diagnostics.kept(), !diagnostics.any_errors(), out_);
    if (!view_ || totals.listings() == 0) return;
    if (after_quiet_line_) out_ += '\n';
    totals.append_text(out_);
    write_view_end(book_, out_);
}

}  // namespace grainside::tools
