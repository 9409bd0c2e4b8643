// The words of a page in the order in which they stand, with lines where a browser would begin one.
#ifndef GRAINSIDE_LISTING_PAGE_TEXT_H
#define GRAINSIDE_LISTING_PAGE_TEXT_H

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace grainside::listing {

// Bytes of a PageText, half open. A page has at most kMaxRecordBytes, and no byte of it becomes more than three.
struct PageRange {
    std::uint32_t begin = 0;
    std::uint32_t end = 0;

    bool empty() const noexcept { return begin >= end; }
    bool holds(const PageRange& other) const noexcept { return begin <= other.begin && other.end <= end; }
};

// Whitespace is one space, as on the screen. Control characters are left out: no browser shows one, and three of them
// stand for marks here. Not thread-safe.
class PageText {
public:
    enum class Mark : char { item = '\x01', heading = '\x02' };

    // Adds text of the page and resolves its character references. `keeps_lines`: as in <pre>.
    void add(std::string_view raw, bool keeps_lines);
    void break_line() { gap_ = gap_ < Gap::line ? Gap::line : gap_; }
    void break_paragraph() { gap_ = Gap::paragraph; }
    // A cell of a table begins: a bar stands before its words, if words of the same line stand before them.
    void break_cell() { has_bar_ = true; }
    // Words that follow are those of a list item or a heading; without words there is no mark.
    void mark(Mark mark) {
        mark_ = mark;
        has_mark_ = true;
    }
    void drop_mark() { has_mark_ = false; }

    std::uint32_t size() const noexcept { return static_cast<std::uint32_t>(text_.size()); }
    std::string_view slice(PageRange range) const {
        return std::string_view(text_).substr(range.begin, range.end - range.begin);
    }

private:
    enum class Gap : std::uint8_t { none, space, line, paragraph };
    void put(std::string_view bytes);

    std::string text_;
    Gap gap_ = Gap::none;
    Mark mark_ = Mark::item;
    bool has_mark_ = false;
    bool has_bar_ = false;
};

// `range` without `cuts` (in order of begin; those that begin before it are ignored), as a text for people: items
// begin with "- ", headings with "## ", and " | " stands between cells. A mark at the very beginning is kept if
// `keeps_first_mark`.
std::string written(const PageText& text, PageRange range, const std::vector<PageRange>& cuts, bool keeps_first_mark);

// The same on one line, without marks: a name, a code.
std::string written_in_a_line(const PageText& text, PageRange range, const std::vector<PageRange>& cuts);

// Character references resolved, as in the value of an attribute; white space at the ends left out.
std::string resolved(std::string_view raw);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_PAGE_TEXT_H
