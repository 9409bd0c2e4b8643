// JSON Lines: one product a line.
#ifndef GRAINSIDE_LISTING_JSON_LINES_SOURCE_H
#define GRAINSIDE_LISTING_JSON_LINES_SOURCE_H

#include <cstddef>
#include <cstdint>
#include <string_view>

#include "grainside/listing_reader.h"
#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/json_records.h"
#include "listing/line_splitter.h"
#include "listing/record_source.h"

namespace grainside::listing {

// What stands before a part of a source.
struct LinesBefore {
    std::uint64_t lines = 0;
    std::uint64_t records = 0;
    std::uint64_t bytes = 0;
};

// Whether a line without its line end is passed over without a word.
bool is_blank_line(std::string_view line);

// A line that is longer than any record may be.
void report_line_too_large(std::uint64_t line, IssueSink& sink);

// Empty lines are passed over without a word.
class JsonLinesSource final : public RecordSource {
public:
    // `source` and `sink` outlive this object.
    JsonLinesSource(ByteSource& source, IssueSink& sink, std::size_t max_record_bytes = kMaxRecordBytes,
                    const SourceStart& start = {})
        : source_(&source),
          sink_(&sink),
          lines_(source, max_record_bytes, start),
          records_(sink, start.record),
          begun_(start.line != 1) {}

    bool next(Listing& listing) override;

    // Goes on with what `source` holds now: whole lines out of the middle of a longer one.
    void restart(const LinesBefore& before);

private:
    bool read_line(const Line& line, Listing& listing);

    ByteSource* source_;
    IssueSink* sink_;
    LineSplitter lines_;
    JsonRecords records_;
    bool begun_;  // a part from the middle of a file has no byte order mark to say how it is encoded
    bool ended_ = false;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_JSON_LINES_SOURCE_H
