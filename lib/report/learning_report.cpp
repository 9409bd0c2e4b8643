// write_learning_view and write_learning_records.
#include <fmt/format.h>

#include <cmath>
#include <cstdint>
#include <string>
#include <string_view>

#include "grainside/dossier_report.h"
#include "report/grade_colour.h"
#include "report/json_writer.h"
#include "report/plain_lines.h"
#include "report/rounded.h"
#include "report/view_text.h"
#include "verdict/percent_text.h"

namespace grainside {
inline namespace v0 {

using report::JsonWriter;

namespace {

void append_heading(const report::Colours& colours, std::string_view text, std::string& out) {
    out += colours.heading();
    out += text;
    out += colours.plain();
    out += '\n';
}

void append_calibration(const report::Colours& colours, std::string_view title, const CalibrationTable& table,
                        std::string& out) {
    append_heading(colours, title, out);
    out += fmt::format("  {}, Brier score {:.3f} (0 is perfect, 2 is worst)\n",
                       report::counted(table.cases, "confirmed part", "confirmed parts"), table.brier);
    out += "  predicted      mean       came true\n";
    for (const ReliabilityLine& line : table.lines) {
        out += fmt::format("  {:>3.0f} to {:>3.0f} %  {:>6.1f} %   {} of {}\n", 100 * line.from, 100 * line.to,
                           100 * line.mean_predicted,
                           std::lround(line.came_true * static_cast<double>(line.predictions)), line.predictions);
    }
    out += '\n';
}

void write_calibration(JsonWriter& json, std::string_view key, const CalibrationTable& table) {
    json.key(key);
    json.begin_object();
    json.member("cases", std::uint64_t{table.cases});
    json.member("brier", report::rounded(table.brier));
    json.key("reliability");
    json.begin_array();
    for (const ReliabilityLine& line : table.lines) {
        json.begin_object();
        json.member("from", report::rounded(line.from));
        json.member("to", report::rounded(line.to));
        json.member("predictions", std::uint64_t{line.predictions});
        json.member("mean_predicted", report::rounded(line.mean_predicted));
        json.member("came_true", report::rounded(line.came_true));
        json.end_object();
    }
    json.end_array();
    json.end_object();
}

}  // namespace

void write_learning_view(const Learning& learning, const ViewOptions& options, std::string& out) {
    const report::Colours colours(options.colour);
    const std::size_t width = report::width_of(options);
    if (learning.dossiers == 0) {
        report::append_wrapped(out, "No dossier says what a laboratory confirmed: there is nothing to learn from.", 0,
                               width);
        out += '\n';
        return;
    }
    append_heading(colours, "How often each outcome is seen, by the book and with the confirmed readings", out);
    for (const LearntLikelihood& row : learning.likelihoods) {
        out += fmt::format("  {} on {} ({})\n", row.method, row.candidate,
                           report::counted(row.seen, "reading", "readings"));
        for (const LearntOutcome& outcome : row.outcomes) {
            if (outcome.seen == 0) continue;
            out += fmt::format("    {:<26} seen {:>3}   {:>8} -> {}\n", outcome.outcome, outcome.seen,
                               verdict::percent_text(outcome.before), verdict::percent_text(outcome.after));
        }
    }
    out += '\n';
    append_calibration(colours, "Before any reading", learning.without_readings, out);
    append_calibration(colours, "By the book", learning.by_the_book, out);
    append_calibration(colours, "With what the other dossiers taught", learning.as_learnt, out);
    report::append_wrapped(out,
                           fmt::format("{} with something confirmed. Few cases prove little: a row that moved by a "
                                       "handful of readings is a reason to test more, not to rewrite the book.",
                                       report::counted(learning.dossiers, "dossier", "dossiers")),
                           0, width);
    out += '\n';
}

void write_learning_records(const RuleBook& book, const Learning& learning, std::string& out) {
    for (const LearntLikelihood& row : learning.likelihoods) {
        JsonWriter json(out);
        json.begin_object();
        json.member("method", std::string_view(row.method));
        json.member("frame", std::string_view(row.frame));
        json.member("candidate", std::string_view(row.candidate));
        json.member("seen", std::uint64_t{row.seen});
        json.key("outcomes");
        json.begin_array();
        for (const LearntOutcome& outcome : row.outcomes) {
            json.begin_object();
            json.member("outcome", std::string_view(outcome.outcome));
            json.member("seen", std::uint64_t{outcome.seen});
            json.member("before", report::rounded(outcome.before));
            json.member("after", report::rounded(outcome.after));
            json.end_object();
        }
        json.end_array();
        json.end_object();
        out += '\n';
    }
    JsonWriter json(out);
    json.begin_object();
    json.member("dossiers", std::uint64_t{learning.dossiers});
    write_calibration(json, "before_any_reading", learning.without_readings);
    write_calibration(json, "by_the_book", learning.by_the_book);
    write_calibration(json, "as_learnt", learning.as_learnt);
    json.member("rule_book", book.digest());
    json.end_object();
    out += '\n';
}

}  // namespace v0
}  // namespace grainside
