// What `grainside check` writes, in the format of the call. Not thread-safe: each thread has one of its own, and one
// more begins and ends the output and puts the parts together.
#ifndef GRAINSIDE_TOOLS_CHECK_OUTPUT_H
#define GRAINSIDE_TOOLS_CHECK_OUTPUT_H

#include <optional>
#include <string>
#include <string_view>

#include "check_totals.h"
#include "cmd_check.h"
#include "diagnostics.h"
#include "grainside/report.h"
#include "grainside/sarif.h"
#include "ordered_listings.h"

namespace grainside::tools {

class CheckOutput {
public:
    // All that it is made from must outlive it. With --quiet it writes nothing.
    CheckOutput(const CheckCall& call, const RuleBook& book, const CheckOptions& options);

    // Whether issues are part of it.
    bool is_log() const noexcept { return log_.has_value(); }

    void begin(std::string& out);
    void begin_part();
    // `checker` is the one that made `result`.
    void write(const std::string& input, const Listing& listing, const CheckResult& result, const Checker& checker,
               const Conceded* conceded, OutputPart& part);
    // What stands before the part; they come in order.
    std::string_view before_part(const OutputPart& part);
    // `complete`: the run was not stopped before its end.
    void end(const CheckTotals& totals, const Diagnostics& diagnostics, bool complete, std::string& out);

private:
    const RuleBook& book_;
    std::optional<RecordWriter> records_;
    std::optional<SarifWriter> log_;
    std::optional<ViewOptions> view_;
    bool is_records_ = false;
    bool after_quiet_line_ = false;
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CHECK_OUTPUT_H
