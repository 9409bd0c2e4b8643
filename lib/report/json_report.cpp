#include "report/json_report.h"

#include <string_view>
#include <vector>

#include "report/content_text.h"
#include "report/cost_json.h"
#include "report/fixed_texts.h"
#include "report/json_writer.h"
#include "report/rounded.h"

namespace grainside::report {
namespace {

class JsonReport {
public:
    JsonReport(JsonWriter& json, const ReportContent& content) : json_(json), content_(content) {}

    void write() {
        json_.begin_object();
        json_.member("dossier", std::string_view(content_.id));
        write_sample();
        write_answer("what_the_seller_says", words_answer(content_));
        write_answer("worth_the_price", price_answer(content_));
        write_listing();
        list("verdicts", content_.verdicts, [&](const ReportVerdict& verdict) { write_verdict(verdict); });
        list("questions", content_.questions, [&](const ReportQuestion& question) { write_question(question); });
        list("readings", content_.readings, [&](const ReportReading& reading) { write_reading(reading); });
        list("unasked", content_.unasked, [&](const ReportReading& reading) { write_reading(reading); });
        list("pictures", content_.pictures, [&](const evidence::PictureFile& picture) {
            json_.begin_object();
            json_.member("path", std::string_view(picture.path));
            json_.optional_member("sha256", picture.sha256);
            json_.optional_member("missing", picture.missing);
            json_.end_object();
        });
        write_plan();
        write_cost();
        list("cautions", content_.cautions, [&](const Caution& caution) {
            json_.begin_object();
            json_.member("text", std::string_view(caution.text));
            json_.member("methods", std::string_view(caution.methods));
            json_.end_object();
        });
        list("methods", content_.methods, [&](const ReportMethod& method) {
            json_.begin_object();
            json_.member("title", std::string_view(method.title));
            write_sources(method.sources);
            json_.end_object();
        });
        write_record();
        json_.end_object();
    }

private:
    template <typename Items, typename Write>
    void list(std::string_view name, const Items& items, const Write& write) {
        json_.key(name);
        json_.begin_array();
        for (const auto& item : items) write(item);
        json_.end_array();
    }
    void texts(std::string_view name, const std::vector<std::string>& items) {
        list(name, items, [&](const std::string& text) { json_.value(std::string_view(text)); });
    }
    void truth(std::string_view name, bool holds) {
        json_.key(name);
        json_.value_bool(holds);
    }

    void write_sample() {
        json_.key("sample");
        json_.begin_object();
        json_.optional_member("what", content_.what);
        json_.optional_member("seller", content_.seller);
        json_.optional_member("bought", content_.bought);
        json_.optional_member("price", content_.price);
        json_.optional_member("condition", content_.condition);
        json_.member("months_in_use", content_.months_in_use);
        json_.end_object();
    }

    void write_answer(std::string_view name, const ShortAnswer& answer) {
        json_.key(name);
        json_.begin_object();
        json_.member("reply", std::string_view(answer.reply));
        json_.optional_member("more", answer.more);
        json_.end_object();
    }

    void write_listing() {
        json_.key("listing");
        if (!content_.has_listing) {
            json_.value_null();
            return;
        }
        json_.begin_object();
        json_.optional_member("captured", content_.captured);
        json_.optional_member("file", content_.listing_file);
        json_.optional_member("sha256", content_.listing_sha256);
        json_.optional_member("region", content_.region);
        json_.optional_member("language", content_.language);
        list("fields", content_.fields, [&](const ReportField& field) {
            json_.begin_object();
            json_.member("field", std::string_view(field.label));
            json_.member("text", std::string_view(field.text));
            list("marks", field.marks, [&](const VerdictMark& mark) {
                json_.begin_object();
                json_.member("start", std::uint64_t{mark.span.start});
                json_.member("end", std::uint64_t{mark.span.end});
                json_.member("verdict", std::uint64_t{mark.verdict});
                json_.end_object();
            });
            json_.end_object();
        });
        json_.end_object();
    }

    void write_sources(const std::vector<ReportSource>& sources) {
        list("sources", sources, [&](const ReportSource& source) {
            json_.begin_object();
            json_.member("cite", std::string_view(source.text));
            if (source.from_memory) truth("from_memory", true);
            json_.end_object();
        });
    }

    void write_reading(const ReportReading& reading) {
        json_.begin_object();
        json_.member("part", name_of(reading.part));
        json_.member("method", std::string_view(reading.method));
        json_.optional_member("date", reading.date);
        json_.member("result", std::string_view(reading.result));
        json_.optional_member("note", reading.note);
        if (reading.picture != ReportReading::kNoPicture) {
            json_.member("picture", std::string_view(content_.pictures[reading.picture].path));
        }
        if (!reading.weight.empty()) json_.member("decibans", rounded(reading.decibans));
        json_.end_object();
    }

