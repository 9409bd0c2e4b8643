#include "rule_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <string_view>
#include <vector>

#include "report/cell_width.h"
#include "report/condition_text.h"
#include "report/json_writer.h"
#include "report/plain_lines.h"
#include "report/rule_facts.h"
#include "verdict/proof.h"

namespace grainside::tools {
namespace {

constexpr std::size_t kLabelCells = 13;
constexpr std::size_t kProofIndent = 4;
// Wide enough for every title and cite; longer ones come from a broken or hostile book.
constexpr std::size_t kMostRuleCells = 400;

// Without spaces, as --market takes them.
std::string market_codes(const RuleInfo& rule) {
    std::string text = report::markets_text(rule);
    std::erase(text, ' ');
    return text;
}

void append_cell(std::string& out, std::string_view text, std::size_t cells) {
    const std::string cell = report::one_line(text, kMostRuleCells);
    out += cell;
    const std::size_t used = report::cells_of(cell);
    out.append((cells > used ? cells - used : 0) + 2, ' ');
}

class RulePage {
public:
    RulePage(const RuleBook& book, const RuleInfo& rule, std::size_t width, std::string& out)
        : book_(book), rule_(rule), width_(width), out_(out) {}

    void write(const std::string& folder) {
        report::append_wrapped(out_, rule_.id, 0, width_);
        report::append_wrapped(out_, rule_.title, 0, width_);
        out_ += '\n';
        write_line("group", rule_.group);
        if (!rule_.like.empty()) write_line("like", rule_.like);
        write_line("grade", name_of(rule_.grade));
        write_line("basis", name_of(rule_.basis));
        write_line("markets", market_codes(rule_));
        write_line("in force", report::days_text(rule_));
        write_line("because", rule_.because);
        if (!rule_.say_instead.empty()) write_line("say instead", rule_.say_instead);
        if (!rule_.remedy.empty()) write_line("remedy", rule_.remedy);
        write_line("file", rule_path(folder, rule_.file) + ':' + std::to_string(rule_.line));
        write_sources();
        write_proof("must flag:", rule_.flags);
        write_proof("must pass:", rule_.passes);
    }

private:
    void write_line(std::string_view label, std::string_view value) {
        out_ += label;
        out_.append(kLabelCells - label.size(), ' ');
        report::append_wrapped(out_, value, kLabelCells, width_);
    }

    void write_sources() {
        out_ += "\nsources:\n";
        for (const std::uint32_t index : rule_.sources) {
            const SourceInfo& source = book_.sources()[index];
            write_bullet(source.cite + (source.from_memory ? " (from memory)" : "") + " [" + source.id + ']');
            write_indented(source.says);
        }
    }

    void write_proof(std::string_view heading, const std::vector<ProofText>& texts) {
        out_ += '\n';
        out_ += heading;
        out_ += '\n';
        for (const ProofText& text : texts) {
            write_bullet(one_line_of(text));
            if (!text.words.empty()) write_indented(fmt::format("words: {}", text.words));
            if (!text.category.empty()) write_indented(fmt::format("category: {}", text.category));
            if (!text.because.empty()) write_indented(fmt::format("because: {}", text.because));
        }
    }

    void write_bullet(std::string_view text) {
        out_ += "  - ";
        report::append_wrapped(out_, text, kProofIndent, width_);
    }
    void write_indented(std::string_view text) {
        out_.append(kProofIndent, ' ');
        report::append_wrapped(out_, text, kProofIndent, width_);
    }

    const RuleBook& book_;
    const RuleInfo& rule_;
    std::size_t width_;
    std::string& out_;
};

void append_sources(report::JsonWriter& json, const RuleBook& book, const RuleInfo& rule, RuleDetail detail) {
    json.key("sources");
    json.begin_array();
    for (const std::uint32_t index : rule.sources) {
        const SourceInfo& source = book.sources()[index];
        if (detail == RuleDetail::summary) {
            json.value(source.id);
            continue;
        }
        json.begin_object();
        json.member("source", source.id);
        json.member("cite", source.cite);
        json.member("says", source.says);
        json.key("from_memory");
        json.value_bool(source.from_memory);
        json.end_object();
    }
    json.end_array();
}

void append_condition(report::JsonWriter& json, const RuleBook& book, const RuleInfo& rule) {
    json.key("condition");
    json.begin_array();
    for (const report::ConditionStep& step : report::ConditionTexts(book).steps_of(rule)) {
        json.value(report::sentence_of(step));
    }
    json.end_array();
}

void append_proof(report::JsonWriter& json, std::string_view key, const std::vector<ProofText>& texts) {
    json.key(key);
    json.begin_array();
    for (const ProofText& text : texts) {
        json.begin_object();
        json.optional_member("title", text.title);
        json.optional_member("text", text.text);
        json.optional_member("material", text.material);
        json.optional_member("words", text.words);
        json.optional_member("category", text.category);
        json.optional_member("because", text.because);
        json.member("line", std::uint64_t{text.line});
        json.end_object();
    }
    json.end_array();
}

}  // namespace

void append_rule_table(std::span<const RuleInfo* const> rules, std::string& out) {
    std::size_t id = 0;
    std::size_t group = 0;
    std::size_t grade = 0;
    std::size_t markets = 0;
    for (const RuleInfo* rule : rules) {
        id = std::max(id, std::min(report::cells_of(rule->id), kMostRuleCells));
        group = std::max(group, std::min(report::cells_of(rule->group), kMostRuleCells));
        grade = std::max(grade, name_of(rule->grade).size());
        markets = std::max(markets, market_codes(*rule).size());
    }
    for (const RuleInfo* rule : rules) {
        append_cell(out, rule->id, id);
        append_cell(out, rule->group, group);
        append_cell(out, name_of(rule->grade), grade);
        append_cell(out, market_codes(*rule), markets);
        out += report::one_line(rule->title, kMostRuleCells);
        out += '\n';
    }
}

void append_rule_text(const RuleBook& book, const RuleInfo& rule, const std::string& folder, std::size_t width,
                      std::string& out) {
    RulePage(book, rule, width, out).write(folder);
}

void append_rule_record(const RuleBook& book, const RuleInfo& rule, const std::string& folder, RuleDetail detail,
                        std::string& out) {
    report::JsonWriter json(out);
    json.begin_object();
    json.member("rule", rule.id);
    json.member("group", rule.group);
    json.optional_member("like", rule.like);
    json.member("title", rule.title);
    json.member("grade", name_of(rule.grade));
    json.member("basis", name_of(rule.basis));
    json.key("markets");
    json.begin_array();
    for (const std::string& market : rule.markets) json.value(market);
    json.end_array();
    json.optional_member("from", rule.from);
    json.optional_member("until", rule.until);
    json.member("because", rule.because);
    json.optional_member("say_instead", rule.say_instead);
    json.optional_member("remedy", rule.remedy);
    if (rule.leave_out) {
        json.key("leave_out");
        json.value_bool(true);
    }
    append_sources(json, book, rule, detail);
    json.member("file", rule_path(folder, rule.file));
    json.member("line", std::uint64_t{rule.line});
    if (detail == RuleDetail::everything) {
        append_condition(json, book, rule);
        append_proof(json, "flags", rule.flags);
        append_proof(json, "passes", rule.passes);
    }
    json.end_object();
    out += '\n';
}

std::string rule_path(const std::string& folder, const std::string& file) {
    return folder.empty() ? file : (std::filesystem::path(folder) / file).generic_string();
}

}  // namespace grainside::tools
