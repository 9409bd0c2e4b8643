// Where in its source the words of a field stand: bytes, lines and columns.
//
//     const std::string_view feed = "{\"sku\":\"t-1\",\n \"name\":\"Caf\\u00e9 belt, genuine leather\"}\n";
//     auto reader = grainside::ListingReader::from_memory("feed.json", feed, {});
//     grainside::SourcePlaces places;  // one for each reader
//     grainside::Listing listing;
//     std::vector<grainside::Issue> issues;
//     if (!reader.next(listing, issues)) return 2;
//     const std::size_t start = listing.fields.front().text.find("genuine");
//     const auto region = places.find(listing, 0, start, start + 7);
//     if (region) {
//         std::cout << "line " << region->from.line << ", column " << region->from.column << ": "
//                   << feed.substr(region->bytes.start, region->bytes.end - region->bytes.start) << '\n';
//     }
//     // prints: line 2, column 26: genuine
//
// Lines end with LF; a CR before it is the last character of its line. Columns count Unicode code points from 1, as
// SARIF has it for "columnKind": "unicodeCodePoints"; of bytes that are no UTF-8, those count that continue no
// character. A byte order mark takes bytes but no column.
#ifndef GRAINSIDE_SOURCE_PLACE_H
#define GRAINSIDE_SOURCE_PLACE_H

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "grainside/listing.h"

namespace grainside {
inline namespace v0 {

// Half-open, counted from the beginning of the source, a byte order mark included.
struct SourceSpan {
    std::uint64_t start = 0;
    std::uint64_t end = 0;
};

struct SourcePosition {
    std::uint64_t line = 1;
    std::uint64_t column = 1;
};

struct SourceRegion {
    SourceSpan bytes;
    SourcePosition from;
    SourcePosition to;  // behind the last character
};

// Remembers how far it has counted, so that all findings of a catalog cost one pass over it, in whatever order they are
// asked within a record. Keeps 16 bytes for each 4 KiB of the source at hand and of the field. Not thread-safe; one
// object for each reader, because sources are told apart by their offsets.
class SourcePlaces {
public:
    // The bytes of `listing.fields[field].text[start, end)`. Nothing where the field has no place in a source. An
    // escape is taken whole, and so is a number that the text has with the unit of another member. REQUIRES: `field` is
    // one of the listing's; `start` and `end` lie in its text, which lives.
    std::optional<SourceSpan> span(const Listing& listing, std::size_t field, std::size_t start, std::size_t end);

    // The same with lines and columns. Nothing also where `listing.source` is not at hand.
    std::optional<SourceRegion> find(const Listing& listing, std::size_t field, std::size_t start, std::size_t end);

private:
    struct Step {
        std::uint64_t text = 0;     // bytes of the field's text ...
        std::uint64_t written = 0;  // ... and of its source that stand for them
    };
    Step step_at(const Listing& listing, const Field& field, std::size_t offset, bool is_end);
    SourcePosition position(const SourceLines& source, std::uint64_t at);

    FieldOrigin walked_;  // the field that `steps_` is about
    std::vector<Step> steps_;
    SourceLines counted_;  // what `marks_` is about; only its numbers are used
    std::size_t counted_size_ = 0;
    std::vector<SourcePosition> marks_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_SOURCE_PLACE_H
