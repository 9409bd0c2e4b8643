#include "rules/wording_template.h"

#include <fmt/format.h>

#include <array>
#include <utility>

namespace grainside::rules {

namespace {

constexpr auto kSlots = std::to_array<std::pair<std::string_view, std::string_view TemplateValues::*>>({
    {"says", &TemplateValues::says},
    {"called", &TemplateValues::called},
    {"other", &TemplateValues::other},
    {"part", &TemplateValues::part},
    {"words", &TemplateValues::words},
    {"bare", &TemplateValues::bare},
    {"place", &TemplateValues::place},
    {"share", &TemplateValues::share},
});

const std::string_view TemplateValues::*slot_named(std::string_view name) {
    for (const auto& [known, member] : kSlots) {
        if (known == name) return member;
    }
    return nullptr;
}

}  // namespace

std::string template_fault(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        if (text[at] == '}') return "a '}' without its '{'";
        if (text[at] != '{') {
            ++at;
            continue;
        }
        const std::size_t end = text.find('}', at);
        if (end == std::string_view::npos) return "a '{' without its '}'";
        const std::string_view name = text.substr(at + 1, end - at - 1);
        if (slot_named(name) == nullptr) return fmt::format("'{{{}}}' is no value of a template", name);
        at = end + 1;
    }
    return {};
}

std::string fill_template(std::string_view text, const TemplateValues& values) {
    std::string filled;
    for (std::size_t at = 0; at < text.size();) {
        if (text[at] != '{') {
            filled += text[at++];
            continue;
        }
        const std::size_t end = text.find('}', at);
        const std::string_view value = values.*slot_named(text.substr(at + 1, end - at - 1));
        if (value.empty()) return {};
        filled += value;
        at = end + 1;
    }
    return filled;
}

}  // namespace grainside::rules
