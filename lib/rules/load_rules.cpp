#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "rules/book_data.h"
#include "rules/references.h"
#include "rules/wording_template.h"

namespace grainside::rules {

using document::Document;
using document::Faults;
using document::Node;

namespace {

constexpr std::size_t kFewestExamples = 3;

class RuleLoader {
public:
    RuleLoader(BookData& book, Faults& faults) : book_(book), faults_(faults) {}

    void load(const Document& document) {
        if (!document.root().exists()) return;
        if (!document.root().is_sequence()) {
            faults_.error(document, document.root(), "wrong-type", "a rule file is a sequence of rules");
            return;
        }
        for (Node node : document.root()) load_rule(document, node);
    }

private:
    void load_rule(const Document& document, Node node) {
        if (!check_keys(document, node,
                        {"rule", "title", "grade", "markets", "in_force", "when", "unless", "beside", "unless_beside",
                         "over_list", "because", "say_instead", "remedy", "leave_out", "sources", "proof"},
                        faults_)) {
            return;
        }
        RuleInfo info;
        CompiledRule compiled;
        info.file = document.file();
        info.line = node.line();
        info.id = text_of(document, node, "rule");
        info.title = text_of(document, node, "title");
        info.because = text_of(document, node, "because");
        check_new(document, node, info.id);
        read_grade(document, node, info);
        if (const Node markets = node.find("markets"); markets.exists()) {
            info.markets = rules::read_markets(document, markets, book_.markets, faults_);
        }
        if (const Node in_force = node.find("in_force"); in_force.exists()) {
            InForce days = read_in_force(document, in_force, faults_);
            info.from = std::move(days.from);
            info.until = std::move(days.until);
        }
        read_conditions(document, node, compiled);
        if (!compiled.beside.empty()) info.basis = Basis::cross_check;
        if (const Node over_list = node.find("over_list"); over_list.exists()) {
            compiled.over_list = read_yes_no(document, over_list, faults_).value_or(false);
        }
        if (const Node wording = node.find("say_instead"); wording.exists()) {
            info.say_instead = wording.text();
            if (const std::string fault = template_fault(info.say_instead); !fault.empty()) {
                faults_.error(document, wording, "bad-template", fault,
                              "rules/README.md lists what may stand in braces");
            }
        }
        if (const Node remedy = node.find("remedy"); remedy.exists()) info.remedy = remedy.text();
        if (const Node leave_out = node.find("leave_out"); leave_out.exists()) {
            info.leave_out = read_yes_no(document, leave_out, faults_).value_or(false);
        }
        read_sources(document, node, info);
        read_proof(document, node, info);
        book_.rules.push_back(std::move(info));
        book_.compiled.push_back(std::move(compiled));
    }

    std::string text_of(const Document& document, Node node, std::string_view key) {
        const Node child = node.find(key);
        if (child.is_scalar() && !child.text().empty()) return std::string(child.text());
        faults_.error(document, child.exists() ? child : node, "missing-key", fmt::format("a rule needs `{}`", key));
        return {};
    }

    void check_new(const Document& document, Node node, const std::string& id) {
        for (const RuleInfo& known : book_.rules) {
            if (known.id == id) {
                faults_.error(document, node.find("rule"), "duplicate-rule",
                              fmt::format("rule '{}' is defined twice", id),
                              fmt::format("it stands in {} line {} too; an id is permanent and stands once", known.file,
                                          known.line));
            }
        }
    }

    void read_grade(const Document& document, Node node, RuleInfo& info) {
        const Node grade = node.find("grade");
        if (!grade.exists()) {
            faults_.error(document, node, "missing-key", "a rule needs `grade`");
            return;
        }
        // The words alone cannot show a claim false, or consistent.
        constexpr std::string_view kWordingGrades[] = {"misleading", "unsupported", "vague"};
        const auto named = grade_named(grade.text());
        if (named &&
            std::find(std::begin(kWordingGrades), std::end(kWordingGrades), grade.text()) != std::end(kWordingGrades)) {
            info.grade = *named;
            return;
        }
        faults_.error(document, grade, "unknown-grade",
                      fmt::format("a rule on wording cannot grade '{}'", grade.text()),
                      document::suggestion(grade.text(), kWordingGrades));
    }

    template <typename Read>
    void each_condition(const Document& document, Node node, std::string_view key, Read read) {
        const Node conditions = node.find(key);
        if (!conditions.exists()) return;
        if (conditions.is_sequence()) {
            for (Node one : conditions) read(one);
        } else if (conditions.is_mapping()) {
            read(conditions);
        } else {
            faults_.error(document, conditions, "wrong-type",
                          fmt::format("`{}` is a condition or a list of them", key));
        }
    }

