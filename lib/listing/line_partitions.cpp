#include "grainside/line_partitions.h"

#include <cstddef>
#include <filesystem>
#include <string_view>
#include <system_error>
#include <utility>

#include "listing/binary_file.h"
#include "listing/byte_order_mark.h"
#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/line_count.h"
#include "listing/line_splitter.h"
#include "listing/unpacking.h"

namespace grainside {
inline namespace v0 {
namespace {

// Whether there are lines to cut at: not in a packed file, in one that is no text, in another encoding than UTF-8. What
// the reader says of those it says of the whole file.
bool has_lines(listing::ByteSource& source, listing::IssueSink& sink) {
    while (source.pending().size() < listing::kPackingMarkBytes && source.more()) {
    }
    return listing::packing_of(source.pending()) == listing::Packing::none &&
           listing::binary_kind_of(source).what.empty() && listing::pass_byte_order_mark(source, sink);
}

// What the first part holds at least, so that by itself it is text where the whole file is: where a NUL byte stands
// among the bytes that are looked at, it is weighed against all of them.
std::uint64_t least_of_first(const listing::ByteSource& source) {
    const std::string_view looked_at = source.pending().substr(0, listing::kBinaryLookedAt);
    return looked_at.find('\0') == std::string_view::npos ? 0 : listing::kBinaryLookedAt;
}

std::vector<LinePartition> cut_lines(listing::ByteSource& source, listing::IssueSink& sink, std::uint64_t bytes) {
    std::vector<LinePartition> parts;
    LinePartition part;
    std::vector<Issue> issues;
    sink.begin(issues);
    if (has_lines(source, sink)) {
        const std::uint64_t least = least_of_first(source);
        listing::LineCount count(kMaxRecordBytes);
        std::uint64_t records = 0;
        listing::LineSplitter lines(source, kMaxRecordBytes);
        listing::Line line;
        while (lines.next(line)) {
            const bool is_full = line.start >= least && line.start - part.start.byte >= bytes;
            if (is_full && line.number != part.start.line) {
                part.end = line.start;
                parts.push_back(part);
                part.start = {records + 1, line.number, line.start};
            }
            records += line.too_large ? 1 : count.records_of(line.text);
        }
    } else {
        do {
            source.consume(source.pending().size());
        } while (source.more());
    }
    part.end = source.bytes_read();
    if (part.end > part.start.byte) parts.push_back(part);
    return parts;
}

}  // namespace

Result<std::vector<LinePartition>> plan_line_partitions(const std::string& path, std::uint64_t bytes) {
    namespace fs = std::filesystem;
    std::error_code error;
    const fs::file_status status = fs::status(path, error);
    if (path == "-" || (fs::exists(status) && !fs::is_regular_file(status) && !fs::is_directory(status))) {
        Issue issue;
        issue.code = "not-a-file";
        issue.file = path;
        issue.message = "this cannot be cut into parts: it can be read only once";
        issue.hint = "write it into a file first";
        return issue;
    }
    auto source = listing::ByteSource::open(path);
    if (!source) return std::move(source).issues();
    listing::IssueSink sink(path);
    std::vector<LinePartition> parts = cut_lines(source.value(), sink, bytes);
    if (source.value().error() == 0) return parts;
    std::vector<Issue> issues;
    sink.begin(issues);
    listing::report_read_error(source.value(), sink);
    return issues;
}

}  // namespace v0
}  // namespace grainside
