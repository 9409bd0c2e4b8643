#include "listing/json_lines_source.h"

#include <string>

#include "listing/byte_order_mark.h"

namespace grainside::listing {

bool is_blank_line(std::string_view line) {
    // Files that were put one behind the other have marks in the middle.
    if (line.starts_with(kUtf8Mark)) line.remove_prefix(kUtf8Mark.size());
    return line.find_first_not_of(" \t\r") == std::string_view::npos;
}

void report_line_too_large(std::uint64_t line, IssueSink& sink) {
    sink.report(Issue::Severity::error, "record-too-large", {line, 1},
                "this line is longer than any record may be and is not read",
                "write one product a line; if the file is one list, read it as json");
}

void JsonLinesSource::restart(const LinesBefore& before) {
    begun_ = true;
    ended_ = false;
    lines_.restart(before.lines, before.bytes);
    records_.restart(before.records);
}

bool JsonLinesSource::next(Listing& listing) {
    if (!begun_) {
        begun_ = true;
        ended_ = !pass_byte_order_mark(*source_, *sink_);
    }
    if (records_.next_in_graph(listing)) return true;
    Line line;
    while (!ended_) {
        if (!lines_.next(line)) {
            ended_ = true;
            report_read_error(*source_, *sink_);
        } else if (read_line(line, listing)) {
            return true;
        }
    }
    return false;
}

bool JsonLinesSource::read_line(const Line& line, Listing& listing) {
    if (line.too_large) {
        records_.count_record();
        report_line_too_large(line.number, *sink_);
        return false;
    }
    if (is_blank_line(line.text)) return false;
    RecordText text{line.text, line.text, line.readable_behind, {line.number, 1}, line.start, line.number};
    if (text.bytes.starts_with(kUtf8Mark)) {
        text.bytes.remove_prefix(kUtf8Mark.size());
        text.around = text.bytes;
        text.start += kUtf8Mark.size();
    }
    return records_.read(text, listing) || records_.next_in_graph(listing);
}

}  // namespace grainside::listing
