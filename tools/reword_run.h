// The inputs of grainside reword, one after the other.
#ifndef GRAINSIDE_TOOLS_REWORD_RUN_H
#define GRAINSIDE_TOOLS_REWORD_RUN_H

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "cmd_reword.h"
#include "diagnostics.h"
#include "grainside/checker.h"
#include "grainside/evidence_book.h"
#include "grainside/judge.h"
#include "grainside/reword.h"
#include "grainside/rule_book.h"
#include "left_over_view.h"
#include "mended_file.h"
#include "output.h"
#include "unknown_regions.h"

namespace grainside::tools {

// Everything it is given outlives it. Not thread-safe.
class RewordRun {
public:
    RewordRun(const RewordCall& call, const RuleBook& book, const CheckOptions& options, ProofsOfCall& proofs,
              Diagnostics& diagnostics, Output& output);

    // Errors of one input are reported, and the others are done all the same.
    void run(const std::vector<std::string>& inputs);

    // Of what is left in them.
    Grade worst() const { return totals_.worst(); }

private:
    void reword_file(const std::string& input);
    void reword_dossier(const std::string& input);
    void rewrite(const std::string& input, const Dossier& dossier, const Rewording& rewording);
    bool is_output(const std::string& path);
    bool load_judging();
    void tell_left(const Listing& listing, const Rewording& rewording);
    void tell_pending();
    void tell(const std::string& text);

    const RewordCall& call_;
    const RuleBook& book_;
    CheckOptions options_;
    ProofsOfCall& proofs_;
    Diagnostics& diagnostics_;
    Output& output_;
    MendedOutputs outputs_;
    Reworder reworder_;
    std::optional<EvidenceBook> evidence_;
    std::unique_ptr<Judge> judge_;
    RewordTotals totals_;
    UnknownRegions regions_;
    std::string left_;  // what is left in the listings of this input
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_REWORD_RUN_H
