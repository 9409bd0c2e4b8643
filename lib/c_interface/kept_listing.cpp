#include "c_interface/kept_listing.h"

#include <algorithm>
#include <cstddef>

namespace grainside::c_interface {

bool is_whole(const GrainsideListing& listing) noexcept {
    if (!is_text(listing.id) || !is_text(listing.language) || !is_text(listing.region) || !is_text(listing.seller)) {
        return false;
    }
    if (listing.fields == nullptr) return listing.field_count == 0;
    return std::all_of(listing.fields, listing.fields + listing.field_count,
                       [](const GrainsideField& field) { return is_text(field.name) && is_text(field.text); });
}

// With room for all, so that no view moves while the bytes are added.
void KeptListing::begin(std::size_t bytes) {
    listing_.fields.clear();
    bytes_.clear();
    bytes_.reserve(bytes);
}

std::string_view KeptListing::kept(std::string_view text) {
    const std::size_t start = bytes_.size();
    bytes_ += text;
    return std::string_view(bytes_).substr(start);
}

void KeptListing::keep(const Listing& listing) {
    std::size_t bytes = listing.id.size() + listing.language.size() + listing.region.size() + listing.seller.size();
    for (const Field& field : listing.fields) bytes += field.name.size() + field.text.size();
    begin(bytes);
    listing_.id = kept(listing.id);
    listing_.language = kept(listing.language);
    listing_.region = kept(listing.region);
    listing_.seller = kept(listing.seller);
    listing_.fields.reserve(listing.fields.size());
    for (const Field& field : listing.fields) listing_.fields.push_back({kept(field.name), kept(field.text)});
    listing_.record = listing.record;
    listing_.line = listing.line;
}

void KeptListing::keep(const GrainsideListing& listing) {
    Listing views;
    views.id = view_of(listing.id);
    views.language = view_of(listing.language);
    views.region = view_of(listing.region);
    views.seller = view_of(listing.seller);
    views.fields.reserve(listing.field_count);
    for (std::size_t at = 0; at < listing.field_count; ++at) {
        views.fields.push_back({view_of(listing.fields[at].name), view_of(listing.fields[at].text)});
    }
    keep(views);
}

}  // namespace grainside::c_interface
