// Positions in a document as the client counts them.
#ifndef GRAINSIDE_TOOLS_EDIT_TEXT_PLACES_H
#define GRAINSIDE_TOOLS_EDIT_TEXT_PLACES_H

#include <cstddef>
#include <optional>
#include <string_view>

#include "edit/json_values.h"
#include "report/json_writer.h"
#include "utf16_places.h"

namespace grainside::tools::edit {

// What a character of a position counts ('PositionEncodingKind'): UTF-16 unless the client offers bytes, which are
// what we count anyway.
enum class PositionEncoding { utf16, utf8 };

// Half-open, in bytes.
struct TextSpan {
    std::size_t begin = 0;
    std::size_t end = 0;

    bool operator==(const TextSpan&) const = default;
    // Whether they share a byte or touch, as a caret behind a word touches it.
    bool meets(const TextSpan& other) const noexcept { return begin <= other.end && other.begin <= end; }
};

// Immutable; the text outlives it.
class TextPlaces {
public:
    TextPlaces(std::string_view text, PositionEncoding encoding) : text_(text), encoding_(encoding), places_(text) {}

    std::string_view text() const noexcept { return text_; }
    const Utf16Places& lines() const noexcept { return places_; }

    LinePosition position_at(std::size_t byte) const noexcept;
    std::size_t byte_at(const LinePosition& position) const noexcept;

    // Of a 'Position' and a 'Range'; nothing for what is none. A range that ends before it begins is turned round.
    std::optional<std::size_t> read_position(const std::optional<Json>& position) const;
    std::optional<TextSpan> read_range(const std::optional<Json>& range) const;
    void write_range(report::JsonWriter& json, const TextSpan& span) const;

    // The place of an issue: its line and column, each from 1, columns in bytes of a line without a byte order mark; to
    // the end of the word there. Line 0 is the beginning of the text.
    TextSpan span_of_issue(std::size_t line, std::size_t column) const noexcept;
    // The line without the white space around it.
    TextSpan span_of_line(std::size_t line) const noexcept;

private:
    std::string_view text_;
    PositionEncoding encoding_;
    Utf16Places places_;
};

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_TEXT_PLACES_H
