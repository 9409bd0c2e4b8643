#include "cmd_reword.h"

#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "atomic_file.h"
#include "calendar.h"
#include "diagnostics.h"
#include "dossier_run.h"
#include "evidence/dossier_data.h"
#include "finish.h"
#include "grainside/listing_reader.h"
#include "grainside/reword.h"
#include "grainside/source_place.h"
#include "left_over_view.h"
#include "listing/byte_source.h"
#include "listing_run.h"
#include "load_book.h"
#include "output.h"
#include "report/json_text.h"
#include "same_file.h"
#include "source_edits.h"
#include "unified_diff.h"
#include "yaml_places.h"

namespace grainside::tools {
namespace {

constexpr const char* kRewordFooter =
    "Examples:\n"
    "  grainside reword listing.txt\n"
    "  grainside reword --diff catalog.jsonl > mend.diff\n"
    "  patch catalog.jsonl < mend.diff\n"
    "  grainside reword --market eu --out mended.jsonl catalog.jsonl\n"
    "  grainside reword --out mended.yaml tote.yaml\n\n"
    "Exit status:\n"
    "  0  done, and nothing at or above the grade of --fail-at is left\n"
    "  1  done, and a finding is left that a person must settle\n"
    "  2  an error: a wrong call, a file or record that cannot be read (the others\n"
    "     are reworded all the same), output that cannot be written";

// Goes into the corrected file.
class FileSink final : public LineSink {
public:
    explicit FileSink(AtomicFile& file) : file_(&file) {}
    void same(std::string_view line) override { append(line); }
    void changed(std::string_view, std::string_view after) override { append(after); }
    bool finish() { return file_->write(text_) && file_->commit(); }

private:
    void append(std::string_view bytes) {
        constexpr std::size_t kPiece = std::size_t{1} << 18U;
        text_ += bytes;
        if (text_.size() < kPiece) return;
        file_->write(text_);
        text_.clear();
    }
    AtomicFile* file_;
    std::string text_;
};

bool is_dossier_name(const std::string& input) {
    return input.ends_with(".yaml") || input.ends_with(".yml");
}

bool can_be_read_twice(const std::string& input) {
    struct stat status {};
    return input != "-" && ::stat(input.c_str(), &status) == 0 && (S_ISREG(status.st_mode) || S_ISDIR(status.st_mode));
}

// All of a source that cannot be read twice: standard input, a pipe.
std::optional<std::string> whole_source(const std::string& input, Diagnostics& diagnostics) {
    auto opened = listing::ByteSource::open(input);
    if (!opened) {
        diagnostics.report(opened.issues());
        return std::nullopt;
    }
    listing::ByteSource& source = opened.value();
    while (source.pending().size() <= kMaxWholeFileBytes && source.more()) {
    }
    if (source.pending().size() > kMaxWholeFileBytes) {
        diagnostics.error("this input is too large to be read from a pipe", "name the file instead");
        return std::nullopt;
    }
    if (source.error() != 0) diagnostics.error("'" + input + "' cannot be read to its end");
    return std::string(source.pending());
}

// What the bytes of a field have to be for `words` to be read from them.
std::string as_in_source(const Field& field, std::string_view words) {
    if (field.origin.writing != Writing::json_string) return std::string(words);
    std::string quoted;
    report::append_json_string(quoted, words);
    return quoted.substr(1, quoted.size() - 2);
}

class Rewriting {
public:
    Rewriting(const RewordCall& call, const RuleBook& book, const CheckOptions& options, Diagnostics& diagnostics,
              Output& output)
        : call_(call),
          book_(book),
          options_(options),
          diagnostics_(diagnostics),
          output_(output),
          reworder_(book, options, {call.leave_out_unproven}) {}

    void run(const std::vector<std::string>& inputs) {
        for (const std::string& input : inputs) {
            if (output_.state() != Output::State::open) return;
            if (is_dossier_name(input)) {
                reword_dossier(input);
            } else {
                reword_file(input);
            }
            tell_pending();
        }
        if (!call_.diff) tell(totals_.text());
    }

    Grade worst() const { return totals_.worst(); }

private:
    // The lines of one file on their way to the difference and to the corrected file.
    class Lines {
    public:
        Lines(Rewriting& run, const std::string& name, listing::ByteSource source)
            : run_(run),
              diff_(name, ::isatty(STDOUT_FILENO) == 1, run.output_.text()),
              file_(run.call_.out.empty() ? nullptr : std::make_unique<AtomicFile>(run.call_.out)),
              file_sink_(file_ ? std::make_unique<FileSink>(*file_) : nullptr),
              editor_(std::move(source), sinks()) {}

