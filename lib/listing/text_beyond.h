// What the main text of a page says beyond the description in the page's data.
#ifndef GRAINSIDE_LISTING_TEXT_BEYOND_H
#define GRAINSIDE_LISTING_TEXT_BEYOND_H

#include <string>
#include <string_view>

namespace grainside::listing {

struct TextBeyond {
    enum class Kind {
        unknown,    // the text holds no sentence of the description
        continues,  // the description breaks off within a sentence of the text
        rest  // `rest` is the text without the description, or without those of its sentences that it holds, where it
              // holds some and the whole nowhere; empty = it says no more
    };
    Kind kind = Kind::unknown;
    std::string rest;
};

// Words are compared without regard to white space and capitals of ASCII. Linear in both: only the first 32 sentences
// are looked for, of 20 bytes and more. Thread-safe.
TextBeyond text_beyond(std::string_view text, std::string_view description);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_TEXT_BEYOND_H
