// JSON Lines: one product a line.
#ifndef GRAINSIDE_LISTING_JSON_LINES_SOURCE_H
#define GRAINSIDE_LISTING_JSON_LINES_SOURCE_H

#include <cstddef>

#include "grainside/listing_reader.h"
#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/json_records.h"
#include "listing/line_splitter.h"
#include "listing/record_source.h"

namespace grainside::listing {

// Empty lines are passed over without a word.
class JsonLinesSource final : public RecordSource {
public:
    // `source` and `sink` outlive this object.
    JsonLinesSource(ByteSource& source, IssueSink& sink, std::size_t max_record_bytes = kMaxRecordBytes)
        : source_(&source), sink_(&sink), lines_(source, max_record_bytes), records_(sink) {}

    bool next(Listing& listing) override;

private:
    bool read_line(const Line& line, Listing& listing);

    ByteSource* source_;
    IssueSink* sink_;
    LineSplitter lines_;
    JsonRecords records_;
    bool begun_ = false;
    bool ended_ = false;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_JSON_LINES_SOURCE_H
