#include "source_edits.h"

#include <system_error>
#include <utility>

namespace grainside::tools {

SourceEditor::SourceEditor(listing::ByteSource source, std::vector<LineSink*> sinks)
    : source_(std::move(source)), sinks_(std::move(sinks)) {}

// False at the end, and after a failure.
bool SourceEditor::read_line(std::string_view& line) {
    if (!failure_.empty()) return false;
    source_.consume(std::exchange(given_, 0));
    std::size_t searched = 0;
    for (;;) {
        const std::size_t end = source_.pending().find('\n', searched);
        if (end != std::string_view::npos) {
            given_ = end + 1;
            break;
        }
        searched = source_.pending().size();
        if (searched > kMostLineBytes) {
            failure_ = "a line is longer than 1 GiB";
            return false;
        }
        if (source_.more()) continue;
        if (source_.error() != 0) {
            failure_ = "reading stopped: " + std::generic_category().message(source_.error());
            return false;
        }
        given_ = source_.pending().size();
        break;
    }
    line = source_.pending().substr(0, given_);
    at_ += given_;
    return given_ > 0;
}

// Gives the lines before the one that holds `offset`, which becomes the group.
bool SourceEditor::reach(std::uint64_t offset) {
    std::string_view line;
    while (read_line(line)) {
        if (offset < at_) {
            group_start_ = at_ - line.size();
            group_ = line;
            return true;
        }
        for (LineSink* sink : sinks_) sink->same(line);
    }
    if (failure_.empty()) failure_ = "the file changed while it was read";
    return false;
}

bool SourceEditor::grow_to(std::uint64_t end) {
    std::string_view line;
    while (at_ < end) {
        if (!read_line(line)) {
            if (failure_.empty()) failure_ = "the file changed while it was read";
            return false;
        }
        group_ += line;
    }
    return true;
}

bool SourceEditor::close_group() {
    if (edits_.empty()) return failure_.empty();
    after_.clear();
    std::size_t from = 0;
    for (const SourceEdit& edit : edits_) {
        const auto start = static_cast<std::size_t>(edit.start - group_start_);
        const auto size = static_cast<std::size_t>(edit.end - edit.start);
        if (group_.compare(start, size, edit.old_bytes) != 0) {
            failure_ = "the file changed while it was read";
            return false;
        }
        after_.append(group_, from, start - from).append(edit.new_bytes);
        from = start + size;
    }
    after_.append(group_, from);
    for (LineSink* sink : sinks_) sink->changed(group_, after_);
    edits_.clear();
    group_.clear();
    return true;
}

bool SourceEditor::add(const std::vector<SourceEdit>& edits) {
    for (const SourceEdit& edit : edits) {
        // Another record may stand on the same line, so the group stays open until an edit lies behind it.
        if (edits_.empty() || edit.start >= at_) {
            if (!close_group() || !reach(edit.start)) return false;
        }
        if (!grow_to(edit.end)) return false;
        edits_.push_back(edit);
    }
    return failure_.empty();
}

bool SourceEditor::finish() {
    if (!close_group()) return false;
    std::string_view line;
    while (read_line(line)) {
        for (LineSink* sink : sinks_) sink->same(line);
    }
    return failure_.empty();
}

}  // namespace grainside::tools
