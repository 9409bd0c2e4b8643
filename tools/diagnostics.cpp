#include "diagnostics.h"

#include <unistd.h>

#include <cerrno>
#include <cstddef>
#include <utility>

namespace grainside::tools {
namespace {

constexpr std::size_t kMostKept = 1000;

}  // namespace

void write_to_stderr(std::string_view text) {
    while (!text.empty()) {
        const ssize_t count = ::write(STDERR_FILENO, text.data(), text.size());
        if (count >= 0) {
            text.remove_prefix(static_cast<std::size_t>(count));
        } else if (errno != EINTR) {
            return;
        }
    }
}

void Diagnostics::report(const Issue& issue) {
    progress_.clear();
    if (issue.severity == Issue::Severity::error) ++errors_;
    write_to_stderr("grainside: " + to_text(issue));
    if (!keeps_) return;
    if (kept_.size() == kMostKept) {
        ++not_kept_;
        return;
    }
    kept_.push_back(issue);
    kept_.back().excerpt.clear();
}

std::vector<Issue> Diagnostics::kept() const {
    std::vector<Issue> issues = kept_;
    if (not_kept_ != 0) {
        Issue more;
        more.severity = Issue::Severity::note;
        more.code = "more-faults";
        more.message = std::to_string(not_kept_) + " more were reported on standard error";
        issues.push_back(std::move(more));
    }
    return issues;
}

void Diagnostics::report(std::span<const Issue> issues) {
    for (const Issue& issue : issues) report(issue);
}

void Diagnostics::error(std::string message, std::string hint) {
    Issue issue;
    issue.message = std::move(message);
    issue.hint = std::move(hint);
    report(issue);
}

}  // namespace grainside::tools
