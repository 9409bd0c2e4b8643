#include "examination_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <string_view>
#include <utility>
#include <vector>

#include "document/inert_text.h"
#include "report/json_writer.h"
#include "rule_text.h"

namespace grainside::tools {
namespace {

using report::JsonWriter;

std::string number_of(std::size_t count, std::string_view what) {
    return fmt::format("{} {}{}", count, what, count == 1 ? "" : "s");
}

struct Answer {
    std::string_view name;
    bool seen;
};

// Those that a clause can give.
std::vector<Answer> answers_of(const ClauseCoverage& clause) {
    std::vector<Answer> answers = {{"true", clause.seen_true}, {"false", clause.seen_false}};
    if (clause.of_a_limit) answers.push_back({"unknown", clause.seen_unknown});
    return answers;
}

void append_gaps(const CoverageReport& report, std::string& out) {
    for (const ClauseCoverage& clause : report.clauses) {
        for (const Answer& answer : answers_of(clause)) {
            if (answer.seen) continue;
            fmt::format_to(std::back_inserter(out), "gap: {} {}: never {}\n", document::inert_text(clause.owner),
                           clause.clause, answer.name);
        }
    }
}

void append_names(JsonWriter& json, std::string_view key, const ClauseCoverage& clause, bool seen) {
    json.key(key);
    json.begin_array();
    for (const Answer& answer : answers_of(clause)) {
        if (answer.seen == seen) json.value(answer.name);
    }
    json.end_array();
}

}  // namespace

void append_remarks(const ExaminationReport& report, const std::string& folder, std::string& out) {
    for (const BookRemark& remark : report.remarks) {
        Issue issue = remark.issue;
        if (!issue.file.empty()) issue.file = rule_path(folder, issue.file);
        out += to_text(issue);
    }
    fmt::format_to(std::back_inserter(out), "{}, {}, {}, {}\n", number_of(report.rules, "rule"),
                   number_of(report.texts, "text"), number_of(report.errors, "error"), number_of(report.notes, "note"));
}

void append_remark_records(const ExaminationReport& report, const std::string& folder, std::string& out) {
    for (const BookRemark& remark : report.remarks) {
        JsonWriter json(out);
        json.begin_object();
        json.member("severity", std::string_view(remark.issue.severity == Issue::Severity::error ? "error" : "note"));
        json.member("code", remark.issue.code);
        json.optional_member("rule", remark.rule);
        json.optional_member("other", remark.other);
        if (!remark.issue.file.empty()) json.member("file", rule_path(folder, remark.issue.file));
        if (remark.issue.line != 0) json.member("line", std::uint64_t{remark.issue.line});
        json.member("message", remark.issue.message);
        json.member("hint", remark.issue.hint);
        json.end_object();
        out += '\n';
    }
    JsonWriter json(out);
    json.begin_object();
    json.member("rules", std::uint64_t{report.rules});
    json.member("texts", std::uint64_t{report.texts});
    json.member("errors", std::uint64_t{report.errors});
    json.member("notes", std::uint64_t{report.notes});
    json.end_object();
    out += '\n';
}

void append_coverage(const CoverageReport& report, const std::string& folder, std::string& out) {
    constexpr std::size_t kClauseCells = 28;
    const ClauseCoverage* last = nullptr;
    for (const ClauseCoverage& clause : report.clauses) {
        if (last == nullptr || last->owner != clause.owner || last->of_a_limit != clause.of_a_limit) {
            fmt::format_to(std::back_inserter(out), "{}:{}: {}\n", document::inert_text(rule_path(folder, clause.file)),
                           clause.line, document::inert_text(clause.owner));
        }
        last = &clause;
        fmt::format_to(std::back_inserter(out), "  {:<{}}", clause.clause, kClauseCells);
        for (const Answer& answer : answers_of(clause)) {
            fmt::format_to(std::back_inserter(out), " {}{}", answer.seen ? "" : "never ", answer.name);
        }
        out += '\n';
    }
    append_gaps(report, out);
    fmt::format_to(std::back_inserter(out), "{}, {}, {}, {}\n", number_of(report.clauses.size(), "condition"),
                   number_of(report.texts, "text"), number_of(report.dossiers, "dossier"),
                   number_of(report.gaps, "gap"));
}

void append_coverage_records(const CoverageReport& report, const std::string& folder, std::string& out) {
    for (const ClauseCoverage& clause : report.clauses) {
        JsonWriter json(out);
        json.begin_object();
        json.member(clause.of_a_limit ? "limit" : "rule", clause.owner);
        json.member("file", rule_path(folder, clause.file));
        json.member("line", std::uint64_t{clause.line});
        json.member("condition", clause.clause);
        append_names(json, "seen", clause, true);
        append_names(json, "never", clause, false);
        json.end_object();
        out += '\n';
    }
    JsonWriter json(out);
    json.begin_object();
    json.member("conditions", std::uint64_t{report.clauses.size()});
    json.member("texts", std::uint64_t{report.texts});
    json.member("dossiers", std::uint64_t{report.dossiers});
    json.member("gaps", std::uint64_t{report.gaps});
    json.end_object();
    out += '\n';
}

}  // namespace grainside::tools
