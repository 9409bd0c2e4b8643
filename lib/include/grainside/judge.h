// Judging a dossier: the listing's claims against what the tests showed.
//
//     const auto dossier = grainside::Dossier::parse("tote.yaml",
//                                                    "sample: {what: Tote}\n"
//                                                    "listing: {name: Full grain leather tote}\n"
//                                                    "parts:\n"
//                                                    "  body:\n"
//                                                    "    readings:\n"
//                                                    "      - {method: cut-edge, outcome: yarns-under-coat}\n",
//                                                    ".", evidence);
//     if (!dossier) return 2;
//     grainside::Judge judge(book, evidence, {.today = "2026-11-26"});
//     const grainside::Judgement& result = judge.judge(dossier.value());
//     for (const grainside::Verdict& verdict : result.verdicts) {
//         std::cout << grainside::name_of(verdict.grade) << " by " << grainside::name_of(verdict.basis)
//                   << (verdict.holds < 0.05 ? ", hardly true" : "") << '\n';
//         for (const grainside::WeighedEvidence& weighed : verdict.readings) {
//             std::cout << "reading " << weighed.reading << " of the " << grainside::name_of(weighed.part)
//                       << (weighed.decibans < 0 ? " speaks against it\n" : " speaks for it\n");
//         }
//     }
//     // prints: contradicted by evidence, hardly true
//     // prints: reading 0 of the body speaks against it
//     for (const grainside::NamedMethod& method : result.methods) {
//         std::cout << method.method << ", cautions to show: " << method.cautions.size() << '\n';
//     }
//     // prints: cut-edge, cautions to show: 1
//
//     // What to test next, on a sample of which nothing is known; the cheapest harmless test comes first.
//     const auto untested = grainside::Dossier::parse("belt.yaml",
//                                                     "sample: {what: Belt}\n"
//                                                     "listing: {name: Full grain leather belt}\n",
//                                                     ".", evidence);
//     if (!untested) return 2;
//     const grainside::TestPlan plan = judge.plan(untested.value());
//     const grainside::PlannedTest& next = plan.tests[plan.next];  // where `tests` is not empty
//     std::cout << next.method << ", harm: " << next.harm << '\n';
//     // prints: loupe, harm: none
//
// Every claim of the listing gets one of the six grades, with the belief that it is true or false, the readings that
// decided, and what would change the verdict. Only a reading makes a claim consistent or contradicted; the wording
// alone never does. A document on file (filed_proofs.h; CheckOptions::proofs, and the dossier's own) makes one
// consistent that no reading contradicts; beliefs are those of the readings alone. Without a day asked for, documents
// must hold on JudgeOptions::today. `identify` and `plan` need no listing.
//
// A judge keeps working memory. Not thread-safe: make one a thread; the books may be shared and must outlive it.
// Judging never fails: what is wrong with a dossier was reported when it was read. Same dossier, books and options,
// same result.
#ifndef GRAINSIDE_JUDGE_H
#define GRAINSIDE_JUDGE_H

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "grainside/checker.h"
#include "grainside/dossier.h"
#include "grainside/evidence_book.h"

