#include "report/markdown_report.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include <string_view>
#include <vector>

#include "report/content_text.h"
#include "report/cost_facts.h"
#include "report/fixed_texts.h"
#include "report/markdown_text.h"
#include "report/plan_text.h"
#include "report/view_text.h"
#include "verdict/percent_text.h"

namespace grainside::report {
namespace {

// Of a longer field the beginning and the end: a letter quotes.
constexpr std::size_t kMostFieldBytes = 20'000;

class MarkdownReport {
public:
    MarkdownReport(std::string& out, const ReportContent& content, std::size_t level)
        : out_(out), content_(content), level_(level) {}

    void write() {
        heading(0, content_.what.empty() ? content_.id : content_.what);
        if (const std::string sample = sample_text(content_); !sample.empty()) paragraph(sample);
        write_answers();
        write_listing();
        write_verdicts();
        write_evidence();
        write_next_tests();
        write_price();
        write_wordings();
        write_cautions();
        write_records();
    }

private:
    void heading(std::size_t depth, std::string_view text) {
        out_.append(level_ + depth, '#');
        out_ += ' ' + markdown_text(text) + "\n\n";
    }
    void paragraph(std::string_view text) { out_ += markdown_text(text) + "\n\n"; }
    void item(std::string_view text) { out_ += "- " + markdown_text(text) + '\n'; }
    void fact(std::string_view label, std::string_view value) {
        if (!value.empty()) out_ += fmt::format("- {}: {}\n", label, markdown_text(value, false));
    }
    void row(const std::vector<std::string>& cells) {
        out_ += '|';
        for (const std::string& cell : cells) out_ += ' ' + cell + " |";
        out_ += '\n';
    }
    void head(const std::vector<std::string>& names) {
        row(names);
        row(std::vector<std::string>(names.size(), "---"));
    }

    void write_answers() {
        const auto answer = [&](std::string_view question, const ShortAnswer& reply) {
            out_ += fmt::format("{} **{}**", question, markdown_text(reply.reply, false));
            out_ += reply.more.empty() ? "\n\n" : ": " + markdown_text(reply.more, false) + "\n\n";
        };
        answer("Is it what the seller says?", words_answer(content_));
        answer("Is it worth the price?", price_answer(content_));
    }

    void write_listing() {
        heading(1, "The listing as it stood");
        if (!content_.has_listing) {
            paragraph("The dossier holds no listing: nothing was claimed.");
            return;
        }
        if (!content_.captured.empty()) paragraph("Captured on " + content_.captured + ".");
        for (const ReportField& field : content_.fields) {
            out_ += fmt::format("> {}:\\\n> {}\n>\n", markdown_text(field.label), quoted(field));
        }
        out_ += '\n';
    }

    // The field's lines in a quotation: the words of verdicts bold, the numbers of these behind them. Words that lie in
    // others are not marked again.
    static std::string quoted(const ReportField& field) {
        const std::string_view text = field.text;
        if (text.size() > kMostFieldBytes) {
            return markdown_text(shortened(text)) + fmt::format(" ({} bytes)", text.size());
        }
        std::string out;
        std::size_t at = 0;
        for (const VerdictMark& mark : field.marks) {
            if (mark.span.start < at || mark.span.end <= mark.span.start) continue;
            append_lines(out, text.substr(at, mark.span.start - at));
            out += "**" + markdown_text(text.substr(mark.span.start, mark.span.end - mark.span.start)) + "**";
            out += fmt::format(" \\[{}\\]", mark.verdict);
            at = mark.span.end;
        }
        append_lines(out, text.substr(at, text.find_last_not_of(" \t\r\n") + 1 - at));
        return out;
    }

    // A backslash at a line's end breaks it (CommonMark, 6.7).
    static void append_lines(std::string& out, std::string_view text) {
        constexpr std::string_view kBlank = " \t\r\n";
        if (out.empty()) text.remove_prefix(std::min(text.find_first_not_of(kBlank), text.size()));
        for (std::size_t from = 0; from < text.size();) {
            const std::size_t to = std::min(text.find('\n', from), text.size());
            out += markdown_text(text.substr(from, to - from), out.empty() || out.ends_with("> "));
            if (to < text.size())
                out += text.substr(to + 1).find_first_not_of("\r\n") == 0 && to > from ? "\\\n> " : "\n> ";
            from = to + 1;
        }
    }

