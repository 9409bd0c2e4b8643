// Whole lines of JSON Lines, cut off a source as they come, with the numbers that they have in it.
#ifndef GRAINSIDE_LISTING_LINE_BATCH_H
#define GRAINSIDE_LISTING_LINE_BATCH_H

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string_view>
#include <vector>

#include "grainside/listing_reader.h"
#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/json_lines_source.h"
#include "listing/line_count.h"

namespace grainside::listing {

struct LineBatch {
    std::string_view lines;         // in `memory`
    LinesBefore before;             // in the source
    std::uint64_t records = 0;      // that the batch has
    std::uint64_t too_large = 0;    // the number of a line behind `lines` that was passed over; 0 = none
    bool ends_input = false;        // nothing follows
    std::vector<Issue> at_the_end;  // about the source as a whole, after the lines

    // Kept from one use to the next, unless a single line made it much larger than a batch is.
    std::unique_ptr<char[]> memory;
    std::size_t room = 0;
};

// Cuts a source into batches. Not thread-safe.
class LineBatcher {
public:
    // Both outlive this object. `batch_bytes` is how long a batch should be; a longer line makes one of its own, up to
    // `max_record_bytes`. The first `pass_over` records are not given.
    LineBatcher(ByteSource& source, std::size_t batch_bytes, std::uint64_t pass_over,
                std::size_t max_record_bytes = kMaxRecordBytes);

    // False at the end, and where waiting for the source was ended from outside. Takes what is there where the source
    // would have to be waited for, if that is a whole line.
    bool take(LineBatch& batch);

private:
    std::size_t gather();
    void fill(LineBatch& batch, std::size_t size);
    void pass_over_line();
    void finish(LineBatch& batch);
    bool skip(std::size_t& size);

    ByteSource* source_;
    std::size_t batch_bytes_;
    std::uint64_t pass_over_;
    std::size_t max_record_bytes_;
    LineCount count_;
    LinesBefore at_;
    std::uint64_t too_large_ = 0;
    bool begun_ = false;
    bool source_ended_ = false;
    bool ended_ = false;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_LINE_BATCH_H
