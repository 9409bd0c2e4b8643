// The whole report of a dossier, to publish or to send: a page, Markdown, JSON or a table.
//
//     const auto dossier = grainside::Dossier::parse("tote.yaml",
//                                                    "sample: {what: Tote}\n"
//                                                    "listing: {name: Full grain leather tote}\n"
//                                                    "parts:\n"
//                                                    "  body:\n"
//                                                    "    readings:\n"
//                                                    "      - {method: cut-edge, outcome: yarns-under-coat}\n",
//                                                    ".", evidence);
//     if (!dossier) return 2;
//     grainside::Judge judge(book, evidence, {.today = "2026-11-26"});
//     std::vector<grainside::FullReport> reports;
//     reports.push_back(grainside::FullReport::gather({book, evidence, dossier.value()}, judge));
//     std::string page;
//     grainside::write_html(reports, page);
//     std::string table;
//     grainside::write_csv(reports, table);
//     std::cout << reports.front().id() << ": " << grainside::name_of(reports.front().worst()) << '\n'
//               << page.substr(0, page.find('\n')) << '\n'
//               << table.substr(0, 30) << '\n';
//     // prints: tote: contradicted
//     // prints: <!DOCTYPE html>
//     // prints: dossier,sample,seller,bought,p
//
// A report holds copies: dossier and judgement may go. Text from a dossier or its listing comes out inert in each form.
// Output is appended to a string that the caller writes; nothing here prints. Thread-safe for distinct judges and
// outputs; the same dossier, books and options give the same bytes.
#ifndef GRAINSIDE_FULL_REPORT_H
#define GRAINSIDE_FULL_REPORT_H

#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/dossier_report.h"
#include "grainside/judge.h"

namespace grainside {

namespace report {
struct ReportContent;
}

inline namespace v0 {

class FullReport {
public:
    // Judges, plans, adds up the costs and reads the pictures that the dossier names, to the end of each for its
    // digest. `judge` works with the books of `context`.
    static FullReport gather(const DossierContext& context, Judge& judge);

    FullReport(FullReport&&) noexcept;
    FullReport& operator=(FullReport&&) noexcept;
    ~FullReport();

    std::string_view id() const noexcept;  // of the dossier
    Grade worst() const noexcept;          // `consistent` where nothing was claimed
    // Documents on file that cover a claim: CheckResult::proofs_met of the judgement.
    const std::vector<std::uint32_t>& proofs_met() const noexcept;
    // Paths of the files that the dossier names, its listing, pictures and documents, whether they are there or not: a
    // report must not be written over one.
    const std::vector<std::string>& named_files() const noexcept;

    const report::ReportContent& content() const noexcept { return *content_; }  // for the library's own writers

private:
    explicit FullReport(std::unique_ptr<const report::ReportContent> content);
    std::unique_ptr<const report::ReportContent> content_;
};

// One self-contained page in HTML, no script in it, nothing fetched; of several dossiers with a table of all of them.
void write_html(std::span<const FullReport> reports, std::string& out);
// The same content to paste into an article or a letter to the seller.
void write_markdown(std::span<const FullReport> reports, std::string& out);
// One JSON document: {"schema":1,"reports":[...],"limits_of_method":[...],"note":...}; tools/schema/report.schema.json.
void write_json(std::span<const FullReport> reports, std::string& out);
// The statements as a table (RFC 4180), one row each; no cell is taken for a formula.
void write_csv(std::span<const FullReport> reports, std::string& out);

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_FULL_REPORT_H
