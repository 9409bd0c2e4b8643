#include "listing/json_lines_source.h"

#include <string>

#include "listing/byte_order_mark.h"

namespace grainside::listing {

std::optional<RecordText> record_on(const Line& line) {
    RecordText text{line.text, line.text, line.readable_behind, {line.number, 1}, line.start, line.number};
    // Files that were put one behind the other have marks in the middle.
    if (text.bytes.starts_with(kUtf8Mark)) {
        text.bytes.remove_prefix(kUtf8Mark.size());
        text.around = text.bytes;
        text.start += kUtf8Mark.size();
    }
    if (text.bytes.find_first_not_of(" \t\r") == std::string_view::npos) return std::nullopt;
    return text;
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
        sink_->report(Issue::Severity::error, "record-too-large", {line.number, 1},
                      "this line is longer than any record may be and is not read",
                      "write one product a line; if the file is one list, read it as json");
        return false;
    }
    const auto record = record_on(line);
    return record && (records_.read(*record, listing) || records_.next_in_graph(listing));
}

}  // namespace grainside::listing
