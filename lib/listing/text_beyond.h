// What the main text of a page says beyond the description in the page's data.
#ifndef GRAINSIDE_LISTING_TEXT_BEYOND_H
#define GRAINSIDE_LISTING_TEXT_BEYOND_H

#include <string>
#include <string_view>

namespace grainside::listing {

struct TextBeyond {
    enum class Kind {
        unknown,    // the text does not hold the description, or not from the beginning of a sentence on
        continues,  // the description breaks off within a sentence of the text
        rest        // `rest` is the text without the description; empty = it says no more
    };
    Kind kind = Kind::unknown;
    std::string rest;
};

// Words are compared without regard to white space and capitals of ASCII. Linear in both. Thread-safe.
TextBeyond text_beyond(std::string_view text, std::string_view description);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_TEXT_BEYOND_H
