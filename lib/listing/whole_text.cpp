#include "listing/whole_text.h"

#include <algorithm>
#include <string>

#include "listing/byte_order_mark.h"
#include "listing/utf8_check.h"

namespace grainside::listing {

std::optional<RecordText> read_whole(ByteSource& source, std::size_t max_bytes, std::string_view too_large_code,
                                     IssueSink& sink) {
    if (!pass_byte_order_mark(source, sink)) return std::nullopt;
    // A file that is too large by its size is not read to be told so.
    const bool states_too_much = !source.is_unpacked() && source.stated_size() > source.offset() + max_bytes;
    if (!states_too_much) source.reserve(std::min(source.stated_size(), max_bytes));
    while (!states_too_much && source.pending().size() <= max_bytes && source.more()) {
    }
    const std::string_view bytes = source.pending();
    if (states_too_much || bytes.size() > max_bytes) {
        sink.report(Issue::Severity::error, too_large_code, {0, 0},
                    "this file is larger than " + std::to_string(max_bytes >> 20U) + " MiB and is not read",
                    "split it; a catalog of any size is read from JSON Lines, one product a line");
        return std::nullopt;
    }
    if (source.error() != 0) {
        report_read_error(source, sink);
        return std::nullopt;
    }
    const std::size_t readable_behind = source.readable_behind();
    const std::uint64_t start = source.offset();
    source.consume(bytes.size());
    return RecordText{bytes, bytes, readable_behind, {1, 1}, start};
}

void warn_of_odd_bytes(const RecordText& text, IssueSink& sink) {
    const std::size_t nul = text.bytes.find('\0');
    if (nul != std::string_view::npos) {
        sink.report_at(Issue::Severity::warning, "nul-byte", text, nul, "this text holds a NUL byte",
                       "if the file is UTF-16, save it as UTF-8; else remove the byte");
    }
    const InvalidBytes bad = find_invalid_utf8(text.bytes, 0);
    if (bad.length != 0) {
        sink.report_at(Issue::Severity::warning, "not-utf8", text, bad.offset,
                       "this text is not UTF-8 from here on; such bytes are read as gaps", "save the file as UTF-8");
    }
}

}  // namespace grainside::listing
