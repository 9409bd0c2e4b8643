#include "report/sarif_rules.h"

#include <cstdint>

#include "evidence/evidence_data.h"
#include "report/sarif_text.h"
#include "verdict/rule_of_verdict.h"

namespace grainside::report {
namespace {

void write_text(JsonWriter& json, std::string_view key, std::string_view text) {
    json.key(key);
    json.begin_object();
    json.member("text", std::string_view(sarif_message_text(text)));
    json.end_object();
}

struct OfReadings {
    Grade grade;
    std::string_view title;
    std::string_view because;
};

// What a verdict is called that no rule on words and no limit decided.
constexpr OfReadings kOfReadings[] = {
    {Grade::contradicted, "The readings show the claim to be false",
     "What the tests on record showed leaves no room for the claim. The verdict names the readings."},
    {Grade::unsupported, "No reading bears on the claim",
     "No test on record speaks of what is claimed. `grainside plan` names tests that would."},
    {Grade::inconclusive, "The readings do not decide the claim",
     "Tests on record speak of what is claimed, but not clearly enough. The verdict says what would change it."},
};

}  // namespace

SarifRules::SarifRules(const RuleBook& book, const EvidenceBook* evidence) : book_(book) {
    for (const RuleInfo& rule : book.rules()) {
        rules_.push_back({rule.id, rule.title, rule.because, rule.say_instead, rule.grade, name_of(rule.basis),
                          &rule.markets, &rule.sources});
        reasons_.push_back(sarif_message_text(rule.because));
    }
    if (evidence != nullptr) {
        for (const evidence::Limit& limit : evidence->data().limits) {
            rules_.push_back({limit.id, limit.title, limit.because, limit.say_instead, Grade::contradicted,
                              name_of(Basis::evidence), &limit.markets, &limit.sources});
        }
        for (const OfReadings& one : kOfReadings) {
            own_ids_.push_back(std::string(verdict::kByReadings) += name_of(one.grade));
        }
        for (std::size_t i = 0; i < own_ids_.size(); ++i) {
            const OfReadings& one = kOfReadings[i];
            rules_.push_back(
                {own_ids_[i], one.title, one.because, {}, one.grade, name_of(Basis::evidence), nullptr, nullptr});
        }
    }
    index_.reserve(rules_.size());
    for (std::size_t i = 0; i < rules_.size(); ++i) index_.try_emplace(rules_[i].id, i);
}

void SarifRules::write(JsonWriter& json) const {
    json.begin_array();
    for (const Rule& rule : rules_) write_one(json, rule);
    json.end_array();
}

void SarifRules::write_one(JsonWriter& json, const Rule& rule) const {
    json.begin_object();
    json.member("id", rule.id);
    write_text(json, "shortDescription", rule.title);
    write_text(json, "fullDescription", rule.because);
    json.key("defaultConfiguration");
    json.begin_object();
    json.member("level", sarif_level(rule.grade));
    json.end_object();
    json.key("help");
    json.begin_object();
    json.member("text", std::string_view(help_of(rule)));
    json.end_object();
    json.key("properties");
    json.begin_object();
    json.member("grade", name_of(rule.grade));
    json.member("basis", rule.basis);
    json.key("markets");
    json.begin_array();
    if (rule.markets != nullptr) {
        for (const std::string& market : *rule.markets) json.value(std::string_view(market));
    }
    json.end_array();
    json.key("sources");
    json.begin_array();
    bool from_memory = false;
    if (rule.sources != nullptr) {
        for (const std::uint32_t index : *rule.sources) {
            json.value(std::string_view(book_.sources()[index].id));
            from_memory = from_memory || book_.sources()[index].from_memory;
        }
    }
    json.end_array();
    json.key("from_memory");
    json.value_bool(from_memory);
    json.end_object();
    json.end_object();
}

// Why, what to write instead, and each source with what it says; lines of their own.
std::string SarifRules::help_of(const Rule& rule) const {
    std::string text = sarif_message_text(rule.because);
    // Wording with a slot for what the listing says means nothing here.
    if (!rule.say_instead.empty() && rule.say_instead.find('{') == std::string_view::npos)
        text += "\n\nSay instead: " + sarif_message_text(rule.say_instead);
    if (rule.sources == nullptr) return text;
    text += "\n\nSources:";
    for (const std::uint32_t index : *rule.sources) {
        const SourceInfo& source = book_.sources()[index];
        text += "\n- " + sarif_message_text(source.cite) + (source.from_memory ? " (from memory)" : "") + ": " +
                sarif_message_text(source.says);
    }
    return text;
}

}  // namespace grainside::report
