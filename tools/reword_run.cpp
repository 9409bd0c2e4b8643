#include "reword_run.h"

#include <sys/stat.h>

#include <cstddef>
#include <filesystem>
#include <utility>

#include "calendar.h"
#include "dossier_run.h"
#include "evidence/dossier_data.h"
#include "grainside/listing_reader.h"
#include "grainside/source_place.h"
#include "listing/byte_source.h"
#include "listing_edits.h"
#include "listing_run.h"
#include "load_book.h"
#include "same_file.h"
#include "whole_source.h"
#include "yaml_edits.h"

namespace grainside::tools {
namespace {

bool is_dossier_name(const std::string& input) {
    return input.ends_with(".yaml") || input.ends_with(".yml");
}

bool can_be_read_twice(const std::string& input) {
    struct stat status {};
    return input != "-" && ::stat(input.c_str(), &status) == 0 && (S_ISREG(status.st_mode) || S_ISDIR(status.st_mode));
}

}  // namespace

RewordRun::RewordRun(const RewordCall& call, const RuleBook& book, const CheckOptions& options, ProofsOfCall& proofs,
                     Diagnostics& diagnostics, Output& output)
    : call_(call),
      book_(book),
      options_(options),
      proofs_(proofs),
      diagnostics_(diagnostics),
      output_(output),
      outputs_{call.out, call.out.empty() || call.diff},
      reworder_(book, options, {call.leave_out_unproven}),
      regions_(book, options) {}

void RewordRun::run(const std::vector<std::string>& inputs) {
    for (const std::string& input : inputs) {
        if (output_.state() != Output::State::open) return;
        if (is_dossier_name(input)) {
            reword_dossier(input);
        } else {
            reword_file(input);
        }
        tell_pending();
    }
    regions_.report(diagnostics_);
    if (!call_.diff) tell(totals_.text());
}

void RewordRun::reword_file(const std::string& input) {
    std::optional<std::string> bytes;
    if (!can_be_read_twice(input) && (input == "-" || std::filesystem::exists(input))) {
        bytes = whole_source(input, diagnostics_);
        if (!bytes) return;
    }
    const std::string name = input == "-" ? "<stdin>" : input;
    const ReadOptions read = read_options_of(call_.shared);
    auto reader = bytes ? Result<ListingReader>(ListingReader::from_memory(name, *bytes, read))
                        : ListingReader::open(input, read);
    auto again = bytes ? Result<listing::ByteSource>(listing::ByteSource::from_memory(name, *bytes))
                       : listing::ByteSource::open(input);
    if (!reader || !again) {
        diagnostics_.report(reader ? again.issues() : reader.issues());
        return;
    }
    MendedFile file(outputs_, name, std::move(again).value(), output_, diagnostics_);
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
        proofs_.add(rewording.proofs_met);
        tell_left(listing, rewording);
        going = file.add(listing_edits(listing, rewording, places));
        diagnostics_.progress().show(totals_.listings, reader.value().bytes_read());
        any = true;
    }
    file.finish(any && going);
}

void RewordRun::reword_dossier(const std::string& input) {
    if (!load_judging()) return;
    for_each_dossier({input}, *evidence_, diagnostics_, [&](const Dossier& dossier) {
        if (dossier.listing() == nullptr) {
            diagnostics_.error("'" + input + "' has no listing to reword");
            return true;
        }
        const Rewording& rewording = reworder_.reword(dossier, *judge_);
        totals_.add(rewording);
        proofs_.add(dossier, rewording.proofs_met, diagnostics_);
        tell_left(*dossier.listing(), rewording);
        rewrite(input, dossier, rewording);
        return true;
    });
}

// The file that the dossier names, or the dossier itself.
void RewordRun::rewrite(const std::string& input, const Dossier& dossier, const Rewording& rewording) {
    const std::string& named = dossier.data().listing_file;
    if (named.empty()) {
        const auto yaml = whole_source(input, diagnostics_);
        if (!yaml) return;
        const auto edits = yaml_edits(input, *yaml, dossier, rewording, *evidence_, diagnostics_);
        if (!edits) return;
        MendedFile file(outputs_, input, listing::ByteSource::from_memory(input, *yaml), output_, diagnostics_);
        file.finish(file.add(*edits));
        return;
    }
    const std::string path = (std::filesystem::path(input).parent_path() / named).string();
    if (is_output(path)) return;
    auto source = listing::ByteSource::open(path);
    if (!source) {
        diagnostics_.report(source.issues());
        return;
    }
    SourcePlaces places;
    MendedFile file(outputs_, path, std::move(source).value(), output_, diagnostics_);
    file.finish(file.add(listing_edits(*dossier.listing(), rewording, places)));
}

bool RewordRun::is_output(const std::string& path) {
    if (call_.out.empty() || !is_same_file(path, call_.out)) return false;
    diagnostics_.error("--out: '" + call_.out + "' is an input and is never written over", "name another file");
    return true;
}

bool RewordRun::load_judging() {
    if (!evidence_) {
        evidence_ = load_evidence(book_, call_.shared.rules_folder, diagnostics_);
        if (!evidence_) return false;
        CheckOptions asked = options_;
        asked.on = call_.judged_for.on;
        judge_ = std::make_unique<Judge>(book_, *evidence_, JudgeOptions{asked, {}, today()});
    }
    return true;
}

void RewordRun::tell_left(const Listing& listing, const Rewording& rewording) {
    regions_.add(listing);
    if (call_.diff) return;
    append_taken_as_true(listing, rewording, left_);
    append_left_over(book_, listing, rewording, left_);
    // The difference of a file comes first, as long as that needs no more memory than this.
    constexpr std::size_t kMostPending = std::size_t{1} << 20U;
    if (left_.size() > kMostPending) tell_pending();
}

void RewordRun::tell_pending() {
    tell(left_);
    left_.clear();
}

// Beside the difference on standard error, so that a file of it holds nothing else.
void RewordRun::tell(const std::string& text) {
    if (!call_.out.empty()) {
        output_.text() += text;
        return;
    }
    if (text.empty()) return;
    output_.keep_going();
    diagnostics_.progress().clear();
    write_to_stderr(text);
}

}  // namespace grainside::tools
