#include "report/rules_manual.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string_view>
#include <vector>

#include "report/fixed_texts.h"
#include "report/roff_text.h"

namespace grainside::report {
namespace {

constexpr std::string_view kHead =
    ".\\\" Made by `grainside rules reference --form man`; do not edit.\n"
    ".TH GRAINSIDE-RULES 7 \"\" \"grainside\" \"Rule Book\"\n"
    ".SH NAME\n"
    "grainside\\-rules \\- what grainside flags in the copy of leather goods, and why\n"
    ".SH DESCRIPTION\n";

constexpr std::string_view kFoot =
    ".SH SEE ALSO\n"
    ".BR grainside (1);\n"
    ".B grainside rules explain\n"
    "tells one rule, with the flagged words marked.\n";

class RulesManual {
public:
    RulesManual(const RuleReference& reference, std::string& out)
        : reference_(reference), book_(reference.book()), out_(out) {}

    void write() {
        out_ += kHead;
        line(reference_.counts());
        macro(".PP");
        line(kNoAdvice);
        write_grades();
        for (const RuleGroup& group : reference_.groups()) {
            section(group.name);
            for (const RuleInfo* rule : group.rules) write_rule(reference_.tell(*rule));
        }
        write_sources();
        write_markets();
        out_ += kFoot;
    }

private:
    void line(std::string_view text) { append_roff_line(out_, text); }
    void macro(std::string_view text) { out_.append(text).append("\n"); }

    // Headings of manual pages are in capitals.
    void section(std::string_view name) {
        std::string capitals(name);
        std::transform(capitals.begin(), capitals.end(), capitals.begin(),
                       [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
        out_ += ".SH ";
        append_roff_argument(out_, capitals);
        out_ += '\n';
    }

    void tagged(std::string_view tag, std::string_view text) {
        macro(".TP");
        out_ += ".B ";
        append_roff_argument(out_, tag);
        out_ += '\n';
        line(text);
    }

    void write_grades() {
        section("grades");
        for (const Grade grade : {Grade::misleading, Grade::unsupported, Grade::vague}) {
            tagged(name_of(grade), meaning_of(grade));
        }
    }

    void write_rule(const ToldRule& told) {
        const RuleInfo& rule = *told.rule;
        out_ += ".SS ";
        append_roff_argument(out_, rule.id);
        out_ += '\n';
        line(rule.title + '.');
        macro(".br");
        line(fmt::format("{}; markets: {}; in force: {}.", name_of(rule.grade), told.markets, told.days));
        macro(".PP");
        line(rule.because);
        for (const ConditionStep& step : told.condition) write_step(step);
        for (const std::string& advice : told.instead) {
            macro(".PP");
            line(advice);
        }
        for (const SourceInfo* source : told.sources) {
            macro(".PP");
            line(fmt::format("Source: {} ({}): {}", source->cite, standing_of(*source), source->says));
        }
        for (const RuleInfo* twin : told.twins) {
            macro(".PP");
            line(fmt::format("Like it is {}: {}", twin->id, twin_text(book_, *twin)));
        }
        write_examples("Flagged:", told.flags);
        write_examples("Passed:", told.passes);
    }

    void write_step(const ConditionStep& step) {
        macro(".PP");
        if (step.items.size() == 1) {
            line(sentence_of(step));
            return;
        }
        line(std::string(step.lead) + " one of these:");
        for (const std::string& item : step.items) {
            macro(".IP \\(bu 2");
            line(item);
        }
    }

    void write_examples(std::string_view title, const std::vector<ToldExample>& examples) {
        if (examples.empty()) return;
        macro(".PP");
        line(title);
        for (const ToldExample& example : examples) {
            macro(".IP \\(bu 2");
            std::string text;
            for (const Field& field : example.listing.fields) {
                const std::string_view label = label_of_field(field.name);
                text +=
                    fmt::format("{}{}{}{}", text.empty() ? "" : " | ", label, label.empty() ? "" : ": ", field.text);
            }
            if (!example.proof->words.empty()) text += fmt::format(" ('{}')", example.proof->words);
            if (!example.proof->because.empty()) text += fmt::format(" ({})", example.proof->because);
            line(text);
        }
    }

    void write_sources() {
        section("sources");
        for (std::size_t at = 0; at < book_.sources().size(); ++at) {
            const SourceInfo& source = book_.sources()[at];
            tagged(source.id, fmt::format("{} ({}): {} {}.", source.cite, standing_of(source), source.says,
                                          counts_text(reference_.uses()[at])));
        }
    }

    void write_markets() {
        section("markets");
        for (const ToldMarket& market : reference_.markets()) {
            tagged(market.code, fmt::format("{}: {}.", market.name, own_entries_text(market)));
        }
    }

    const RuleReference& reference_;
    const RuleBook& book_;
    std::string& out_;
};

}  // namespace

void append_rules_manual(const RuleReference& reference, std::string& out) {
    RulesManual(reference, out).write();
}

}  // namespace grainside::report
