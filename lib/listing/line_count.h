// How many records whole lines of JSON Lines hold, without reading them.
#ifndef GRAINSIDE_LISTING_LINE_COUNT_H
#define GRAINSIDE_LISTING_LINE_COUNT_H

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

#include "listing/issue_sink.h"
#include "listing/json_records.h"

namespace grainside::listing {

// Counts as JsonLinesSource numbers: a line that is not blank is one record, and one with "@graph" as many as it has
// nodes. Only a line that may have such a member is read for that; all others cost a search for their end. Not
// thread-safe.
class LineCount {
public:
    struct Counted {
        std::size_t bytes = 0;
        std::uint64_t lines = 0;
        std::uint64_t records = 0;
    };

    explicit LineCount(std::size_t max_record_bytes)
        : max_record_bytes_(max_record_bytes), sink_(""), records_(sink_) {}

    // `lines` ends with a line end, or with the source. Stops before the line with which there would be more than
    // `most` records.
    Counted count(std::string_view lines, std::uint64_t most);
    // The same of one line without its LF.
    std::uint64_t records_of(std::string_view line);

private:
    std::uint64_t nodes_of(std::string_view line);

    std::size_t max_record_bytes_;
    IssueSink sink_;
    std::vector<Issue> unused_;
    JsonRecords records_;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_LINE_COUNT_H