namespace grainside {
inline namespace v0 {

// How a measured value is held against a limit (JCGM 106:2012, clause 8). The guard band is the book's share of the
// expanded uncertainty (k = 2).
enum class DecisionRule : std::uint8_t {
    both_guarded,        // decided only outside of the guard band, on either side; the default
    simple_acceptance,   // as the value stands
    guarded_acceptance,  // in doubt against the claim
    guarded_rejection    // in doubt for the claim
};
std::string_view name_of(DecisionRule rule) noexcept;  // "both-guarded"
std::optional<DecisionRule> decision_rule_named(std::string_view name) noexcept;

struct JudgeOptions {
    // Markets and day, for rules on words and for limits alike. Without a day: that on which the listing was captured.
    CheckOptions check = {};
    DecisionRule decision_rule = DecisionRule::both_guarded;
    // YYYY-MM-DD, for dossiers that do not say when the listing was captured; the tools pass today. Empty: every date.
    std::string today = {};
};

// A reading of a dossier and what it weighs for a claim.
struct WeighedEvidence {
    Part part = Part::body;
    std::uint32_t reading = 0;  // index among the part's readings, in written order
    double decibans = 0;        // for the claim where positive; ten times the decimal logarithm of the odds it adds
};

// What the readings make of a limit: the claim is false by it; true by it; the claim passes, which alone does not make
// it true; read, but too near to decide; nothing on record.
enum class LimitVerdict : std::uint8_t { contradicts, supports, met, undecided, unread };
std::string_view name_of(LimitVerdict verdict) noexcept;

// A limit that was asked.
struct LimitResult {
    std::string limit;  // its permanent id
    std::string title;
    std::string because;
    Part part = Part::body;
    std::string quantity;  // "coat"; empty where the limit asks what a part is made of
    std::string value;     // "0.210 mm" with its expanded uncertainty, as printed; empty where nothing was read
    std::string bound;     // "above 0.15 mm"
    LimitVerdict says = LimitVerdict::unread;
    double probability = 0;                // that the quantity lies where the limit contradicts the claim
    std::optional<std::uint32_t> repeats;  // readings in all that would settle it; nothing where none would
    std::vector<std::uint32_t> sources;    // indices into RuleBook::sources()
    std::vector<std::string> markets;      // where it holds; empty = everywhere
    std::vector<std::uint32_t> readings;   // indices among the part's readings
};

struct Verdict {
    std::uint32_t claim = 0;  // index into CheckResult::mentions of Judgement::check
    Grade grade = Grade::unsupported;
    Basis basis = Basis::evidence;
    std::uint32_t finding = kNoClaim;  // the finding on its words that gave or shares the grade; kNoClaim: none
    // Belief, adding up to 1: true, false, not told apart by any reading.
    double holds = 0;
    double fails = 0;
    double open = 1;
    bool contradictory = false;  // readings of its part contradict one another
    // Those that weigh at least a deciban, heaviest first. Empty where a part has more than 64 readings: each is
    // weighed by leaving it out, and the work goes with their square.
    std::vector<WeighedEvidence> readings;
    std::vector<LimitResult> limits;
    std::string because;      // one or two sentences
    std::string next_test;    // id of the method that would_change names; empty: none
    std::string say_instead;  // what passes the check in its place, by rule, limit or reading; may be empty
    std::string remedy;       // what a person can do about the words where say_instead is empty; may be empty
    std::vector<std::string> would_change;  // one sentence each
};

// What a part may be, by one question.
struct CandidateBelief {
    std::string id;
    std::string name;
    double prior = 0;      // before any reading, 0 to 1
    double posterior = 0;  // after all of them; those of a frame add up to 1
};
struct FrameBelief {
    std::string frame;
    std::string title;
    std::vector<CandidateBelief> candidates;  // most believed first, then by id
    double conflict = 0;                      // decibans
    bool contradictory = false;
    bool own_priors = false;              // the dossier's, not the book's
    std::vector<std::uint32_t> readings;  // indices of the readings that tell
    std::vector<std::uint32_t> odd_ones;  // readings without which there is no contradiction
    std::vector<double> decibans;         // of `readings`: what each adds to the odds of the most believed candidate
};
struct PartJudgement {
    Part part = Part::body;
    std::vector<FrameBelief> frames;  // those that a reading tells something about
};

struct PlannedTest {
    std::string method;
    std::string title;
    Part part = Part::body;
    std::string harm;  // none, mark, cut, destroy
    std::string who;   // anyone, practised, laboratory
    double bits = 0;   // expected about the open claims, on top of the tests before it
    double minutes = 0;
    double cost = 0;                 // euro
    std::vector<std::string> about;  // what is asked, as concept wordings; "what it is" without a listing
    std::vector<std::string> cautions;
};
struct TestPlan {
    std::vector<PlannedTest> tests;  // harmless first
    std::size_t next = 0;            // the one to make first, where only one is made
    std::size_t questions = 0;       // open claims that a test may settle, each part and statement counted once
    std::size_t statements = 0;      // of the listing that are open in all, also those that no test can bear out
    double decided_now = 0;          // share of the questions, 0 to 1
    double decided_after = 0;        // expected
    double minutes = 0;
    double cost = 0;
};

// Where a reading stands: index among the part's readings, in written order.
struct ReadingPlace {
    Part part = Part::body;
    std::uint32_t reading = 0;
};

// A test that is on record, or that a verdict names.
struct NamedMethod {
    std::string method;
    std::string title;
    std::vector<std::string> cautions;
    std::vector<std::uint32_t> sources;  // indices into RuleBook::sources()
};

struct Judgement {
    const CheckResult* check = nullptr;  // of the dossier's listing; nullptr where it has none
    std::vector<Verdict> verdicts;       // in the order of the claims, then findings on words that are no claims
    std::vector<PartJudgement> parts;
    std::vector<NamedMethod> methods;   // on record or named in a verdict, each once, in the book's order
    std::vector<ReadingPlace> unasked;  // readings that no claim asks about; only with a listing
    Grade worst = Grade::consistent;
};

class Judge {
public:
    Judge(const RuleBook& rules, const EvidenceBook& evidence, JudgeOptions options = {});
    Judge(Judge&&) noexcept;
    Judge& operator=(Judge&&) noexcept;
    ~Judge();

    // The result lives until the next call.
    const Judgement& judge(const Dossier& dossier);
    // The same with another listing in the place of the dossier's, such as a reworded one.
    // REQUIRES: the dossier has a listing.
    const Judgement& judge(const Dossier& dossier, const Listing& listing);
    // The same without the listing: what each part may be, and the methods on record.
    const Judgement& identify(const Dossier& dossier);
    // Which tests to make next. With a listing: about its claims that are not decided yet; without: what the parts are.
    TestPlan plan(const Dossier& dossier);

    const JudgeOptions& options() const noexcept;

private:
    struct Workspace;
    std::unique_ptr<Workspace> work_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_JUDGE_H
