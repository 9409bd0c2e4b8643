#include "cmd_reword.h"

#include <algorithm>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "calendar.h"
#include "diagnostics.h"
#include "finish.h"
#include "load_book.h"
#include "output.h"
#include "reword_run.h"
#include "same_file.h"

namespace grainside::tools {
namespace {

constexpr const char* kRewordFooter =
    "Examples:\n"
    "  grainside reword listing.txt\n"
    "  grainside reword --diff catalog.jsonl > mend.diff\n"
    "  patch catalog.jsonl < mend.diff\n"
    "  grainside reword --market eu --out mended.jsonl catalog.jsonl\n"
    "  grainside reword --out mended.yaml tote.yaml\n"
    "  grainside reword --proofs filed.yaml --diff catalog.jsonl\n\n"
    "Exit status:\n"
    "  0  done, and nothing at or above the grade of --fail-at is left\n"
    "  1  done, and a finding is left that a person must settle\n"
    "  2  an error: a wrong call, a file or record that cannot be read (the others\n"
    "     are reworded all the same), output that cannot be written";

bool outputs_are_apart(const RewordCall& call, const std::vector<std::string>& inputs, Diagnostics& diagnostics) {
    if (call.out.empty()) return true;
    if (inputs.size() > 1) {
        diagnostics.error("--out takes one input, and there are " + std::to_string(inputs.size()),
                          "call once for each, or use --diff");
        return false;
    }
    std::vector<std::string> read = call.proofs.files;
    read.push_back(inputs.front());
    if (std::none_of(read.begin(), read.end(), [&](const std::string& one) { return is_same_file(one, call.out); })) {
        return true;
    }
    diagnostics.error("--out: '" + call.out + "' is an input and is never written over", "name another file");
    return false;
}

}  // namespace

void add_reword(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<RewordCall>();
    CLI::App* command = app.add_subcommand("reword", "Mend what listings may not say, and tell what is left");
    add_inputs(*command, call->shared);
    command
        ->add_option("--out", call->out,
                     "Write the corrected listing to this file, whole or not at\nall; never over an input")
        ->type_name("FILE");
    command->add_flag("--diff", call->diff, "Write the difference for patch(1) and nothing else");
    command->add_flag(
        "--leave-out-unproven", call->leave_out_unproven,
        "Take out words that need a proof which is not named, too,\nwhere the phrase stands without them");
    add_judged_for(*command, call->judged_for, "today; of a dossier\nthat on which the listing was captured");
    add_fail_at(*command, call->fail_at);
    add_proofs(*command, call->proofs);
    add_rules_folder(*command, call->shared.rules_folder);
    command->footer(kRewordFooter);
    command->final_callback([call, &chosen] { chosen = [call] { return run_reword(*call); }; });
}

int run_reword(const RewordCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::vector<std::string> inputs = inputs_of(call.shared, diagnostics);
    if (inputs.empty() || !outputs_are_apart(call, inputs, diagnostics)) return finish(output, diagnostics, false);
    const std::optional<RuleBook> book = load_book(call.shared.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    CheckOptions options = check_options_of(call.judged_for, *book, diagnostics);
    ProofsOfCall proofs;
    if (!proofs.load(call.proofs, *book, options, diagnostics) || diagnostics.any_errors()) {
        return finish(output, diagnostics, false);
    }
    if (options.on.empty()) options.on = today();
    RewordRun reword(call, *book, options, proofs, diagnostics, output);
    reword.run(inputs);
    proofs.report_unused(diagnostics);
    return finish(output, diagnostics, reword.worst() <= grade_named(call.fail_at).value_or(Grade::misleading));
}

}  // namespace grainside::tools
