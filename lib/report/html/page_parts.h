// The sections of a dossier's page, one function and one file each. They write what ReportContent holds and decide
// nothing. Thread-safe for distinct writers.
#ifndef GRAINSIDE_REPORT_HTML_PAGE_PARTS_H
#define GRAINSIDE_REPORT_HTML_PAGE_PARTS_H

#include <cstdint>
#include <string>
#include <string_view>

#include "report/html/html_writer.h"
#include "report/report_content.h"

namespace grainside::report {

struct PageContext {
    HtmlWriter& html;
    const ReportContent& content;
    std::string prefix;  // of ids: several dossiers may share a page
    int level = 1;       // of the dossier's own heading, 1 or 2

    std::string id(std::string_view name) const { return prefix + std::string(name); }
    std::string verdict_id(std::uint32_t number) const { return id("verdict-" + std::to_string(number)); }
    // `depth` levels below the dossier's heading.
    void heading(int depth, std::string_view text) const { html.element(heading_name(depth), text); }
    std::string_view heading_name(int depth) const;
};

// <span class="grade ...">contradicted</span>
void write_grade(HtmlWriter& html, Grade grade);
// "The cut edge, 2026-08-20: ..." with the picture that belongs to it.
void write_reading(const PageContext& page, const ReportReading& reading);

void write_answers(const PageContext& page);   // is it what they say, is it worth the price
void write_listing(const PageContext& page);   // the words, marked
void write_verdicts(const PageContext& page);  // claims by part
void write_evidence(const PageContext& page);  // what the parts are, every reading, pictures
void write_next_tests(const PageContext& page);
void write_price(const PageContext& page);
void write_wordings(const PageContext& page);
void write_cautions(const PageContext& page);
void write_records(const PageContext& page);  // what makes the report reproducible

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_HTML_PAGE_PARTS_H
