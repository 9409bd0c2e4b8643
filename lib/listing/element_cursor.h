// The elements of a JSON array one after the other, without parsing them.
#ifndef GRAINSIDE_LISTING_ELEMENT_CURSOR_H
#define GRAINSIDE_LISTING_ELEMENT_CURSOR_H

#include <cstddef>

#include "listing/json_scanner.h"
#include "listing/place.h"

namespace grainside::listing {

// Every element is held to the grammar before it is given, so that a broken one is known at once and stays alone:
// reading goes on at the next line that is indented as the broken element was or, where no line is, behind the bracket
// that closes it. The time is linear in the text, whatever it holds. Not thread-safe.
class ElementCursor {
public:
    enum class Step {
        element,         // `element` is set
        broken_element,  // `fault` is set, its offset counts in the array's text
        fault,           // the same, but about what stands between elements
        end,
    };

    // At its end until `start`. `array.bytes` begins with [. Nothing but white space may follow its end.
    void start(const RecordText& array);

    // After `start`, for an array that stands in something else: whatever follows its end is no fault.
    void pass_over_what_is_behind() noexcept { ends_with_text_ = false; }

    Step next();
    const RecordText& element() const noexcept { return element_; }
    const JsonFault& fault() const noexcept { return fault_; }

private:
    enum class State { before_first, before_element, after_element, ended };

    Step give_element();
    Step fail(JsonFault fault, State next);
    Step lost();
    void go_on_after_broken();
    std::size_t end_by_brackets() const;
    bool find_line_indented_alike(std::size_t from);
    void skip_space();

    RecordText array_;
    RecordText element_;
    JsonFault fault_;
    State state_ = State::ended;
    std::size_t at_ = 0;
    std::size_t element_begin_ = 0;
    bool was_broken_ = false;
    bool ends_with_text_ = true;
    // A search that found no line is not made again: it looked at all the text.
    bool no_more_lines_ = false;
    JsonScanner scanner_;
    // Places are counted from the element before, not from the beginning of the file.
    std::size_t counted_to_ = 0;
    Place counted_;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_ELEMENT_CURSOR_H
