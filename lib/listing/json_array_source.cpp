#include "listing/json_array_source.h"

#include <string>

#include "listing/whole_text.h"
#include "listing/wrapped_list.h"

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
    if (file->bytes[first] == '{') return begin_object(*file, first, listing);
    if (file->bytes[first] != '[') return read(*file, listing);
    begin_list(*file, first, file->bytes.size());
    return false;
}

void JsonArraySource::begin_list(const RecordText& file, std::size_t begin, std::size_t end) {
    array_ = file;
    array_.bytes = file.bytes.substr(begin, end - begin);
    array_.readable_behind += file.bytes.size() - end;
    array_.start += begin;
    array_.origin = place_at(file.bytes, begin, file.origin);
    elements_.start(array_);
}

bool JsonArraySource::begin_object(const RecordText& file, std::size_t first, Listing& listing) {
    const WrappedList list = find_wrapped_list(file.bytes.substr(first), scanner_);
    if (list.name.empty()) return read(file, listing);
    const bool is_whole = list.end != 0 && scanner_.is_document(file.bytes);
    // What cannot be read might say that this is a product.
    if (!is_whole && !list.is_graph && !list.has_products) return read(file, listing);
    if (!list.next_name.empty()) {
        sink_->report_at(Issue::Severity::error, "several-lists", file, first + list.begin,
                         "several members of this object hold lists of objects, as " + shown_name(list.name) + " and " +
                             shown_name(list.next_name) + " do, and which one holds the products cannot be told",
                         "write the list of products into a file of its own");
        return false;
    }
    if (list.end != 0) {
        if (!is_whole) {
            const JsonFault& fault = scanner_.fault();
            sink_->report_at(Issue::Severity::error, "json-syntax", file, fault.offset, std::string(fault.message),
                             std::string(fault.hint));
        }
        begin_list(file, first + list.begin, first + list.end);
    } else {
        begin_list(file, first + list.begin, file.bytes.size());
        elements_.pass_over_what_is_behind();
    }
    role_ = list.is_graph ? ProductJson::Role::graph_node : ProductJson::Role::record;
    return false;
}

bool JsonArraySource::read(const RecordText& text, Listing& listing) {
    if (text.bytes.size() > max_record_bytes_) {
        records_.count_record();
        sink_->report(Issue::Severity::error, "record-too-large", text.origin,
                      "this record is larger than any record may be and is not read", "split it into single products");
        return false;
    }
    return records_.read(text, listing, role_);
}

}  // namespace grainside::listing
