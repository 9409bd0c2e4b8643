#include "report/rule_view.h"

#include <string_view>
#include <vector>

#include "report/fixed_texts.h"
#include "report/grade_colour.h"
#include "report/marked_text.h"
#include "report/plain_lines.h"
#include "report/told_rule.h"
#include "report/view_text.h"

namespace grainside::report {
namespace {

constexpr std::size_t kIndent = 2;
constexpr std::size_t kItemIndent = 4;
constexpr std::size_t kValueCells = 11;
constexpr std::size_t kRuleFieldCells = 60;

class Explanation {
public:
    Explanation(const RuleBook& book, const ToldRule& told, const ViewOptions& options, std::string& out)
        : book_(book), told_(told), rule_(*told.rule), colours_(options.colour), width_(width_of(options)), out_(out) {}

    void write() {
        out_ += colours_.heading();
        append_wrapped(out_, rule_.title, 0, width_);
        out_ += colours_.plain();
        out_ += '\n';
        write_facts();
        write_condition();
        paragraph("Why", rule_.because);
        write_instead();
        write_sources();
        write_twins();
        write_examples("Flagged", told_.flags);
        write_examples("Passed", told_.passes);
        append_wrapped(out_, kNoAdvice, 0, width_);
    }

private:
    void heading(std::string_view text) {
        out_ += colours_.heading();
        out_ += text;
        out_ += colours_.plain();
        out_ += '\n';
    }
    void indented(std::string_view text, std::size_t indent) {
        out_.append(indent, ' ');
        append_wrapped(out_, text, indent, width_);
    }
    void item(std::string_view text) {
        out_ += "  - ";
        append_wrapped(out_, text, kItemIndent, width_);
    }
    void paragraph(std::string_view title, std::string_view text) {
        heading(title);
        indented(text, kIndent);
        out_ += '\n';
    }

    void fact(std::string_view label, std::string_view value) {
        out_.append(kIndent, ' ');
        out_ += colours_.quiet();
        out_ += label;
        out_ += colours_.plain();
        out_.append(kValueCells - kIndent - label.size(), ' ');
        append_wrapped(out_, value, kValueCells, width_);
    }

    void write_facts() {
        fact("rule", rule_.id);
        fact("group", rule_.group);
        fact("grade", std::string(name_of(rule_.grade)) + ": " + std::string(meaning_of(rule_.grade)));
        fact("markets", named_markets());
        fact("in force", told_.days);
        out_ += '\n';
    }

    std::string named_markets() const {
        if (rule_.markets.empty()) return "all";
        std::string text;
        for (const std::string& market : rule_.markets) {
            text += (text.empty() ? "" : ", ") + market + " (" + std::string(book_.market_name(market)) + ')';
        }
        return text;
    }

    void write_condition() {
        heading("What it flags");
        for (const ConditionStep& step : told_.condition) {
            if (step.items.size() == 1) {
                indented(sentence_of(step), kIndent);
                continue;
            }
            indented(std::string(step.lead) + " one of these:", kIndent);
            for (const std::string& one : step.items) item(one);
        }
        out_ += '\n';
    }

    void write_instead() {
        if (told_.instead.empty()) return;
        heading("What to write instead");
        for (const std::string& advice : told_.instead) indented(advice, kIndent);
        out_ += '\n';
    }

    void write_sources() {
        heading(told_.sources.size() == 1 ? "Source" : "Sources");
        for (const SourceInfo* source : told_.sources) {
            item(source->cite + " [" + source->id + "], " + std::string(standing_of(*source)));
            indented(source->says, kItemIndent);
        }
        out_ += '\n';
    }

    void write_twins() {
        if (told_.twins.empty()) return;
        heading("The same in other markets");
        for (const RuleInfo* twin : told_.twins) {
            item(twin->id + (twin->id == rule_.like ? " (its model)" : ""));
            indented(twin_text(book_, *twin), kItemIndent);
        }
        out_ += '\n';
    }

    void write_examples(std::string_view title, const std::vector<ToldExample>& examples) {
        heading(title);
        for (const ToldExample& example : examples) {
            for (std::size_t at = 0; at < example.listing.fields.size(); ++at) write_field(example, at);
            if (!example.proof->because.empty())
                indented(std::string("(").append(example.proof->because).append(")"), kItemIndent);
        }
        out_ += '\n';
    }

    void write_field(const ToldExample& example, std::size_t at) {
        const Field& field = example.listing.fields[at];
        if (const std::string_view label = label_of_field(field.name); !label.empty()) {
            out_.append(kIndent, ' ');
            out_ += colours_.quiet();
            out_ += one_line(label, kRuleFieldCells) + ':';
            out_ += colours_.plain();
            out_ += '\n';
        }
        if (at != example.field) {
            indented(field.text, kItemIndent);
            return;
        }
        const std::vector<MarkedSpan> marks{{example.start, example.end, rule_.grade}};
        append_marked_text(out_, field.text, marks, colours_, kItemIndent, width_);
    }

    const RuleBook& book_;
    const ToldRule& told_;
    const RuleInfo& rule_;
    Colours colours_;
    std::size_t width_;
    std::string& out_;
};

}  // namespace

void append_rule_explained(const RuleBook& book, const RuleInfo& rule, const ViewOptions& options, std::string& out) {
    const ToldRule told = RuleTeller(book).tell(rule);
    Explanation(book, told, options, out).write();
}

}  // namespace grainside::report