    void read_conditions(const Document& document, Node node, CompiledRule& compiled) {
        const auto& vocabulary = book_.vocabulary;
        each_condition(document, node, "when",
                       [&](Node one) { compiled.when.push_back(read_condition(document, one, vocabulary, faults_)); });
        each_condition(document, node, "unless", [&](Node one) {
            compiled.unless.push_back(read_condition(document, one, vocabulary, faults_));
        });
        each_condition(document, node, "beside",
                       [&](Node one) { compiled.beside.push_back(read_beside(document, one, vocabulary, faults_)); });
        each_condition(document, node, "unless_beside", [&](Node one) {
            compiled.unless_beside.push_back(read_beside(document, one, vocabulary, faults_));
        });
        if (compiled.when.empty()) faults_.error(document, node, "missing-key", "a rule needs `when`");
    }

    void read_sources(const Document& document, Node node, RuleInfo& info) {
        const Node sources = node.find("sources");
        if (!sources.exists()) {
            faults_.error(document, node, "missing-key", "a rule needs `sources`",
                          "cite a source of sources.yaml, or common-practice");
            return;
        }
        info.sources = rules::read_sources(document, sources, book_.sources, faults_);
    }

    void read_proof(const Document& document, Node node, RuleInfo& info) {
        const Node proof = node.find("proof");
        if (!proof.exists() || !check_keys(document, proof, {"flags", "passes"}, faults_)) {
            if (!proof.exists()) faults_.error(document, node, "missing-key", "a rule needs `proof`");
            return;
        }
        for (Node one : proof.find("flags")) read_example(document, one, true, info.flags);
        for (Node one : proof.find("passes")) read_example(document, one, false, info.passes);
        if (info.flags.size() < kFewestExamples || info.passes.size() < kFewestExamples) {
            faults_.error(document, proof, "thin-proof",
                          fmt::format("rule '{}' has {} texts to flag and {} to pass; it needs {} of each", info.id,
                                      info.flags.size(), info.passes.size(), kFewestExamples));
        }
    }

    void read_example(const Document& document, Node node, bool flags, std::vector<ProofText>& examples) {
        if (!check_keys(document, node, {"text", "title", "material", "words", "category", "because"}, faults_)) return;
        ProofText example;
        example.text = node.find("text").text();
        example.title = node.find("title").text();
        example.material = node.find("material").text();
        example.words = node.find("words").text();
        example.category = node.find("category").text();
        example.because = node.find("because").text();
        example.line = node.line();
        if (example.text.empty() && example.title.empty()) {
            faults_.error(document, node, "missing-key", "an example needs `text` or `title`");
        }
        const auto holds_words = [&](const std::string& text) { return text.find(example.words) != std::string::npos; };
        if (flags && (example.words.empty() ||
                      (!holds_words(example.text) && !holds_words(example.title) && !holds_words(example.material)))) {
            faults_.error(document, node, "unused-words",
                          "`words` must be a slice of the example's text, title or material");
        }
        examples.push_back(std::move(example));
    }

    BookData& book_;
    Faults& faults_;
};

void index_by_concept(BookData& book) {
    // A share turns any kind into composition, and a likeness turns it into a quality.
    constexpr std::uint32_t kTurned =
        1U << static_cast<unsigned>(Kind::composition) | 1U << static_cast<unsigned>(Kind::quality);
    book.by_concept.assign(book.vocabulary.concepts.size(), {});
    for (std::uint32_t rule = 0; rule < book.compiled.size(); ++rule) {
        for (const ClaimCondition& condition : book.compiled[rule].when) {
            condition.says.for_each([&](ConceptId id) {
                const auto kind = static_cast<unsigned>(book.vocabulary.concepts[id].kind);
                std::vector<std::uint32_t>& rules = book.by_concept[id];
                const bool can_hold = id != 0 && (condition.kinds & (kTurned | 1U << kind)) != 0;
                if (can_hold && (rules.empty() || rules.back() != rule)) rules.push_back(rule);
            });
        }
    }
}

}  // namespace

void load_rules(BookData& book, Faults& faults) {
    RuleLoader loader(book, faults);
    for (const Document& document : book.documents) {
        if (document.file().starts_with("wording/") || document.file().starts_with("markets/")) loader.load(document);
    }
    index_by_concept(book);
}

}  // namespace grainside::rules
