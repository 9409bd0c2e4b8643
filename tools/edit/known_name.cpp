#include "edit/known_name.h"

#include <algorithm>
#include <utility>

#include "evidence/entry_reader.h"
#include "evidence/evidence_data.h"
#include "report/rule_facts.h"

namespace grainside::tools::edit {
namespace {

bool is_name_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_';
}

const SourceInfo* find_source(const RuleBook& book, std::string_view id) {
    const auto sources = book.sources();
    const auto found =
        std::find_if(sources.begin(), sources.end(), [id](const SourceInfo& source) { return source.id == id; });
    return found == sources.end() ? nullptr : &*found;
}

Told told_of_rule(const RuleBook& book, const RuleInfo& rule) {
    Told told{rule.id + ": " + std::string(name_of(rule.grade)), {}};
    told.add("title", rule.title);
    told.add("because", rule.because);
    told.add("say instead", report::readable_template(rule.say_instead));
    told.add("what to do", rule.remedy);
    told.add("markets", report::markets_text(rule));
    told.add("days", report::days_text(rule));
    for (const std::string& cite : report::cites_of(book, rule)) told.add("source", cite);
    return told;
}

Told told_of_concept(const RuleBook& book, ConceptId id) {
    Told told{std::string(book.concept_name(id)), {}};
    const vocabulary::ConceptTree::Entry& entry = book.data().vocabulary.concepts[id];
    told.add("written", std::string(book.concept_wording(id)));
    told.add("kind", std::string(name_of(entry.kind)));
    std::string parents;
    for (const ConceptId parent : entry.parents) {
        if (!parents.empty()) parents += ", ";
        parents += book.concept_name(parent);
    }
    told.add("is", parents);
    return told;
}

Told told_of_method(const RuleBook& book, const evidence::Method& method) {
    Told told{method.title, {}};
    told.add("how", method.how);
    std::string outcomes;
    for (const evidence::Outcome& outcome : method.outcomes) {
        if (!outcomes.empty()) outcomes += ", ";
        outcomes += outcome.id;
    }
    told.add("outcomes", outcomes);
    for (const evidence::QuantityRead& quantity : method.reads) told.add("reads", quantity.name + ", " + quantity.unit);
    told.add("harm", std::string(name_of(method.harm)));
    for (const std::string& caution : method.cautions) told.add("caution", caution);
    for (const std::uint32_t source : method.sources) told.add("source", report::cite_of(book.sources()[source]));
    return told;
}

template <typename Items>
auto find_id(const Items& items, std::string_view id) -> decltype(items.data()) {
    const std::size_t at = evidence::index_of(items, id);
    return at == evidence::kNone ? nullptr : &items[at];
}

}  // namespace

std::optional<Told> told_of_name(const LoadedBook& book, std::string_view name) {
    if (name.empty()) return std::nullopt;
    const RuleBook& rules = book.rules;
    if (const RuleInfo* rule = rules.find_rule(name)) return told_of_rule(rules, *rule);
    if (const SourceInfo* source = find_source(rules, name)) {
        Told told{report::cite_of(*source), {}};
        told.add("says", source->says);
        told.add("known", std::string(report::standing_of(*source)));
        return told;
    }
    if (book.evidence) {
        const evidence::EvidenceData& data = book.evidence->data();
        if (const auto* method = find_id(data.methods, name)) return told_of_method(rules, *method);
        if (const auto* limit = find_id(data.limits, name)) {
            Told told{limit->title, {}};
            told.add("because", limit->because);
            return told;
        }
    }
    if (const ConceptId id = rules.find_concept(name); id != 0) return told_of_concept(rules, id);
    return std::nullopt;
}

std::optional<Told> told_of_outcome(const LoadedBook& book, std::string_view method, std::string_view outcome) {
    if (!book.evidence || outcome.empty()) return std::nullopt;
    const auto* found = find_id(book.evidence->data().methods, method);
    const auto* seen = found == nullptr ? nullptr : find_id(found->outcomes, outcome);
    if (seen == nullptr) return std::nullopt;
    Told told{found->title + ": " + seen->id, {}};
    told.add("means", seen->means);
    return told;
}

std::string detail_of_name(const LoadedBook& book, std::string_view name) {
    const RuleBook& rules = book.rules;
    if (const RuleInfo* rule = rules.find_rule(name)) return rule->title;
    if (const SourceInfo* source = find_source(rules, name)) return source->cite;
    if (book.evidence) {
        const evidence::EvidenceData& data = book.evidence->data();
        if (const auto* method = find_id(data.methods, name)) return method->title;
        if (const auto* limit = find_id(data.limits, name)) return limit->title;
    }
    if (const ConceptId id = rules.find_concept(name); id != 0) return std::string(rules.concept_wording(id));
    return std::string(rules.market_name(name));
}

std::string_view method_before(std::string_view yaml, std::size_t offset) {
    constexpr std::size_t kMostBefore = 2000;
    constexpr std::string_view kKey = "method:";
    const std::size_t from = offset > kMostBefore ? offset - kMostBefore : 0;
    const std::string_view before = yaml.substr(from, offset - from);
    const std::size_t at = before.rfind(kKey);
    if (at == std::string_view::npos) return {};
    std::size_t begin = from + at + kKey.size();
    while (begin < yaml.size() && (yaml[begin] == ' ' || yaml[begin] == '"' || yaml[begin] == '\'')) ++begin;
    const TextSpan span = name_at(yaml, begin);
    return yaml.substr(span.begin, span.end - span.begin);
}

TextSpan name_at(std::string_view text, std::size_t offset) {
    TextSpan span{offset, offset};
    while (span.begin > 0 && is_name_letter(text[span.begin - 1])) --span.begin;
    while (span.end < text.size() && is_name_letter(text[span.end])) ++span.end;
    return span;
}

}  // namespace grainside::tools::edit
