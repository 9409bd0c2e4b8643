// The difference between two texts as the unified format has it (POSIX.1-2017, diff, "Diff -u Output Format").
#ifndef GRAINSIDE_TOOLS_UNIFIED_DIFF_H
#define GRAINSIDE_TOOLS_UNIFIED_DIFF_H

#include <cstddef>
#include <cstdint>
#include <deque>
#include <string>
#include <string_view>

#include "source_edits.h"

namespace grainside::tools {

// Appends to a string while the lines come. Nothing is written where nothing changed. Three lines of context; a hunk of
// more than kMostHunkBytes is written without any, so that a catalog with an edit on every line needs no more memory
// than its lines. Not thread-safe.
class UnifiedDiff final : public LineSink {
public:
    static constexpr std::size_t kMostHunkBytes = std::size_t{4} << 20U;

    // `name` is the file's, in both headers. `inert`: for a terminal, with what could steer it replaced; such a diff
    // shows and does not apply.
    UnifiedDiff(const std::string& name, bool inert, std::string& out);

    void same(std::string_view line) override;
    void changed(std::string_view before, std::string_view after) override;
    void finish();

private:
    static constexpr std::size_t kContext = 3;

    void append_line(char mark, std::string_view line);
    void append_lines(char mark, std::string_view lines, std::uint64_t& count);
    void close_hunk();

    std::string name_;
    bool inert_;
    std::string* out_;
    bool headed_ = false;
    std::uint64_t old_line_ = 1;  // of the next line
    std::uint64_t new_line_ = 1;
    std::deque<std::string> before_;  // the last lines that are the same, before a hunk
    bool in_hunk_ = false;
    bool bare_ = false;  // the hunk has no context
    std::uint64_t old_from_ = 1, old_count_ = 0, new_from_ = 1, new_count_ = 0;
    std::string body_;
    std::deque<std::string> behind_;  // the same again, behind the last change
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_UNIFIED_DIFF_H
