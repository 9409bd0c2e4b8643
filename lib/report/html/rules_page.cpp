#include "report/html/rules_page.h"

#include <fmt/format.h>

#include <string_view>
#include <vector>

#include "report/fixed_texts.h"
#include "report/html/html_writer.h"
#include "report/html/page_frame.h"
#include "report/html/page_parts.h"
#include "report/view_text.h"

namespace grainside::report {
namespace {

// "rule-imitation-noun-reserved". Ids of the book are ours or of a stranger's folder: what an id of a page should not
// hold is written as its code.
std::string anchor(std::string_view kind, std::string_view id) {
    std::string text(kind);
    text += '-';
    for (const char c : id) {
        const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
        if (plain) {
            text += c;
        } else {
            text += fmt::format("_{:02x}", static_cast<unsigned char>(c));
        }
    }
    return text;
}

class RulesPage {
public:
    RulesPage(const RuleReference& reference, std::string& out)
        : reference_(reference), book_(reference.book()), html_(out) {}

    void write() {
        begin_page(html_, "Grainside: rule reference", "To the rules");
        html_.begin("main", {{"id", "content"}});
        html_.element("p", {{"class", "kicker"}}, "Rule reference");
        html_.element("h1", "What is flagged, and why");
        html_.element("p", {{"class", "soft"}}, reference_.counts());
        html_.element("p", {{"class", "soft"}}, kNoAdvice);
        write_contents();
        for (const RuleGroup& group : reference_.groups()) write_group(group);
        write_sources();
        write_markets();
        html_.end();
        write_footer();
        end_page(html_);
    }

private:
    void link(const std::string& target, std::string_view text) { html_.element("a", {{"href", '#' + target}}, text); }

    void write_contents() {
        html_.begin("nav", {{"class", "contents"}, {"aria-label", "Contents"}});
        html_.begin("ul");
        const auto entry = [&](const std::string& target, const std::string& text) {
            html_.begin("li");
            link(target, text);
            html_.end();
        };
        for (const RuleGroup& group : reference_.groups()) {
            entry(anchor("group", group.name), fmt::format("{} ({})", group.name, group.rules.size()));
        }
        entry("sources", fmt::format("Sources ({})", book_.sources().size()));
        entry("markets", fmt::format("Markets ({})", reference_.markets().size()));
        html_.end();
        html_.end();
    }

    void write_group(const RuleGroup& group) {
        html_.begin("section", {{"id", anchor("group", group.name)}});
        html_.element("h2", group.name);
        html_.begin("ul", {{"class", "small"}});
        for (const RuleInfo* rule : group.rules) {
            html_.begin("li");
            link(anchor("rule", rule->id), rule->id);
            html_.text(fmt::format(" ({}; {})", name_of(rule->grade), markets_text(*rule)));
            html_.end();
        }
        html_.end();
        for (const RuleInfo* rule : group.rules) write_rule(reference_.tell(*rule));
        html_.end();
    }

    void write_rule(const ToldRule& told) {
        const RuleInfo& rule = *told.rule;
        html_.begin("article",
                    {{"id", anchor("rule", rule.id)}, {"class", "verdict " + std::string(name_of(rule.grade))}});
        html_.element("h3", rule.title);
        html_.begin("p");
        write_grade(html_, rule.grade);
        html_.text(" ");
        html_.element("code", rule.id);
        html_.end();
        html_.element("p", {{"class", "because"}}, rule.because);
        html_.begin("dl", {{"class", "facts"}});
        fact("Markets", told.markets);
        fact("In force", told.days);
        for (const ConditionStep& step : told.condition) write_step(step);
        write_instead(told);
        write_cited(told);
        write_twins(told);
        write_examples("Flagged", told.flags, rule.grade);
        write_examples("Passed", told.passes, rule.grade);
        html_.end();
        html_.end();
    }

    void fact(std::string_view label, std::string_view value) {
        html_.element("dt", label);
        html_.element("dd", value);
    }

    template <typename Items, typename Write>
    void list(std::string_view label, const Items& items, Write write) {
        if (items.empty()) return;
        html_.element("dt", label);
        html_.begin("dd");
        html_.begin("ul");
        for (const auto& item : items) {
            html_.begin("li");
            write(item);
            html_.end();
        }
        html_.end();
        html_.end();
    }

