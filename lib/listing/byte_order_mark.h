// The first bytes of a source, which may say how it is encoded; and what its last ones may lack.
#ifndef GRAINSIDE_LISTING_BYTE_ORDER_MARK_H
#define GRAINSIDE_LISTING_BYTE_ORDER_MARK_H

#include <cstdint>
#include <string_view>

#include "listing/byte_source.h"
#include "listing/issue_sink.h"

namespace grainside::listing {

inline constexpr std::string_view kUtf8Mark = "\xEF\xBB\xBF";

// Passes over the mark of UTF-8. Returns false, and reports "not-utf8", for the marks of UTF-16 and UTF-32.
bool pass_byte_order_mark(ByteSource& source, IssueSink& sink);

// Reports the error of `source` as "read-error", if it has one that is no fault of packed data.
void report_read_error(const ByteSource& source, IssueSink& sink);

// Reports what is wrong with packed data as "broken-packing", if anything is. `last_record` is the number of the last
// listing that was read, 0 where there was none.
void report_unpacking_fault(const ByteSource& source, std::uint64_t last_record, IssueSink& sink);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_BYTE_ORDER_MARK_H
