#include "cmd_rules_reference.h"

#include <memory>
#include <optional>

#include "atomic_file.h"
#include "diagnostics.h"
#include "finish.h"
#include "load_book.h"
#include "output.h"
#include "report/rule_reference.h"

namespace grainside::tools {
namespace {

constexpr const char* kReferenceFooter =
    "Examples:\n"
    "  grainside rules reference --out rules.html\n"
    "  grainside rules reference --form man --out grainside-rules.7\n"
    "  grainside rules reference --rules my-rules > my-rules.html\n\n"
    "Exit status: 0 done, 2 an error, such as a file that cannot be written.";

}  // namespace

void add_rules_reference(CLI::App& group, ChosenCommand& chosen) {
    const auto call = std::make_shared<ReferenceCall>();
    CLI::App* command = group.add_subcommand("reference", "Write the whole rule book to read: every rule explained");
    command
        ->add_option("--form", call->form, "html (default), one page without scripts, or man, a\nmanual page in roff")
        ->type_name("FORM")
        ->check(one_of({"html", "man"}));
    command->add_option("--out", call->out, "Write to this file, whole or not at all (default:\nstandard output)")
        ->type_name("FILE");
    add_rules_folder(*command, call->rules_folder);
    command->footer(kReferenceFooter);
    command->final_callback([call, &chosen] { chosen = [call] { return run_rules_reference(*call); }; });
}

int run_rules_reference(const ReferenceCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(call.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    const std::optional<EvidenceBook> evidence = load_evidence_if_any(*book, call.rules_folder, diagnostics);
    if (diagnostics.any_errors()) return finish(output, diagnostics, false);
    std::string text;
    const report::RuleReference reference(*book, evidence ? &*evidence : nullptr);
    if (call.form == "man") {
        reference.append_manual(text);
    } else {
        reference.append_page(text);
    }
    if (call.out.empty()) {
        output.text() = std::move(text);
    } else {
        AtomicFile file(call.out);
        if (!file.write(text) || !file.commit()) diagnostics.error(file.failure(), file.hint());
    }
    return finish(output, diagnostics, false);
}

}  // namespace grainside::tools
