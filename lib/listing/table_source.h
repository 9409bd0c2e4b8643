// Comma- and tab-separated tables: one product a row, below a row with the names of the columns.
#ifndef GRAINSIDE_LISTING_TABLE_SOURCE_H
#define GRAINSIDE_LISTING_TABLE_SOURCE_H

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "grainside/listing_reader.h"
#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/record_source.h"
#include "listing/table_columns.h"
#include "listing/table_rows.h"
#include "listing/text_arena.h"

namespace grainside::listing {

// Rows are numbered from 1 behind the header; rows that are passed over count. A row with too many values, or that is
// broken, is an error and passed over; one with too few is read with a warning. Rows without a text (pictures, sizes)
// are told at the end. Nothing is allocated for a row once the buffers have grown to its size. Not thread-safe.
class TableSource final : public RecordSource {
public:
    // `source`, `sink` and `options` outlive this object. `options.format` is csv or tsv.
    TableSource(ByteSource& source, IssueSink& sink, const ReadOptions& options,
                std::size_t max_record_bytes = kMaxRecordBytes)
        : source_(&source), sink_(&sink), options_(&options), rows_(source, max_record_bytes) {}

    bool next(Listing& listing) override;

private:
    bool begin();
    bool read_header();
    bool read_row(Listing& listing);
    bool is_right_width();
    void warn_of_odd_bytes();
    void report_fault();
    void tell_the_rest();
    Field field_of(const TableCell& cell, std::string_view name);
    std::string_view words_of(const TableCell& cell);
    // The first ones are told one by one and the others counted, because a whole catalog may have the same fault.
    struct Tally {
        std::uint64_t count = 0;
        std::uint64_t first_line = 0;
    };
    bool is_told(Tally& tally) const;
    void tell_rest_of(const Tally& tally, std::string_view code, std::string_view what, std::string_view hint);

    ByteSource* source_;
    IssueSink* sink_;
    const ReadOptions* options_;
    TableRows rows_;
    TableColumns columns_;
    TextArena arena_;
    std::uint64_t record_ = 0;
    Tally short_rows_;
    Tally odd_rows_;
    Tally rows_without_text_;
    bool begun_ = false;
    bool ended_ = false;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_TABLE_SOURCE_H
