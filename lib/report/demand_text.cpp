#include "report/demand_text.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <string_view>

#include "report/json_writer.h"

namespace grainside::report {
namespace {

bool is_from_memory(const RuleBook& book, const Demand& demand) {
    return std::any_of(demand.sources.begin(), demand.sources.end(),
                       [&](std::uint32_t source) { return book.sources()[source].from_memory; });
}

}  // namespace

std::string demand_text(const RuleBook& book, const Demand& demand) {
    std::string_view memory = is_from_memory(book, demand) ? "from memory" : "";
    const std::string_view between = demand.of.empty() || memory.empty() ? "" : "; ";
    std::string text = demand.standard.empty() ? demand.number : fmt::format("{}, {}", demand.standard, demand.number);
    if (!demand.of.empty() || !memory.empty()) text += fmt::format(" ({}{}{})", demand.of, between, memory);
    return text;
}

std::vector<std::string> demand_texts(const RuleBook& book, ConceptId says, Grade grade) {
    std::vector<std::string> texts;
    if (grade != Grade::unsupported) return texts;
    for (const Demand& demand : book.demands_for(says)) texts.push_back(demand_text(book, demand));
    return texts;
}

std::string demands_line(const RuleBook& book, ConceptId says, Grade grade) {
    const std::vector<std::string> texts = demand_texts(book, says, grade);
    return texts.empty() ? std::string() : fmt::format("would support it: {}", fmt::join(texts, "; or "));
}

void append_demands_member(std::string& out, const RuleBook& book, ConceptId says) {
    const auto demands = book.demands_for(says);
    if (demands.empty()) return;
    out += ",\"would_support\":";
    JsonWriter json(out);
    json.begin_array();
    for (const Demand& demand : demands) {
        json.begin_object();
        json.optional_member("of", demand.of);
        json.optional_member("standard", demand.standard);
        json.member("number", std::string_view(demand.number));
        json.key("sources");
        json.begin_array();
        for (const std::uint32_t source : demand.sources) json.value(std::string_view(book.sources()[source].id));
        json.end_array();
        if (is_from_memory(book, demand)) {
            json.key("from_memory");
            json.value_bool(true);
        }
        json.end_object();
    }
    json.end_array();
}

}  // namespace grainside::report
