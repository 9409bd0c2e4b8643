// Reading the listings of many inputs in batches, which several threads take and read at the same time.
//
//     grainside::ListingBatches batches({"a.jsonl", "pages/7.html"}, {});
//     grainside::ListingBatch batch;  // each thread has its own
//     while (batches.take(batch)) {
//         grainside::BatchStep step;
//         while (batch.next(step) != grainside::BatchStep::end_of_batch) ... step.listing, step.issues ...
//     }
//
// The batches, read one after the other as they were taken, give the same listings, record numbers, made ids and issues
// as one ListingReader after the other, wherever the batches were cut. JSON Lines are taken as bytes and read by the
// thread that has the batch. So are files not larger than a batch, of any format, which are even opened by that thread:
// a hundred thousand pages are no worse than one catalog. Of larger inputs in other formats `take` copies the listings
// out of the reader. Where an input would have to be waited for, a batch has what is there.
// Memory: about batch_bytes a batch, more for a single longer record; for a JSON array the whole file as well.
#ifndef GRAINSIDE_LISTING_LISTING_BATCHES_H
#define GRAINSIDE_LISTING_LISTING_BATCHES_H

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/listing.h"
#include "grainside/listing_reader.h"
#include "grainside/result.h"

namespace grainside {
inline namespace v0 {

struct BatchOptions {
    ReadOptions reading = {};
    // How many bytes of input a batch has, about. Larger ones cost memory and show first findings later.
    std::size_t batch_bytes = std::size_t{256} << 10;
    // Records of the first input before this one are passed over, for JSON Lines without being read; issues about them
    // are not told. From 1.
    std::uint64_t from_record = 1;
    // Where it can be read, waiting for an input ends and nothing more is taken; -1 = none. It is not read from.
    int wake_descriptor = -1;
};

// What `ListingBatch::next` came to.
struct BatchStep {
    enum Kind : std::uint8_t {
        a_listing,     // `listing` is filled; its views live until the next call
        end_of_input,  // nothing follows of this input
        end_of_batch
    };
    Kind kind = end_of_batch;
    Listing listing;
    // About what was passed over since the step before. At the end of a batch, what was passed over may go on in the
    // next one: IssueRun joins them.
    std::vector<Issue> issues;
    std::uint64_t left_out = 0;  // issues beyond kMaxIssuesPerCall
    std::uint64_t left_out_errors = 0;
};

// Not thread-safe; movable. Keeps its memory from one use to the next.
class ListingBatch {
public:
    ListingBatch();
    ListingBatch(ListingBatch&&) noexcept;
    ListingBatch& operator=(ListingBatch&&) noexcept;
    ~ListingBatch();

    // REQUIRES: the batch has been taken. Clears the step's issues first.
    BatchStep::Kind next(BatchStep& step);

    // The input of the last step, as the call named it, and the number of the last record of it that was read; of JSON
    // Lines, those included that could not be.
    const std::string& input() const noexcept;
    std::uint64_t records() const noexcept;
    // Bytes of the inputs up to and with this batch.
    std::uint64_t bytes_read() const noexcept;

private:
    friend class ListingBatches;
    struct Content;
    std::unique_ptr<Content> content_;
};

// Thread-safe: any number of threads may take batches. Movable only before that.
class ListingBatches {
public:
    // Paths, "-" is standard input. An input that cannot be opened is an issue of its batch ("cannot-open",
    // "is-directory"), and the rest goes on.
    ListingBatches(std::vector<std::string> inputs, const BatchOptions& options);
    // One input in memory that the caller keeps alive.
    static ListingBatches from_memory(std::string name, std::string_view bytes, const BatchOptions& options);

    ListingBatches(ListingBatches&&) noexcept;
    ListingBatches& operator=(ListingBatches&&) noexcept;
    ~ListingBatches();

    // False at the end of all inputs.
    bool take(ListingBatch& batch);

    // The size of all inputs together; 0 where that of one is not known.
    std::uint64_t total_bytes() const noexcept;

private:
    class Taker;
    explicit ListingBatches(std::unique_ptr<Taker> taker);
    std::unique_ptr<Taker> taker_;
};

// Joins the issues of steps in their order: as ListingReader::next, it tells at most kMaxIssuesPerCall between two
// listings and then how many were left out, whether or not they came in one batch. Not thread-safe.
class IssueRun {
public:
    // Appends to `told` what is to be told after this step. The step's issues are moved from.
    void add(BatchStep& step, std::vector<Issue>& told);
    // The same after the last step.
    void end(std::vector<Issue>& told);

private:
    std::size_t told_ = 0;
    std::uint64_t left_out_ = 0;
    std::uint64_t left_out_errors_ = 0;
    std::string file_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_LISTING_LISTING_BATCHES_H
