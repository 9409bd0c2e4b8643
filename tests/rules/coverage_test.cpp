// Every condition of every rule must be seen true and false over the proof texts of the book.
//
// What counts as seen: of each clause of `when`, `unless`, `beside` and `unless_beside`, every key (`says`, `part`,
// `marked` ...) is asked alone of every claim whose concept the clause asks for, and must come out true at least once
// and false at least once; `says` is asked of every claim. A clause of `unless`, `beside` or `unless_beside` as a whole
// must decide: be true for one claim and false for another of those that the rule's `when` lets through. A key that is
// never false could be left out and no proof would notice.
#include <gtest/gtest.h>

#include <iostream>
#include <string>
#include <string_view>
#include <vector>

#include "claims/claim_parser.h"
#include "condition_keys.h"
#include "document/compiled_document.h"
#include "grainside/proof.h"
#include "rules/book_data.h"
#include "rules/built_in_book.h"
#include "rules/rule_matcher.h"

namespace grainside::coverage {
namespace {

using rules::BookData;
using rules::ClaimCondition;
using rules::CompiledRule;

// Gaps when this test was written. The number may fall and never grow: lower it with every gap that is closed.
constexpr std::size_t kMostGaps = 86;

struct Parsed {
    std::vector<Claim> claims;
    rules::ListingFacts facts;
};

void load(BookData& book) {
    document::Faults faults;
    book.documents = document::open_compiled(rules::built_in_book(), faults);
    vocabulary::load_vocabulary(book.documents, book.vocabulary, faults);
    rules::load_sources(book, faults);
    rules::load_markets(book, faults);
    rules::load_rules(book, faults);
    ASSERT_FALSE(faults.any_errors());
}

std::vector<Parsed> parse_proofs(const BookData& book) {
    std::vector<Parsed> texts;
    claims::ClaimParser parser(book.vocabulary);
    for (const RuleInfo& rule : book.rules) {
        for (const auto* examples : {&rule.flags, &rule.passes}) {
            for (const ProofText& example : *examples) {
                Parsed parsed;
                parser.parse(listing_of(example), parsed.claims);
                parsed.facts = {parser.category(), book.vocabulary.categories[parser.category()].main_part};
                texts.push_back(std::move(parsed));
            }
        }
    }
    return texts;
}

class Coverage {
public:
    Coverage(BookData& book, const std::vector<Parsed>& texts) : book_(book), texts_(texts) {}

    std::vector<std::string> gaps() {
        const std::vector<CompiledRule> compiled = book_.compiled;
        for (std::size_t rule = 0; rule < compiled.size(); ++rule) check_rule(book_.rules[rule].id, compiled[rule]);
        return gaps_;
    }
    std::size_t conditions() const { return conditions_; }

private:
    void check_rule(const std::string& id, const CompiledRule& rule) {
        each(rule.when, id + " when",
             [](const ClaimCondition& condition) -> const ClaimCondition& { return condition; });
        each(rule.unless, id + " unless",
             [](const ClaimCondition& condition) -> const ClaimCondition& { return condition; });
        each(rule.beside, id + " beside",
             [](const rules::BesideCondition& beside) -> const ClaimCondition& { return beside.claim; });
        each(rule.unless_beside, id + " unless_beside",
             [](const rules::BesideCondition& beside) -> const ClaimCondition& { return beside.claim; });
        // Whole clauses, asked of the claims that `when` lets through: by rules made for it.
        for (std::size_t i = 0; i < rule.unless.size(); ++i) {
            CompiledRule passes = only_when(rule);
            passes.unless = {rule.unless[i]};
            note(name(id + " unless", i, rule.unless.size()), holds_for_fewer(rule, passes), holds_somewhere(passes));
        }
        for (std::size_t i = 0; i < rule.beside.size(); ++i) check_beside(id + " beside", rule, rule.beside, i);
        for (std::size_t i = 0; i < rule.unless_beside.size(); ++i)
            check_beside(id + " unless_beside", rule, rule.unless_beside, i);
    }

    void check_beside(const std::string& where, const CompiledRule& rule,
                      const std::vector<rules::BesideCondition>& clauses, std::size_t i) {
        CompiledRule is_true = only_when(rule);
        is_true.beside = {clauses[i]};
        CompiledRule is_false = only_when(rule);
        is_false.unless_beside = {clauses[i]};
        note(name(where, i, clauses.size()), holds_somewhere(is_true), holds_somewhere(is_false));
    }

    template <typename Conditions, typename ClaimOf>
    void each(const Conditions& conditions, const std::string& where, ClaimOf claim_of) {
        const std::size_t concepts = book_.vocabulary.concepts.size();
        for (std::size_t i = 0; i < conditions.size(); ++i) {
            const ClaimCondition& condition = claim_of(conditions[i]);
            for (const Key& key : keys_of(condition, concepts)) {
                bool seen[2] = {false, false};
                for (const Parsed& text : texts_) {
                    for (const Claim& claim : text.claims) {
                        if (key.name == "says" || condition.says.contains(claim.says))
                            seen[key.alone.holds(claim, text.facts) ? 1 : 0] = true;
                    }
                }
                note(name(where, i, conditions.size()) + " " + std::string(key.name), seen[1], seen[0]);
            }
        }
    }

    static std::string name(const std::string& where, std::size_t i, std::size_t count) {
        return count == 1 ? where : where + "[" + std::to_string(i + 1) + "]";
    }

    static CompiledRule only_when(const CompiledRule& rule) {
        CompiledRule copy;
        copy.when = rule.when;
        return copy;
    }

    // How many claims of all texts a rule finds that stands alone in the book.
    std::size_t found(const CompiledRule& rule) {
        BookData& book = book_;
        book.compiled.assign(1, rule);
        for (std::vector<std::uint32_t>& indices : book.by_concept) indices.assign(1, 0);
        rules::RuleMatcher matcher(book);
        std::vector<std::string> everywhere;
        for (const rules::Market& market : book.markets) everywhere.push_back(market.name);
        matcher.select(everywhere, {});
        std::vector<Finding> findings;
        for (const Parsed& text : texts_) matcher.match(text.claims, text.facts, findings);
        return findings.size();
    }
    bool holds_somewhere(const CompiledRule& rule) { return found(rule) > 0; }
    bool holds_for_fewer(const CompiledRule& rule, const CompiledRule& narrower) {
        return found(narrower) < found(only_when(rule));
    }

    void note(const std::string& condition, bool seen_true, bool seen_false) {
        ++conditions_;
        if (!seen_true) gaps_.push_back(condition + ": never true");
        if (!seen_false) gaps_.push_back(condition + ": never false");
    }

    BookData& book_;
    const std::vector<Parsed>& texts_;
    std::vector<std::string> gaps_;
    std::size_t conditions_ = 0;
};

TEST(RuleCoverage, EveryConditionIsSeenTrueAndFalse) {
    BookData book;
    load(book);
    const std::vector<Parsed> texts = parse_proofs(book);
    ASSERT_GT(texts.size(), book.rules.size());
    Coverage coverage(book, texts);
    const std::vector<std::string> gaps = coverage.gaps();
    for (const std::string& gap : gaps) std::cout << "gap: " << gap << "\n";
    std::cout << coverage.conditions() << " conditions over " << texts.size() << " texts, " << gaps.size()
              << " gaps, limit " << kMostGaps << "\n";
    EXPECT_LE(gaps.size(), kMostGaps) << "a new condition needs texts that make it true and false";
}

}  // namespace
}  // namespace grainside::coverage