    void write_verdicts() {
        if (content_.verdicts.empty()) return;
        heading(1, "Claims, part by part");
        const ReportVerdict* last = nullptr;
        for (const ReportVerdict& verdict : content_.verdicts) {
            if (last == nullptr || last->part != verdict.part) heading(2, capitalised(name_of(verdict.part)));
            write_verdict(verdict);
            last = &verdict;
        }
    }

    void write_verdict(const ReportVerdict& verdict) {
        std::string words;
        for (const ReportVerdict::Words& one : verdict.words) {
            words += (words.empty() ? "'" : ", '") + shortened(one.text) + '\'';
        }
        out_ += fmt::format("**{}. {}**: {}\n\n", verdict.number, name_of(verdict.grade), markdown_text(words, false));
        paragraph(verdict.because);
        if (!verdict.say_instead.empty()) {
            out_ += fmt::format("- Say instead: **{}**\n", markdown_text(verdict.say_instead, false));
        }
        fact("Remedy", verdict.remedy);
        fact("Reads as", verdict.says);
        fact("Stands in", fields_of(verdict));
        fact("Against", verdict.against);
        fact("Belief", verdict.belief);
        for (const ReportReading& reading : verdict.readings) fact("Reading", reading_text(reading));
        for (const std::string& limit : verdict.limits) fact("Limit", limit);
        if (verdict.contradictory) {
            fact("Alarm", "readings of this part contradict one another; look again before you publish");
        }
        for (const std::string& change : verdict.changes) fact("What would change it", change);
        for (const std::string& demand : verdict.would_support) fact("What would support it", demand);
        fact("On file", verdict.on_file);
        fact(verdict.sources.size() == 1 ? "Source" : "Sources", sources_text(verdict.sources));
        fact("Rule", verdict.rule);
        out_ += '\n';
    }

    std::string reading_text(const ReportReading& reading) const {
        std::string text = reading.method;
        if (!reading.date.empty()) text += ", " + reading.date;
        text += ": " + reading.result;
        if (!reading.weight.empty()) text += " (" + reading.weight + ')';
        if (!reading.note.empty()) text += "; " + reading.note;
        if (reading.picture != ReportReading::kNoPicture) {
            text += "; picture " + content_.pictures[reading.picture].path;
        }
        return text;
    }

    void write_evidence() {
        heading(1, "The evidence");
        if (content_.readings.empty()) {
            paragraph("No test is on record.");
            return;
        }
        for (const ReportQuestion& question : content_.questions) {
            std::string answers;
            for (const ReportAnswer& answer : question.answers) {
                answers += fmt::format("{}{} {} (before any reading {})", answers.empty() ? "" : "; ", answer.name,
                                       verdict::percent_text(answer.after), verdict::percent_text(answer.before));
            }
            if (question.contradictory) answers += "; its readings contradict one another";
            item(fmt::format("{}: {}: {}", name_of(question.part), question.asks, answers));
        }
        if (!content_.questions.empty()) out_ += '\n';
        head({"Part", "Reading"});
        for (const ReportReading& reading : content_.readings) {
            row({markdown_text(name_of(reading.part)), markdown_text(reading_text(reading))});
        }
        out_ += '\n';
        for (const evidence::PictureFile& picture : content_.pictures) {
            item(picture.path + ": " +
                 (picture.missing.empty() ? "SHA-256 " + picture.sha256 : "no digest: " + picture.missing));
        }
        if (!content_.pictures.empty()) out_ += '\n';
        if (content_.unasked.empty()) return;
        heading(2, "Read, and no claim asked about it");
        for (const ReportReading& reading : content_.unasked) {
            item(std::string(name_of(reading.part)) + ": " + reading_text(reading));
        }
        out_ += '\n';
    }

