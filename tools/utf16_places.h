// Places in a text of bytes, and the same places as those count them who hold it in UTF-16: editors and pages.
//
//     Utf16Places places(text);                        // 'caf\xC3\xA9\nbar'
//     places.units_at(5);                              // 4: the e with its accent is two bytes and one unit
//     places.position_at(7);                           // line 1, character 1
//     places.byte_at(LinePosition{0, 99});             // 5: the end of line 0
//
// Bytes are offsets into UTF-8. A character above U+FFFF is two units (The Unicode Standard, table 3-5), any other one.
// Of what is no well-formed UTF-8 (document/utf8.h) each byte is one unit, as if U+FFFD stood there. Lines end with
// \n, \r\n or \r and count from 0; a character is a unit of its line without that end (Language Server Protocol 3.17,
// 'Text Documents' and 'Position').
//
// Nothing fails: what lies behind the end is the end, what lies inside a character is its beginning, what lies between
// \r and \n is the end of that line, and a line behind the last is the end of the text.
//
// Making one costs one pass over the text; a question costs O(log n) and at most kStep bytes. Keeps 16 bytes for each
// kStep bytes of the text and 8 for each line. Immutable, so any number of threads may ask.
#ifndef GRAINSIDE_TOOLS_UTF16_PLACES_H
#define GRAINSIDE_TOOLS_UTF16_PLACES_H

#include <cstddef>
#include <string_view>
#include <vector>

namespace grainside::tools {

struct LinePosition {
    std::size_t line = 0;
    std::size_t character = 0;  // in UTF-16 units from the beginning of the line

    bool operator==(const LinePosition&) const = default;
};

class Utf16Places {
public:
    static constexpr std::size_t kStep = 512;

    // `text` outlives the object.
    explicit Utf16Places(std::string_view text);

    // Of the whole text.
    std::size_t units() const noexcept { return units_; }
    std::size_t lines() const noexcept { return begins_.size(); }

    std::size_t units_at(std::size_t byte) const noexcept;
    std::size_t byte_at(std::size_t units) const noexcept;

    LinePosition position_at(std::size_t byte) const noexcept;
    std::size_t byte_at(const LinePosition& position) const noexcept;

    // The line that a byte stands in, its own end included.
    std::size_t line_at(std::size_t byte) const noexcept;
    // Bytes: the first of the line, and the one behind its last that belongs to no line end.
    std::size_t line_begin(std::size_t line) const noexcept;
    std::size_t line_end(std::size_t line) const noexcept;

private:
    struct Mark {
        std::size_t byte = 0;  // where a character begins
        std::size_t units = 0;
    };

    std::string_view text_;
    std::size_t units_ = 0;
    std::vector<Mark> marks_;
    std::vector<std::size_t> begins_;  // of lines, in bytes
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_UTF16_PLACES_H
