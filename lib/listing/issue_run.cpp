// IssueRun: the bound to what is told between two listings, across batches.
#include <utility>

#include "listing/issue_sink.h"
#include "listing/listing_batches.h"

namespace grainside {
inline namespace v0 {

void IssueRun::add(BatchStep& step, std::vector<Issue>& told) {
    for (Issue& issue : step.issues) {
        // A reader has counted already.
        const bool is_count = issue.code == "too-many-issues";
        if (told_ < kMaxIssuesPerCall || is_count) {
            if (!is_count) ++told_;
            file_ = issue.file;
            told.push_back(std::move(issue));
        } else {
            ++left_out_;
            if (issue.severity == Issue::Severity::error) ++left_out_errors_;
        }
    }
    step.issues.clear();
    left_out_ += step.left_out;
    left_out_errors_ += step.left_out_errors;
    if (step.kind != BatchStep::end_of_batch) end(told);
}

void IssueRun::end(std::vector<Issue>& told) {
    if (left_out_ != 0) told.push_back(listing::IssueSink::too_many(file_, left_out_, left_out_errors_));
    told_ = 0;
    left_out_ = 0;
    left_out_errors_ = 0;
}

}  // namespace v0
}  // namespace grainside
