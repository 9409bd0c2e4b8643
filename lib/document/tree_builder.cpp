#include "document/tree_builder.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "document/inert_text.h"
#include "document/yaml_document.h"

namespace grainside::document {
namespace {

// An event of nothing carries the mark of whatever comes next; whether a null was written has to be looked up.
bool null_is_written(std::string_view source, std::size_t offset) {
    const std::string_view rest = source.substr(offset);
    for (const std::string_view word : {"~", "null", "Null", "NULL"}) {
        if (!rest.starts_with(word)) continue;
        return rest.size() == word.size() || std::string_view(" \t\r\n,]}").find(rest[word.size()]) != rest.npos;
    }
    return false;
}

std::uint16_t capped(std::uint32_t column) {
    constexpr std::uint32_t kMax = std::numeric_limits<std::uint16_t>::max();
    return static_cast<std::uint16_t>(std::min(column, kMax));
}

}  // namespace

void TreeBuilder::fault(const SourceMark& mark, std::string_view code, std::string message, std::string hint) {
    failed_ = true;
    Issue issue;
    issue.code = code;
    issue.file = file_;
    issue.line = mark.place.line;
    issue.column = mark.place.column;
    issue.message = std::move(message);
    issue.hint = std::move(hint);
    if (mark.place.column != 0 && mark.place.column <= kMaxExcerptBytes && mark.place.column <= mark.offset + 1) {
        std::string_view line = source_.substr(mark.offset - (mark.place.column - 1));
        line = line.substr(0, line.find('\n'));
        if (line.ends_with('\r')) line.remove_suffix(1);
        issue.excerpt = make_excerpt(line, mark.place.column);
    }
    faults_.add(std::move(issue));
}

void TreeBuilder::null(const SourceMark& mark) {
    if (skipped_depth_ > 0) return;
    if (at_key()) {
        take_key(mark, {});
        return;
    }
    append(null_is_written(source_, mark.offset) ? mark : place_of_empty(mark), NodeKind::null);
}

void TreeBuilder::scalar(const SourceMark& mark, std::string_view text) {
    if (skipped_depth_ > 0) return;
    if (at_key()) {
        take_key(mark, text);
        return;
    }
    const Text added = add_text(text);
    NodeRecord& record = append(mark, NodeKind::scalar);
    record.text_offset = added.offset;
    record.text_length = added.length;
    const char first = mark.offset < source_.size() ? source_[mark.offset] : ' ';
    record.quoted = first == '"' || first == '\'' ? 1 : 0;
}

void TreeBuilder::open(const SourceMark& mark, NodeKind kind) {
    check_depth(mark);
    if (skipped_depth_ > 0) {
        ++skipped_depth_;
        return;
    }
    if (at_key()) {
        fault(mark, "wrong-type", "a key must be text, not a list or a mapping");
        skipped_depth_ = 1;
        return;
    }
    append(mark, kind);
    Frame frame;
    frame.record = static_cast<std::uint32_t>(records_.size() - 1);
    frame.kind = kind;
    frame.key_is_next = kind == NodeKind::mapping;
    frame.mark = mark;
    frame.first_key = keys_.size();
    frames_.push_back(frame);
}

void TreeBuilder::close() {
    if (skipped_depth_ > 0) {
        if (--skipped_depth_ == 0) frames_.back().key_is_next = false;
        return;
    }
    report_duplicates(frames_.back().first_key);
    keys_.resize(frames_.back().first_key);
    frames_.pop_back();
}

void TreeBuilder::refused(const SourceMark& mark) {
    if (skipped_depth_ > 0) return;
    if (at_key()) {
        frames_.back().key_is_next = false;
    } else {
        append(mark, NodeKind::null);
    }
}

std::optional<SourceMark> TreeBuilder::innermost() const {
    if (frames_.empty()) return std::nullopt;
    return frames_.back().mark;
}

Document TreeBuilder::finish() {
    return {std::string(file_), std::move(records_), strings_, std::string(source_), std::move(key_places_)};
}

void TreeBuilder::take_key(const SourceMark& mark, std::string_view text) {
    Frame& frame = frames_.back();
    frame.key_is_next = false;
    frame.key = {{}, mark};
    if (text.empty()) {
        fault(mark, "wrong-type", "a key must be text, not nothing");
        return;
    }
    auto known = interned_.find(text);
    if (known == interned_.end()) known = interned_.emplace(std::string(text), add_text(text)).first;
    frame.key.text = known->second;
    keys_.push_back(frame.key);
}

NodeRecord& TreeBuilder::append(const SourceMark& mark, NodeKind kind) {
    if (records_.size() >= kMaxYamlNodes) {
        fault(mark, "too-large", "the file holds more than " + std::to_string(kMaxYamlNodes) + " values",
              "split it into several files");
        throw StopReading();
    }
    const auto index = static_cast<std::uint32_t>(records_.size());
    NodeRecord record;
    record.kind = kind;
    record.line = mark.place.line;
    record.column = capped(mark.place.column);
    Place key_place;
    if (!frames_.empty()) {
        Frame& frame = frames_.back();
        std::uint32_t& link =
            frame.last_child != 0 ? records_[frame.last_child].next_sibling : records_[frame.record].first_child;
        link = index;
        frame.last_child = index;
        if (frame.kind == NodeKind::mapping) {
            frame.key_is_next = true;
            record.key_offset = frame.key.text.offset;
            record.key_length = frame.key.text.length;
            key_place = frame.key.mark.place;
        }
    }
    records_.push_back(record);
    key_places_.push_back(key_place);
    return records_.back();
}

void TreeBuilder::report_duplicates(std::size_t first_key) {
    const auto begin = keys_.begin() + static_cast<std::ptrdiff_t>(first_key);
    std::stable_sort(begin, keys_.end(), [](const Key& a, const Key& b) { return a.text.offset < b.text.offset; });
    auto first = begin;
    for (auto key = begin; key != keys_.end(); ++key) {
        if (key->text.offset != first->text.offset) first = key;
        if (key == first) continue;
        const std::string name = strings_.substr(key->text.offset, key->text.length);
        fault(key->mark, "duplicate-key", "the key `" + name + "` stands twice in one mapping",
              "it stands first in line " + std::to_string(first->mark.place.line) + "; keep one of them");
    }
}

void TreeBuilder::check_depth(const SourceMark& mark) {
    if (frames_.size() + skipped_depth_ < static_cast<std::size_t>(kMaxYamlDepth)) return;
    fault(mark, "too-deep", "lists and mappings are nested more than " + std::to_string(kMaxYamlDepth) + " deep");
    throw StopReading();
}

SourceMark TreeBuilder::place_of_empty(const SourceMark& mark) const {
    if (frames_.empty()) return mark;
    const Frame& frame = frames_.back();
    if (frame.kind == NodeKind::mapping) return frame.key.mark;
    if (frame.mark.offset >= source_.size() || source_[frame.mark.offset] != '-') return mark;

    // The dash stands in the sequence's column, in the nearest line at or above the mark that has one there and only
    // other indicators before it.
    const std::size_t column = frame.mark.place.column;
    std::uint32_t line = mark.place.line;
    for (std::size_t end = std::min(mark.offset, source_.size()); end > frame.mark.offset; --line) {
        const std::size_t newline = source_.rfind('\n', end - 1);
        const std::size_t start = newline == std::string_view::npos ? 0 : newline + 1;
        const std::size_t dash = start + column - 1;
        const bool has_dash = dash < end && source_[dash] == '-' &&
                              source_.substr(start, column - 1).find_first_not_of(" -?") == std::string_view::npos;
        if (has_dash) return {{line, frame.mark.place.column}, dash};
        end = start == 0 ? 0 : newline;
        // A line that ends where the one before begins is empty and is stepped over as any other.
    }
    return frame.mark;
}

TreeBuilder::Text TreeBuilder::add_text(std::string_view text) {
    const Text added{static_cast<std::uint32_t>(strings_.size()), static_cast<std::uint32_t>(text.size())};
    strings_ += text;
    return added;
}

}  // namespace grainside::document
