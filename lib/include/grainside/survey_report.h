// Writing a survey: a view for people, a page (HTML), one JSON object, one table (CSV, RFC 4180).
//
//     const std::string_view feed =
//         "{\"sku\":\"1\",\"name\":\"Genuine PU leather tote\",\"brand\":\"Harrow & Pine\"}\n"
//         "{\"sku\":\"2\",\"name\":\"Cotton tote\",\"brand\":\"HARROW & PINE\"}\n"
//         "{\"sku\":\"3\",\"name\":\"Cork belt\",\"brand\":\"Tidewell Slow Goods\"}\n";
//     auto reader = grainside::ListingReader::from_memory("feed.jsonl", feed, {});
//     grainside::Checker checker(book);
//     grainside::SurveyTally tally(book);
//     grainside::Listing listing;
//     std::vector<grainside::Issue> issues;
//     while (reader.next(listing, issues)) tally.add(listing, checker.check(listing), checker);
//     const grainside::Survey survey = tally.survey();
//     const grainside::SurveyContext context{.book = book, .survey = survey, .shown = {.markets = false}};
//     std::string page;
//     grainside::write_survey_page(context, page);
//     std::string table;
//     grainside::write_survey_csv(context, table);
//     std::cout << page.substr(0, page.find('\n')) << '\n' << table.substr(0, table.find('\r')) << '\n';
//     // prints: <!DOCTYPE html>
//     // prints: kind,group,measure,count,of,rate,low,high
//
// Output is appended to a string that the caller writes and clears; nothing here prints. Names and words come from
// strangers and come out inert in every form. Each form for people ends with what a rate is and is not, the rule book's
// digest, the day, and who decides. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_SURVEY_REPORT_H
#define GRAINSIDE_SURVEY_REPORT_H

#include <string>

#include "grainside/report.h"
#include "grainside/survey.h"

namespace grainside {
inline namespace v0 {

// Which groupings a form shows. The worst listings and the commonest wordings are ruled by SurveyOptions::top.
struct SurveyShown {
    bool grades = true;
    bool sellers = true;
    bool parts = true;
    bool categories = true;
    bool markets = true;
    bool rules = true;
};

// All that it refers to outlives it.
struct SurveyContext {
    const RuleBook& book;
    const Survey& survey;
    std::string on = {};  // CheckOptions::on; "" = whatever the day
    SurveyShown shown = {};
};

// Tables within ViewOptions::width; of more groups than fit on a few screens the first 25, and how many there are.
void write_survey_view(const SurveyContext& context, const ViewOptions& options, std::string& out);

// One self-contained page: no script, nothing fetched. Of groups the first 200, plotted are 40.
void write_survey_page(const SurveyContext& context, std::string& out);

// One object on one line (tools/schema/survey.schema.json), all groups in it.
void write_survey_json(const SurveyContext& context, std::string& out);

// kind,group,measure,count,of,rate,low,high: one row a number, all groups in it.
void write_survey_csv(const SurveyContext& context, std::string& out);

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_SURVEY_REPORT_H
