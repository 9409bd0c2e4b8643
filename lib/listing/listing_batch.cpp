#include <iterator>

#include "listing/batch_content.h"

namespace grainside {
inline namespace v0 {

void ListingBatch::Content::begin(Kind what, std::string name) {
    kind = what;
    input = std::move(name);
    from_record = 1;
    records = 0;
    ends_input = false;
    ended = false;
    copies.clear();
    issues.clear();
    next_copy = next_issues = 0;
    reader.reset();
    files.clear();
    next_file = 0;
}

BatchStep::Kind ListingBatch::Content::next(BatchStep& step) {
    step.issues.clear();
    step.left_out = step.left_out_errors = 0;
    step.kind = BatchStep::end_of_batch;
    if (ended) return step.kind;
    switch (kind) {
        case Kind::lines:
            step.kind = next_of_lines(step);
            break;
        case Kind::copies:
            step.kind = next_of_copies(step);
            break;
        case Kind::files:
            step.kind = next_of_files(step);
            break;
    }
    return step.kind;
}

BatchStep::Kind ListingBatch::Content::next_of_lines(BatchStep& step) {
    if (!reading || reading->sink.file() != source_name) {
        reading = std::make_unique<listing::LineReading>(source_name);
    }
    if (next_copy++ == 0) {
        reading->source = listing::ByteSource::from_memory(source_name, lines.lines);
        reading->records.restart(lines.before);
    }
    listing::IssueSink& sink = reading->sink;
    for (;;) {
        sink.begin(step.issues);
        if (!reading->records.next(step.listing)) break;
        if (step.listing.record < from_record) {
            step.issues.clear();
            continue;
        }
        records = step.listing.record;
        step.left_out = sink.left_out();
        step.left_out_errors = sink.left_out_errors();
        return BatchStep::a_listing;
    }
    if (lines.too_large != 0) listing::report_line_too_large(lines.too_large, sink);
    step.left_out = sink.left_out();
    step.left_out_errors = sink.left_out_errors();
    std::move(lines.at_the_end.begin(), lines.at_the_end.end(), std::back_inserter(step.issues));
    records = lines.before.records + lines.records;
    ended = true;
    return ends_input ? BatchStep::end_of_input : BatchStep::end_of_batch;
}

BatchStep::Kind ListingBatch::Content::next_of_copies(BatchStep& step) {
    if (next_issues < issues.size() && issues[next_issues].copy == next_copy) {
        step.issues = std::move(issues[next_issues++].issues);
    }
    if (next_copy < copies.size()) {
        std::swap(step.listing, copies.at(next_copy++));
        records = step.listing.record;
        return BatchStep::a_listing;
    }
    ended = true;
    return ends_input ? BatchStep::end_of_input : BatchStep::end_of_batch;
}

BatchStep::Kind ListingBatch::Content::next_of_files(BatchStep& step) {
    if (!reader) {
        if (next_file == files.size()) {
            ended = true;
            return BatchStep::end_of_batch;
        }
        input = files[next_file++];
        records = 0;
        auto opened = ListingReader::open(input, options);
        if (!opened) {
            step.issues = std::move(opened).issues();
            return BatchStep::end_of_input;
        }
        reader = std::make_shared<ListingReader>(std::move(opened).value());
    }
    while (reader->next(step.listing, step.issues)) {
        if (next_file == 1 && step.listing.record < from_record) {
            step.issues.clear();
            continue;
        }
        records = step.listing.record;
        return BatchStep::a_listing;
    }
    reader.reset();
    return BatchStep::end_of_input;
}

ListingBatch::ListingBatch() : content_(std::make_unique<Content>()) {}
ListingBatch::ListingBatch(ListingBatch&&) noexcept = default;
ListingBatch& ListingBatch::operator=(ListingBatch&&) noexcept = default;
ListingBatch::~ListingBatch() = default;

BatchStep::Kind ListingBatch::next(BatchStep& step) {
    return content_->next(step);
}

const std::string& ListingBatch::input() const noexcept {
    return content_->input;
}

std::uint64_t ListingBatch::records() const noexcept {
    return content_->records;
}

std::uint64_t ListingBatch::bytes_read() const noexcept {
    return content_->bytes_read;
}

}  // namespace v0
}  // namespace grainside
