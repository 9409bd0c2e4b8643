#include "listing/byte_order_mark.h"

#include <string>
#include <system_error>
#include <utility>

namespace grainside::listing {

bool pass_byte_order_mark(ByteSource& source, IssueSink& sink) {
    while (source.pending().size() < kUtf8Mark.size() && source.more()) {
    }
    const std::string_view begin = source.pending();
    if (begin.starts_with(kUtf8Mark)) source.consume(kUtf8Mark.size());
    // UTF-32 with its little end first begins like UTF-16.
    const bool is_other = begin.starts_with("\xFF\xFE") || begin.starts_with("\xFE\xFF") ||
                          begin.starts_with(std::string_view("\0\0\xFE", 3));
    if (!is_other) return true;
    sink.report(Issue::Severity::error, "not-utf8", {1, 1}, "this file is UTF-16 or UTF-32 and cannot be read",
                "save it as UTF-8, or convert it: iconv -f UTF-16 -t UTF-8");
    return false;
}

void report_read_error(const ByteSource& source, IssueSink& sink) {
    if (source.error() == 0 || !source.unpacking_fault().empty()) return;
    sink.report(Issue::Severity::error, "read-error", {0, 0},
                "reading stopped: " + std::generic_category().message(source.error()), "");
}

void report_unpacking_fault(const ByteSource& source, std::uint64_t last_record, IssueSink& sink) {
    if (source.unpacking_fault().empty()) return;
    std::string message(source.unpacking_fault());
    message += last_record == 0 ? "; no record came before that"
                                : "; record " + std::to_string(last_record) + " is the last that was read before it";
    sink.report(Issue::Severity::error, "broken-packing", {0, 0}, std::move(message),
                std::string(source.unpacking_hint()));
}

}  // namespace grainside::listing
