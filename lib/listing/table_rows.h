// Rows of a table of text: values between separators, lines between rows, and double quotes round values that hold one
// of these (RFC 4180, section 2; with tabs for commas the same is read from tab-separated files).
#ifndef GRAINSIDE_LISTING_TABLE_ROWS_H
#define GRAINSIDE_LISTING_TABLE_ROWS_H

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

#include "listing/byte_source.h"
#include "listing/place.h"

namespace grainside::listing {

struct TableCell {
    std::size_t start = 0;  // in the row's text, behind the opening quote
    std::size_t size = 0;   // without quotes
    bool quoted = false;
    bool has_doubled = false;  // holds "" where one quote is meant
};

// Lines end with LF or CR LF. Beyond the RFC: blanks behind a closing quote are passed over; a quote within a value
// that does not begin with one is that character; empty lines are passed over. Not thread-safe.
//
// A quote that is never closed would take the rest of the file for one value. So reading resumes at the second line of
// the row where a row is broken, and where the caller finds that it cannot be one row. What is read again by that is
// bounded, so that work stays linear in the size of the source whatever it holds.
class TableRows {
public:
    enum class Step { row, fault, end };
    enum class Fault { unclosed_quote, text_behind_quote, too_large };

    // `source` outlives this object.
    TableRows(ByteSource& source, std::size_t max_record_bytes) : source_(&source), max_bytes_(max_record_bytes) {}

    void set_separator(char separator) noexcept { separator_ = separator; }
    // Where lines of the source were consumed before the first row.
    void begin_on_line(std::uint64_t line) noexcept { first_line_ = line_ = line; }
    std::uint64_t first_line() const noexcept { return first_line_; }

    // The next row. `end` also after a read error (`ByteSource::error`), when the row that it broke off is not given.
    Step next();

    // Of the row or the faulty row given last; valid until the next call.
    const std::vector<TableCell>& cells() const noexcept { return cells_; }
    const RecordText& text() const noexcept { return text_; }
    Fault fault() const noexcept { return fault_; }
    std::size_t fault_offset() const noexcept { return fault_offset_; }  // in the text

    // Whether the row given last has line breaks in its values.
    bool has_breaks() const noexcept { return breaks_ > 0; }
    // How many values its second line has, read by itself; 0 where there is none or it is no row by itself.
    std::size_t width_of_second_line() const;
    // Gives up the row given last: the next row begins on its second line, if it has one.
    void resume_on_second_line();

private:
    enum class State { begin, bare, quoted, behind_quote, behind_blanks };

    bool scan(std::string_view text);
    bool scan_behind_quote(std::string_view text);
    void add_cell(std::size_t end);
    bool end_row(std::size_t end, std::size_t given);
    bool break_off(Fault fault, std::size_t offset);
    bool finish_at_end(std::string_view text);
    Step give_broken();
    bool may_read_again(std::uint64_t bytes) const;
    bool take_line(std::size_t from);
    void show(std::size_t size);

    ByteSource* source_;
    std::size_t max_bytes_;
    char separator_ = ',';
    std::uint64_t first_line_ = 1;
    std::uint64_t line_ = 1;
    std::uint64_t read_again_ = 0;

    // Of the row being read; offsets count from its beginning.
    State state_ = State::begin;
    std::size_t at_ = 0;
    std::size_t cell_start_ = 0;
    bool has_doubled_ = false;
    bool broken_ = false;
    std::uint64_t breaks_ = 0;
    std::size_t given_ = 0;          // bytes to consume before the next row ...
    std::uint64_t lines_given_ = 0;  // ... and line ends in them
    std::vector<TableCell> cells_;
    RecordText text_;
    Fault fault_ = Fault::unclosed_quote;
    std::size_t fault_offset_ = 0;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_TABLE_ROWS_H
