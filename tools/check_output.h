// What `grainside check` writes, in the format of the call. Not thread-safe.
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

namespace grainside::tools {

class CheckOutput {
public:
    // Appends to `out`; all that it is made from must outlive it. With --quiet it writes nothing.
    CheckOutput(const CheckCall& call, const RuleBook& book, const Checker& checker, const CheckOptions& options,
                std::string& out);

    // Whether issues are part of it.
    bool is_log() const noexcept { return log_.has_value(); }

    void begin();
    void write(const std::string& input, const Listing& listing, const CheckResult& result, const Conceded* conceded);
    void end(const CheckTotals& totals, const Diagnostics& diagnostics);

private:
    const RuleBook& book_;
    const Checker& checker_;
    std::string& out_;
    std::optional<RecordWriter> records_;
    std::optional<SarifWriter> log_;
    std::optional<ViewOptions> view_;
    bool after_quiet_line_ = false;
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CHECK_OUTPUT_H