    void write_verdict(const ReportVerdict& verdict) {
        json_.begin_object();
        json_.member("number", std::uint64_t{verdict.number});
        json_.member("part", name_of(verdict.part));
        json_.member("kind", name_of(verdict.kind));
        json_.member("grade", name_of(verdict.grade));
        json_.member("basis", name_of(verdict.basis));
        list("words", verdict.words, [&](const ReportVerdict::Words& words) {
            json_.begin_object();
            json_.member("text", std::string_view(words.text));
            json_.member("field", std::string_view(words.field));
            json_.end_object();
        });
        json_.member("says", std::string_view(verdict.says));
        json_.member("because", std::string_view(verdict.because));
        json_.optional_member("against", verdict.against);
        json_.optional_member("say_instead", verdict.say_instead);
        json_.optional_member("remedy", verdict.remedy);
        json_.member("probability", rounded(verdict.holds));
        json_.member("probability_false", rounded(verdict.fails));
        json_.member("probability_open", rounded(verdict.open));
        if (verdict.contradictory) truth("contradictory", true);
        list("readings", verdict.readings, [&](const ReportReading& reading) { write_reading(reading); });
        texts("limits", verdict.limits);
        texts("would_change", verdict.changes);
        if (!verdict.would_support.empty()) texts("would_support", verdict.would_support);
        json_.optional_member("on_file", verdict.on_file);
        write_sources(verdict.sources);
        json_.optional_member("rule", verdict.rule);
        json_.end_object();
    }

    void write_question(const ReportQuestion& question) {
        json_.begin_object();
        json_.member("part", name_of(question.part));
        json_.member("asks", std::string_view(question.asks));
        list("answers", question.answers, [&](const ReportAnswer& answer) {
            json_.begin_object();
            json_.member("answer", std::string_view(answer.name));
            json_.member("prior", rounded(answer.before));
            json_.member("probability", rounded(answer.after));
            json_.end_object();
        });
        truth("contradictory", question.contradictory);
        json_.end_object();
    }

    void write_plan() {
        list("next_tests", content_.plan.tests, [&](const PlannedTest& test) {
            json_.begin_object();
            json_.member("method", std::string_view(test.method));
            json_.member("title", std::string_view(test.title));
            json_.member("part", name_of(test.part));
            texts("about", test.about);
            json_.member("harm", std::string_view(test.harm));
            json_.member("who", std::string_view(test.who));
            json_.member("minutes", test.minutes);
            json_.member("cost", test.cost);
            json_.end_object();
        });
    }

    void write_cost() {
        const CostEstimate& cost = content_.cost.estimate;
        json_.key("cost");
        if (!cost.on_record) {
            json_.value_null();
            return;
        }
        CostJson costs(json_, [&](std::uint32_t one) { return std::string_view(content_.cost.source_ids.at(one)); });
        json_.begin_object();
        json_.member("currency", std::string_view(cost.currency));
        list("lines", cost.lines, [&](const CostLine& line) {
            json_.begin_object();
            costs.write_line(line, cost.currency);
            json_.end_object();
        });
        costs.write_sums(cost);
        write_sources(content_.cost.sources);
        json_.end_object();
    }

    void write_record() {
        json_.key("record");
        json_.begin_object();
        json_.member("dossier_sha256", std::string_view(content_.dossier_sha256));
        json_.member("markets", std::string_view(content_.markets));
        json_.optional_member("on", content_.day);
        json_.member("decision_rule", std::string_view(content_.decision_rule));
        json_.member("decided_at", content_.decided_at);
        json_.member("rule_book", std::string_view(content_.rule_book));
        json_.member("version", std::string_view(content_.version));
        json_.end_object();
    }

    JsonWriter& json_;
    const ReportContent& content_;
};

}  // namespace

void append_json_report(std::string& out, std::span<const ReportContent* const> dossiers) {
    JsonWriter json(out);
    json.begin_object();
    json.member("schema", std::uint64_t{1});
    json.key("reports");
    json.begin_array();
    for (const ReportContent* content : dossiers) JsonReport(json, *content).write();
    json.end_array();
    json.key("limits_of_method");
    json.begin_array();
    for (const std::string_view limit : limits_of_method()) json.value(limit);
    json.end_array();
    json.member("note", kNoAdvice);
    json.end_object();
    out += '\n';
}

}  // namespace grainside::report
