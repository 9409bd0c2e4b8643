// What a batch of listings holds: one of three ways in which its thread gets at them.
#ifndef GRAINSIDE_LISTING_BATCH_CONTENT_H
#define GRAINSIDE_LISTING_BATCH_CONTENT_H

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/json_lines_source.h"
#include "listing/line_batch.h"
#include "listing/listing_batches.h"
#include "listing/listing_copies.h"

namespace grainside::listing {

// Reads batches of lines of one input; the parser keeps its memory.
struct LineReading {
    explicit LineReading(const std::string& name)
        : source(ByteSource::from_memory(name, {})), sink(name), records(source, sink) {}

    ByteSource source;
    IssueSink sink;
    JsonLinesSource records;
};

}  // namespace grainside::listing

namespace grainside {
inline namespace v0 {

struct ListingBatch::Content {
    enum class Kind {
        lines,   // bytes of JSON Lines
        copies,  // listings that were read when the batch was taken
        files    // inputs that are not open yet
    };

    void begin(Kind what, std::string name);
    BatchStep::Kind next(BatchStep& step);

    Kind kind = Kind::copies;
    std::string input;              // of lines and copies; of files the one at hand
    std::string source_name;        // of lines: what issues call it
    std::uint64_t from_record = 1;  // records before this one are passed over; of files: of the first
    std::uint64_t records = 0;
    std::uint64_t bytes_read = 0;
    bool ends_input = false;  // of lines and copies: nothing follows
    bool ended = false;

    listing::LineBatch lines;
    std::unique_ptr<listing::LineReading> reading;

    listing::ListingCopies copies;
    // Before a copy, or behind the last one.
    struct IssuesBefore {
        std::size_t copy = 0;
        std::vector<Issue> issues;
    };
    std::vector<IssuesBefore> issues;
    std::size_t next_copy = 0;
    std::size_t next_issues = 0;
    std::shared_ptr<ListingReader> reader;  // has what `copies` has not copied; of files: the one at hand

    std::vector<std::string> files;
    std::size_t next_file = 0;
    ReadOptions options;

private:
    BatchStep::Kind next_of_lines(BatchStep& step);
    BatchStep::Kind next_of_copies(BatchStep& step);
    BatchStep::Kind next_of_files(BatchStep& step);
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_LISTING_BATCH_CONTENT_H
