#include "report/html/html_page.h"

#include <fmt/format.h>

#include <string_view>

#include "report/content_text.h"
#include "report/fixed_texts.h"
#include "report/html/page_frame.h"
#include "report/html/page_parts.h"
#include "report/view_text.h"

namespace grainside::report {
namespace {

struct Section {
    std::string_view id, title;
};
constexpr Section kSections[] = {{"listing", "Listing"},   {"claims", "Claims"},      {"evidence", "Evidence"},
                                 {"next", "Next tests"},   {"price", "Price"},        {"wording", "Wording"},
                                 {"cautions", "Cautions"}, {"record", "Reproduction"}};

class Page {
public:
    Page(std::string& out, std::span<const ReportContent* const> dossiers) : html_(out), dossiers_(dossiers) {}

    void write() {
        begin_page(html_, title(), "To the report");
        if (dossiers_.size() == 1) {
            write_one(*dossiers_.front());
        } else {
            write_set();
        }
        write_footer();
        end_page(html_);
    }

private:
    bool is_set() const { return dossiers_.size() != 1; }

    std::string title() const {
        if (is_set()) return counted(dossiers_.size(), "dossier", "dossiers") + ": report";
        const ReportContent& content = *dossiers_.front();
        return (content.what.empty() ? content.id : content.what) + ": dossier report";
    }

    void write_contents(const PageContext& page) {
        html_.begin("nav", {{"class", "contents"},
                            {"aria-label", is_set() ? "Sections of " + page.content.id : std::string("Sections")}});
        html_.begin("ul");
        for (const Section& section : kSections) {
            if (section.id == "claims" && page.content.verdicts.empty()) continue;
            html_.begin("li");
            html_.element("a", {{"href", '#' + page.id(section.id)}}, section.title);
            html_.end();
        }
        html_.end();
        html_.end();
    }

    void write_dossier(const PageContext& page) {
        const ReportContent& content = page.content;
        if (!is_set()) html_.element("p", {{"class", "kicker"}}, "Dossier report");
        page.heading(0, content.what.empty() ? content.id : content.what);
        html_.element("p", {{"class", "soft"}}, sample_text(content));
        write_answers(page);
        write_contents(page);
        write_listing(page);
        write_verdicts(page);
        write_evidence(page);
        write_next_tests(page);
        write_price(page);
        write_wordings(page);
        write_cautions(page);
        write_records(page);
    }

    void write_one(const ReportContent& content) {
        html_.begin("main", {{"id", "content"}});
        write_dossier({html_, content, "", 1});
        html_.end();
    }

    void write_set() {
        html_.begin("main", {{"id", "content"}});
        html_.element("p", {{"class", "kicker"}}, "Dossier reports");
        html_.element("h1", counted(dossiers_.size(), "sample", "samples"));
        write_table_of_dossiers();
        for (std::size_t i = 0; i < dossiers_.size(); ++i) {
            html_.begin("article", {{"id", dossier_id(i)}, {"class", "dossier"}});
            write_dossier({html_, *dossiers_[i], dossier_id(i) + '-', 2});
            html_.end();
        }
        html_.end();
    }

    static std::string dossier_id(std::size_t index) { return "dossier-" + std::to_string(index + 1); }

    void write_table_of_dossiers() {
        html_.begin("table", {{"class", "stack"}});
        html_.constant(
            "<thead><tr><th scope=\"col\">Sample</th><th scope=\"col\">Seller</th><th scope=\"col\">Worst "
            "grade</th><th scope=\"col\">Is it what the seller says?</th><th scope=\"col\">Is it worth the "
            "price?</th></tr></thead>\n");
        html_.begin("tbody");
        for (std::size_t i = 0; i < dossiers_.size(); ++i) {
            const ReportContent& content = *dossiers_[i];
            html_.begin("tr");
            html_.begin("th", {{"scope", "row"}});
            html_.element("a", {{"href", '#' + dossier_id(i)}}, content.what.empty() ? content.id : content.what);
            html_.end();
            html_.element("td", content.seller);
            html_.begin("td");
            if (!content.verdicts.empty()) write_grade(html_, content.worst);
            html_.end();
            html_.element("td", words_answer(content).reply);
            html_.element("td", price_answer(content).reply);
            html_.end();
        }
        html_.end();
        html_.end();
    }

    void write_footer() {
        html_.begin("footer");
        html_.element("h2", "How to read this");
        write_grade_meanings(html_);
        html_.element("h3", "What the method cannot do");
        html_.begin("ul", {{"class", "plain"}});
        for (const std::string_view limit : limits_of_method()) html_.element("li", limit);
        html_.end();
        html_.element("p", kNoAdvice);
        html_.end();
    }

    HtmlWriter html_;
    std::span<const ReportContent* const> dossiers_;
};

}  // namespace

void append_html_page(std::string& out, std::span<const ReportContent* const> dossiers) {
    Page(out, dossiers).write();
}

}  // namespace grainside::report
