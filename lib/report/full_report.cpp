#include "grainside/full_report.h"

#include <utility>
#include <vector>

#include "report/gather_content.h"
#include "report/html/html_page.h"
#include "report/json_report.h"
#include "report/markdown_report.h"
#include "report/table_report.h"

namespace grainside {
inline namespace v0 {

namespace {

std::vector<const report::ReportContent*> contents_of(std::span<const FullReport> reports) {
    std::vector<const report::ReportContent*> contents;
    for (const FullReport& one : reports) contents.push_back(&one.content());
    return contents;
}

}  // namespace

FullReport::FullReport(std::unique_ptr<const report::ReportContent> content) : content_(std::move(content)) {}
FullReport::FullReport(FullReport&&) noexcept = default;
FullReport& FullReport::operator=(FullReport&&) noexcept = default;
FullReport::~FullReport() = default;

FullReport FullReport::gather(const DossierContext& context, Judge& judge) {
    return FullReport(std::make_unique<const report::ReportContent>(report::gather_content(context, judge)));
}

std::string_view FullReport::id() const noexcept {
    return content_->id;
}
Grade FullReport::worst() const noexcept {
    return content_->worst;
}

const std::vector<std::uint32_t>& FullReport::proofs_met() const noexcept {
    return content_->proofs_met;
}

const std::vector<std::string>& FullReport::named_files() const noexcept {
    return content_->files;
}

void write_html(std::span<const FullReport> reports, std::string& out) {
    report::append_html_page(out, contents_of(reports));
}
void write_markdown(std::span<const FullReport> reports, std::string& out) {
    report::append_markdown_report(out, contents_of(reports));
}
void write_json(std::span<const FullReport> reports, std::string& out) {
    report::append_json_report(out, contents_of(reports));
}
void write_csv(std::span<const FullReport> reports, std::string& out) {
    report::append_table_report(out, contents_of(reports));
}

}  // namespace v0
}  // namespace grainside
