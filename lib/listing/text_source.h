// Plain text: the whole file is the description of one listing.
#ifndef GRAINSIDE_LISTING_TEXT_SOURCE_H
#define GRAINSIDE_LISTING_TEXT_SOURCE_H

#include <cstddef>
#include <string>
#include <vector>

#include "grainside/listing_reader.h"
#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/record_source.h"

namespace grainside::listing {

// Fields are exact slices of the file. Not thread-safe.
class TextSource final : public RecordSource {
public:
    // Cuts a file into fields, in their order.
    using Cut = std::vector<Field> (*)(std::string_view file);

    // `source` and `sink` outlive this object.
    TextSource(ByteSource& source, IssueSink& sink, Cut cut, std::size_t max_record_bytes = kMaxRecordBytes)
        : source_(&source), sink_(&sink), cut_(cut), max_record_bytes_(max_record_bytes) {}

    bool next(Listing& listing) override;
    bool source_stays() const noexcept override { return true; }

private:
    ByteSource* source_;
    IssueSink* sink_;
    Cut cut_;
    std::size_t max_record_bytes_;
    std::string id_;
    bool begun_ = false;
};

// All of it is "description".
std::vector<Field> cut_plain_text(std::string_view file);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_TEXT_SOURCE_H
