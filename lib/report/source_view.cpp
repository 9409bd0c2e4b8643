#include "report/source_view.h"

#include <string_view>
#include <vector>

#include "report/grade_colour.h"
#include "report/json_writer.h"
#include "report/plain_lines.h"
#include "report/rule_facts.h"
#include "report/view_text.h"

namespace grainside::report {
namespace {

constexpr std::size_t kSaysIndent = 4;

void append_indented(std::string& out, std::string_view text, std::size_t indent, std::size_t width) {
    out.append(indent, ' ');
    append_wrapped(out, text, indent, width);
}

template <typename Entry, typename About>
void append_citing(std::string& out, std::string_view heading, const std::vector<const Entry*>& entries, About about,
                   std::size_t width) {
    if (entries.empty()) return;
    out += '\n';
    out += heading;
    out += '\n';
    for (const Entry* entry : entries) {
        out += "  - ";
        append_wrapped(out, entry->id + about(*entry), kSaysIndent, width);
    }
}

template <typename Entry>
void append_ids(JsonWriter& json, std::string_view key, const std::vector<const Entry*>& entries) {
    json.key(key);
    json.begin_array();
    for (const Entry* entry : entries) json.value(entry->id);
    json.end_array();
}

std::string_view how_of(const SourceInfo& source) {
    if (source.from_memory) return "memory";
    return source.practice ? "practice" : "seen";
}

}  // namespace

void append_source_summary(const SourceInfo& source, const SourceUses& uses, const ViewOptions& options,
                           std::string& out) {
    const std::size_t width = width_of(options);
    const Colours colours(options.colour);
    out += colours.heading();
    append_wrapped(out, source.id, 0, width);
    out += colours.plain();
    append_indented(out, source.cite, kSaysIndent, width);
    append_indented(out, source.says, kSaysIndent, width);
    append_indented(out, std::string(standing_of(source)) + "; " + counts_text(uses), kSaysIndent, width);
}

void append_source_page(const SourceInfo& source, const SourceUses& uses, const ViewOptions& options,
                        std::string& out) {
    const std::size_t width = width_of(options);
    append_source_summary(source, uses, options, out);
    append_citing(
        out, "Rules", uses.rules,
        [](const RuleInfo& rule) {
            return " (" + std::string(name_of(rule.grade)) + "; " + markets_text(rule) + "): " + rule.title;
        },
        width);
    const auto title = [](const auto& entry) { return ": " + entry.title; };
    append_citing(out, "Limits", uses.limits, title, width);
    append_citing(out, "Methods", uses.methods, title, width);
    append_citing(
        out, "Alloys", uses.alloys, [](const auto& alloy) { return ": " + alloy.name; }, width);
}

void append_source_record(const SourceInfo& source, const SourceUses& uses, std::string& out) {
    JsonWriter json(out);
    json.begin_object();
    json.member("source", source.id);
    json.member("cite", source.cite);
    json.member("says", source.says);
    json.member("how", how_of(source));
    append_ids(json, "rules", uses.rules);
    append_ids(json, "limits", uses.limits);
    append_ids(json, "methods", uses.methods);
    append_ids(json, "alloys", uses.alloys);
    json.member("demands", std::uint64_t{uses.demands});
    json.member("costs", std::uint64_t{uses.costs});
    json.end_object();
    out += '\n';
}

}  // namespace grainside::report
