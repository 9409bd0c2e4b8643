// write_market_records and write_market_rows: in which markets a listing stands, for programs.
#include <fmt/format.h>

#include <string>
#include <vector>

#include "report/csv_text.h"
#include "report/json_writer.h"
#include "report/market_facts.h"

namespace grainside {
inline namespace v0 {

using report::JsonWriter;

namespace {

std::string_view name_of_rules(MarketRules rules) {
    switch (rules) {
        case MarketRules::own:
            return "own";
        case MarketRules::larger:
            return "larger";
        case MarketRules::general:
            return "general";
    }
    return {};
}

void append_grade(JsonWriter& json, std::string_view key, const std::optional<Grade>& grade) {
    json.key(key);
    if (grade) {
        json.value(name_of(*grade));
    } else {
        json.value_null();
    }
}

void append_place(JsonWriter& json, const Listing& listing, std::uint32_t field, std::uint32_t start,
                  std::uint32_t end) {
    json.member("field", listing.fields[field].name);
    json.member("start", std::uint64_t{start});
    json.member("end", std::uint64_t{end});
    json.member("words", report::words_of(listing, field, start, end));
}

void append_finding(JsonWriter& json, const MarketContext& context, const MarketFinding& finding) {
    const RuleInfo& rule = context.book.rules()[finding.rule];
    json.begin_object();
    append_place(json, context.listing, finding.field, finding.start, finding.end);
    json.member("grade", name_of(finding.grade));
    json.member("rule", rule.id);
    json.member("because", rule.because);
    json.optional_member("say_instead", finding.say_instead);
    json.optional_member("remedy", rule.remedy);
    if (rule.leave_out) {
        json.key("leave_out");
        json.value_bool(true);
    }
    json.key("sources");
    json.begin_array();
    for (const std::uint32_t index : rule.sources) {
        const SourceInfo& source = context.book.sources()[index];
        json.begin_object();
        json.member("source", source.id);
        json.member("cite", source.cite);
        if (source.from_memory) {
            json.key("from_memory");
            json.value_bool(true);
        }
        json.end_object();
    }
    json.end_array();
    json.end_object();
}

void append_change(JsonWriter& json, const MarketContext& context, const MarketChange& change) {
    json.begin_object();
    json.member("day", change.day);
    append_place(json, context.listing, change.field, change.start, change.end);
    append_grade(json, "before", change.before);
    append_grade(json, "after", change.after);
    json.member("rule", context.book.rules()[change.rule].id);
    json.key("stands");
    json.value_bool(change.stands);
    json.end_object();
}

void append_record(const MarketContext& context, const MarketAnswer& answer, std::string& out) {
    JsonWriter json(out);
    json.begin_object();
    json.member("listing", context.listing.id);
    json.member("market", answer.market);
    json.member("name", context.book.market_name(answer.market));
    json.optional_member("on", context.asked.on);
    json.member("rules", name_of_rules(answer.rules));
    json.key("stands");
    json.value_bool(answer.stands);
    append_grade(json, "worst", answer.worst);
    json.key("findings");
    json.begin_array();
    for (const MarketFinding& finding : answer.findings) append_finding(json, context, finding);
    json.end_array();
    json.key("coming");
    json.begin_array();
    for (const MarketChange& change : answer.changes) append_change(json, context, change);
    json.end_array();
    if (answer.more_days) {
        json.key("more_days");
        json.value_bool(true);
    }
    json.end_object();
    out += '\n';
}

// What keeps the copy from standing: "'faux leather' (misleading): Name the material ...".
std::string changes_to_make(const MarketContext& context, const MarketAnswer& answer) {
    std::string text;
    for (const MarketFinding& finding : answer.findings) {
        if (finding.grade > context.asked.fail_at) continue;
        const report::MarketAdvice advice = report::advice_of(context.book, finding);
        text += fmt::format("{}'{}' ({})", text.empty() ? "" : " | ",
                            report::words_of(context.listing, finding.field, finding.start, finding.end),
                            name_of(finding.grade));
        if (!advice.text.empty()) text += ": " + advice.text;
    }
    return text;
}

std::string coming_text(const MarketContext& context, const MarketAnswer& answer) {
    std::string text;
    for (const report::SharedChange& change :
         report::shared_changes({context.book, context.listing, context.asked, std::span(&answer, 1)})) {
        text += (text.empty() ? "from " : " | from ") + change.day + ": " + change.text;
    }
    return text;
}

}  // namespace

void write_market_records(const MarketContext& context, std::string& out) {
    for (const MarketAnswer& answer : context.answers) append_record(context, answer, out);
}

void write_market_columns(std::string& out) {
    report::append_csv_record(
        out, {"listing", "market", "name", "on", "rules", "stands", "worst", "findings", "to change", "coming"});
}

void write_market_rows(const MarketContext& context, std::string& out) {
    for (const MarketAnswer& answer : context.answers) {
        report::append_csv_record(
            out,
            {std::string(context.listing.id), answer.market, std::string(context.book.market_name(answer.market)),
             context.asked.on, std::string(name_of_rules(answer.rules)), answer.stands ? "yes" : "no",
             answer.worst ? std::string(name_of(*answer.worst)) : std::string(), std::to_string(answer.findings.size()),
             changes_to_make(context, answer), coming_text(context, answer)});
    }
}

}  // namespace v0
}  // namespace grainside
