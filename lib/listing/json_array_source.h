// A JSON file: one product, a list of them, or an object with a list of them (wrapped_list.h).
#ifndef GRAINSIDE_LISTING_JSON_ARRAY_SOURCE_H
#define GRAINSIDE_LISTING_JSON_ARRAY_SOURCE_H

#include <cstddef>

#include "grainside/listing_reader.h"
#include "listing/byte_source.h"
#include "listing/element_cursor.h"
#include "listing/issue_sink.h"
#include "listing/json_records.h"
#include "listing/json_scanner.h"
#include "listing/product_json.h"
#include "listing/record_source.h"

namespace grainside::listing {

// The whole file is in memory, but parsed element by element, so that a broken one stays alone.
class JsonArraySource final : public RecordSource {
public:
    // `source` and `sink` outlive this object.
    JsonArraySource(ByteSource& source, IssueSink& sink, std::size_t max_file_bytes = kMaxWholeFileBytes,
                    std::size_t max_record_bytes = kMaxRecordBytes)
        : source_(&source),
          sink_(&sink),
          max_file_bytes_(max_file_bytes),
          max_record_bytes_(max_record_bytes),
          records_(sink) {}

    bool next(Listing& listing) override;
    bool source_stays() const noexcept override { return true; }

private:
    bool begin(Listing& listing);
    bool begin_object(const RecordText& file, std::size_t first, Listing& listing);
    void begin_list(const RecordText& file, std::size_t begin, std::size_t end);
    bool read(const RecordText& text, Listing& listing);

    ByteSource* source_;
    IssueSink* sink_;
    std::size_t max_file_bytes_;
    std::size_t max_record_bytes_;
    JsonRecords records_;
    JsonScanner scanner_;
    ProductJson::Role role_ = ProductJson::Role::record;
    RecordText array_;
    ElementCursor elements_;
    bool begun_ = false;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_JSON_ARRAY_SOURCE_H
