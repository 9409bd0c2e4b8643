#include "check_output.h"

#include "terminal.h"

namespace grainside::tools {

CheckOutput::CheckOutput(const CheckCall& call, const RuleBook& book, const CheckOptions& options) : book_(book) {
    if (call.quiet) return;
    if (call.shared.format == "jsonl") {
        is_records_ = true;
    } else if (call.shared.format == "sarif") {
        log_.emplace(book, SarifRun{"check", options.markets, options.on});
        log_->name_inputs(call.shared.inputs);
    } else {
        view_ = view_options(call.shared.colour);
    }
}

void CheckOutput::begin(std::string& out) {
    if (log_) log_->begin(out);
}

void CheckOutput::begin_part() {
    if (log_) log_->begin_part();
}

void CheckOutput::write(const std::string& input, const Listing& listing, const CheckResult& result,
                        const Checker& checker, const Conceded* conceded, OutputPart& part) {
    if (is_records_) {
        // Not made before: escaping what the book says takes longer than checking a listing.
        if (!records_) records_.emplace(book_);
        records_->write_findings(listing, result, checker, part.text, conceded);
    } else if (log_) {
        log_->write_findings(input, listing, result, checker, part.text, conceded);
    } else if (view_) {
        const bool has_findings = !result.findings.empty();
        if (!part.any_listing) part.begins_with_findings = has_findings;
        if (part.ends_with_quiet_line && has_findings) part.text += '\n';
        part.ends_with_quiet_line = !has_findings;
        write_view(book_, listing, result, checker, *view_, part.text, conceded);
    }
    part.any_listing = true;
}

std::string_view CheckOutput::before_part(const OutputPart& part) {
    if (log_) return part.text.empty() ? std::string_view() : log_->before_part();
    if (!view_) return {};
    const bool apart = after_quiet_line_ && part.begins_with_findings;
    after_quiet_line_ = part.ends_with_quiet_line;
    return apart ? "\n" : "";
}

void CheckOutput::end(const CheckTotals& totals, const Diagnostics& diagnostics, bool complete, std::string& out) {
    if (log_) log_->end(diagnostics.kept(), complete && !diagnostics.any_errors(), out);
    if (!view_ || totals.listings() == 0) return;
    if (after_quiet_line_) out += '\n';
    totals.append_text(out);
    write_view_end(book_, out);
}

}  // namespace grainside::tools
