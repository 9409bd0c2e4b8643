#include "listing/json_array_source.h"

#include <string>

#include "listing/whole_text.h"

namespace grainside::listing {

bool JsonArraySource::next(Listing& listing) {
    if (!begun_) {
        begun_ = true;
        if (begin(listing)) return true;
    }
    if (records_.next_in_graph(listing)) return true;
    for (;;) {
        switch (elements_.next()) {
            case ElementCursor::Step::element:
                if (read(elements_.element(), listing) || records_.next_in_graph(listing)) return true;
                break;
            case ElementCursor::Step::broken_element:
                records_.count_record();
                [[fallthrough]];
            case ElementCursor::Step::fault:
                sink_->report_at(Issue::Severity::error, "json-syntax", array_, elements_.fault().offset,
                                 std::string(elements_.fault().message), std::string(elements_.fault().hint));
                break;
            case ElementCursor::Step::end:
                return false;
        }
    }
}

bool JsonArraySource::begin(Listing& listing) {
    const auto file = read_whole(*source_, max_file_bytes_, "file-too-large", *sink_);
    if (!file) return false;
    const std::size_t first = file->bytes.find_first_not_of(" \t\r\n");
    if (first == std::string_view::npos) {
        sink_->report(Issue::Severity::error, "json-syntax", {1, 1}, "the file is empty",
                      "write a product as {\"name\": ...} or a list of them");
        return false;
    }
    if (file->bytes[first] != '[') return read(*file, listing);
    array_ = *file;
    array_.bytes.remove_prefix(first);
    array_.start += first;
    array_.origin = place_at(file->bytes, first, file->origin);
    elements_.start(array_);
    return false;
}

bool JsonArraySource::read(const RecordText& text, Listing& listing) {
    if (text.bytes.size() > max_record_bytes_) {
        records_.count_record();
        sink_->report(Issue::Severity::error, "record-too-large", text.origin,
                      "this record is larger than any record may be and is not read", "split it into single products");
        return false;
    }
    return records_.read(text, listing);
}

}  // namespace grainside::listing
