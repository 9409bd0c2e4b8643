#include "grainside/source_place.h"

#include <algorithm>
#include <string_view>

#include "listing/json_string.h"

namespace grainside {
inline namespace v0 {

namespace {

constexpr std::size_t kStepBytes = 4096;

// The string as it is written, where the source is at hand.
std::string_view body_of(const SourceLines& source, const FieldOrigin& origin) {
    if (origin.start < source.start || origin.start - source.start > source.bytes.size()) return {};
    return source.bytes.substr(static_cast<std::size_t>(origin.start - source.start), origin.size);
}

// What stands for the first bytes of the text. Of a table's value that is in quotes: "" for one quote, the rest as it
// is.
listing::JsonUnit unit_of(std::string_view body, Writing writing) {
    if (writing == Writing::json_string) return listing::first_unit(body);
    return {body.starts_with("\"\"") ? std::size_t{2} : std::size_t{1}, 1};
}

void count(std::string_view bytes, SourcePosition& position) {
    for (const char c : bytes) {
        if (c == '\n') {
            ++position.line;
            position.column = 1;
        } else if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) {
            ++position.column;
        }
    }
}

}  // namespace

// Where the text's byte `offset` is written: the border before it, or as an end the border behind the byte before it.
SourcePlaces::Step SourcePlaces::step_at(const Listing& listing, const Field& field, std::size_t offset, bool is_end) {
    if (walked_.start != field.origin.start || walked_.size != field.origin.size || steps_.empty()) {
        walked_ = field.origin;
        steps_.assign(1, {});
    }
    const std::string_view body = body_of(listing.source, field.origin);
    // The last step at or before the offset; new ones are laid while the walk goes on from the end of those there are.
    const auto behind = std::upper_bound(steps_.begin(), steps_.end(), offset,
                                         [](std::size_t at, const Step& step) { return at < step.text; });
    const bool extends = behind == steps_.end();
    Step at = *std::prev(behind);
    while (at.text < offset && at.written < body.size()) {
        const listing::JsonUnit unit = unit_of(body.substr(static_cast<std::size_t>(at.written)), field.origin.writing);
        if (!is_end && at.text + unit.text > offset) break;
        at.text += unit.text;
        at.written += unit.written;
        if (extends && at.text >= steps_.back().text + kStepBytes) steps_.push_back(at);
    }
    return at;
}

std::optional<SourceSpan> SourcePlaces::span(const Listing& listing, std::size_t field, std::size_t start,
                                             std::size_t end) {
    const Field& in = listing.fields[field];
    const std::uint64_t at = in.origin.start;
    switch (in.origin.writing) {
        case Writing::nowhere:
        case Writing::packed:
            return std::nullopt;
        case Writing::plain:
        case Writing::json_value:
        case Writing::table_bare:
            return SourceSpan{at + start, at + end};
        case Writing::number_with_unit:
            return SourceSpan{at, at + in.origin.size};
        case Writing::json_string:
        case Writing::table_quoted:
            break;
    }
    // As long as its text: there is no escape.
    if (in.origin.size == in.text.size()) return SourceSpan{at + start, at + end};
    if (listing.source.bytes.empty()) return std::nullopt;
    const std::uint64_t from = step_at(listing, in, start, false).written;
    const std::uint64_t to = start == end ? from : step_at(listing, in, end, true).written;
    return SourceSpan{at + from, at + to};
}

std::optional<SourceRegion> SourcePlaces::find(const Listing& listing, std::size_t field, std::size_t start,
                                               std::size_t end) {
    const auto bytes = span(listing, field, start, end);
    const SourceLines& source = listing.source;
    if (!bytes || bytes->start < source.start || bytes->end - source.start > source.bytes.size()) return std::nullopt;
    return SourceRegion{*bytes, position(source, bytes->start), position(source, bytes->end)};
}

SourcePosition SourcePlaces::position(const SourceLines& source, std::uint64_t at) {
    if (counted_.start != source.start || counted_size_ != source.bytes.size() || marks_.empty()) {
        counted_ = {{}, source.start, source.line};
        counted_size_ = source.bytes.size();
        marks_.assign(1, {source.line, 1});
    }
    const auto offset = static_cast<std::size_t>(at - source.start);
    while (marks_.size() <= offset / kStepBytes) {
        SourcePosition next = marks_.back();
        count(source.bytes.substr((marks_.size() - 1) * kStepBytes, kStepBytes), next);
        marks_.push_back(next);
    }
    const std::size_t mark = offset / kStepBytes;
    SourcePosition found = marks_[mark];
    count(source.bytes.substr(mark * kStepBytes, offset - mark * kStepBytes), found);
    return found;
}

}  // namespace v0
}  // namespace grainside
