#include "listing/table_source.h"

#include <algorithm>
#include <charconv>
#include <optional>
#include <vector>

#include "listing/byte_order_mark.h"
#include "listing/table_separator.h"
#include "listing/utf8_check.h"

namespace grainside::listing {
namespace {

constexpr std::uint64_t kMostToldOneByOne = 10;

std::string_view without_blanks(std::string_view text) {
    const std::size_t first = text.find_first_not_of(" \t\r\n");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

bool is_blank(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) <= 0x20; });
}

// Every pair of quotes is one of them; a quote alone cannot stand in a value that was cut.
std::string_view without_doubled(std::string_view written, TextArena& arena) {
    char* const to = arena.reserve(written.size());
    std::size_t size = 0;
    for (std::size_t at = 0; at < written.size();) {
        const std::size_t quote = std::min(written.find('"', at), written.size() - 1);
        size += written.copy(to + size, quote + 1 - at, at);
        at = quote + (written[quote] == '"' ? 2 : 1);
    }
    return arena.keep(size);
}

}  // namespace

bool TableSource::next(Listing& listing) {
    if (!begun_) {
        begun_ = true;
        ended_ = !begin();
    }
    while (!ended_) {
        switch (rows_.next()) {
            case TableRows::Step::row:
                if (read_row(listing)) return true;
                break;
            case TableRows::Step::fault:
                ++record_;
                report_fault();
                break;
            case TableRows::Step::end:
                ended_ = true;
                report_read_error(*source_, *sink_);
                tell_the_rest();
                break;
        }
    }
    return false;
}

bool TableSource::begin() {
    if (!pass_byte_order_mark(*source_, *sink_)) return false;
    const char asked = options_->separator;
    if (asked != '\0' && kTableSeparators.find(asked) == std::string_view::npos) {
        sink_->report(Issue::Severity::error, "no-such-separator", {0, 0},
                      "the separator of a table cannot be this character", "one of , ; | : or a tab");
        return false;
    }
    const std::optional<char> said = take_separator_line(*source_);
    if (said) rows_.begin_on_line(2);
    if (said && asked == '\0' && kTableSeparators.find(*said) == std::string_view::npos) {
        sink_->report(Issue::Severity::error, "no-such-separator", {1, 5},
                      "this line says what stands between values, and that cannot be this character",
                      "write one of , ; | : or a tab behind sep=, and between the values");
        return false;
    }
    char separator = asked != '\0' ? asked : said.value_or('\0');
    if (separator == '\0') separator = options_->format == InputFormat::tsv ? '\t' : separator_of(*source_);
    rows_.set_separator(separator);
    return read_header();
}

bool TableSource::read_header() {
    const TableRows::Step step = rows_.next();
    if (step == TableRows::Step::fault) {
        report_fault();
        sink_->report(Issue::Severity::error, "no-header", {0, 0},
                      "without the names of the columns nothing of this table is read", "mend its first row");
        return false;
    }
    if (step == TableRows::Step::end) {
        if (source_->error() != 0) {
            report_read_error(*source_, *sink_);
        } else {
            sink_->report(Issue::Severity::error, "no-header", {rows_.first_line(), 1}, "this table is empty",
                          "write the names of the columns into its first row");
        }
        return false;
    }
    const RecordText& text = rows_.text();
    for (const TableCell& cell : rows_.cells()) {
        const std::string_view written = text.bytes.substr(cell.start, cell.size);
        const std::size_t lone = cell.quoted ? std::string_view::npos : written.find('\r');
        if (lone == std::string_view::npos) continue;
        sink_->report_at(Issue::Severity::error, "lone-carriage-return", text, cell.start + lone,
                         "a carriage return stands here without a line feed, and lines end with LF or CR LF",
                         "save the file with other line ends: tr '\\r' '\\n'");
        return false;
    }
    warn_of_odd_bytes();
    arena_.clear();
    std::vector<std::string> names;
    for (const TableCell& cell : rows_.cells()) names.emplace_back(words_of(cell));
    return columns_.read(names, options_->columns, text, *sink_);
}

bool TableSource::read_row(Listing& listing) {
    ++record_;
    if (!is_right_width()) return false;
    warn_of_odd_bytes();
    arena_.clear();
    const std::vector<TableCell>& cells = rows_.cells();
    listing.fields.clear();
    for (const TableColumn& column : columns_.texts()) {
        if (column.cell >= cells.size() || cells[column.cell].size == 0) continue;
        const Field field = field_of(cells[column.cell], column.field);
        if (!is_blank(field.text)) listing.fields.push_back(field);
    }
    if (listing.fields.empty()) {
        const bool has_anything =
            std::any_of(cells.begin(), cells.end(), [](const TableCell& cell) { return cell.size != 0; });
        // Spreadsheets write rows of separators below the last one that has something.
        if (has_anything && rows_without_text_.count++ == 0) rows_without_text_.first_line = rows_.text().origin.line;
        return false;
    }
    listing.id = listing.language = listing.region = listing.seller = {};
    for (const TableColumn& column : columns_.facts()) {
        if (column.cell >= cells.size()) continue;
        std::string_view& fact = column.use == ColumnUse::id         ? listing.id
                                 : column.use == ColumnUse::language ? listing.language
                                 : column.use == ColumnUse::region   ? listing.region
                                                                     : listing.seller;
        if (fact.empty()) fact = without_blanks(words_of(cells[column.cell]));
    }
    if (listing.id.empty()) {
        char number[20];
        const char* const end = std::to_chars(std::begin(number), std::end(number), record_).ptr;
        listing.id =
            arena_.join({sink_->file(), ":", std::string_view(number, static_cast<std::size_t>(end - number))});
    }
    listing.record = record_;
    listing.line = rows_.text().origin.line;
    listing.source = rows_.text().lines();
    return true;
}

