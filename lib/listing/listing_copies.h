// Listings copied out of a reader, so that it can read on.
#ifndef GRAINSIDE_LISTING_LISTING_COPIES_H
#define GRAINSIDE_LISTING_LISTING_COPIES_H

#include <cstddef>
#include <vector>

#include "grainside/listing.h"
#include "listing/text_arena.h"

namespace grainside::listing {

// Keeps its memory from one use to the next. Not thread-safe.
class ListingCopies {
public:
    void clear();

    // `source_stays`: the bytes of `listing.source` outlive the copies. Else they are copied too, once for all listings
    // that follow each other out of the same lines.
    void add(const Listing& listing, bool source_stays);

    std::size_t size() const noexcept { return size_; }
    // May be swapped with another, whose memory is then reused.
    Listing& at(std::size_t index) noexcept { return listings_[index]; }

    // What the copies take, about.
    std::size_t bytes() const noexcept { return bytes_; }

private:
    std::string_view keep(std::string_view text);

    std::vector<Listing> listings_;  // the first `size_` are in use
    std::size_t size_ = 0;
    std::size_t bytes_ = 0;
    TextArena texts_;
    SourceLines original_;  // of the last one, where the reader has it
    SourceLines copied_;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_LISTING_COPIES_H
