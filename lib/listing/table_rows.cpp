#include "listing/table_rows.h"

#include <algorithm>
#include <bit>
#include <cstring>
#include <utility>

namespace grainside::listing {
namespace {

constexpr std::uint64_t kOnes = 0x0101010101010101U;
constexpr std::uint64_t kHighs = 0x8080808080808080U;
constexpr std::size_t kShownBehindFault = 256;

std::uint64_t repeated(char c) {
    return kOnes * static_cast<unsigned char>(c);
}

// The first byte of `text` at or behind `from` that is one of the two, or its size. Eight bytes at a time: with a zero
// in a byte, the lowest set bit is that of the first one.
std::size_t find_either(std::string_view text, std::size_t from, char one, char other) {
    std::size_t at = from;
    if constexpr (std::endian::native == std::endian::little) {
        const std::uint64_t ones = repeated(one);
        const std::uint64_t others = repeated(other);
        std::uint64_t word = 0;
        for (; text.size() - at >= sizeof word; at += sizeof word) {
            std::memcpy(&word, text.data() + at, sizeof word);
            const std::uint64_t a = word ^ ones;
            const std::uint64_t b = word ^ others;
            const std::uint64_t hits = (((a - kOnes) & ~a) | ((b - kOnes) & ~b)) & kHighs;
            if (hits != 0) return at + static_cast<std::size_t>(std::countr_zero(hits)) / 8;
        }
    }
    while (at < text.size() && text[at] != one && text[at] != other) ++at;
    return at;
}

std::size_t find_byte(std::string_view text, std::size_t from, char wanted) {
    if (from >= text.size()) return text.size();
    const void* const found = std::memchr(text.data() + from, wanted, text.size() - from);
    if (found == nullptr) return text.size();
    return static_cast<std::size_t>(static_cast<const char*>(found) - text.data());
}

std::uint64_t count_breaks(std::string_view text) {
    std::uint64_t count = 0;
    for (std::size_t at = find_byte(text, 0, '\n'); at < text.size(); at = find_byte(text, at + 1, '\n')) ++count;
    return count;
}

// 0 where a quote stays open.
std::size_t width_of_line(std::string_view line, char separator) {
    std::size_t width = 1;
    bool begins = true;
    bool has_quotes = false;
    bool in_quotes = false;
    for (const char c : line) {
        if (c == '"' && (begins || has_quotes)) {
            has_quotes = true;
            in_quotes = !in_quotes;
        }
        begins = c == separator && !in_quotes;
        if (begins) {
            ++width;
            has_quotes = false;
        }
    }
    return in_quotes ? 0 : width;
}

}  // namespace

TableRows::Step TableRows::next() {
    for (;;) {
        source_->consume(std::exchange(given_, 0));
        line_ += std::exchange(lines_given_, 0);
        state_ = State::begin;
        at_ = 0;
        breaks_ = 0;
        broken_ = false;
        cells_.clear();
        for (;;) {
            // Not a byte more, so that it does not matter how much has come in.
            const std::string_view text = source_->pending().substr(0, max_bytes_ + 1);
            if (scan(text)) break;
            if (text.size() > max_bytes_) {
                const bool in_quotes = state_ == State::quoted;
                break_off(in_quotes ? Fault::unclosed_quote : Fault::too_large, in_quotes ? cell_start_ - 1 : 0);
                break;
            }
            if (source_->more()) continue;
            if (source_->error() != 0 || text.empty()) return Step::end;
            finish_at_end(text);
            break;
        }
        if (broken_) return give_broken();
        const bool is_empty_line = cells_.size() == 1 && cells_.front().size == 0 && !cells_.front().quoted;
        if (!is_empty_line) return Step::row;
    }
}

// True where the row came to its end or is broken; false where more bytes are needed.
bool TableRows::scan(std::string_view text) {
    for (;;) {
        switch (state_) {
            case State::begin:
                if (at_ == text.size()) return false;
                state_ = text[at_] == '"' ? State::quoted : State::bare;
                if (state_ == State::quoted) ++at_;
                cell_start_ = at_;
                has_doubled_ = false;
                break;
            case State::bare: {
                at_ = find_either(text, at_, separator_, '\n');
                if (at_ == text.size()) return false;
                if (text[at_] == '\n') {
                    const bool has_return = at_ > cell_start_ && text[at_ - 1] == '\r';
                    add_cell(has_return ? at_ - 1 : at_);
                    return end_row(has_return ? at_ - 1 : at_, at_ + 1);
                }
                add_cell(at_++);
                state_ = State::begin;
                break;
            }
            case State::quoted:
                at_ = find_byte(text, at_, '"');
                if (at_ == text.size()) return false;
                ++at_;
                state_ = State::behind_quote;
                break;
            case State::behind_quote:
            case State::behind_blanks:
                // Of a carriage return the byte behind it says what it is.
                if (at_ == text.size() || (text[at_] == '\r' && at_ + 1 == text.size())) return false;
                if (scan_behind_quote(text)) return true;
                break;
        }
    }
}

bool TableRows::scan_behind_quote(std::string_view text) {
    const char c = text[at_];
    const std::size_t end = at_ - 1;
    if (c == '"' && state_ == State::behind_quote) {
        has_doubled_ = true;
        ++at_;
        state_ = State::quoted;
        return false;
    }
    if (state_ == State::behind_quote) {
        // Where blanks follow, the value still ends here.
        cells_.push_back({cell_start_, end - cell_start_, true, has_doubled_});
        breaks_ += count_breaks(text.substr(cell_start_, end - cell_start_));
        state_ = State::behind_blanks;
    }
    if (c == separator_) {
        ++at_;
        state_ = State::begin;
        return false;
    }
    if (c == '\n') return end_row(at_, at_ + 1);
    if (c == '\r' && text[at_ + 1] == '\n') return end_row(at_, at_ + 2);
    if (c != ' ' && c != '\t') return break_off(Fault::text_behind_quote, at_);
    ++at_;
    return false;
}

void TableRows::add_cell(std::size_t end) {
    cells_.push_back({cell_start_, end - cell_start_, false, false});
}

bool TableRows::end_row(std::size_t end, std::size_t given) {
    given_ = given;
    lines_given_ = breaks_ + (given > end ? 1U : 0U);
    show(end);
    return true;
}

bool TableRows::break_off(Fault fault, std::size_t offset) {
    fault_ = fault;
    fault_offset_ = offset;
    broken_ = true;
    return true;
}

// The last line may have no end.
bool TableRows::finish_at_end(std::string_view text) {
    switch (state_) {
        case State::begin:
            cell_start_ = at_;
            add_cell(at_);
            break;
        case State::bare:
            add_cell(at_ > cell_start_ && text[at_ - 1] == '\r' ? at_ - 1 : at_);
            break;
        case State::quoted:
            return break_off(Fault::unclosed_quote, cell_start_ - 1);
        case State::behind_quote:
            cells_.push_back({cell_start_, at_ - 1 - cell_start_, true, has_doubled_});
            breaks_ += count_breaks(text.substr(cell_start_, at_ - 1 - cell_start_));
            break;
        case State::behind_blanks:
            break;
    }
    return end_row(text.size(), text.size());
}

TableRows::Step TableRows::give_broken() {
    cells_.clear();
    const RecordText nothing{{}, {}, 0, {line_, 1}, source_->offset(), line_};
    const std::size_t scanned = at_;
    bool is_held = take_line(0);
    if (is_held && scanned > given_) {
        // Reading resumes on the second line, as long as that is not tried over and over.
        const std::uint64_t again = scanned - given_;
        if (may_read_again(again)) {
            read_again_ += again;
        } else {
            is_held = take_line(scanned);
        }
    }
    if (is_held) {
        show(std::min(source_->pending().size(), std::max(given_, fault_offset_ + kShownBehindFault)));
    } else {
        // Whether a quote that was opened in it is closed was not looked for.
        fault_ = Fault::too_large;
        text_ = nothing;
        fault_offset_ = 0;
    }
    return Step::fault;
}

bool TableRows::may_read_again(std::uint64_t bytes) const {
    return read_again_ + bytes <= 2 * std::uint64_t{max_bytes_} + 4 * source_->offset();
}

// Takes everything up to the first line end at or behind `from`. False where that is more than a record may hold: it is
// passed over without being held in memory.
bool TableRows::take_line(std::size_t from) {
    bool is_held = true;
    for (std::size_t searched = from;;) {
        const std::string_view text = source_->pending();
        const std::size_t end = find_byte(text, searched, '\n');
        if (end < text.size()) {
            is_held = is_held && end <= max_bytes_;
            given_ = end + 1;
            break;
        }
        searched = text.size();
        if (text.size() > max_bytes_) {
            line_ += count_breaks(text);
            source_->consume(text.size());
            searched = 0;
            is_held = false;
        }
        if (!source_->more()) {
            given_ = source_->pending().size();
            break;
        }
    }
    lines_given_ = count_breaks(source_->pending().substr(0, given_));
    return is_held;
}

void TableRows::show(std::size_t size) {
    const std::string_view pending = source_->pending();
    const std::string_view bytes = pending.substr(0, size);
    text_ = {bytes, bytes, pending.size() - size + source_->readable_behind(), {line_, 1}, source_->offset(), line_};
}

std::size_t TableRows::width_of_second_line() const {
    const std::size_t first = find_byte(text_.bytes, 0, '\n');
    if (first == text_.bytes.size()) return 0;
    const std::string_view rest = text_.bytes.substr(first + 1);
    const std::string_view line = rest.substr(0, find_byte(rest, 0, '\n'));
    return width_of_line(line, separator_);
}

void TableRows::resume_on_second_line() {
    const std::size_t end = find_byte(text_.bytes, 0, '\n');
    if (end == text_.bytes.size()) return;
    const std::uint64_t again = given_ - (end + 1);
    if (!may_read_again(again)) return;
    read_again_ += again;
    given_ = end + 1;
    lines_given_ = 1;
}

}  // namespace grainside::listing
