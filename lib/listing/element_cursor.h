// The elements of a JSON array one after the other, without parsing them.
#ifndef GRAINSIDE_LISTING_ELEMENT_CURSOR_H
#define GRAINSIDE_LISTING_ELEMENT_CURSOR_H

#include <cstddef>

#include "listing/json_scanner.h"
#include "listing/place.h"

namespace grainside::listing {

// Follows brackets and quotes only, so that a broken element stays alone. Where one is so broken that its end cannot be
// told, the next element is taken to begin on a later line that is indented as the broken one was.
// Not thread-safe.
class ElementCursor {
public:
    enum class Step {
        element,  // `element` is set
        fault,    // between elements; `fault` is set, its offset counts in the array's text. Go on with `next`
        end,
    };

    // An empty cursor: at its end.
    ElementCursor() = default;
    // `array.bytes` begins with [. Nothing but white space may follow its end.
    explicit ElementCursor(const RecordText& array);

    Step next();
    const RecordText& element() const noexcept { return element_; }
    const JsonFault& fault() const noexcept { return fault_; }

    // Says that the last element was no JSON.
    void element_was_broken();

private:
    enum class State { before_first, before_element, after_element, ended };

    Step give_element();
    Step fail(JsonFault fault, State next);
    Step lost();
    std::size_t end_of_element() const;
    std::size_t next_line_indented_alike(std::size_t from) const;
    void skip_space();

    RecordText array_;
    RecordText element_;
    JsonFault fault_;
    State state_ = State::ended;
    std::size_t at_ = 0;
    std::size_t element_begin_ = 0;
    bool was_broken_ = false;
    // Places are counted from the element before, not from the beginning of the file.
    std::size_t counted_to_ = 0;
    Place counted_;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_ELEMENT_CURSOR_H
