// What a shopper reads on a page: its title, its main text without navigation and other goods, its specification.
#ifndef GRAINSIDE_LISTING_VISIBLE_TEXT_H
#define GRAINSIDE_LISTING_VISIBLE_TEXT_H

#include <cstdint>
#include <string>
#include <vector>

#include "listing/page_scan.h"

namespace grainside::listing {

struct VisiblePair {
    std::string name;
    std::string value;
};

struct VisibleText {
    std::string title;               // <h1> of the main part, else any, else og:title, else <title>
    std::string text;                // of <main>, else of the <article> with the title or the only one, else of <body>
    std::vector<VisiblePair> pairs;  // of the same part; not in `text`
    std::uint64_t line = 1;          // where that part begins
    std::vector<PageRange> others;   // Page::others without those that the title stands in
};

VisibleText visible_text(const Page& page);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_VISIBLE_TEXT_H
