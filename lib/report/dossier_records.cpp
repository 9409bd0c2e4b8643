// Verdicts, beliefs and plans of a dossier as JSON Lines.
#include <algorithm>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "evidence/dossier_data.h"
#include "evidence/evidence_data.h"
#include "grainside/dossier_report.h"
#include "report/concession_text.h"
#include "report/demand_text.h"
#include "report/json_writer.h"
#include "report/proof_record.h"
#include "report/rounded.h"
#include "verdict/rule_of_verdict.h"

namespace grainside {
inline namespace v0 {

using report::JsonWriter;
using report::rounded;

namespace {

void write_texts(JsonWriter& json, std::string_view key, const std::vector<std::string>& texts) {
    json.key(key);
    json.begin_array();
    for (const std::string& text : texts) json.value(text);
    json.end_array();
}

void write_truth(JsonWriter& json, std::string_view key, bool truth) {
    json.key(key);
    json.value_bool(truth);
}

const evidence::Reading* reading_of(const DossierContext& context, Part part, std::uint32_t index) {
    for (const evidence::PartRecord& record : context.dossier.data().parts) {
        if (record.part == part && index < record.readings.size()) return &record.readings[index];
    }
    return nullptr;
}

// {"part","reading","method","outcome"?,"date"?,"decibans"?}; readings are numbered from 1, as people count.
void write_reading(JsonWriter& json, const DossierContext& context, Part part, std::uint32_t index,
                   const double* decibans) {
    const evidence::Reading* reading = reading_of(context, part, index);
    if (reading == nullptr) return;
    const evidence::Method& method = context.evidence.data().methods[reading->method];
    json.begin_object();
    json.member("part", name_of(part));
    json.member("reading", std::uint64_t{index} + 1);
    json.member("method", std::string_view(method.id));
    if (reading->outcome != evidence::kNone) {
        json.member("outcome", std::string_view(method.outcomes[reading->outcome].id));
    }
    json.optional_member("date", reading->date);
    if (decibans != nullptr) json.member("decibans", rounded(*decibans));
    json.end_object();
}

// [{"method","title","cautions","sources"}]
void write_methods(JsonWriter& json, const DossierContext& context, const std::vector<NamedMethod>& methods) {
    json.key("methods");
    json.begin_array();
    for (const NamedMethod& method : methods) {
        json.begin_object();
        json.member("method", std::string_view(method.method));
        json.member("title", std::string_view(method.title));
        write_texts(json, "cautions", method.cautions);
        json.key("sources");
        json.begin_array();
        for (const std::uint32_t index : method.sources) json.value(std::string_view(context.book.sources()[index].id));
        json.end_array();
        json.end_object();
    }
    json.end_array();
}

class VerdictRecord {
public:
    VerdictRecord(const DossierContext& context, const Judgement& judgement, std::size_t at, const Conceded* conceded,
                  std::string& out)
        : context_(context),
          at_(at),
          conceded_(conceded),
          verdict_(judgement.verdicts[at]),
          check_(*judgement.check),
          claim_(check_.mentions[verdict_.claim]),
          out_(out),
          json_(out) {}

    void write() {
        const Listing& listing = *context_.dossier.listing();
        const Field& field = listing.fields[claim_.field];
        json_.begin_object();
        json_.member("dossier", context_.dossier.id());
        json_.member("listing", listing.id);
        json_.member("field", field.name);
        json_.member("start", std::uint64_t{claim_.start});
        json_.member("end", std::uint64_t{claim_.end});
        json_.member("words", field.text.substr(claim_.start, claim_.end - claim_.start));
        json_.member("part", name_of(claim_.part));
        json_.member("kind", name_of(claim_.kind));
        json_.member("says", context_.book.concept_name(claim_.says));
        write_truth(json_, "negated", claim_.negated);
        json_.member("grade", name_of(verdict_.grade));
        json_.member("basis", name_of(verdict_.basis));
        write_rule();
        json_.member("because", std::string_view(verdict_.because));
        json_.optional_member("say_instead", verdict_.say_instead);
        json_.optional_member("remedy", verdict_.remedy);
        write_sources();
        json_.member("probability", rounded(verdict_.holds));
        json_.member("probability_false", rounded(verdict_.fails));
        json_.member("probability_open", rounded(verdict_.open));
        if (verdict_.contradictory) write_truth(json_, "contradictory", true);
        json_.key("readings");
        json_.begin_array();
        for (const WeighedEvidence& one : verdict_.readings) {
            write_reading(json_, context_, one.part, one.reading, &one.decibans);
        }
        json_.end_array();
        json_.key("limits");
        json_.begin_array();
        for (const LimitResult& limit : verdict_.limits) write_limit(limit);
        json_.end_array();
        write_texts(json_, "would_change", verdict_.would_change);
        json_.optional_member("next_test", verdict_.next_test);
        if (verdict_.grade == Grade::unsupported) report::append_demands_member(out_, context_.book, claim_.says);
        report::append_filed_member(out_, context_.book, check_, verdict_.claim, verdict_.grade);
        report::append_concession_member(out_, conceded_, at_);
        json_.end_object();
    }

private:
    // The rule on words, or the limit that decided; none where the readings alone did.
    void write_rule() { json_.optional_member("rule", verdict::deciding_rule(context_.book, check_, verdict_)); }

    // Sources, the markets of the rule or limits that spoke, and whether a source's text could not be seen.
    void write_sources() {
        std::vector<std::string> sources;
        bool from_memory = false;
        const auto add = [&](std::uint32_t index) {
            from_memory = from_memory || context_.book.sources()[index].from_memory;
            const std::string& id = context_.book.sources()[index].id;
            for (const std::string& known : sources) {
                if (known == id) return;
            }
            sources.push_back(id);
        };
        if (verdict_.finding != kNoClaim) {
            for (const auto index : context_.book.rules()[check_.findings[verdict_.finding].rule].sources) add(index);
        }
        for (const LimitResult& limit : verdict_.limits) {
            if (limit.says == LimitVerdict::unread) continue;
            for (const auto index : limit.sources) add(index);
        }
        for (const WeighedEvidence& one : verdict_.readings) {
            const evidence::Reading* reading = reading_of(context_, one.part, one.reading);
            if (reading == nullptr) continue;
            for (const auto index : context_.evidence.data().methods[reading->method].sources) add(index);
        }
        write_texts(json_, "sources", sources);
        write_texts(json_, "markets", markets());
        if (from_memory) write_truth(json_, "from_memory", true);
    }

    // Where the rule on words, or the limits that decided, hold; empty: everywhere.
    std::vector<std::string> markets() const {
        if (verdict_.basis != Basis::evidence && verdict_.finding != kNoClaim) {
            return context_.book.rules()[check_.findings[verdict_.finding].rule].markets;
        }
        std::vector<std::string> markets;
        for (const LimitResult& limit : verdict_.limits) {
            if (!verdict::decides(limit, verdict_)) continue;
            if (limit.markets.empty()) return {};
            for (const std::string& market : limit.markets) {
                if (std::find(markets.begin(), markets.end(), market) == markets.end()) markets.push_back(market);
            }
        }
        return markets;
    }

    void write_limit(const LimitResult& limit) {
        json_.begin_object();
        json_.member("limit", std::string_view(limit.limit));
        json_.member("part", name_of(limit.part));
        json_.optional_member("quantity", limit.quantity);
        json_.optional_member("value", limit.value);
        json_.optional_member("bound", limit.bound);
        json_.member("says", name_of(limit.says));
        if (limit.says != LimitVerdict::unread) json_.member("against", rounded(limit.probability));
        if (limit.repeats) json_.member("repeats", std::uint64_t{*limit.repeats});
        write_texts(json_, "markets", limit.markets);
        json_.key("readings");
        json_.begin_array();
        for (const std::uint32_t index : limit.readings) write_reading(json_, context_, limit.part, index, nullptr);
        json_.end_array();
        json_.end_object();
    }

    DossierContext context_;
    std::size_t at_;
    const Conceded* conceded_;
    const Verdict& verdict_;
    const CheckResult& check_;
    const Claim& claim_;
    std::string& out_;
    JsonWriter json_;
};

}  // namespace

void write_judgement_records(const DossierContext& context, const Judgement& judgement, const JudgeOptions& judged,
                             std::string& out, const Conceded* conceded) {
    for (std::size_t at = 0; at < judgement.verdicts.size(); ++at) {
        VerdictRecord(context, judgement, at, conceded, out).write();
        out += '\n';
    }
    const std::size_t counted = report::counting(conceded, judgement.verdicts.size());
    JsonWriter json(out);
    json.begin_object();
    json.member("dossier", context.dossier.id());
    json.member("claims", std::uint64_t{judgement.check == nullptr ? 0 : judgement.check->claim_count});
    json.member("verdicts", std::uint64_t{counted});
    if (conceded != nullptr) json.member("conceded", std::uint64_t{conceded->count});
    json.key("unasked");
    json.begin_array();
    for (const ReadingPlace& place : judgement.unasked) {
        write_reading(json, context, place.part, place.reading, nullptr);
    }
    json.end_array();
    json.key("worst");
    if (counted == 0) {
        json.value_null();
    } else {
        json.value(name_of(conceded != nullptr ? conceded->worst : judgement.worst));
    }
    json.member("decision_rule", name_of(judged.decision_rule));
    write_methods(json, context, judgement.methods);
    json.member("rule_book", context.book.digest());
    json.end_object();
    out += '\n';
}

void write_identity_records(const DossierContext& context, const Judgement& judgement, std::string& out) {
    for (const PartJudgement& part : judgement.parts) {
        for (const FrameBelief& belief : part.frames) {
            JsonWriter json(out);
            json.begin_object();
            json.member("dossier", context.dossier.id());
            json.member("part", name_of(part.part));
            json.member("frame", std::string_view(belief.frame));
            json.member("asks", std::string_view(belief.title));
            json.key("candidates");
            json.begin_array();
            for (const CandidateBelief& candidate : belief.candidates) {
                json.begin_object();
                json.member("candidate", std::string_view(candidate.id));
                json.member("prior", rounded(candidate.prior));
                json.member("probability", rounded(candidate.posterior));
                json.end_object();
            }
            json.end_array();
            json.member("conflict", rounded(belief.conflict));
            write_truth(json, "contradictory", belief.contradictory);
            if (belief.own_priors) write_truth(json, "own_priors", true);
            json.key("odd_ones");
            json.begin_array();
            for (const std::uint32_t odd : belief.odd_ones) write_reading(json, context, part.part, odd, nullptr);
            json.end_array();
            json.key("readings");
            json.begin_array();
            for (std::size_t i = 0; i < belief.readings.size(); ++i) {
                write_reading(json, context, part.part, belief.readings[i], &belief.decibans[i]);
            }
            json.end_array();
            json.end_object();
            out += '\n';
        }
    }
    JsonWriter json(out);
    json.begin_object();
    json.member("dossier", context.dossier.id());
    json.member("parts", std::uint64_t{judgement.parts.size()});
    write_methods(json, context, judgement.methods);
    json.member("rule_book", context.book.digest());
    json.end_object();
    out += '\n';
}

void write_plan_records(const DossierContext& context, const TestPlan& plan, std::string& out) {
    for (std::size_t i = 0; i < plan.tests.size(); ++i) {
        const PlannedTest& test = plan.tests[i];
        JsonWriter json(out);
        json.begin_object();
        json.member("dossier", context.dossier.id());
        json.member("step", std::uint64_t{i} + 1);
        json.member("method", std::string_view(test.method));
        json.member("title", std::string_view(test.title));
        json.member("part", name_of(test.part));
        json.member("harm", std::string_view(test.harm));
        json.member("who", std::string_view(test.who));
        json.member("bits", rounded(test.bits));
        json.member("minutes", test.minutes);
        json.member("cost", test.cost);
        write_texts(json, "about", test.about);
        write_texts(json, "cautions", test.cautions);
        if (i == plan.next) write_truth(json, "next", true);
        json.end_object();
        out += '\n';
    }
    JsonWriter json(out);
    json.begin_object();
    json.member("dossier", context.dossier.id());
    json.member("tests", std::uint64_t{plan.tests.size()});
    json.member("questions", std::uint64_t{plan.questions});
    json.member("share_decided_now", rounded(plan.decided_now));
    json.member("share_decided_after", rounded(plan.decided_after));
    json.member("minutes", plan.minutes);
    json.member("cost", plan.cost);
    json.member("rule_book", context.book.digest());
    json.end_object();
    out += '\n';
}

}  // namespace v0
}  // namespace grainside
