#include "whole_source.h"

#include <system_error>

#include "grainside/listing_reader.h"
#include "listing/byte_source.h"

namespace grainside::tools {

std::optional<std::string> whole_source(const std::string& input, Diagnostics& diagnostics) {
    auto opened = listing::ByteSource::open(input);
    if (!opened) {
        diagnostics.report(opened.issues());
        return std::nullopt;
    }
    listing::ByteSource& source = opened.value();
    while (source.pending().size() <= kMaxWholeFileBytes && source.more()) {
    }
    if (source.pending().size() > kMaxWholeFileBytes) {
        diagnostics.error("this input is too large to be read from a pipe", "name the file instead");
        return std::nullopt;
    }
    if (source.error() != 0) {
        diagnostics.error(
            "'" + input + "' cannot be read to its end: " + std::generic_category().message(source.error()),
            "nothing of it was reworded");
        return std::nullopt;
    }
    return std::string(source.pending());
}

}  // namespace grainside::tools
