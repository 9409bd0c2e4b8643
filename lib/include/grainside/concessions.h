// Concessions: findings that a team has agreed to let stand until a day (ISO 9000: leave to release what does not
// conform).
//
//     const auto agreed = grainside::Concessions::parse("agreed.yaml",
//                                                       "- rule: vegan-called-leather\n"
//                                                       "  words: vegan leather\n"
//                                                       "  reason: printed hang tags are used up first\n"
//                                                       "  owner: packaging team\n"
//                                                       "  until: 2026-12-31\n",
//                                                       evidence);
//     if (!agreed) return 2;
//     grainside::Listing listing;
//     listing.fields = {{"name", "Vegan leather tote, waterproof"}};
//     grainside::Checker checker(book);
//     const grainside::CheckResult& result = checker.check(listing);
//     grainside::ConcessionLedger ledger(agreed.value(), "2026-11-26");
//     const grainside::Conceded& conceded = ledger.of_findings(book, listing, result);
//     std::cout << conceded.count << " of " << result.findings.size() << ", what counts is "
//               << grainside::name_of(conceded.worst) << '\n';
//     // prints: 1 of 2, what counts is unsupported
//     grainside::ConcessionLedger next_year(agreed.value(), "2027-01-01");
//     std::cout << grainside::name_of(next_year.of_findings(book, listing, result).worst) << '\n';
//     // prints: misleading
//     std::cout << next_year.stale(true).front().code << '\n';
//     // prints: concession-ran-out
//
// A file is a YAML list (rules/CONCESSIONS.md). A concession names a rule, and narrows it by a listing, by words,
// or both, and then perhaps by a field. Words are compared by what the tokenizer makes of them, so that capitals,
// accents, spaces and hyphens do not matter; all else does. Reading reports every fault of every file at once.
//
// Limits: files of 4 MiB, 20,000 concessions, reasons of 2000 bytes, owners of 200. A finding costs a handful of
// look-ups, however many concessions there are; a finding of a rule that no concession names costs one.
//
// Concessions may be shared by threads; a ledger is not thread-safe: keep one a thread and `add` them.
#ifndef GRAINSIDE_CONCESSIONS_H
#define GRAINSIDE_CONCESSIONS_H

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/evidence_book.h"
#include "grainside/judge.h"
#include "grainside/listing.h"
#include "grainside/result.h"

namespace grainside {
inline namespace v0 {

inline constexpr std::size_t kMaxConcessions = 20'000;
inline constexpr std::size_t kMaxConcessionReason = 2000;
inline constexpr std::size_t kMaxConcessionOwner = 200;
inline constexpr std::uint32_t kNoConcession = 0xffffffff;

struct Concession {
    // Of a rule on words, of a limit, or of the readings alone: "readings/contradicted", "readings/unsupported",
    // "readings/inconclusive".
    std::string rule;
    std::string listing;  // its id; empty = any
    std::string words;    // as written; empty = any
    std::string field;    // "name", "additionalProperty.Lining"; empty = any
    std::string reason;
    std::string owner;
    std::string until;         // the last day, YYYY-MM-DD
    bool needs_judge = false;  // only a verdict on a dossier can meet it, never a finding of `check`
    std::string file;          // where it stands
    std::uint32_t line = 0;
};

// What a verdict is conceded or looked up by: the rule on words or the limit that decided, else "readings/" and the
// grade; the id that a concession and a SARIF log name.
std::string rule_of(const RuleBook& book, const CheckResult& check, const Verdict& verdict);

// Immutable once read; any number of threads may share it.
class Concessions {
public:
    // All files together, in their order; rules are looked up in `book`, which need not live on. Faults: those of YAML;
    // "unreadable", "wrong-type", "unknown-key", "missing-key", "unknown-rule", "unknown-field", "too-wide" (neither
    // listing nor words), "no-words" (words without a letter or digit), "duplicate-concession", "too-long",
    // "too-many-concessions".
    static Result<Concessions> read(std::span<const std::filesystem::path> files, const EvidenceBook& book);
    // `file` names the text in faults.
    static Result<Concessions> parse(std::string file, std::string text, const EvidenceBook& book);

    Concessions(Concessions&&) noexcept;
    Concessions& operator=(Concessions&&) noexcept;
    ~Concessions();

    // In the order of the files.
    std::span<const Concession> all() const noexcept;

    struct Index;  // for the library's own stages
    const Index& index() const noexcept { return *index_; }

private:
    explicit Concessions(std::unique_ptr<Index> index);
    std::unique_ptr<Index> index_;
};

// A concession that meets a finding.
struct ConcessionMatch {
    std::uint32_t concession = kNoConcession;  // index into Concessions::all()
    bool in_force = false;                     // false: it ran out, so the finding counts
};

// What concessions make of the findings of a listing, or of the verdicts on a dossier.
struct Conceded {
    const Concessions* concessions = nullptr;
    std::vector<ConcessionMatch> matches;  // one for each finding or verdict
    std::size_t count = 0;                 // how many stand under one that is in force
    Grade worst = Grade::consistent;       // of those that count

    bool stands(std::size_t at) const noexcept { return matches[at].in_force; }
};

// Matches, and keeps account of which concessions met something. Not thread-safe; what it is made from must outlive it.
// Where several meet a finding, one in force goes before one that ran out, then the narrowest.
class ConcessionLedger {
public:
    // `today`: YYYY-MM-DD; a concession holds up to and on its last day.
    ConcessionLedger(const Concessions& concessions, std::string today);
    ConcessionLedger(ConcessionLedger&&) noexcept;
    ConcessionLedger& operator=(ConcessionLedger&&) noexcept;
    ~ConcessionLedger();

    // Each result lives until the next call.
    const Conceded& of_findings(const RuleBook& book, const Listing& listing, const CheckResult& result);
    // REQUIRES: `judgement` has a check, of `listing`.
    const Conceded& of_verdicts(const RuleBook& book, const Listing& listing, const Judgement& judgement);

    // Takes over what another ledger of the same concessions met, as if its findings had been asked here.
    void add(const ConcessionLedger& other);

    // A warning for each concession that ran out although findings still meet it ("concession-ran-out") or that met
    // nothing ("concession-unused"), in the order of the files. With `only_words`, those that need a judge are left
    // out.
    std::vector<Issue> stale(bool only_words) const;

private:
    struct Account;
    std::unique_ptr<Account> account_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_CONCESSIONS_H
