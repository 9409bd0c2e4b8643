#include "grainside/line_partitions.h"

#include <cstddef>
#include <filesystem>
#include <string_view>
#include <system_error>
#include <utility>

#include "listing/byte_order_mark.h"
#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/json_lines_source.h"
#include "listing/json_records.h"
#include "listing/line_splitter.h"

namespace grainside {
inline namespace v0 {
namespace {

// Whether a key of `record` can read "@graph": as it is, or with one of its letters as an escape.
bool may_hold_graph(std::string_view record) {
    if (record.find("@graph") != std::string_view::npos) return true;
    constexpr std::string_view kEscape = "\\u00";
    for (std::size_t at = record.find(kEscape); at != std::string_view::npos; at = record.find(kEscape, at + 1)) {
        const std::string_view letter = record.substr(at + kEscape.size(), 2);
        for (const std::string_view code : {"40", "67", "72", "61", "70", "68"}) {
            if (letter == code) return true;
        }
    }
    return false;
}

// Counts records as the reader of JSON Lines does.
class RecordCount {
public:
    explicit RecordCount(listing::IssueSink& sink) : sink_(&sink), records_(sink) {}

    void add(const listing::Line& line) {
        if (line.too_large) return records_.count_record();
        const auto record = listing::record_on(line);
        if (!record) return;
        if (!may_hold_graph(record->bytes)) return records_.count_record();
        // Whoever checks the part reports what is wrong with the record.
        issues_.clear();
        sink_->begin(issues_);
        records_.read(*record, listing_);
        while (records_.next_in_graph(listing_)) {
        }
    }

    std::uint64_t next_record() const noexcept { return records_.last_record() + 1; }

private:
    listing::IssueSink* sink_;
    listing::JsonRecords records_;
    Listing listing_;
    std::vector<Issue> issues_;
};

std::vector<LinePartition> cut_lines(listing::ByteSource& source, listing::IssueSink& sink, std::uint64_t bytes) {
    std::vector<LinePartition> parts;
    LinePartition part;
    std::vector<Issue> issues;
    sink.begin(issues);
    if (listing::pass_byte_order_mark(source, sink)) {
        RecordCount count(sink);
        listing::LineSplitter lines(source, kMaxRecordBytes);
        listing::Line line;
        while (lines.next(line)) {
            if (line.start - part.start.byte >= bytes && line.number != part.start.line) {
                part.end = line.start;
                parts.push_back(part);
                part.start = {count.next_record(), line.number, line.start};
            }
            count.add(line);
        }
    } else {
        // In another encoding there are no lines to cut at; the reader says what to do about it.
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
