#include "verdict/examination/remarks.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>
#include <utility>

namespace grainside::verdict {

void Remarks::add(Severity severity, std::string_view code, const RuleInfo& rule, std::string message, std::string hint,
                  std::string_view other, std::uint32_t line) {
    BookRemark remark;
    remark.rule = rule.id;
    remark.other = other;
    remark.issue.severity = severity;
    remark.issue.code = code;
    remark.issue.file = rule.file;
    remark.issue.line = line != 0 ? line : rule.line;
    remark.issue.message = std::move(message);
    remark.issue.hint = std::move(hint);
    add(std::move(remark));
}

void Remarks::add(Severity severity, std::string_view code, std::string file, std::uint32_t line, std::string message,
                  std::string hint) {
    BookRemark remark;
    remark.issue.severity = severity;
    remark.issue.code = code;
    remark.issue.file = std::move(file);
    remark.issue.line = line;
    remark.issue.message = std::move(message);
    remark.issue.hint = std::move(hint);
    add(std::move(remark));
}

void Remarks::add(BookRemark remark) {
    if (!rule_.empty() && remark.rule != rule_ && remark.other != rule_) return;
    std::size_t& count = counts_[remark.issue.code];
    if (++count <= kMostRemarks) remarks_.push_back(std::move(remark));
}

std::vector<BookRemark> Remarks::take() {
    std::stable_sort(remarks_.begin(), remarks_.end(), [](const BookRemark& a, const BookRemark& b) {
        return std::tie(a.issue.file, a.issue.line, a.issue.code, a.rule, a.other) <
               std::tie(b.issue.file, b.issue.line, b.issue.code, b.rule, b.other);
    });
    for (const auto& [code, count] : counts_) {
        if (count <= kMostRemarks) continue;
        BookRemark more;
        more.issue.severity = Severity::note;
        more.issue.code = "more-remarks";
        more.issue.message = fmt::format("{} more of code '{}' are not shown", count - kMostRemarks, code);
        more.issue.hint = "mend those that are, and examine again";
        remarks_.push_back(std::move(more));
    }
    counts_.clear();
    return std::exchange(remarks_, {});
}

}  // namespace grainside::verdict
