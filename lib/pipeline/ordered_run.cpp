#include "pipeline/ordered_run.h"

#include <condition_variable>
#include <cstdint>
#include <exception>
#include <limits>
#include <mutex>
#include <system_error>
#include <thread>
#include <vector>

namespace grainside {
inline namespace v0 {

namespace {

constexpr std::size_t kNoSlot = std::numeric_limits<std::size_t>::max();

class Run {
public:
    Run(std::size_t threads, const OrderedSteps& steps, const std::atomic<bool>* stop)
        : threads_(threads), steps_(steps), stop_(stop), finished_(ordered_slots(threads), kNoSlot) {
        for (std::size_t slot = finished_.size(); slot-- != 0;) free_.push_back(slot);
    }

    void run() {
        std::vector<std::thread> others;
        others.reserve(threads_ - 1);
        try {
            for (std::size_t worker = 1; worker < threads_; ++worker) {
                others.emplace_back([this, worker] { work_until_end(worker); });
            }
        } catch (const std::system_error&) {
            // The threads that there are do the work.
        }
        work_until_end(0);
        for (std::thread& other : others) other.join();
        if (failure_) std::rethrow_exception(failure_);
    }

private:
    class Turn final : public OrderedTurn {
    public:
        Turn(Run& run, std::size_t slot, std::uint64_t ticket) : run_(run), slot_(slot), ticket_(ticket) {}
        bool emit_part() override { return run_.emit_part(slot_, ticket_); }

    private:
        Run& run_;
        std::size_t slot_;
        std::uint64_t ticket_;
    };

    void work_until_end(std::size_t worker) {
        try {
            std::uint64_t ticket = 0;
            for (std::size_t slot = take(ticket); slot != kNoSlot; slot = take(ticket)) {
                Turn turn(*this, slot, ticket);
                steps_.work(worker, slot, turn);
                finish(slot, ticket);
            }
        } catch (...) {
            const std::lock_guard lock(mutex_);
            if (!failure_) failure_ = std::current_exception();
            ended_ = true;
            failed_ = true;
            changed_.notify_all();
        }
    }

    // kNoSlot at the end.
    std::size_t take(std::uint64_t& ticket) {
        std::size_t slot = kNoSlot;
        {
            std::unique_lock lock(mutex_);
            changed_.wait(lock, [this] { return ended_ || !free_.empty(); });
            if (ended_) return kNoSlot;
            slot = free_.back();
            free_.pop_back();
        }
        // Taking may wait for the source; `mutex_` is not held meanwhile, so that others can emit.
        const std::lock_guard taking(taking_);
        if (!has_ended() && !(stop_ != nullptr && stop_->load()) && steps_.take(slot)) {
            ticket = next_ticket_++;
            return slot;
        }
        end();
        return kNoSlot;
    }

    bool has_ended() {
        const std::lock_guard lock(mutex_);
        return ended_;
    }

    void end() {
        const std::lock_guard lock(mutex_);
        ended_ = true;
        changed_.notify_all();
    }

    void finish(std::size_t slot, std::uint64_t ticket) {
        std::unique_lock lock(mutex_);
        finished_[place_of(ticket)] = slot;
        if (emitting_) return;  // whoever emits will look again
        while (!closed_ && finished_[place_of(turn_)] != kNoSlot) {
            const std::size_t next = finished_[place_of(turn_)];
            emit(next, true, lock);
            finished_[place_of(turn_)] = kNoSlot;
            free_.push_back(next);
            ++turn_;
            changed_.notify_all();
        }
    }

    bool emit_part(std::size_t slot, std::uint64_t ticket) {
        std::unique_lock lock(mutex_);
        changed_.wait(lock, [&] { return closed_ || failed_ || (turn_ == ticket && !emitting_); });
        if (closed_ || failed_) return false;
        emit(slot, false, lock);
        changed_.notify_all();
        return !closed_;
    }

    // Leaves `lock` as it was: held.
    void emit(std::size_t slot, bool whole, std::unique_lock<std::mutex>& lock) {
        emitting_ = true;
        lock.unlock();
        bool goes_on = false;
        try {
            goes_on = steps_.emit(slot, whole);
        } catch (...) {
            lock.lock();
            emitting_ = false;
            closed_ = true;
            throw;
        }
        lock.lock();
        emitting_ = false;
        if (!goes_on) {
            closed_ = true;
            ended_ = true;
        }
    }

    // Tickets that wait are fewer than slots, so that each has a place of its own.
    std::size_t place_of(std::uint64_t ticket) const noexcept {
        return static_cast<std::size_t>(ticket % finished_.size());
    }

    const std::size_t threads_;
    const OrderedSteps& steps_;
    const std::atomic<bool>* stop_;

    std::mutex taking_;              // held while a batch is taken
    std::uint64_t next_ticket_ = 0;  // under taking_

    std::mutex mutex_;  // for all that follows
    std::condition_variable changed_;
    std::vector<std::size_t> free_;
    std::vector<std::size_t> finished_;  // slots by ticket
    std::uint64_t turn_ = 0;             // the ticket to be emitted next
    bool emitting_ = false;
    bool ended_ = false;   // nothing more is taken
    bool closed_ = false;  // nothing more is emitted
    bool failed_ = false;
    std::exception_ptr failure_;
};

class OnlyTurn final : public OrderedTurn {
public:
    OnlyTurn(const OrderedSteps& steps, std::size_t slot) : steps_(steps), slot_(slot) {}
    bool emit_part() override { return goes_on_ = goes_on_ && steps_.emit(slot_, false); }
    bool goes_on() const noexcept { return goes_on_; }

private:
    const OrderedSteps& steps_;
    std::size_t slot_;
    bool goes_on_ = true;
};

}  // namespace

std::size_t ordered_slots(std::size_t threads) noexcept {
    return threads <= 1 ? 1 : 2 * threads;
}

void run_in_order(std::size_t threads, const OrderedSteps& steps, const std::atomic<bool>* stop) {
    if (threads > 1) return Run(threads, steps, stop).run();
    while (!(stop != nullptr && stop->load()) && steps.take(0)) {
        OnlyTurn turn(steps, 0);
        steps.work(0, 0, turn);
        if (!turn.goes_on() || !steps.emit(0, true)) return;
    }
}

}  // namespace v0
}  // namespace grainside
