// Lines out of a byte source, with an upper bound to the memory that one of them can take.
#ifndef GRAINSIDE_LISTING_LINE_SPLITTER_H
#define GRAINSIDE_LISTING_LINE_SPLITTER_H

#include <cstddef>
#include <cstdint>
#include <string_view>

#include "grainside/listing_reader.h"
#include "listing/byte_source.h"

namespace grainside::listing {

struct Line {
    std::string_view text;            // without its line end (LF or CR LF); empty if too large
    std::size_t readable_behind = 0;  // bytes behind `text` that may be read
    std::uint64_t number = 0;         // from 1
    std::uint64_t start = 0;          // bytes of the source before it
    bool too_large = false;           // longer than the bound and passed over
};

// Not thread-safe.
class LineSplitter {
public:
    // `source` outlives the splitter.
    LineSplitter(ByteSource& source, std::size_t max_line_bytes, const SourceStart& start = {})
        : source_(&source), max_line_bytes_(max_line_bytes), bytes_before_(start.byte), number_(start.line - 1) {}

    // The next line, valid until the next call. False at the end, and after a read error (`ByteSource::error`), when
    // the line that it broke off is not given.
    bool next(Line& line);

    // Goes on with what `source` holds now, which is the part of a longer one that follows `lines` lines and `bytes`
    // bytes.
    void restart(std::uint64_t lines, std::uint64_t bytes) noexcept {
        given_ = 0;
        number_ = lines;
        bytes_before_ = bytes;
    }

private:
    void pass_over();

    ByteSource* source_;
    std::size_t max_line_bytes_;
    std::size_t given_ = 0;       // bytes of the line given last, with its end
    std::uint64_t bytes_before_;  // those of a larger source
    std::uint64_t number_;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_LINE_SPLITTER_H
