// Bytes of a source replaced, line by line, with everything else left as it is.
#ifndef GRAINSIDE_TOOLS_SOURCE_EDITS_H
#define GRAINSIDE_TOOLS_SOURCE_EDITS_H

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "listing/byte_source.h"

namespace grainside::tools {

// Half-open, in bytes of the source from its beginning.
struct SourceEdit {
    std::uint64_t start = 0;
    std::uint64_t end = 0;
    std::string old_bytes;  // what must stand there
    std::string new_bytes;
};

// Who takes the lines, in their order. Lines come with their ends.
class LineSink {
public:
    virtual ~LineSink() = default;
    virtual void same(std::string_view line) = 0;
    // Whole lines: `before` as they stood, `after` as they are to stand.
    virtual void changed(std::string_view before, std::string_view after) = 0;
};

// Reads a source a second time and gives its lines to the sinks. Holds the lines of one edit and those edits that touch
// them. Not thread-safe.
class SourceEditor {
public:
    // The longest line, in bytes; a file with a longer one is refused rather than held in memory.
    static constexpr std::size_t kMostLineBytes = std::size_t{1} << 30U;

    // `sinks` outlive the editor.
    SourceEditor(listing::ByteSource source, std::vector<LineSink*> sinks);

    // REQUIRES: `edits` are sorted, apart from one another and behind those given before. False: see `failure`.
    bool add(const std::vector<SourceEdit>& edits);
    // The rest of the source.
    bool finish();

    // Empty: none. "the file changed while it was read", or what the system says.
    const std::string& failure() const noexcept { return failure_; }

private:
    bool read_line(std::string_view& line);
    bool reach(std::uint64_t offset);
    bool grow_to(std::uint64_t end);
    bool close_group();

    listing::ByteSource source_;
    std::vector<LineSink*> sinks_;
    std::size_t given_ = 0;  // bytes of the last line, still to be consumed
    std::uint64_t at_ = 0;   // bytes before the next line
    std::string group_;      // lines with edits, as they stand
    std::uint64_t group_start_ = 0;
    std::vector<SourceEdit> edits_;  // of the group
    std::string after_;
    std::string failure_;
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_SOURCE_EDITS_H
