// A source that has to be in memory as a whole.
#ifndef GRAINSIDE_LISTING_WHOLE_TEXT_H
#define GRAINSIDE_LISTING_WHOLE_TEXT_H

#include <cstddef>
#include <optional>

#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/place.h"

namespace grainside::listing {

// Everything in `source` after its byte order mark, valid as long as `source` is not read on. Nothing, and an issue,
// where it cannot be read ("read-error", "not-utf8" for UTF-16) or is larger than `max_bytes` (`too_large_code`).
std::optional<RecordText> read_whole(ByteSource& source, std::size_t max_bytes, std::string_view too_large_code,
                                     IssueSink& sink);

// Warns of the first NUL byte and the first bytes that are not UTF-8 in a plain text; both are left as they are.
void warn_of_odd_bytes(const RecordText& text, IssueSink& sink);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_WHOLE_TEXT_H
