#include "edit/remark.h"

#include <algorithm>
#include <tuple>

#include "document/faults.h"
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

namespace {

// Of a hint 'did you mean `x`?' (document::suggestion), where the name that it is for stands at the issue's place.
std::optional<MeantName> meant_name(const Issue& issue, const TextSpan& at, std::string_view text) {
    constexpr std::string_view kBefore = "did you mean `";
    const std::size_t begin = issue.hint.find(kBefore);
    if (begin == std::string::npos) return std::nullopt;
    const std::size_t name = begin + kBefore.size();
    const std::size_t end = issue.hint.find('`', name);
    if (end == std::string::npos) return std::nullopt;
    MeantName meant{at, issue.hint.substr(name, end - name)};
    const auto is_quote = [&](std::size_t byte) { return text[byte] == '"' || text[byte] == '\''; };
    while (meant.span.begin < meant.span.end && is_quote(meant.span.begin)) ++meant.span.begin;
    while (meant.span.begin < meant.span.end && is_quote(meant.span.end - 1)) --meant.span.end;
    const std::string_view candidates[] = {meant.name};
    const std::string_view stands = text.substr(meant.span.begin, meant.span.end - meant.span.begin);
    if (document::nearest(stands, candidates).empty()) return std::nullopt;
    return meant;
}

}  // namespace

Remark remark_of(const Issue& issue, const TextPlaces& places) {
    Remark remark;
    remark.span = places.span_of_issue(issue.line, issue.column);
    remark.severity = severity_of(issue.severity);
    remark.code = issue.code;
    remark.meant = meant_name(issue, remark.span, places.text());
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
