// Where the readers put their issues: places filled in, and never more of them than memory should hold.
#ifndef GRAINSIDE_LISTING_ISSUE_SINK_H
#define GRAINSIDE_LISTING_ISSUE_SINK_H

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/result.h"
#include "listing/place.h"

namespace grainside::listing {

// Not thread-safe; one per reader.
class IssueSink {
public:
    explicit IssueSink(std::string file) : file_(std::move(file)) {}

    const std::string& file() const noexcept { return file_; }

    // The issue that tells of others that are not.
    static Issue too_many(const std::string& file, std::uint64_t left_out, std::uint64_t left_out_errors);

    // From now on issues are appended to `issues`, at most kMaxIssuesPerCall of them.
    void begin(std::vector<Issue>& issues);
    // Says how many issues were left out since `begin`, if any were.
    void end();

    // Since `begin`: how many issues were left out, and how many of them are errors.
    std::uint64_t left_out() const noexcept { return left_out_; }
    std::uint64_t left_out_errors() const noexcept { return left_out_errors_; }

    // About the whole source, or a place of which no text is at hand (line 0: no place at all).
    void report(Issue::Severity severity, std::string_view code, Place place, std::string message, std::string hint);
    // About `text.bytes[offset]`, which may be its end.
    void report_at(Issue::Severity severity, std::string_view code, const RecordText& text, std::size_t offset,
                   std::string message, std::string hint);

    // To take back what was reported since: `const auto mark = sink.mark(); ... sink.take_back(mark);`
    struct Mark {
        std::size_t issues;
        std::uint64_t left_out;
        std::uint64_t left_out_errors;
    };
    Mark mark() const noexcept { return {issues_->size(), left_out_, left_out_errors_}; }
    void take_back(const Mark& mark);

private:
    bool has_room(Issue::Severity severity);
    void append(Issue::Severity severity, std::string_view code, Place place, std::string message, std::string hint,
                std::string excerpt);

    std::string file_;
    std::vector<Issue>* issues_ = nullptr;
    std::size_t first_ = 0;
    std::uint64_t left_out_ = 0;
    std::uint64_t left_out_errors_ = 0;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_ISSUE_SINK_H
