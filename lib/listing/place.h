// Where in a source something stands, and what stands around it.
#ifndef GRAINSIDE_LISTING_PLACE_H
#define GRAINSIDE_LISTING_PLACE_H

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "grainside/listing.h"

namespace grainside::listing {

// Both count from 1, columns in bytes. A UTF-8 byte order mark is not part of its line.
struct Place {
    std::uint64_t line = 1;
    std::uint64_t column = 1;
};

// A record as it stands in its source.
struct RecordText {
    std::string_view bytes;
    // What `bytes` was cut from: the line or the file. `bytes` lies within it.
    std::string_view around;
    // How many bytes after the end of `bytes` may be read, whatever they hold.
    std::size_t readable_behind = 0;
    // Where `bytes` begins.
    Place origin;
    // The same in bytes of the source, a byte order mark counted.
    std::uint64_t start = 0;
    // The line on which `around` begins.
    std::uint64_t around_line = 1;

    SourceLines lines() const noexcept {
        return {around, start - static_cast<std::uint64_t>(bytes.data() - around.data()), around_line};
    }
};

// The place of `text[offset]`, where `text` begins at `origin`.
Place place_at(std::string_view text, std::size_t offset, Place origin);

// The source line that holds `text.bytes[offset]`, control characters replaced by spaces. Empty where the line is
// longer than a terminal can show with a caret (200 bytes) or where its beginning is not at hand.
std::string excerpt_at(const RecordText& text, std::size_t offset);

// Up to 24 bytes from `text.bytes[offset]` on, to the end of the line at most, control characters replaced by spaces.
std::string words_at(const RecordText& text, std::size_t offset);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_PLACE_H
