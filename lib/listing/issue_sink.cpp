#include "listing/issue_sink.h"

#include <limits>

#include "grainside/listing_reader.h"

namespace grainside::listing {
namespace {

// A place that does not fit is told as "not known" instead of as a wrong number.
std::uint32_t narrow(std::uint64_t number) {
    return number > std::numeric_limits<std::uint32_t>::max() ? 0 : static_cast<std::uint32_t>(number);
}

}  // namespace

void IssueSink::begin(std::vector<Issue>& issues) {
    issues_ = &issues;
    first_ = issues.size();
    left_out_ = 0;
    left_out_errors_ = 0;
}

void IssueSink::end() {
    if (left_out_ == 0) return;
    issues_->push_back(too_many(file_, left_out_, left_out_errors_));
    left_out_ = 0;
}

Issue IssueSink::too_many(const std::string& file, std::uint64_t left_out, std::uint64_t left_out_errors) {
    Issue issue;
    issue.severity = left_out_errors == 0 ? Issue::Severity::warning : Issue::Severity::error;
    issue.code = "too-many-issues";
    issue.file = file;
    issue.message = std::to_string(left_out) + " further issues up to here are not listed";
    issue.hint = "mend the first ones and read the file again";
    return issue;
}

bool IssueSink::has_room(Issue::Severity severity) {
    if (issues_->size() - first_ < kMaxIssuesPerCall) return true;
    ++left_out_;
    if (severity == Issue::Severity::error) ++left_out_errors_;
    return false;
}

void IssueSink::report(Issue::Severity severity, std::string_view code, Place place, std::string message,
                       std::string hint) {
    if (has_room(severity)) append(severity, code, place, std::move(message), std::move(hint), {});
}

void IssueSink::report_at(Issue::Severity severity, std::string_view code, const RecordText& text, std::size_t offset,
                          std::string message, std::string hint) {
    if (!has_room(severity)) return;
    std::string excerpt = excerpt_at(text, offset);
    if (excerpt.empty()) {
        const std::string words = words_at(text, offset);
        if (!words.empty()) message += ", near: " + words;
    }
    append(severity, code, place_at(text.bytes, offset, text.origin), std::move(message), std::move(hint),
           std::move(excerpt));
}

void IssueSink::take_back(const Mark& mark) {
    issues_->erase(issues_->begin() + static_cast<std::ptrdiff_t>(mark.issues), issues_->end());
    left_out_ = mark.left_out;
    left_out_errors_ = mark.left_out_errors;
}

void IssueSink::append(Issue::Severity severity, std::string_view code, Place place, std::string message,
                       std::string hint, std::string excerpt) {
    Issue issue;
    issue.severity = severity;
    issue.code = code;
    issue.file = file_;
    issue.line = narrow(place.line);
    issue.column = issue.line == 0 ? 0 : narrow(place.column);
    issue.message = std::move(message);
    issue.hint = std::move(hint);
    issue.excerpt = std::move(excerpt);
    issues_->push_back(std::move(issue));
}

}  // namespace grainside::listing
