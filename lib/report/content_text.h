// Lines of a dossier's report that HTML and Markdown share. Not inert: each writer escapes what it writes. Thread-safe.
#ifndef GRAINSIDE_REPORT_CONTENT_TEXT_H
#define GRAINSIDE_REPORT_CONTENT_TEXT_H

#include <string>
#include <string_view>
#include <vector>

#include "report/report_content.h"

namespace grainside::report {

// At most 160 bytes of `words`: of longer ones the beginning and the end, on character borders.
std::string shortened(std::string_view words);
std::string capitalised(std::string_view word);

// "description, title": where the words of a verdict stand, each field once.
std::string fields_of(const ReportVerdict& verdict);
// "Ondemar Workshop; bought 2026-09-02 for 64.00 EUR; new"
std::string sample_text(const ReportContent& content);
// "16 CFR 24.2(a); EN 15987 (from memory)"
std::string sources_text(const std::vector<ReportSource>& sources);
std::string next_tests_text(const ReportContent& content);

// What a reader needs to come to the same report.
struct RecordLine {
    std::string label;
    std::string value;
    bool is_digest = false;
};
std::vector<RecordLine> record_lines(const ReportContent& content);

// The reply to one of the two questions that a reader brings, and what stands behind it.
struct ShortAnswer {
    std::string reply;
    std::string more;
};
// Is it what the seller says?
ShortAnswer words_answer(const ReportContent& content);
// Is it worth the price?
ShortAnswer price_answer(const ReportContent& content);

// What was paid, without tax, and how it stands to the total; what duty was taken of. For a dossier with costs.
std::vector<std::string> price_lines(const CostEstimate& cost, const MoneyStyle& style);
std::vector<std::string> driver_lines(const CostEstimate& cost);
std::vector<std::string> gap_lines(const CostEstimate& cost);
std::vector<std::string> unusual_lines(const CostEstimate& cost);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_CONTENT_TEXT_H
