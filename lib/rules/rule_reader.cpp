#include "rules/rule_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

#include "rules/references.h"
#include "rules/wording_template.h"

namespace grainside::rules {

using document::Document;
using document::Faults;
using document::Node;

namespace {

constexpr std::size_t kFewestExamples = 3;

class RuleReader {
public:
    RuleReader(const Document& document, Node node, const BookData& book, const ReadRule* model, Faults& faults)
        : document_(document), node_(node), book_(book), model_(model), faults_(faults) {}

    ReadRule read(const std::string& own_market) {
        read_names();
        read_grade();
        read_markets(own_market);
        if (const Node in_force = node_.find("in_force"); in_force.exists()) {
            InForce days = read_in_force(document_, in_force, faults_);
            rule_.info.from = std::move(days.from);
            rule_.info.until = std::move(days.until);
        }
        read_conditions();
        read_wording();
        read_sources();
        read_proof();
        return std::move(rule_);
    }

private:
    std::string required(std::string_view key) {
        const Node child = node_.find(key);
        if (child.is_scalar() && !child.text().empty()) return std::string(child.text());
        faults_.error(document_, child.exists() ? child : node_, "missing-key", fmt::format("a rule needs `{}`", key));
        return {};
    }

    // Where the rule has a model, what it leaves out is the model's.
    std::string text_or(std::string_view key, const std::string RuleInfo::*member) {
        if (model_ != nullptr && !node_.find(key).exists()) return model_->info.*member;
        return required(key);
    }

    void read_names() {
        rule_.info.file = document_.file();
        rule_.info.line = node_.line();
        rule_.info.id = required("rule");
        rule_.info.title = text_or("title", &RuleInfo::title);
        rule_.info.because = text_or("because", &RuleInfo::because);
        if (model_ != nullptr) rule_.info.like = model_->info.id;
        read_group();
    }

    void read_group() {
        const Node group = node_.find("group");
        const bool of_a_market = document_.file().starts_with("markets/");
        if (group.exists()) {
            rule_.info.group = group.text();
        } else if (model_ != nullptr) {
            rule_.info.group = model_->info.group;
        } else if (of_a_market) {
            faults_.error(document_, node_, "missing-key", "a rule of one market needs `group` or `like`",
                          "`group` is the name of a file of wording/, such as `split`");
        } else {
            rule_.info.group = document_.stem();
        }
    }

    void read_grade() {
        const Node grade = node_.find("grade");
        if (!grade.exists()) {
            if (model_ != nullptr) {
                rule_.info.grade = model_->info.grade;
            } else {
                faults_.error(document_, node_, "missing-key", "a rule needs `grade`");
            }
            return;
        }
        // The words alone cannot show a claim false, or consistent.
        constexpr std::string_view kWordingGrades[] = {"misleading", "unsupported", "vague"};
        const auto named = grade_named(grade.text());
        if (named &&
            std::find(std::begin(kWordingGrades), std::end(kWordingGrades), grade.text()) != std::end(kWordingGrades)) {
            rule_.info.grade = *named;
            return;
        }
        faults_.error(document_, grade, "unknown-grade",
                      fmt::format("a rule on wording cannot grade '{}'", grade.text()),
                      faults_.suggestion(grade.text(), kWordingGrades));
    }

    void read_markets(const std::string& own_market) {
        const Node markets = node_.find("markets");
        if (!own_market.empty()) rule_.info.markets = {own_market};
        if (!markets.exists()) return;
        std::vector<std::string> named = rules::read_markets(document_, markets, book_.markets, faults_);
        if (!own_market.empty() && named != rule_.info.markets) {
            faults_.error(document_, markets, "other-market",
                          fmt::format("a rule of markets/{}.yaml holds in {} only", own_market, own_market),
                          "leave `markets` out, or put the rule into the file of the other market");
        }
        rule_.info.markets = std::move(named);
    }

    template <typename Read>
    void each_condition(std::string_view key, Read read) {
        const Node conditions = node_.find(key);
        if (!conditions.exists()) return;
        if (conditions.is_sequence()) {
            for (Node one : conditions) read(one);
        } else if (conditions.is_mapping()) {
            read(conditions);
        } else {
            faults_.error(document_, conditions, "wrong-type",
                          fmt::format("`{}` is a condition or a list of them", key));
        }
    }

