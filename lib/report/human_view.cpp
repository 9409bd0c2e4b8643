// write_view and write_view_end: what was found in a listing, for people.
#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/report.h"
#include "report/concession_text.h"
#include "report/demand_text.h"
#include "report/excerpts.h"
#include "report/fixed_texts.h"
#include "report/grade_colour.h"
#include "report/marked_text.h"
#include "report/plain_lines.h"
#include "report/proof_record.h"
#include "report/rule_facts.h"
#include "report/view_text.h"

namespace grainside {
inline namespace v0 {

using report::Colours;
using report::counted;

namespace {

constexpr std::size_t kFieldIndent = 2;
constexpr std::size_t kTextIndent = 4;
constexpr std::size_t kLabelIndent = 6;
constexpr std::size_t kValueIndent = 19;  // behind "say instead" and two spaces, and behind the longest grade
constexpr std::string_view kNothingFound = ": nothing found; ";
// Of flagged words so many cells stand beside the grade; the marked text above has them in full.
constexpr std::size_t kMostWordCells = 120;

class View {
public:
    View(const RuleBook& book, const Listing& listing, const CheckResult& result, const Checker& checker,
         const ViewOptions& options, const Conceded* conceded, std::string& out)
        : book_(book),
          listing_(listing),
          result_(result),
          checker_(checker),
          conceded_(conceded),
          colours_(options.colour),
          width_(report::width_of(options)),
          out_(out) {}

    void write() {
        if (result_.findings.empty()) {
            write_nothing_found();
            return;
        }
        out_ += colours_.heading();
        out_ += report::listing_heading(listing_, width_);
        out_ += colours_.plain();
        out_ += "\n\n";
        for (std::size_t first = 0; first < result_.findings.size();) {
            const std::uint32_t field = field_of(result_.findings[first]);
            std::size_t last = first;
            while (last < result_.findings.size() && field_of(result_.findings[last]) == field) ++last;
            write_field(field, first, last);
            first = last;
        }
        write_on_file();
        report::append_fields_left_out(out_, result_);
        write_summary();
        out_ += '\n';
    }

private:
    std::uint32_t field_of(const Finding& finding) const { return result_.mentions[finding.claim].field; }

    void write_nothing_found() {
        out_ += colours_.quiet();
        const std::string claims = claims_text();
        out_ += report::listing_heading(listing_, width_ - kNothingFound.size() - claims.size());
        out_.append(kNothingFound).append(claims);
        out_ += colours_.plain();
        out_ += '\n';
        write_on_file();
        report::append_fields_left_out(out_, result_);
    }

    std::string claims_text() const { return counted(result_.claim_count, "claim", "claims"); }

    // The findings from `first` to before `last` are those of the field `index`.
    void write_field(std::uint32_t index, std::size_t first, std::size_t last) {
        const auto findings = std::span(result_.findings).subspan(first, last - first);
        const Field& field = listing_.fields[index];
        out_.append(kFieldIndent, ' ');
        out_ += colours_.quiet();
        out_ += report::one_line(field.name, width_ - kFieldIndent - 1);
        out_ += ':';
        out_ += colours_.plain();
        out_ += '\n';
        std::vector<report::MarkedSpan> marks;
        for (const Finding& finding : findings) marks.push_back({finding.start, finding.end, finding.grade});
        report::append_marked_text(out_, field.text, marks, colours_, kTextIndent, width_);
        out_ += '\n';
        for (std::size_t at = first; at < last; ++at) write_finding(field, at);
    }

    void write_finding(const Field& field, std::size_t at) {
        const Finding& finding = result_.findings[at];
        const RuleInfo& rule = book_.rules()[finding.rule];
        const Claim& claim = result_.mentions[finding.claim];
        out_.append(kTextIndent, ' ');
        out_ += colours_.grade(finding.grade);
        out_ += name_of(finding.grade);
        out_ += colours_.plain();
        out_.append(kValueIndent - kTextIndent - name_of(finding.grade).size(), ' ');
        report::append_wrapped(out_, in_quotes(field, finding.start, finding.end), kValueIndent, width_);
        write_value("reads as",
                    std::string(name_of(claim.part)) + ": " + report::statement_of(book_, claim) +
                        (claim.look_alike ? ", written with letters of another script that look alike" : ""));
        write_value("because", rule.because);
        if (finding.against != kNoClaim) write_against(result_.mentions[finding.against]);
        const std::string instead = checker_.say_instead(listing_, finding);
        if (!instead.empty()) {
            write_value("say instead", instead);
        } else if (!rule.remedy.empty()) {
            write_value("remedy", rule.remedy);
        }
        write_demands(finding, claim);
        write_sources(rule);
        write_value("markets", report::markets_text(rule));
        write_value("rule", rule.id);
        if (report::concession_of(conceded_, at) != nullptr) {
            write_value(report::concession_label(*conceded_, at), report::concession_line(*conceded_, at));
        }
        out_ += '\n';
    }

    void write_demands(const Finding& finding, const Claim& claim) {
        if (finding.grade != Grade::unsupported) return;
        const std::string demands = report::demands_line(book_, claim.says, finding.grade);
        if (!demands.empty()) write_value("proof", demands);
        const std::string filed = report::filed_line(book_, result_, finding.claim, finding.grade);
        if (!filed.empty()) write_value("on file", filed);
    }

    // Each document once for what it supports, however often the listing says it.
    void write_on_file() {
        std::vector<std::string> lines;
        for (const ClaimOnFile& one : result_.on_file) {
            if (!one.lifted) continue;
            std::string line = "proof on file: ";
            line += book_.concept_wording(result_.mentions[one.claim].says);
            line += " (" + proof_text(result_.proofs->all()[one.proof]) + ')';
            if (std::find(lines.begin(), lines.end(), line) == lines.end()) lines.push_back(std::move(line));
        }
        for (const std::string& line : lines) {
            out_.append(kFieldIndent, ' ');
            report::append_wrapped(out_, line, kFieldIndent, width_);
        }
    }

    static std::string in_quotes(const Field& field, std::size_t start, std::size_t end) {
        return '\'' + report::one_line(field.text.substr(start, end - start), kMostWordCells) + '\'';
    }

    void write_against(const Claim& other) {
        const Field& field = listing_.fields[other.field];
        write_value("against", in_quotes(field, other.start, other.end) + " in " +
                                   report::one_line(field.name, kMostWordCells) + " (" +
                                   std::string(name_of(other.part)) + ": " + report::statement_of(book_, other) + ')');
    }

    void write_sources(const RuleInfo& rule) {
        const std::vector<std::string> lines = report::cites_of(book_, rule);
        std::string_view label = lines.size() == 1 ? "source" : "sources";
        for (const std::string& line : lines) {
            write_value(label, line);
            label = {};
        }
    }

    void write_value(std::string_view label, std::string_view value) {
        out_.append(kLabelIndent, ' ');
        out_ += colours_.quiet();
        out_ += label;
        out_ += colours_.plain();
        out_.append(kValueIndent - kLabelIndent - label.size(), ' ');
        report::append_wrapped(out_, value, kValueIndent, width_);
    }

    void write_summary() {
        std::array<std::uint64_t, 6> of_grade{};
        for (std::size_t at = 0; at < result_.findings.size(); ++at) {
            if (conceded_ != nullptr && conceded_->stands(at)) continue;
            ++of_grade[static_cast<std::size_t>(result_.findings[at].grade)];
        }
        std::string text = counted(report::counting(conceded_, result_.findings.size()), "finding", "findings");
        std::string_view separator = ": ";
        for (std::size_t grade = 0; grade < of_grade.size(); ++grade) {
            if (of_grade[grade] == 0) continue;
            text.append(separator).append(std::to_string(of_grade[grade])).append(" ");
            text += name_of(static_cast<Grade>(grade));
            separator = ", ";
        }
        if (conceded_ != nullptr) report::append_conceded_count(text, conceded_->count);
        report::append_wrapped(out_, text + "; " + claims_text(), 0, width_);
    }

    const RuleBook& book_;
    const Listing& listing_;
    const CheckResult& result_;
    const Checker& checker_;
    const Conceded* conceded_;
    Colours colours_;
    std::size_t width_;
    std::string& out_;
};

}  // namespace

void write_view(const RuleBook& book, const Listing& listing, const CheckResult& result, const Checker& checker,
                const ViewOptions& options, std::string& out, const Conceded* conceded) {
    View(book, listing, result, checker, options, conceded, out).write();
}

void write_view_end(const RuleBook& book, std::string& out) {
    constexpr std::size_t kColumns = 80;
    report::append_wrapped(out, report::kNoAdvice, 0, kColumns);
    out += "Rule book " + std::string(book.digest()) + ": " + counted(book.rules().size(), "rule", "rules") + ", " +
           counted(book.concept_count(), "concept", "concepts") + ", " +
           counted(book.term_form_count(), "term form", "term forms") + ".\n";
}

}  // namespace v0
}  // namespace grainside
