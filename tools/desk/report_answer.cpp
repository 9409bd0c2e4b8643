#include "desk/report_answer.h"

#include <algorithm>
#include <iterator>
#include <span>
#include <string>
#include <utility>

#include "calendar.h"
#include "desk/desk_error.h"
#include "grainside/full_report.h"
#include "grainside/judge.h"

namespace grainside::desk {
namespace {

struct ReportForm {
    std::string_view name, type, ending;
    void (*write)(std::span<const FullReport>, std::string&);
};

constexpr ReportForm kReportForms[] = {
    {"html", "text/html; charset=utf-8", ".html", write_html},
    {"markdown", "text/markdown; charset=utf-8", ".md", write_markdown},
    {"json", "application/json; charset=utf-8", ".json", write_json},
    {"csv", "text/csv; charset=utf-8", ".csv", write_csv},
};
// The report has its styles in itself, and no script; whatever it holds, none runs.
constexpr const char* kReportPolicy =
    "default-src 'none'; style-src 'unsafe-inline'; img-src 'self' data:; base-uri 'none'; form-action 'none'; "
    "frame-ancestors 'none'; sandbox";

std::string plain_file_name(std::string_view name) {
    std::string plain(name);
    std::replace_if(
        plain.begin(), plain.end(),
        [](char c) { return static_cast<unsigned char>(c) >= 0x80 || c == '"' || c == '\\'; }, '_');
    return plain;
}

}  // namespace

HttpAnswer report_answer(const DeskBooks& books, const DossierText& text, const std::filesystem::path& folder,
                         std::string_view form_name) {
    const auto form = std::find_if(std::begin(kReportForms), std::end(kReportForms),
                                   [&](const ReportForm& one) { return one.name == form_name; });
    if (form == std::end(kReportForms)) {
        throw DeskError{400, "bad-request", "a report has the form html, markdown, json or csv"};
    }
    const Result<Dossier> dossier = read_dossier_text(books, text, folder);
    if (!dossier) throw DeskError{400, "has-faults", "the dossier has faults", "mend them first", dossier.issues()};
    Judge judge(books.rules, books.evidence, {{books.markets, books.on}, DecisionRule::both_guarded, tools::today()});
    const FullReport report = FullReport::gather({books.rules, books.evidence, dossier.value()}, judge);
    HttpAnswer answer{200, std::string(form->type), {}, {{"Content-Security-Policy", kReportPolicy}}};
    form->write({&report, 1}, answer.body);
    if (form->name != "html") {
        answer.headers.emplace_back("Content-Disposition", "attachment; filename=\"" + plain_file_name(text.name) +
                                                               std::string(form->ending) + '"');
    }
    return answer;
}

}  // namespace grainside::desk