    void read_conditions() {
        CompiledRule& compiled = rule_.compiled;
        if (model_ != nullptr) {
            compiled = model_->compiled;
            compiled.model_entry = model_->compiled.entry;
            for (std::string_view key : {"when", "beside", "over_list"}) {
                if (const Node stated = node_.find(key); stated.exists()) {
                    faults_.error(document_, stated, "stated-twice",
                                  fmt::format("`{}` is that of rule '{}'", key, model_->info.id),
                                  "leave it out, or leave `like` out and state the whole condition");
                }
            }
        }
        compiled.entry = node_;
        const auto& vocabulary = book_.vocabulary;
        const auto condition = [&](Node one) { return read_condition(document_, one, vocabulary, faults_); };
        const auto beside = [&](Node one) { return read_beside(document_, one, vocabulary, faults_); };
        if (model_ == nullptr) {
            each_condition("when", [&](Node one) { compiled.when.push_back(condition(one)); });
            each_condition("beside", [&](Node one) { compiled.beside.push_back(beside(one)); });
            if (const Node over_list = node_.find("over_list"); over_list.exists()) {
                compiled.over_list = read_yes_no(document_, over_list, faults_).value_or(false);
            }
            if (compiled.when.empty()) faults_.error(document_, node_, "missing-key", "a rule needs `when`");
        }
        each_condition("unless", [&](Node one) { compiled.unless.push_back(condition(one)); });
        each_condition("unless_beside", [&](Node one) { compiled.unless_beside.push_back(beside(one)); });
        if (!compiled.beside.empty()) rule_.info.basis = Basis::cross_check;
    }

    void read_wording() {
        RuleInfo& info = rule_.info;
        const Node wording = node_.find("say_instead");
        const Node remedy = node_.find("remedy");
        const Node leave_out = node_.find("leave_out");
        // The three belong together: a market that has another remedy does not keep the wording of its model.
        if (model_ != nullptr && !wording.exists() && !remedy.exists() && !leave_out.exists()) {
            info.say_instead = model_->info.say_instead;
            info.remedy = model_->info.remedy;
            info.leave_out = model_->info.leave_out;
            return;
        }
        if (wording.exists()) {
            info.say_instead = wording.text();
            if (const std::string fault = template_fault(info.say_instead); !fault.empty()) {
                faults_.error(document_, wording, "bad-template", fault,
                              "rules/README.md lists what may stand in braces");
            }
        }
        if (remedy.exists()) info.remedy = remedy.text();
        if (leave_out.exists()) info.leave_out = read_yes_no(document_, leave_out, faults_).value_or(false);
    }

    void read_sources() {
        const Node sources = node_.find("sources");
        if (!sources.exists()) {
            faults_.error(document_, node_, "missing-key", "a rule needs `sources`",
                          "cite a source of sources.yaml, or common-practice");
            return;
        }
        rule_.info.sources = rules::read_sources(document_, sources, book_.sources, faults_);
    }

    void read_proof() {
        const Node proof = node_.find("proof");
        RuleInfo& info = rule_.info;
        if (!proof.exists()) {
            if (model_ == nullptr) {
                faults_.error(document_, node_, "missing-key", "a rule needs `proof`");
                return;
            }
            info.flags = model_->info.flags;
            info.passes = model_->info.passes;
            for (auto* examples : {&info.flags, &info.passes}) {
                for (ProofText& example : *examples) example.line = node_.line();
            }
            return;
        }
        if (!check_keys(document_, proof, {"flags", "passes"}, faults_)) return;
        for (Node one : proof.find("flags")) read_example(one, true, info.flags);
        for (Node one : proof.find("passes")) read_example(one, false, info.passes);
        if (info.flags.size() < kFewestExamples || info.passes.size() < kFewestExamples) {
            faults_.error(document_, proof, "thin-proof",
                          fmt::format("rule '{}' has {} texts to flag and {} to pass; it needs {} of each", info.id,
                                      info.flags.size(), info.passes.size(), kFewestExamples));
        }
    }

    void read_example(Node node, bool flags, std::vector<ProofText>& examples) {
        if (!check_keys(document_, node, {"text", "title", "material", "words", "category", "because"}, faults_))
            return;
        ProofText example;
        example.text = node.find("text").text();
        example.title = node.find("title").text();
        example.material = node.find("material").text();
        example.words = node.find("words").text();
        example.category = node.find("category").text();
        example.because = node.find("because").text();
        example.line = node.line();
        if (example.text.empty() && example.title.empty()) {
            faults_.error(document_, node, "missing-key", "an example needs `text` or `title`");
        }
        const auto holds_words = [&](std::string_view text) { return text.find(example.words) != text.npos; };
        if (flags && (example.words.empty() ||
                      (!holds_words(example.text) && !holds_words(example.title) && !holds_words(example.material)))) {
            faults_.error(document_, node, "unused-words",
                          "`words` must be a slice of the example's text, title or material");
        }
        examples.push_back(example);
    }

    const Document& document_;
    Node node_;
    const BookData& book_;
    const ReadRule* model_;
    Faults& faults_;
    ReadRule rule_;
};

}  // namespace

ReadRule read_rule(const Document& document, Node node, const BookData& book, const ReadRule* model,
                   const std::string& own_market, Faults& faults) {
    return RuleReader(document, node, book, model, faults).read(own_market);
}

}  // namespace grainside::rules
