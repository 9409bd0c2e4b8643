#include "listing/listing_copies.h"

namespace grainside::listing {

void ListingCopies::clear() {
    size_ = 0;
    bytes_ = 0;
    texts_.clear();
    original_ = copied_ = {};
}

void ListingCopies::add(const Listing& listing, bool source_stays) {
    if (size_ == listings_.size()) listings_.emplace_back();
    Listing& copy = listings_[size_++];
    // Named one by one: a member that is added to a listing must be looked at here.
    const auto& [id, language, region, seller, fields, record, line, source] = listing;
    copy.id = keep(id);
    copy.language = keep(language);
    copy.region = keep(region);
    copy.seller = keep(seller);
    copy.fields.clear();
    for (const Field& field : fields) copy.fields.push_back({keep(field.name), keep(field.text), field.origin});
    copy.record = record;
    copy.line = line;
    copy.source = source;
    bytes_ += sizeof(Listing) + fields.size() * sizeof(Field);
    if (source_stays || source.bytes.empty()) return;
    const bool is_same = source.bytes.data() == original_.bytes.data() &&
                         source.bytes.size() == original_.bytes.size() && source.start == original_.start;
    if (!is_same) {
        original_ = source;
        copied_ = {keep(source.bytes), source.start, source.line};
    }
    copy.source = copied_;
}

std::string_view ListingCopies::keep(std::string_view text) {
    if (text.empty()) return {};
    bytes_ += text.size();
    return texts_.join({text});
}

}  // namespace grainside::listing
