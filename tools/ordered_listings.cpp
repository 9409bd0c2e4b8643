#include "ordered_listings.h"

#include <fmt/format.h>

#include <cstddef>
#include <cstdint>
#include <utility>

#include "grouped_number.h"
#include "interrupt.h"
#include "listing/listing_batches.h"
#include "pipeline/ordered_run.h"
#include "report/plain_lines.h"

namespace grainside::tools {
namespace {

// A part is written before its batch is done where it has become larger, as that of a compressed page may.
constexpr std::size_t kMostPartBytes = std::size_t{8} << 20;
constexpr std::size_t kInputCells = 200;  // of an input's name in a message

class OrderedListings {
public:
    OrderedListings(std::vector<std::string> inputs, const BatchOptions& reading, const RunOptions& options,
                    const ListingWork& work, Interrupt& interrupt, Diagnostics& diagnostics, Output& output)
        : input_count_(inputs.size()),
          batches_(std::move(inputs), reading),
          work_(work),
          interrupt_(interrupt),
          diagnostics_(diagnostics),
          output_(output),
          from_record_(options.from_record),
          threads_(threads_of(options, batches_.total_bytes(), input_count_)),
          slots_(ordered_slots(threads_)),
          workers_(threads_) {}

    RunEnd run() {
        diagnostics_.progress().set_total(batches_.total_bytes());
        OrderedSteps steps;
        steps.take = [this](std::size_t slot) { return batches_.take(slots_[slot].batch); };
        steps.work = [this](std::size_t worker, std::size_t slot, OrderedTurn& turn) {
            handle_batch(worker, slots_[slot], turn);
        };
        steps.emit = [this](std::size_t slot, bool) { return emit(slots_[slot]); };
        run_in_order(threads_, steps, &interrupt_.stop());
        std::vector<Issue> rest;
        issue_run_.end(rest);
        diagnostics_.report(rest);
        diagnostics_.progress().clear();
        for (const auto& worker : workers_) {
            if (worker && work_.merge) work_.merge(*worker);
        }
        if (output_.state() != Output::State::open) return RunEnd::output_gone;
        if (!interrupt_.by_signal()) {
            if (from_record_ > 1 && listings_ == 0) diagnostics_.report(nothing_left());
            return RunEnd::done;
        }
        diagnostics_.report(how_to_go_on());
        return RunEnd::interrupted;
    }

private:
    // Issues of a step, told when the output is written up to where they came.
    struct Told {
        BatchStep step;
        std::size_t at = 0;
    };

    struct Slot {
        ListingBatch batch;
        BatchStep step;
        OutputPart part;
        std::vector<Told> told;
        std::uint64_t listings = 0;
    };

    void handle_batch(std::size_t number, Slot& slot, OrderedTurn& turn) {
        if (!workers_[number]) workers_[number] = work_.make_worker();
        ListingWorker& worker = *workers_[number];
        clear(slot);
        worker.begin_part();
        std::vector<Issue> issues;
        while (slot.batch.next(slot.step) != BatchStep::end_of_batch) {
            note_step(slot);
            if (slot.step.kind != BatchStep::a_listing) continue;
            worker.handle(slot.step.listing, slot.batch.input(), slot.part, issues);
            ++slot.listings;
            if (!issues.empty()) {
                Told told;
                told.step.kind = BatchStep::a_listing;
                told.step.issues = std::exchange(issues, {});
                told.at = slot.part.text.size();
                slot.told.push_back(std::move(told));
            }
            if (slot.part.text.size() > kMostPartBytes) {
                if (!turn.emit_part()) return;
                clear(slot);
                worker.begin_part();
            }
        }
        note_step(slot);
    }

    static void clear(Slot& slot) {
        slot.part.text.clear();
        slot.part.any_listing = slot.part.begins_with_findings = slot.part.ends_with_quiet_line = false;
        slot.told.clear();
        slot.listings = 0;
    }

