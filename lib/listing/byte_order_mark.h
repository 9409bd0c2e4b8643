// The first bytes of a source, which may say how it is encoded.
#ifndef GRAINSIDE_LISTING_BYTE_ORDER_MARK_H
#define GRAINSIDE_LISTING_BYTE_ORDER_MARK_H

#include <string_view>

#include "listing/byte_source.h"
#include "listing/issue_sink.h"

namespace grainside::listing {

inline constexpr std::string_view kUtf8Mark = "\xEF\xBB\xBF";

// Passes over the mark of UTF-8. Returns false, and reports "not-utf8", for the marks of UTF-16 and UTF-32.
bool pass_byte_order_mark(ByteSource& source, IssueSink& sink);

// Reports the error of `source` as "read-error", if it has one.
void report_read_error(const ByteSource& source, IssueSink& sink);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_BYTE_ORDER_MARK_H
