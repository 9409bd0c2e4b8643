#include "pipeline/ordered_run.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <condition_variable>
#include <mutex>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

namespace grainside {
namespace {

constexpr std::size_t kBatches = 500;

// Counts from 0 and emits what it counted; the work is `cost` steps of nothing.
struct Counting {
    explicit Counting(std::size_t count) : threads(count), slots(ordered_slots(count)) {
        steps.take = [this](std::size_t slot) {
            if (next == kBatches) return false;
            EXPECT_EQ(slots[slot], 0U) << "a slot is given that is still in use";
            slots[slot] = ++next;
            return true;
        };
        steps.work = [](std::size_t, std::size_t, OrderedTurn&) {};
        steps.emit = [this](std::size_t slot, bool whole) {
            EXPECT_FALSE(emitting) << "two at the same time";
            emitting = true;
            emitted.push_back(slots[slot]);
            if (whole) slots[slot] = 0;
            emitting = false;
            return true;
        };
    }
    void run(const std::atomic<bool>* stop = nullptr) { run_in_order(threads, steps, stop); }
    bool in_order_up_to(std::size_t count) const {
        if (emitted.size() != count) return false;
        for (std::size_t at = 0; at < count; ++at) {
            if (emitted[at] != at + 1) return false;
        }
        return true;
    }

    std::size_t threads;
    std::vector<std::size_t> slots;
    OrderedSteps steps;
    std::size_t next = 0;
    bool emitting = false;
    std::vector<std::size_t> emitted;
};

class OrderedRunTest : public testing::TestWithParam<std::size_t> {};

TEST_P(OrderedRunTest, WhatWasTakenComesOutInOrder) {
    Counting counting(GetParam());
    // Early batches take longer than late ones, so that they are overtaken.
    counting.steps.work = [](std::size_t, std::size_t slot, OrderedTurn&) {
        for (std::size_t turn = 0; turn < 40 - 10 * (slot % 4); ++turn) std::this_thread::yield();
    };
    counting.run();
    EXPECT_TRUE(counting.in_order_up_to(kBatches));
}

TEST_P(OrderedRunTest, PartsComeBeforeTheRestOfTheirBatchAndAfterWhatWasBefore) {
    Counting counting(GetParam());
    counting.steps.work = [](std::size_t, std::size_t, OrderedTurn& turn) { EXPECT_TRUE(turn.emit_part()); };
    counting.run();
    ASSERT_EQ(counting.emitted.size(), 2 * kBatches);
    for (std::size_t at = 0; at < 2 * kBatches; ++at) EXPECT_EQ(counting.emitted[at], at / 2 + 1);
}

TEST_P(OrderedRunTest, AStopFinishesWhatWasTaken) {
    Counting counting(GetParam());
    std::atomic<bool> stop = false;
    const auto take = counting.steps.take;
    counting.steps.take = [&](std::size_t slot) {
        stop = counting.next == 99;
        return take(slot);
    };
    counting.run(&stop);
    EXPECT_TRUE(counting.in_order_up_to(100));
}

TEST_P(OrderedRunTest, NothingComesAfterAnEmitThatSaysNo) {
    Counting counting(GetParam());
    const auto emit = counting.steps.emit;
    counting.steps.emit = [&](std::size_t slot, bool whole) {
        emit(slot, whole);
        return counting.emitted.size() < 7;
    };
    counting.run();
    EXPECT_TRUE(counting.in_order_up_to(7));
    EXPECT_LE(counting.next, 7 + ordered_slots(GetParam()) + 1) << "taking goes on";
}

TEST_P(OrderedRunTest, AnExceptionOfAnyStepIsThrownOn) {
    for (const std::string step : {"take", "work", "emit", "part"}) {
        Counting counting(GetParam());
        const auto take = counting.steps.take;
        const auto emit = counting.steps.emit;
        const auto fail = [&](const char* here, std::size_t number) {
            if (step == here && number == 50) throw std::runtime_error(here);
        };
        counting.steps.take = [&](std::size_t slot) {
            fail("take", counting.next);
            return take(slot);
        };
        counting.steps.work = [&](std::size_t, std::size_t slot, OrderedTurn& turn) {
            fail("work", counting.slots[slot]);
            if (step == "part") turn.emit_part();
        };
        counting.steps.emit = [&](std::size_t slot, bool whole) {
            fail("emit", counting.slots[slot]);
            if (!whole) fail("part", counting.slots[slot]);
            return emit(slot, whole);
        };
        try {
            counting.run();
            ADD_FAILURE() << step << " threw and nobody noticed";
        } catch (const std::runtime_error& error) {
            EXPECT_EQ(error.what(), step);
        }
        EXPECT_TRUE(std::is_sorted(counting.emitted.begin(), counting.emitted.end())) << step;
        EXPECT_LE(counting.emitted.empty() ? 0 : counting.emitted.back(), 50U) << step;
    }
}

// A source that has nothing more to show for now must not hold back what came of what it gave: the second batch is
// only given when the first has been emitted.
TEST(OrderedRun, AWaitingSourceHoldsNothingBack) {
    std::mutex mutex;
    std::condition_variable changed;
    std::size_t emitted = 0;
    std::size_t taken = 0;
    OrderedSteps steps;
    steps.take = [&](std::size_t) {
        std::unique_lock lock(mutex);
        changed.wait(lock, [&] { return emitted == taken; });
        return ++taken <= 20;
    };
    steps.work = [](std::size_t, std::size_t, OrderedTurn&) {};
    steps.emit = [&](std::size_t, bool) {
        const std::lock_guard lock(mutex);
        ++emitted;
        changed.notify_all();
        return true;
    };
    run_in_order(3, steps);
    EXPECT_EQ(emitted, 20U);
}

// While the first batch is worked on, no more are taken than there are slots.
TEST(OrderedRun, FinishedBatchesThatWaitAreFew) {
    constexpr std::size_t kThreads = 3;
    Counting counting(kThreads);
    std::mutex mutex;
    std::condition_variable changed;
    std::size_t finished = 0;
    counting.steps.work = [&](std::size_t, std::size_t slot, OrderedTurn&) {
        std::unique_lock lock(mutex);
        if (counting.slots[slot] == 1) {
            changed.wait(lock, [&] { return finished == ordered_slots(kThreads) - 1; });
        }
        ++finished;
        changed.notify_all();
    };
    std::size_t taken_at_first = 0;
    const auto emit = counting.steps.emit;
    counting.steps.emit = [&](std::size_t slot, bool whole) {
        if (counting.slots[slot] == 1) {
            const std::lock_guard lock(mutex);
            taken_at_first = finished;
        }
        return emit(slot, whole);
    };
    counting.run();
    EXPECT_EQ(taken_at_first, ordered_slots(kThreads));
    EXPECT_TRUE(counting.in_order_up_to(kBatches));
}

INSTANTIATE_TEST_SUITE_P(Threads, OrderedRunTest, testing::Values(0, 1, 2, 3, 8),
                         [](const auto& row) { return "of_" + std::to_string(row.param); });

}  // namespace
}  // namespace grainside