        // False: nothing more can be written. A reader of the difference that has gone does not stop the file.
        bool add(const std::vector<SourceEdit>& edits) {
            const bool shown = run_.output_.keep_going();
            return editor_.add(edits) && (file_ ? !file_->failed() : shown);
        }
        // `whole`: reading came to its end; without it no file is written.
        void finish(const std::string& name, bool whole) {
            if (whole && editor_.failure().empty()) editor_.finish();
            diff_.finish();
            if (!editor_.failure().empty()) {
                run_.diagnostics_.error("'" + name + "' cannot be reworded: " + editor_.failure());
                return;
            }
            if (!file_) return;
            if (!whole || !file_sink_->finish()) {
                if (file_->failed()) run_.diagnostics_.error(file_->failure(), file_->hint());
            }
        }

    private:
        std::vector<LineSink*> sinks() {
            std::vector<LineSink*> all;
            if (!file_ || run_.call_.diff) all.push_back(&diff_);
            if (file_sink_) all.push_back(file_sink_.get());
            return all;
        }
        Rewriting& run_;
        UnifiedDiff diff_;
        std::unique_ptr<AtomicFile> file_;
        std::unique_ptr<FileSink> file_sink_;
        SourceEditor editor_;
    };

    void reword_file(const std::string& input) {
        std::optional<std::string> bytes;
        if (!can_be_read_twice(input) && (input == "-" || std::filesystem::exists(input))) {
            bytes = whole_source(input, diagnostics_);
            if (!bytes) return;
        }
        const std::string name = input == "-" ? "<stdin>" : input;
        const ReadOptions read{input_format_named(call_.shared.input_format)};
        auto reader = bytes ? Result<ListingReader>(ListingReader::from_memory(name, *bytes, read))
                            : ListingReader::open(input, read);
        auto again = bytes ? Result<listing::ByteSource>(listing::ByteSource::from_memory(name, *bytes))
                           : listing::ByteSource::open(input);
        if (!reader || !again) {
            diagnostics_.report(reader ? again.issues() : reader.issues());
            return;
        }
        Lines lines(*this, name, std::move(again).value());
        SourcePlaces places;
        Listing listing;
        std::vector<Issue> issues;
        bool any = false;  // without a listing there is nothing to write, and an error was reported
        bool going = true;
        while (going) {
            issues.clear();
            const bool more = reader.value().next(listing, issues);
            diagnostics_.report(issues);
            if (!more) break;
            const Rewording& rewording = reworder_.reword(listing);
            totals_.add(rewording);
            tell_left(listing, rewording);
            going = lines.add(edits_in(listing, rewording, places));
            diagnostics_.progress().show(totals_.listings, reader.value().bytes_read());
            any = true;
        }
        lines.finish(name, any && going);
    }

    static std::vector<SourceEdit> edits_in(const Listing& listing, const Rewording& rewording, SourcePlaces& places) {
        std::vector<SourceEdit> edits;
        for (const Edit& edit : rewording.edits) {
            const auto span = places.span(listing, edit.field, edit.start, edit.end);
            if (!span) continue;
            const std::string_view old =
                listing.source.bytes.substr(static_cast<std::size_t>(span->start - listing.source.start),
                                            static_cast<std::size_t>(span->end - span->start));
            edits.push_back(
                {span->start, span->end, std::string(old), as_in_source(listing.fields[edit.field], edit.wording)});
        }
        std::sort(edits.begin(), edits.end(),
                  [](const SourceEdit& a, const SourceEdit& b) { return a.start < b.start; });
        return edits;
    }

    void reword_dossier(const std::string& input) {
        if (!load_judging()) return;
        for_each_dossier({input}, *evidence_, diagnostics_, [&](const Dossier& dossier) {
            if (dossier.listing() == nullptr) {
                diagnostics_.error("'" + input + "' has no listing to reword");
                return true;
            }
            const Rewording& rewording = reworder_.reword(dossier, *judge_);
            totals_.add(rewording);
            tell_left(*dossier.listing(), rewording);
            const std::string& file = dossier.data().listing_file;
            if (file.empty()) {
                rewrite_dossier(input, dossier, rewording);
                return true;
            }
            const std::string path = (std::filesystem::path(input).parent_path() / file).string();
            if (is_output(path)) return true;
            auto source = listing::ByteSource::open(path);
            if (!source) {
                diagnostics_.report(source.issues());
                return true;
            }
            SourcePlaces places;
            Lines lines(*this, path, std::move(source).value());
            lines.finish(path, lines.add(edits_in(*dossier.listing(), rewording, places)));
            return true;
        });
    }

