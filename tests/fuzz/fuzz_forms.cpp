// Any texts as a listing: every form in which its check is written is well-formed and inert (inert_forms.h): records,
// views, SARIF, the markets as view, records and table, the survey as view, page, JSON and table.
//
// Input: the description, and behind marks (input_parts.h) name, id, seller, region, attribute, value, file.
#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <utility>

#include "grainside/checker.h"
#include "grainside/market_check.h"
#include "grainside/market_report.h"
#include "grainside/report.h"
#include "grainside/sarif.h"
#include "grainside/survey.h"
#include "grainside/survey_report.h"
#include "inert_forms.h"
#include "input_parts.h"

namespace {

using namespace grainside;
using fuzz::require;

// Every form is written of every input.
constexpr std::size_t kMaxInputBytes = 2048;
constexpr const char* kDay = "2026-11-26";

const RuleBook& book() {
    static const RuleBook built_in = std::move(RuleBook::built_in()).value();
    return built_in;
}

// The texts of an input; views of `listing` point into it.
struct Texts {
    std::map<std::string, std::string_view> parts;
    std::string attribute;
    Listing listing;
    std::string file;
};

void take_texts(std::string_view input, Texts& texts) {
    texts.parts = fuzz::parts_of(input, "description");
    texts.attribute = "additionalProperty." + std::string(texts.parts["attribute"]);
    texts.file = texts.parts["file"];
    texts.listing.id = texts.parts["id"];
    texts.listing.seller = texts.parts["seller"];
    texts.listing.region = texts.parts["region"];
    texts.listing.fields = {{"name", texts.parts["name"]},
                            {"description", texts.parts["description"]},
                            {texts.attribute, texts.parts["value"]}};
}

void check_records(const Listing& listing, const CheckResult& result, const Checker& checker) {
    static const RecordWriter writer(book());
    std::string out;
    writer.write_claims(listing, result, out);
    writer.write_findings(listing, result, checker, out);
    fuzz::check_json_lines(out);
    for (const std::size_t width : {40U, 80U}) {
        out.clear();
        write_view(book(), listing, result, checker, {.width = width}, out);
        write_claims_view(book(), listing, result, {.width = width}, out);
        fuzz::check_characters(out);
    }
    out.clear();
    write_view(book(), listing, result, checker, {.colour = true}, out);
    fuzz::check_coloured(out);
}

// The head, which lists every rule, is the same for every input: it is written and looked at once. The results of an
// input are a part, as of a thread's writer.
void check_sarif(const Texts& texts, const CheckResult& result, const Checker& checker) {
    const SarifRun run{.command = "check", .markets = {}, .day = kDay};
    SarifWriter writer(book(), run);
    static const std::string head = [&] {
        std::string whole;
        SarifWriter first(book(), run);
        first.begin(whole);
        std::string text = whole;
        first.end({}, true, text);
        fuzz::check_json(text);
        return whole;
    }();
    require(head.ends_with("\"results\":["));
    std::string out = R"({"runs":[{"results":[)";
    writer.begin_part();
    writer.write_findings(texts.file, texts.listing, result, checker, out);
    Issue issue;
    issue.code = "no-text";
    issue.file = texts.file;
    issue.message = texts.listing.fields[1].text;
    issue.hint = texts.listing.seller;
    writer.end({&issue, 1}, false, out);
    fuzz::check_json(out);
}

void check_markets(const Listing& listing) {
    static MarketCheck markets(book(), {.markets = {"us", "de"}, .on = kDay});
    const auto answers = markets.check(listing);
    const MarketContext context{book(), listing, markets.options(), answers};
    std::string out;
    write_market_view(context, {}, out);
    fuzz::check_characters(out);
    out.clear();
    write_market_records(context, out);
    fuzz::check_json_lines(out);
    out.clear();
    write_market_columns(out);
    write_market_rows(context, out);
    fuzz::check_table(out);
}

void check_survey(const Listing& listing, const CheckResult& result, const Checker& checker) {
    SurveyTally tally(book());
    tally.add(listing, result, checker);
    const Survey survey = tally.survey();
    const SurveyContext context{book(), survey, kDay, {}};
    std::string out;
    write_survey_view(context, {}, out);
    fuzz::check_characters(out);
    out.clear();
    write_survey_page(context, out);
    fuzz::check_page(out);
    out.clear();
    write_survey_json(context, out);
    fuzz::check_json(out);
    out.clear();
    write_survey_csv(context, out);
    fuzz::check_table(out);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size > kMaxInputBytes) return 0;
    Texts texts;
    take_texts({reinterpret_cast<const char*>(data), size}, texts);
    check_markets(texts.listing);
    static Checker checker(book(), {.on = kDay});
    const CheckResult& result = checker.check(texts.listing);
    check_records(texts.listing, result, checker);
    check_sarif(texts, result, checker);
    check_survey(texts.listing, result, checker);
    return 0;
}