    // A step without issues counts only where it is the first that ends a run of them.
    static void note_step(Slot& slot) {
        const BatchStep& step = slot.step;
        const bool is_quiet = step.issues.empty() && step.left_out == 0;
        const bool goes_on = slot.told.empty() || slot.told.back().step.kind == BatchStep::end_of_batch;
        if (is_quiet && (step.kind == BatchStep::end_of_batch || !goes_on)) return;
        Told told;
        told.step.kind = step.kind;
        told.step.issues = std::move(slot.step.issues);
        told.step.left_out = step.left_out;
        told.step.left_out_errors = step.left_out_errors;
        told.at = slot.part.text.size();
        slot.told.push_back(std::move(told));
    }

    bool emit(Slot& slot) {
        listings_ += slot.listings;
        diagnostics_.progress().show(listings_, slot.batch.bytes_read());
        if (work_.before_part && slot.part.any_listing) {
            const std::string_view before = work_.before_part(slot.part);
            slot.part.text.insert(0, before);
            for (Told& told : slot.told) told.at += told.at == 0 ? 0 : before.size();
        }
        std::string_view rest = slot.part.text;
        std::size_t written = 0;
        for (Told& told : slot.told) {
            issues_.clear();
            issue_run_.add(told.step, issues_);
            if (issues_.empty()) continue;
            // Where one person sees both, they stand in the order of the input.
            if (output_.to_terminal()) {
                write(rest.substr(0, told.at - written));
                rest.remove_prefix(told.at - written);
                written = told.at;
            }
            diagnostics_.report(issues_);
        }
        write(rest);
        reached_ = slot.batch.input();
        reached_record_ = slot.batch.records();
        if (output_.state() == Output::State::open) return true;
        // Whoever waits for the source need not wait longer.
        interrupt_.ask_to_stop();
        return false;
    }

    void write(std::string_view text) {
        if (!text.empty() || !output_.text().empty()) output_.write(text);
    }

    Issue how_to_go_on() const {
        Issue issue;
        issue.severity = Issue::Severity::note;
        if (reached_.empty()) {
            issue.message = "stopped before the first record";
            return issue;
        }
        const std::string input = reached_ == "-" ? "standard input" : report::one_line(reached_, kInputCells);
        issue.message = fmt::format("stopped after record {} of {}; go on with --from-record {}",
                                    grouped(reached_record_), input, reached_record_ + 1);
        if (input_count_ > 1) issue.message += fmt::format(", {} and the inputs behind it", input);
        return issue;
    }

    Issue nothing_left() const {
        Issue issue;
        issue.severity = Issue::Severity::warning;
        issue.message =
            fmt::format("--from-record: no listing stands at record {} or behind it", grouped(from_record_));
        return issue;
    }

    std::size_t input_count_;
    ListingBatches batches_;
    const ListingWork& work_;
    Interrupt& interrupt_;
    Diagnostics& diagnostics_;
    Output& output_;
    std::uint64_t from_record_;
    std::size_t threads_;
    std::vector<Slot> slots_;
    std::vector<std::unique_ptr<ListingWorker>> workers_;

    // Of emitting, one at a time.
    IssueRun issue_run_;
    std::vector<Issue> issues_;
    std::uint64_t listings_ = 0;
    std::string reached_;
    std::uint64_t reached_record_ = 0;
};

}  // namespace

RunEnd run_listings(const SharedOptions& inputs, const RunOptions& options, const ListingWork& work,
                    Interrupt& interrupt, Diagnostics& diagnostics, Output& output) {
    BatchOptions reading;
    reading.reading = read_options_of(inputs);
    reading.from_record = options.from_record;
    reading.wake_descriptor = interrupt.wake_descriptor();
    if (options.progress || options.no_progress) diagnostics.progress().set(options.progress);
    return OrderedListings(inputs.inputs, reading, options, work, interrupt, diagnostics, output).run();
}

}  // namespace grainside::tools