    // The listing stands in the dossier itself.
    void rewrite_dossier(const std::string& input, const Dossier& dossier, const Rewording& rewording) {
        const auto bytes = whole_source(input, diagnostics_);
        if (!bytes) return;
        const YamlPlaces places(*bytes, dossier.listing()->fields);
        std::vector<SourceEdit> edits;
        std::string mended = *bytes;
        for (const Edit& edit : rewording.edits) {
            const auto span = places.find(edit.field, edit.start, edit.end);
            const auto written = span ? places.written(edit.field, edit.wording) : std::nullopt;
            if (!written) {
                diagnostics_.error("the edit of '" + edit.words + "' finds no place in the YAML of '" + input + "'",
                                   "write '" + edit.wording + "' by hand");
                return;
            }
            edits.push_back(
                {span->first, span->second, bytes->substr(span->first, span->second - span->first), *written});
        }
        std::sort(edits.begin(), edits.end(),
                  [](const SourceEdit& a, const SourceEdit& b) { return a.start < b.start; });
        for (auto edit = edits.rbegin(); edit != edits.rend(); ++edit) {
            mended.replace(static_cast<std::size_t>(edit->start), static_cast<std::size_t>(edit->end - edit->start),
                           edit->new_bytes);
        }
        // Only a file that reads as intended is written.
        const auto again =
            Dossier::parse(input, mended, std::filesystem::path(input).parent_path(), *evidence_, {.today = today()});
        if (!again || !same_texts(*again.value().listing(), rewording)) {
            diagnostics_.error("the edits do not fit into the YAML of '" + input + "'",
                               "write the listing's texts as block scalars, with '|'");
            return;
        }
        Lines lines(*this, input, listing::ByteSource::from_memory(input, *bytes));
        lines.finish(input, lines.add(edits));
    }

    static bool same_texts(const Listing& listing, const Rewording& rewording) {
        return std::equal(listing.fields.begin(), listing.fields.end(), rewording.texts.begin(), rewording.texts.end(),
                          [](const Field& field, const std::string& text) { return field.text == text; });
    }

    bool is_output(const std::string& path) {
        if (call_.out.empty() || !is_same_file(path, call_.out)) return false;
        diagnostics_.error("--out: '" + call_.out + "' is an input and is never written over", "name another file");
        return true;
    }

    bool load_judging() {
        if (!evidence_) {
            evidence_ = load_evidence(book_, call_.shared.rules_folder, diagnostics_);
            if (!evidence_) return false;
            CheckOptions asked = options_;
            asked.on = call_.judged_for.on;
            judge_ = std::make_unique<Judge>(book_, *evidence_, JudgeOptions{asked, {}, today()});
        }
        return true;
    }

    void tell_left(const Listing& listing, const Rewording& rewording) {
        if (call_.diff) return;
        append_taken_as_true(listing, rewording, left_);
        append_left_over(book_, listing, rewording, left_);
        // The difference of a file comes first, as long as that needs no more memory than this.
        constexpr std::size_t kMostPending = std::size_t{1} << 20U;
        if (left_.size() > kMostPending) tell_pending();
    }

    void tell_pending() {
        tell(left_);
        left_.clear();
    }

    // Beside the difference on standard error, so that a file of it holds nothing else.
    void tell(const std::string& text) {
        if (!call_.out.empty()) {
            output_.text() += text;
            return;
        }
        if (text.empty()) return;
        output_.keep_going();
        diagnostics_.progress().clear();
        write_to_stderr(text);
    }

    const RewordCall& call_;
    const RuleBook& book_;
    CheckOptions options_;
    Diagnostics& diagnostics_;
    Output& output_;
    Reworder reworder_;
    std::optional<EvidenceBook> evidence_;
    std::unique_ptr<Judge> judge_;
    RewordTotals totals_;
    std::string left_;  // what is left in the listings of this input
};

bool outputs_are_apart(const RewordCall& call, const std::vector<std::string>& inputs, Diagnostics& diagnostics) {
    if (call.out.empty()) return true;
    if (inputs.size() > 1) {
        diagnostics.error("--out takes one input, and there are " + std::to_string(inputs.size()),
                          "call once for each, or use --diff");
        return false;
    }
    if (!is_same_file(inputs.front(), call.out)) return true;
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
    add_rules_folder(*command, call->shared.rules_folder);
    command->footer(kRewordFooter);
    command->final_callback([call, &chosen] { chosen = [call] { return run_reword(*call); }; });
}

int run_reword(const RewordCall& call) {
    Diagnostics diagnostics;
    Output output;
    std::vector<std::string> inputs = call.shared.inputs;
    if (inputs.empty()) inputs.emplace_back("-");
    if (!outputs_are_apart(call, inputs, diagnostics)) return finish(output, diagnostics, false);
    const std::optional<RuleBook> book = load_book(call.shared.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    CheckOptions options = check_options_of(call.judged_for, *book, diagnostics);
    if (diagnostics.any_errors()) return finish(output, diagnostics, false);
    if (options.on.empty()) options.on = today();
    Rewriting rewriting(call, *book, options, diagnostics, output);
    rewriting.run(inputs);
    return finish(output, diagnostics, rewriting.worst() <= grade_named(call.fail_at).value_or(Grade::misleading));
}

}  // namespace grainside::tools
