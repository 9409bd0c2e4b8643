#include "listing/text_source.h"

#include <algorithm>

#include "listing/whole_text.h"

namespace grainside::listing {

bool TextSource::next(Listing& listing) {
    if (begun_) return false;
    begun_ = true;
    const auto file = read_whole(*source_, max_record_bytes_, "record-too-large", *sink_);
    if (!file) return false;
    const bool is_blank = std::all_of(file->bytes.begin(), file->bytes.end(),
                                      [](char c) { return static_cast<unsigned char>(c) <= 0x20; });
    if (is_blank) {
        sink_->report(Issue::Severity::error, "no-text", {1, 1}, "the file has no text to check",
                      "write the listing into it");
        return false;
    }
    warn_of_odd_bytes(*file, *sink_);
    id_ = source_->name() + ":1";
    listing.id = id_;
    listing.language = listing.region = listing.seller = {};
    listing.fields = cut_(file->bytes);
    listing.record = 1;
    listing.line = 1;
    listing.source = file->lines();
    // Every field is a slice of the file.
    for (Field& field : listing.fields) {
        field.origin = {file->start + static_cast<std::uint64_t>(field.text.data() - file->bytes.data()),
                        static_cast<std::uint32_t>(field.text.size()), Writing::plain};
    }
    return true;
}

std::vector<Field> cut_plain_text(std::string_view file) {
    return {{"description", file}};
}

}  // namespace grainside::listing
