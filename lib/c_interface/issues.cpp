#include "c_interface/issues.h"

#include <memory>
#include <utility>

namespace grainside::c_interface {

void give_issues(std::vector<Issue> issues, GrainsideIssues** to) {
    if (to == nullptr || issues.empty()) return;
    auto made = std::make_unique<GrainsideIssues>();
    made->wholes.reserve(issues.size());
    for (const Issue& issue : issues) made->wholes.push_back(to_text(issue));
    made->issues = std::move(issues);
    *to = made.release();
}

}  // namespace grainside::c_interface

using namespace grainside::c_interface;

size_t grainside_issue_count(const GrainsideIssues* issues) {
    return issues == nullptr ? 0 : issues->issues.size();
}

GrainsideStatus grainside_issue_at(const GrainsideIssues* issues, size_t index, GrainsideIssue* issue) {
    if (issue == nullptr || index >= grainside_issue_count(issues)) return grainside_bad_call;
    const grainside::Issue& told = issues->issues[index];
    *issue = {static_cast<GrainsideSeverity>(told.severity),
              told.line,
              told.column,
              text_of(told.code),
              text_of(told.file),
              text_of(told.message),
              text_of(told.hint),
              text_of(issues->wholes[index])};
    return grainside_ok;
}

void grainside_issues_free(GrainsideIssues* issues) {
    delete issues;
}
