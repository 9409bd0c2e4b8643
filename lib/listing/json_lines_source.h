// JSON Lines: one product a line.
#ifndef GRAINSIDE_LISTING_JSON_LINES_SOURCE_H
#define GRAINSIDE_LISTING_JSON_LINES_SOURCE_H

#include <cstddef>
#include <optional>

#include "grainside/listing_reader.h"
#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/json_records.h"
#include "listing/line_splitter.h"
#include "listing/record_source.h"

namespace grainside::listing {

// The record on `line`, which is not too large, without a byte order mark before it; nothing where the line is empty.
std::optional<RecordText> record_on(const Line& line);

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
