// Which format a source has, where the caller leaves it to us.
#ifndef GRAINSIDE_LISTING_INPUT_FORMAT_H
#define GRAINSIDE_LISTING_INPUT_FORMAT_H

#include <string_view>

#include "grainside/listing_reader.h"
#include "listing/byte_source.h"

namespace grainside::listing {

// By the ending of a file name, in any case of letters; text where it says nothing.
InputFormat format_of_name(std::string_view name);

// By the first byte that is no white space, and behind a { by whether its line ends there, which is read but not
// consumed. White space is looked through for 64 KiB; what has more of it is text.
InputFormat format_of_content(ByteSource& source);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_INPUT_FORMAT_H
