// What reads one format.
#ifndef GRAINSIDE_LISTING_RECORD_SOURCE_H
#define GRAINSIDE_LISTING_RECORD_SOURCE_H

#include "grainside/listing.h"

namespace grainside::listing {

class RecordSource {
public:
    RecordSource() = default;
    RecordSource(const RecordSource&) = delete;
    RecordSource& operator=(const RecordSource&) = delete;
    virtual ~RecordSource() = default;

    // Fills `listing` and returns true, or returns false at the end, and from then on. Views in `listing` live until
    // the next call. Issues go to the sink that the source was made with.
    virtual bool next(Listing& listing) = 0;

    // Whether `Listing::source` stays where it is as long as this object lives, and not only until the next call.
    virtual bool source_stays() const noexcept { return false; }
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_RECORD_SOURCE_H
