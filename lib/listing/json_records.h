// Records out of JSON texts: numbered, and with the nodes of a graph one by one.
#ifndef GRAINSIDE_LISTING_JSON_RECORDS_H
#define GRAINSIDE_LISTING_JSON_RECORDS_H

#include <cstdint>

#include "grainside/listing.h"
#include "listing/element_cursor.h"
#include "listing/issue_sink.h"
#include "listing/product_json.h"

namespace grainside::listing {

// What JSON Lines and JSON files have in common. Not thread-safe.
class JsonRecords {
public:
    // `sink` outlives this object.
    explicit JsonRecords(IssueSink& sink, std::uint64_t first_record = 1)
        : sink_(&sink), product_(sink.file()), record_(first_record - 1) {}

    // Reads the next record; true if it is a listing. After an object with "@graph" its products come from
    // `next_in_graph`.
    bool read(const RecordText& text, Listing& listing, ProductJson::Role role = ProductJson::Role::record);
    bool next_in_graph(Listing& listing);

    // Counts a record that is passed over without being read.
    void count_record() noexcept { ++record_; }
    // How many there were so far, which is the number of the last.
    std::uint64_t count() const noexcept { return record_; }
    // Goes on behind `records` records.
    void restart(std::uint64_t records) {
        record_ = records;
        graph_ = {};
    }

private:
    IssueSink* sink_;
    ProductJson product_;
    ElementCursor graph_;
    SourceLines graph_lines_;  // what holds the graph; its nodes may lie in a copy
    std::uint64_t record_;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_JSON_RECORDS_H
