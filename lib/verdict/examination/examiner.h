// Examining a rule book itself: rules that cannot speak, rules that hide one another, concepts that no rule asks about,
// sources that nothing cites, examples too alike; and which conditions its texts have seen true and false.
//
//     grainside::Examiner examiner(book, &evidence);
//     examiner.add(listing);                                     // further texts, as many as there are
//     for (const auto& remark : examiner.report().remarks) std::cerr << grainside::to_text(remark.issue);
//
// Every proof text of the book is read once, and asked in each market of the book (and in none) on every day on which
// other rules come into force or end. `prove` (proof.h) asks whether a rule does what its file says; the examiner asks
// whether the rules get on with one another. What it finds depends on the texts: a rule that no text reaches is told,
// although some text might.
//
// Examining never fails. Work is linear in texts and listings; at most 200 remarks of one code are told, the others
// counted in a last one. Not thread-safe: make one a thread. The books must outlive it.
#ifndef GRAINSIDE_VERDICT_EXAMINATION_EXAMINER_H
#define GRAINSIDE_VERDICT_EXAMINATION_EXAMINER_H

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/dossier.h"
#include "grainside/evidence_book.h"
#include "grainside/listing.h"
#include "grainside/result.h"
#include "grainside/rule_book.h"

namespace grainside {
inline namespace v0 {

// Something about the book. An error wants mending; a note is for whoever looks after the book.
struct BookRemark {
    std::string rule;   // empty where it is of no single rule
    std::string other;  // the second rule of the matter; empty where there is none
    Issue issue;        // its code is permanent; rules/README.md explains each
};

struct ExaminationReport {
    std::uint32_t rules = 0;   // in the book
    std::uint32_t texts = 0;   // proof texts and listings that were asked
    std::uint32_t errors = 0;  // among the remarks
    std::uint32_t notes = 0;
    std::vector<BookRemark> remarks;  // by file, line, code, rule
};

// A condition, or one key of it, and what it came out as.
struct ClauseCoverage {
    std::string owner;        // the id of the rule or limit
    std::string file;         // relative to the rule folder
    std::uint32_t line = 0;   // of the rule or limit
    std::string clause;       // "unless[2]", "when kind"; of a limit "contradicts" or "supports"
    bool of_a_limit = false;  // it reads evidence, and can be unknown besides
    bool seen_true = false;
    bool seen_false = false;
    bool seen_unknown = false;  // of a limit: asked where nothing was read, or too near to decide

    bool complete() const noexcept { return seen_true && seen_false && (!of_a_limit || seen_unknown); }
};

struct CoverageReport {
    std::uint32_t texts = 0;              // proof texts
    std::uint32_t dossiers = 0;           // that limits were asked with
    std::uint32_t gaps = 0;               // answers that were never seen; at most three a clause
    std::vector<ClauseCoverage> clauses;  // rules in the order of the book, then limits
};

class Examiner {
public:
    // `evidence` is needed for the limits only; nullptr leaves them out.
    explicit Examiner(const RuleBook& book, const EvidenceBook* evidence = nullptr);
    Examiner(Examiner&&) noexcept;
    Examiner& operator=(Examiner&&) noexcept;
    ~Examiner();

    // A further text for shadowed and silent rules. Proves nothing and covers no condition: that is for the proofs.
    void add(const Listing& listing);
    // The same with the dossier's listing, and a case for the limits: asked in the market that its listing names and
    // in each market of the book that has limits of its own.
    void add(const Dossier& dossier);

    // `rule`: only the remarks that name it; empty = all.
    ExaminationReport report(std::string_view rule = {}) const;

    // Conditions of rules over the proof texts. What a rule is `like` covers what they share; its own clauses are its
    // own. Each key of a clause is asked alone of every claim that says what the clause asks for (`says` of every
    // claim), and each `unless`, `beside` and `unless_beside` as a whole of the claims that `when` lets through. A
    // `kind` that no claim of these concepts can be other than is not counted. With an EvidenceBook also the limits,
    // over the dossiers that were added. `rule`: only this rule's; empty = all.
    CoverageReport coverage(std::string_view rule = {}) const;

private:
    struct Workspace;
    std::unique_ptr<Workspace> work_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_VERDICT_EXAMINATION_EXAMINER_H
