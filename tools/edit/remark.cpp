#include "edit/remark.h"

#include <algorithm>
#include <tuple>

#include "document/inert_text.h"
#include "report/markdown_text.h"

namespace grainside::tools::edit {

Severity severity_of(Grade grade) noexcept {
    switch (grade) {
        case Grade::contradicted:
        case Grade::misleading:
            return Severity::error;
        case Grade::unsupported:
            return Severity::warning;
        case Grade::inconclusive:
        case Grade::vague:
            return Severity::information;
        case Grade::consistent:
            break;
    }
    return Severity::hint;
}

Severity severity_of(Issue::Severity severity) noexcept {
    switch (severity) {
        case Issue::Severity::error:
            return Severity::error;
        case Issue::Severity::warning:
            return Severity::warning;
        case Issue::Severity::note:
            break;
    }
    return Severity::information;
}

void Told::add(std::string label, std::string text) {
    if (!text.empty()) lines.emplace_back(std::move(label), std::move(text));
}

std::string Told::text(bool markdown) const {
    const auto shown = [markdown](const std::string& text) {
        return markdown ? report::markdown_text(text, false) : document::inert_text(text);
    };
    std::string out = markdown ? "**" + shown(heading) + "**\n" : shown(heading) + '\n';
    for (const auto& [label, text] : lines) {
        out += markdown ? "\n- *" + label + "*: " : "\n" + label + ": ";
        out += shown(text);
    }
    out += '\n';
    return out;
}

Remark remark_of(const Issue& issue, const TextPlaces& places) {
    Remark remark;
    remark.span = places.span_of_issue(issue.line, issue.column);
    remark.severity = severity_of(issue.severity);
    remark.code = issue.code;
    remark.message = document::inert_text(issue.hint.empty() ? issue.message : issue.message + "; " + issue.hint);
    return remark;
}

void put_in_order(std::vector<Remark>& remarks) {
    std::stable_sort(remarks.begin(), remarks.end(), [](const Remark& a, const Remark& b) {
        return std::tie(a.span.begin, a.span.end, a.severity) < std::tie(b.span.begin, b.span.end, b.severity);
    });
    if (remarks.size() <= kMostRemarks) return;
    Remark more;
    more.code = "more-remarks";
    more.message = std::to_string(remarks.size() - kMostRemarks) + " more are not shown";
    remarks.resize(kMostRemarks);
    more.span = remarks.back().span;
    remarks.push_back(std::move(more));
}

}  // namespace grainside::tools::edit
