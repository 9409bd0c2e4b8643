#include "unified_diff.h"

#include <fmt/format.h>

#include <algorithm>

#include "document/inert_text.h"

namespace grainside::tools {
namespace {

// As file names with odd letters stand in such headers: in quotes, with the escapes of C.
std::string diff_name(const std::string& name) {
    const auto is_odd = [](char c) {
        return static_cast<unsigned char>(c) < 0x20 || c == 0x7F || c == '"' || c == '\\';
    };
    if (std::none_of(name.begin(), name.end(), is_odd)) {
        // A tab ends the name where it has a space.
        return name.find(' ') == std::string::npos ? name : name + '\t';
    }
    std::string out = "\"";
    for (const char c : name) {
        if (c == '"' || c == '\\') {
            out += '\\';
            out += c;
        } else if (is_odd(c)) {
            out += fmt::format("\\{:03o}", static_cast<unsigned>(static_cast<unsigned char>(c)));
        } else {
            out += c;
        }
    }
    return out + '"';
}

std::string range_of(std::uint64_t from, std::uint64_t count) {
    return count == 1 ? std::to_string(from) : fmt::format("{},{}", from, count);
}

}  // namespace

UnifiedDiff::UnifiedDiff(const std::string& name, bool inert, std::string& out)
    : name_(diff_name(inert ? document::inert_text(name) : name)), inert_(inert), out_(&out) {}

void UnifiedDiff::append_line(char mark, std::string_view line) {
    body_ += mark;
    const bool ends = line.ends_with('\n');
    if (inert_) {
        std::string_view shown = line;
        while (shown.ends_with('\n') || shown.ends_with('\r')) shown.remove_suffix(1);
        body_ += document::inert_text(shown);
        body_ += '\n';
    } else {
        body_ += line;
        if (!ends) body_ += '\n';
    }
    if (!ends) body_ += "\\ No newline at end of file\n";
}

void UnifiedDiff::append_lines(char mark, std::string_view lines, std::uint64_t& count) {
    while (!lines.empty()) {
        const std::size_t end = std::min(lines.find('\n'), lines.size() - 1) + 1;
        append_line(mark, lines.substr(0, end));
        lines.remove_prefix(end);
        ++count;
    }
}

void UnifiedDiff::same(std::string_view line) {
    ++old_line_;
    ++new_line_;
    if (!in_hunk_) {
        before_.emplace_back(line);
        if (before_.size() > kContext) before_.pop_front();
        return;
    }
    behind_.emplace_back(line);
    if (behind_.size() > 2 * kContext || bare_) close_hunk();
}

void UnifiedDiff::changed(std::string_view before, std::string_view after) {
    if (in_hunk_ && body_.size() > kMostHunkBytes) {
        bare_ = true;
        close_hunk();
        bare_ = true;
    }
    if (!in_hunk_) {
        in_hunk_ = true;
        // Less context in front than behind would be taken for the file's beginning.
        bare_ = bare_ || (before_.size() < kContext && before_.size() + 1 < old_line_);
        if (bare_) before_.clear();
        old_from_ = old_line_ - before_.size();
        new_from_ = new_line_ - before_.size();
        old_count_ = new_count_ = 0;
        body_.clear();
    }
    for (const std::string& line : behind_) {
        append_line(' ', line);
        ++old_count_;
        ++new_count_;
    }
    behind_.clear();
    const std::uint64_t old_before = old_count_;
    const std::uint64_t new_before = new_count_;
    append_lines('-', before, old_count_);
    append_lines('+', after, new_count_);
    old_line_ += old_count_ - old_before;
    new_line_ += new_count_ - new_before;
}

// A reader of the format takes less context behind than in front as the file's end, so a hunk has both or none.
void UnifiedDiff::close_hunk() {
    if (!in_hunk_) return;
    if (!headed_) {
        *out_ += "--- " + name_ + "\n+++ " + name_ + '\n';
        headed_ = true;
    }
    std::string changes = std::move(body_);
    body_.clear();
    std::uint64_t old_from = old_from_;
    std::uint64_t new_from = new_from_;
    std::uint64_t context = 0;
    std::string behind;
    if (bare_) {
        old_from += before_.size();
        new_from += before_.size();
    } else {
        for (const std::string& line : before_) append_line(' ', line);
        context = before_.size() + std::min(behind_.size(), kContext);
    }
    std::string lines = std::move(body_);
    body_.clear();
    if (!bare_) {
        for (std::size_t i = 0; i < std::min(behind_.size(), kContext); ++i) append_line(' ', behind_[i]);
    }
    *out_ += "@@ -" + range_of(old_from, old_count_ + context) + " +" + range_of(new_from, new_count_ + context) +
             " @@\n" + lines + changes + body_;
    body_.clear();
    in_hunk_ = bare_ = false;
    before_.clear();
    const std::size_t keep = std::min(behind_.size(), kContext);
    for (std::size_t i = behind_.size() - keep; i < behind_.size(); ++i) before_.push_back(std::move(behind_[i]));
    behind_.clear();
}

void UnifiedDiff::finish() {
    close_hunk();
}

}  // namespace grainside::tools