    void write_step(const ConditionStep& step) {
        if (step.items.size() == 1) {
            fact(step.lead, step.items.front());
            return;
        }
        list(std::string(step.lead) + " one of", step.items, [&](const std::string& item) { html_.text(item); });
    }

    void write_instead(const ToldRule& told) {
        list("Instead", told.instead, [&](const std::string& advice) { html_.text(advice); });
    }

    void write_cited(const ToldRule& told) {
        list("Sources", told.sources, [&](const SourceInfo* source) {
            link(anchor("source", source->id), source->cite);
            html_.text(fmt::format(" ({}): {}", standing_of(*source), source->says));
        });
    }

    void write_twins(const ToldRule& told) {
        list("In other markets", told.twins, [&](const RuleInfo* twin) {
            link(anchor("rule", twin->id), twin->id);
            html_.text(": " + twin_text(book_, *twin));
        });
    }

    void write_examples(std::string_view label, const std::vector<ToldExample>& examples, Grade grade) {
        list(label, examples, [&](const ToldExample& example) {
            for (std::size_t at = 0; at < example.listing.fields.size(); ++at) {
                if (at > 0) html_.text(" | ");
                write_field(example, at, grade);
            }
            if (!example.proof->because.empty()) {
                html_.element("span", {{"class", "soft"}},
                              std::string(" (").append(example.proof->because).append(")"));
            }
        });
    }

    void write_field(const ToldExample& example, std::size_t at, Grade grade) {
        const Field& field = example.listing.fields[at];
        if (const std::string_view label = label_of_field(field.name); !label.empty()) {
            html_.element("span", {{"class", "soft"}}, std::string(label) + ": ");
        }
        if (at != example.field) {
            html_.text(field.text);
            return;
        }
        html_.text(field.text.substr(0, example.start));
        html_.element("mark", {{"class", name_of(grade)}},
                      field.text.substr(example.start, example.end - example.start));
        html_.text(field.text.substr(example.end));
    }

    void write_sources() {
        html_.begin("section", {{"id", "sources"}});
        html_.element("h2", "Sources");
        html_.element("p",
                      "'Seen': somebody read the text. 'From memory': nobody could see it when the rule was written. "
                      "'Practice': a fact of the trade without a published text.");
        for (std::size_t at = 0; at < book_.sources().size(); ++at) {
            const SourceInfo& source = book_.sources()[at];
            const SourceUses& uses = reference_.uses()[at];
            html_.begin("article", {{"id", anchor("source", source.id)}});
            html_.element("h3", source.cite);
            html_.element("p", source.says);
            html_.begin("p", {{"class", "soft small"}});
            html_.element("code", source.id);
            html_.text(fmt::format("; {}; {}", standing_of(source), counts_text(uses)));
            std::string_view separator = ": ";
            for (const RuleInfo* rule : uses.rules) {
                html_.text(separator);
                link(anchor("rule", rule->id), rule->id);
                separator = ", ";
            }
            html_.end();
            html_.end();
        }
        html_.end();
    }

    void write_markets() {
        html_.begin("section", {{"id", "markets"}});
        html_.element("h2", "Markets");
        html_.begin("table", {{"class", "stack"}});
        html_.constant(
            "<thead><tr><th scope=\"col\">Code</th><th scope=\"col\">Name</th><th scope=\"col\">In this book</th></tr>"
            "</thead>\n");
        html_.begin("tbody");
        for (const ToldMarket& market : reference_.markets()) {
            html_.begin("tr");
            html_.element("th", {{"scope", "row"}}, market.code);
            html_.element("td", market.name);
            html_.element("td", own_entries_text(market));
            html_.end();
        }
        html_.end();
        html_.end();
        html_.end();
    }

    void write_footer() {
        html_.begin("footer");
        html_.element("h2", "The grades");
        write_grade_meanings(html_);
        html_.element("p", kNoAdvice);
        html_.end();
    }

    const RuleReference& reference_;
    const RuleBook& book_;
    HtmlWriter html_;
};

}  // namespace

void append_rules_page(const RuleReference& reference, std::string& out) {
    RulesPage(reference, out).write();
}

}  // namespace grainside::report
