// The bytes of a page as UTF-8.
#ifndef GRAINSIDE_LISTING_PAGE_ENCODING_H
#define GRAINSIDE_LISTING_PAGE_ENCODING_H

#include <string>

#include "listing/issue_sink.h"
#include "listing/place.h"

namespace grainside::listing {

// The page itself where it is UTF-8, else a copy in `storage`, whose lines are those of the page. Its encoding is, in
// this order: UTF-8 where a byte order mark says so; what a <meta> in its first bytes states; UTF-8 where the bytes
// are; windows-1252, as browsers assume, with the warning "not-utf8". A page that is UTF-8 with letters beyond ASCII
// but states windows-1252 was converted by whoever saved it, and is read as UTF-8. Characters that an encoding does not
// have become U+FFFD. `has_mark`: a byte order mark stood before the page.
RecordText page_in_utf8(const RecordText& page, bool has_mark, std::string& storage, IssueSink& sink);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_PAGE_ENCODING_H