bool TableSource::is_right_width() {
    const std::size_t width = rows_.cells().size();
    const std::size_t wanted = columns_.width();
    if (width == wanted) return true;
    const RecordText& text = rows_.text();
    if (width > wanted) {
        const TableCell& extra = rows_.cells()[wanted];
        sink_->report_at(Issue::Severity::error, "row-too-wide", text, extra.start,
                         "this row has " + std::to_string(width) + " values for " + std::to_string(wanted) +
                             (wanted == 1 ? " column" : " columns") + " and is not read",
                         "put values that hold a separator in double quotes, and double the quotes in them");
        if (rows_.has_breaks()) rows_.resume_on_second_line();
        return false;
    }
    // Rows that a stray quote has swallowed are rows by themselves.
    if (rows_.has_breaks() && rows_.width_of_second_line() == wanted) {
        sink_->report_at(Issue::Severity::error, "unclosed-quote", text, 0,
                         "a quote in this row is not closed on its line: the lines below are rows of their own",
                         "close the quote; a quote that stands for inches is doubled, in a value that is in quotes");
        rows_.resume_on_second_line();
        return false;
    }
    if (is_told(short_rows_)) {
        sink_->report_at(Issue::Severity::warning, "row-too-short", text, text.bytes.size(),
                         "this row has " + std::to_string(width) + (width == 1 ? " value" : " values") + " for " +
                             std::to_string(wanted) + " columns; the others are read as empty",
                         "write a separator for every empty value");
    }
    return true;
}

void TableSource::warn_of_odd_bytes() {
    const RecordText& text = rows_.text();
    const InvalidBytes bad = find_invalid_utf8(text.bytes, 0);
    const std::size_t nul = text.bytes.find('\0');
    if ((bad.length == 0 && nul == std::string_view::npos) || !is_told(odd_rows_)) return;
    if (nul != std::string_view::npos) {
        sink_->report_at(Issue::Severity::warning, "nul-byte", text, nul, "this row holds a NUL byte",
                         "if the file is UTF-16, save it as UTF-8; else remove the byte");
    }
    if (bad.length != 0) {
        sink_->report_at(Issue::Severity::warning, "not-utf8", text, bad.offset,
                         "this row is not UTF-8 from here on; such bytes are read as gaps",
                         "save the file as UTF-8 (spreadsheets offer it when a file is exported), or convert it: "
                         "iconv -f WINDOWS-1252 -t UTF-8");
    }
}

void TableSource::report_fault() {
    switch (rows_.fault()) {
        case TableRows::Fault::unclosed_quote:
            sink_->report_at(Issue::Severity::error, "unclosed-quote", rows_.text(), rows_.fault_offset(),
                             "this quote is never closed; its row is not read, and reading goes on with the next line",
                             "close it; a quote that stands for inches is doubled, in a value that is in quotes");
            return;
        case TableRows::Fault::text_behind_quote:
            sink_->report_at(Issue::Severity::error, "text-behind-quote", rows_.text(), rows_.fault_offset(),
                             "a value ends with the quote before this, and no separator follows; the row is not read",
                             "double every quote within a value, or close a quote that was left open before");
            return;
        case TableRows::Fault::too_large:
            sink_->report_at(Issue::Severity::error, "record-too-large", rows_.text(), 0,
                             "this row is longer than any record may be and is not read", "write one product a row");
            return;
    }
}

bool TableSource::is_told(Tally& tally) const {
    ++tally.count;
    if (tally.count == kMostToldOneByOne + 1) tally.first_line = rows_.text().origin.line;
    return tally.count <= kMostToldOneByOne;
}

void TableSource::tell_rest_of(const Tally& tally, std::string_view code, std::string_view what,
                               std::string_view hint) {
    if (tally.count <= kMostToldOneByOne) return;
    sink_->report(Issue::Severity::warning, code, {tally.first_line, 1},
                  std::to_string(tally.count - kMostToldOneByOne) + " more from here on " + std::string(what),
                  std::string(hint));
}

void TableSource::tell_the_rest() {
    tell_rest_of(short_rows_, "row-too-short", "have too few values", "write a separator for every empty value");
    tell_rest_of(odd_rows_, "not-utf8", "are not UTF-8 or hold a NUL byte", "save the file as UTF-8");
    if (rows_without_text_.count == 0) return;
    sink_->report(Issue::Severity::warning, "no-text", {rows_without_text_.first_line, 1},
                  rows_without_text_.count == 1
                      ? std::string("this row has no text to check and is passed over")
                      : std::to_string(rows_without_text_.count) +
                            " rows, of which this is the first, have no text to check and are passed over",
                  "nothing is to be done where they are rows of sizes or pictures");
}

Field TableSource::field_of(const TableCell& cell, std::string_view name) {
    const Writing writing = cell.quoted ? Writing::table_quoted : Writing::table_bare;
    return {name, words_of(cell), {rows_.text().start + cell.start, static_cast<std::uint32_t>(cell.size), writing}};
}

// A view into the block where nothing has to be taken out.
std::string_view TableSource::words_of(const TableCell& cell) {
    const std::string_view written = rows_.text().bytes.substr(cell.start, cell.size);
    return cell.has_doubled ? without_doubled(written, arena_) : written;
}

}  // namespace grainside::listing
