// One pass over a page: its words, and where in them the parts of a listing stand.
#ifndef GRAINSIDE_LISTING_PAGE_SCAN_H
#define GRAINSIDE_LISTING_PAGE_SCAN_H

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "listing/page_items.h"
#include "listing/page_pairs.h"
#include "listing/page_text.h"
#include "listing/place.h"

namespace grainside::listing {

struct PageHeading {
    PageRange range;
    bool in_main = false;
};

struct PageRegion {
    PageRange range;
    std::uint64_t line = 0;
};

struct Page {
    PageText text;
    std::vector<PageRange> unread;  // navigation, controls, hidden: never words of the listing; in order of begin
    std::vector<PageRange> others;  // what names_other_things, unless the title stands in it; in order of begin
    std::vector<PagePair> pairs;
    std::vector<PageHeading> titles;  // <h1>
    std::vector<PageRegion> mains;
    std::vector<PageRegion> articles;
    PageRegion body;
    PageItems items;
    std::vector<RecordText> linked_data;  // the insides of <script type="application/ld+json">
    std::string language;
    std::string title;     // <title>
    std::string og_title;  // the Open Graph protocol's og:title and og:site_name
    std::string site_name;
    bool too_deep = false;             // elements below kMaxPageDepth were read as if they were not there
    bool left_out_attributes = false;  // tags had more than kMaxTagAttributes
    bool too_many = false;             // pairs or items were left out
};

// Browsers nest no deeper either (512 is the limit of two of the large ones, from memory).
inline constexpr std::size_t kMaxPageDepth = 512;
inline constexpr std::size_t kMaxPagePairs = 65536;

// `page.bytes` is UTF-8, outlives the result and has at most kMaxRecordBytes. Time is linear in it, memory a small
// multiple of it.
Page scan_page(const RecordText& page);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_PAGE_SCAN_H
