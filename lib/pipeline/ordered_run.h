// Work on a stream in batches, by several threads, with results in the order of the stream.
//
//     std::vector<Slot> slots(grainside::ordered_slots(threads));   // a batch and room for what comes of it
//     grainside::OrderedSteps steps;
//     steps.take = [&](std::size_t slot) { return batches.take(slots[slot].batch); };
//     steps.work = [&](std::size_t worker, std::size_t slot, grainside::OrderedTurn&) { ... };
//     steps.emit = [&](std::size_t slot, bool) { return write(slots[slot].text); };
//     grainside::run_in_order(threads, steps);
//
// A thread takes a batch, works on it without any lock, and leaves it; whoever finishes the batch whose turn it is
// emits it and those behind it that are finished too. A finished batch never waits for a later one to be taken, so that
// a slow source shows what came of it at once. Memory is bounded: there are `ordered_slots(threads)` slots, and nothing
// is taken while none is free. The caller owns the slots and may reuse their memory.
#ifndef GRAINSIDE_PIPELINE_ORDERED_RUN_H
#define GRAINSIDE_PIPELINE_ORDERED_RUN_H

#include <atomic>
#include <cstddef>
#include <functional>

namespace grainside {
inline namespace v0 {

inline constexpr std::size_t kMaxThreads = 256;

// For work whose result may outgrow memory: what there is of it is emitted when its turn has come.
class OrderedTurn {
public:
    // Waits until every batch before this one is emitted, and emits the slot as far as it is (`whole` false). False:
    // the run has stopped, and the rest of the batch need not be worked on.
    virtual bool emit_part() = 0;

protected:
    ~OrderedTurn() = default;
};

struct OrderedSteps {
    // Fills a free slot with the next batch; false at the end of the stream. By one thread at a time.
    std::function<bool(std::size_t slot)> take;
    // `worker` counts from 0 below the number of threads; one thread has one number throughout.
    std::function<void(std::size_t worker, std::size_t slot, OrderedTurn& turn)> work;
    // In the order of taking, one at a time, by any of the threads; while it runs others may take and work. `whole`:
    // the batch is finished. False: take and emit nothing more.
    std::function<bool(std::size_t slot, bool whole)> emit;
};

// Slots that a run with so many threads uses: one for one thread, else two for each.
std::size_t ordered_slots(std::size_t threads) noexcept;

// Runs to the end of the stream, or until `stop` is set: then nothing more is taken, and what was taken is finished and
// emitted. The calling thread is one of the workers; with `threads` 1 (or 0) no other is started, and where the system
// refuses further ones the run goes on with fewer. REQUIRES: `threads` is at most kMaxThreads.
// An exception of a step stops the run: what was taken before the batch that threw is emitted, nothing behind it, and
// the first exception is thrown on when every thread has ended.
void run_in_order(std::size_t threads, const OrderedSteps& steps, const std::atomic<bool>* stop = nullptr);

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_PIPELINE_ORDERED_RUN_H
