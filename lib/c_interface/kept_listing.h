// A listing with its bytes, so that a result outlives what it was made from.
#ifndef GRAINSIDE_C_INTERFACE_KEPT_LISTING_H
#define GRAINSIDE_C_INTERFACE_KEPT_LISTING_H

#include <string>
#include <string_view>

#include "c_interface/border.h"
#include "grainside/listing.h"

namespace grainside::c_interface {

// Whether every pointer is there that must be.
bool is_whole(const GrainsideListing& listing) noexcept;

// Not thread-safe. Keeps its memory from one listing to the next. Views into it live until the next `keep`.
class KeptListing {
public:
    // Places in a source are not kept: who calls from C asks for the words.
    void keep(const Listing& listing);
    // REQUIRES: is_whole.
    void keep(const GrainsideListing& listing);

    const Listing& listing() const noexcept { return listing_; }

private:
    void begin(std::size_t bytes);
    std::string_view kept(std::string_view text);

    std::string bytes_;
    Listing listing_;
};

}  // namespace grainside::c_interface

#endif  // GRAINSIDE_C_INTERFACE_KEPT_LISTING_H