    void write_next_tests() {
        heading(1, "Tests to make next");
        paragraph(next_tests_text(content_));
        for (std::size_t i = 0; i < content_.plan.tests.size(); ++i) {
            const PlannedTest& test = content_.plan.tests[i];
            out_ += fmt::format("{}. {}\n", i + 1,
                                markdown_text(fmt::format("{} on the {}: about {}; {}", test.title, name_of(test.part),
                                                          fmt::join(test.about, ", "), effort_text(test))));
        }
        if (content_.plan.tests.empty()) return;
        out_ += '\n';
        paragraph(kPlanNote);
    }

    void write_price() {
        heading(1, "Cost and price");
        const ReportCost& cost = content_.cost;
        if (!cost.estimate.on_record) {
            paragraph("The dossier holds no costs.");
            return;
        }
        for (const std::string& line : price_lines(cost.estimate, cost.style)) paragraph(line);
        head({"What", "How", "Middle, " + cost.estimate.currency, "95 % within"});
        for (const CostStep& step : steps_of(cost.estimate)) {
            const bool is_sum = step.line == nullptr;
            const std::string text = markdown_text(is_sum ? capitalised(step.text) : step.text, false);
            row({is_sum ? "**" + text + "**" : text, is_sum ? std::string() : markdown_text(step.line->basis, false),
                 money_text(cost.style, step.amount.value),
                 step.amount.u > 0 ? range_text(cost.style, step.amount) : std::string("exact")});
        }
        out_ += '\n';
        list("What makes the total uncertain", driver_lines(cost.estimate));
        list("What is missing", gap_lines(cost.estimate));
        list("What is unusual", unusual_lines(cost.estimate));
        list("Remarks", cost.estimate.remarks);
        if (!cost.sources.empty()) {
            paragraph("Ranges and rates of the book stand on: " + sources_text(cost.sources) + ".");
        }
        paragraph(kPriceNote);
    }

    void list(std::string_view title, const std::vector<std::string>& lines) {
        if (lines.empty()) return;
        heading(2, title);
        for (const std::string& line : lines) item(line);
        out_ += '\n';
    }

    void write_wordings() {
        heading(1, "Wording that would pass");
        bool any = false;
        for (const ReportVerdict& verdict : content_.verdicts) {
            if (verdict.say_instead.empty()) continue;
            if (!any) head({"Part", "The listing says", "It could say"});
            any = true;
            row({markdown_text(name_of(verdict.part)), markdown_text(shortened(verdict.words.front().text)),
                 markdown_text(verdict.say_instead)});
        }
        if (any) out_ += '\n';
        paragraph(any ? kWordingNote : kNoWording);
    }

    void write_cautions() {
        heading(1, "Cautions, and what the tests stand on");
        if (content_.cautions.empty()) paragraph(kNoCaution);
        for (const Caution& caution : content_.cautions) item(fmt::format("{} ({})", caution.text, caution.methods));
        for (const ReportMethod& method : content_.methods) item(method.title + ": " + sources_text(method.sources));
        out_ += '\n';
    }

    void write_records() {
        heading(1, "To reproduce this report");
        for (const RecordLine& line : record_lines(content_)) item(line.label + ": " + line.value);
        out_ += '\n';
    }

    std::string& out_;
    const ReportContent& content_;
    std::size_t level_;
};

}  // namespace

void append_markdown_report(std::string& out, std::span<const ReportContent* const> dossiers) {
    const bool is_set = dossiers.size() != 1;
    if (is_set) out += "# " + counted(dossiers.size(), "sample", "samples") + "\n\n";
    for (const ReportContent* content : dossiers) MarkdownReport(out, *content, is_set ? 2 : 1).write();
    out += "## How to read this\n\n";
    for (std::size_t grade = 0; grade < 6; ++grade) {
        const auto one = static_cast<Grade>(grade);
        out += fmt::format("- {}: {}\n", name_of(one), meaning_of(one));
    }
    out += '\n';
    for (const std::string_view limit : limits_of_method()) out += "- " + markdown_text(limit) + '\n';
    out += '\n' + markdown_text(kNoAdvice) + '\n';
}

}  // namespace grainside::report
