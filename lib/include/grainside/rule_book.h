// The rule book: concepts, terms, rules and sources, loaded once and then immutable.
//
//     const auto loaded = grainside::RuleBook::built_in();  // or load("rules"): YAML, every fault reported at once
//     if (!loaded) return 2;
//     const grainside::RuleBook& rules = loaded.value();
//     const grainside::RuleInfo* const rule = rules.find_rule("imitation-called-leather");
//     if (rule != nullptr) std::cout << rule->id << ": " << grainside::name_of(rule->grade) << '\n';
//     // prints: imitation-called-leather: misleading
//
//     // Concepts form a tree; numbers of concepts hold for the book that gave them.
//     const grainside::ConceptId split = rules.find_concept("split-leather");
//     std::cout << rules.concept_wording(split) << ", a leather: " << rules.is_a(split, rules.find_concept("leather"))
//               << '\n';
//     // prints: split leather, a leather: 1
//     for (const grainside::Demand& demand : rules.demands_for(rules.find_concept("nickel-free"))) {
//         std::cout << demand.standard << '\n';
//     }
//     // prints: EN 1811
//     std::cout << rules.market_name("us") << '\n';
//     // prints: United States
//
// Guarantees: any number of threads may use one RuleBook without locking. Copies are left out because a book is large;
// share it by reference or move it. References and views that it gives live as long as the book.
#ifndef GRAINSIDE_RULE_BOOK_H
#define GRAINSIDE_RULE_BOOK_H

#include <cstdint>
#include <filesystem>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/claim.h"
#include "grainside/finding.h"
#include "grainside/result.h"

namespace grainside {

namespace document {
class Document;
}
namespace rules {
struct BookData;
}

inline namespace v0 {

// A law, standard, guide or 'common practice' that rules stand on.
struct SourceInfo {
    std::string id;            // "us-16cfr24-2-a"
    std::string cite;          // as one would cite it
    std::string says;          // what it says, in our words
    bool from_memory = false;  // nobody could see the text: every finding on it says so
    bool practice = false;     // a fact of the trade without a published text
};

// One text of a rule's proof. The texts live as long as the book: thousands of them are never looked at in a check.
struct ProofText {
    std::string_view text;      // checked as the description of a listing without other fields
    std::string_view title;     // checked as its name; usually empty
    std::string_view material;  // checked as its material field; usually empty
    std::string_view words;     // what must be flagged; empty in a text that must pass
    std::string_view because;   // why it passes; may be empty
    std::string_view category;  // the listing's category; may be empty
    std::uint32_t line = 0;     // where it stands in the rule's file
};

struct RuleInfo {
    std::string id;
    std::string group;  // what it is about, by the file that it or its model stands in: "split", "plating"
    std::string like;   // the rule whose condition it shares, its model; empty = none
    std::string title;
    std::string because;      // what a copywriter reads
    std::string say_instead;  // template, see rules/README.md; empty = none
    std::string remedy;       // what a person can do where no wording can be known; empty = say_instead always can
    bool leave_out = false;   // the words can be taken out and nothing that is known goes with them
    Grade grade = Grade::vague;
    Basis basis = Basis::wording;
    std::vector<std::string> markets;    // empty = everywhere; ISO 3166-1 alpha-2 in lower case, "uk" and "eu"
    std::string from;                    // first day in force, YYYY-MM-DD; empty = always
    std::string until;                   // last day in force; empty = open
    std::vector<std::uint32_t> sources;  // indices into RuleBook::sources()
    std::vector<ProofText> flags, passes;
    std::string file;  // relative to the rule folder
    std::uint32_t line = 0;
};

// What would support a claim that words alone leave unsupported: a standard test, and the number that it has to give.
struct Demand {
    ConceptId supports = 0;
    std::string of;                      // the goods that it is for, "textile"; empty = any
    std::string standard;                // "ISO 811"; empty where none is published
    std::string number;                  // "a water column of 1,500 mm or more"
    std::vector<std::uint32_t> sources;  // indices into RuleBook::sources()
};

class RuleBook {
public:
    // Reads the folder's YAML. Every fault of every file is among the issues, with its place.
    static Result<RuleBook> load(const std::filesystem::path& folder);
    // The default book. Fails only if the library was damaged.
    static Result<RuleBook> built_in();
    // For the library's own stages and tools: of files that were read already.
    static Result<RuleBook> from_documents(std::vector<document::Document> documents);

    RuleBook(RuleBook&&) noexcept;
    RuleBook& operator=(RuleBook&&) noexcept;
    ~RuleBook();

    std::span<const RuleInfo> rules() const noexcept;
    std::span<const SourceInfo> sources() const noexcept;
    // nullptr where there is none of that id.
    const RuleInfo* find_rule(std::string_view id) const noexcept;

    // The markets that rules and CheckOptions::markets may name, in the order of the book: "us", "eu", ...
    std::vector<std::string> markets() const;
    // "United States" of "us"; the code itself where the book gives no name, "" where it has no such market.
    std::string_view market_name(std::string_view market) const noexcept;

    // "" for 0 or an id of another book.
    std::string_view concept_name(ConceptId id) const noexcept;     // the permanent id, "full-grain-leather"
    std::string_view concept_wording(ConceptId id) const noexcept;  // how to write it, "full grain leather"
    ConceptId find_concept(std::string_view name) const noexcept;   // 0 where there is none
    bool is_a(ConceptId id, ConceptId ancestor) const noexcept;     // reflexive

    // What is demanded for a claim of `id`: its own demands in the order of the book, else those of the nearest
    // ancestor that has some (of equally near ones that of the parents written first). Empty where there is none.
    std::span<const Demand> demands_for(ConceptId id) const noexcept;

    // Sixteen hexadecimal digits over all that the book was made from: two books with the same digest give the same
    // findings.
    std::string_view digest() const noexcept;
    std::size_t concept_count() const noexcept;
    std::size_t term_form_count() const noexcept;  // after spelling variants

    const rules::BookData& data() const noexcept { return *data_; }  // for the library's own stages

private:
    explicit RuleBook(std::unique_ptr<rules::BookData> data);
    std::unique_ptr<rules::BookData> data_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_RULE_BOOK_H
