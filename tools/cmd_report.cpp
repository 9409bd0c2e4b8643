#include "cmd_report.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <utility>

#include "atomic_file.h"
#include "calendar.h"
#include "diagnostics.h"
#include "dossier_run.h"
#include "finish.h"
#include "grainside/full_report.h"
#include "load_book.h"
#include "output.h"
#include "same_file.h"

namespace grainside::tools {
namespace {

namespace fs = std::filesystem;

constexpr const char* kReportFooter =
    "Examples:\n"
    "  grainside report --out tote.html tote.yaml\n"
    "  grainside report --out autumn.html dossiers/*.yaml\n"
    "  grainside report --into reports dossiers/*.yaml\n"
    "  grainside report --format markdown tote.yaml > letter.md\n"
    "  grainside report --proofs filed.yaml --out tote.html tote.yaml\n\n";

struct ReportForm {
    std::string_view name;
    std::array<std::string_view, 3> endings;  // of file names; the first is that of files we name ourselves
    void (*write)(std::span<const FullReport>, std::string&);
};

constexpr ReportForm kReportForms[] = {
    {"html", {".html", ".htm", ".xhtml"}, write_html},
    {"markdown", {".md", ".markdown", ".mdown"}, write_markdown},
    {"json", {".json", ".json", ".json"}, write_json},
    {"csv", {".csv", ".csv", ".csv"}, write_csv},
};

// What was asked for, else what the name of the file says, else a page.
const ReportForm& form_of(const ReportCall& call) {
    for (const ReportForm& form : kReportForms) {
        if (form.name == call.format) return form;
    }
    const std::string ending = fs::path(call.out).extension().string();
    for (const ReportForm& form : kReportForms) {
        if (std::find(form.endings.begin(), form.endings.end(), ending) != form.endings.end()) return form;
    }
    return kReportForms[0];
}

// A report over a dossier, its listing or its pictures would lose them.
class ReportFiles {
public:
    ReportFiles(const ReportCall& call, std::span<const FullReport> reports, Diagnostics& diagnostics)
        : inputs_(call.dossiers), diagnostics_(diagnostics) {
        inputs_.insert(inputs_.end(), call.proofs.files.begin(), call.proofs.files.end());
        for (const FullReport& one : reports) {
            inputs_.insert(inputs_.end(), one.named_files().begin(), one.named_files().end());
        }
    }

    bool write(const std::string& path, std::string_view bytes) {
        const bool is_input = std::any_of(inputs_.begin(), inputs_.end(),
                                          [&](const std::string& input) { return is_same_file(path, input); });
        if (is_input) {
            diagnostics_.error("'" + path + "' is read by a dossier of this call, and would be lost",
                               "name another file or folder");
            return false;
        }
        AtomicFile file(path);
        if (file.write(bytes) && file.commit()) return true;
        diagnostics_.error(file.failure(), file.hint());
        return false;
    }

private:
    std::vector<std::string> inputs_;
    Diagnostics& diagnostics_;
};

// Of a dossier on standard input too.
std::string file_name_of(const FullReport& report) {
    return report.id() == "<stdin>" ? "stdin" : std::string(report.id());
}

// One file a dossier, named by it.
void write_into_folder(const ReportCall& call, const ReportForm& form, std::span<const FullReport> reports,
                       Diagnostics& diagnostics) {
    std::error_code failed;
    fs::create_directories(call.into, failed);
    if (failed) {
        diagnostics.error("the folder '" + call.into + "' cannot be made: " + failed.message());
        return;
    }
    std::map<std::string, std::size_t> named;
    bool any_twice = false;
    for (const FullReport& one : reports) {
        if (++named[file_name_of(one)] == 2) {
            any_twice = true;
            diagnostics.error(
                "two dossiers are called '" + std::string(one.id()) + "'; their reports would be one file",
                "give one of them another file name");
        }
    }
    if (any_twice) return;
    ReportFiles files(call, reports, diagnostics);
    const std::string ending(form.endings.front());
    for (const FullReport& one : reports) {
        std::string text;
        form.write({&one, 1}, text);
        const std::string path = (fs::path(call.into) / (file_name_of(one) + ending)).string();
        if (!files.write(path, text)) return;
    }
}

}  // namespace

void add_report(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<ReportCall>();
    CLI::App* command = app.add_subcommand("report", "Write the whole report of dossiers, to publish or to send");
    command->add_option("dossiers", call->dossiers, "Dossiers to read, one YAML file a sample; '-': standard\ninput")
        ->type_name("DOSSIER")
        ->required();
    command
        ->add_option("--format", call->format,
                     "html (default), markdown, json or csv; without it the\n"
                     "name of --out decides")
        ->type_name("FORMAT")
        ->check(one_of({"html", "markdown", "json", "csv"}));
    CLI::Option* out = command
                           ->add_option("--out", call->out,
                                        "Write one file for all dossiers, whole or not at all\n"
                                        "(default: standard output)")
                           ->type_name("FILE");
    command
        ->add_option("--into", call->into,
                     "Write one file a dossier into this folder, which is made\nwhere it is missing")
        ->type_name("DIR")
        ->excludes(out);
    add_judged_for(*command, call->judged_for, "that on which the listing was captured, else today");
    add_decision_rule(*command, call->decision_rule);
    add_proofs(*command, call->proofs);
    add_rules_folder(*command, call->rules_folder);
    command->footer(std::string(kReportFooter) + kExitStatusOfDossiers);
    command->final_callback([call, &chosen] { chosen = [call] { return run_report(*call); }; });
}

int run_report(const ReportCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(call.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    const std::optional<EvidenceBook> evidence = load_evidence(*book, call.rules_folder, diagnostics);
    const auto rule = decision_rule_named(call.decision_rule).value_or(DecisionRule::both_guarded);
    JudgeOptions options{check_options_of(call.judged_for, *book, diagnostics), rule, today()};
    ProofsOfCall proofs;
    if (!evidence || !proofs.load(call.proofs, *book, options.check, diagnostics) || diagnostics.any_errors()) {
        return finish(output, diagnostics, false);
    }

    Judge judge(*book, *evidence, options);
    std::vector<FullReport> reports;
    for_each_dossier(call.dossiers, *evidence, diagnostics, [&](const Dossier& dossier) {
        reports.push_back(FullReport::gather({*book, *evidence, dossier}, judge));
        proofs.add(dossier, reports.back().proofs_met(), diagnostics);
        return true;
    });
    proofs.report_unused(diagnostics);
    if (reports.empty()) return finish(output, diagnostics, false);
    const ReportForm& form = form_of(call);
    if (!call.into.empty()) {
        write_into_folder(call, form, reports, diagnostics);
    } else if (call.out.empty()) {
        form.write(reports, output.text());
    } else {
        std::string text;
        form.write(reports, text);
        ReportFiles(call, reports, diagnostics).write(call.out, text);
    }
    return finish(output, diagnostics, false);
}

}  // namespace grainside::tools
