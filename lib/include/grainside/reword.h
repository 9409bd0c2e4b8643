// Rewording a listing: the edits after which nothing is left to flag where they were made, and what only a person can
// settle.
//
//     grainside::Listing listing;
//     listing.fields = {{"name", "A genuine PU leather tote"}, {"description", "Waterproof."}};
//     grainside::Reworder reworder(book, {.markets = {"us"}, .on = "2026-11-26"});
//     const grainside::Rewording& result = reworder.reword(listing);
//     for (const grainside::Edit& edit : result.edits) std::cout << edit.words << " -> " << edit.wording << '\n';
//     // prints: A genuine PU leather -> An imitation leather
//     std::cout << result.texts.front() << '\n';
//     // prints: An imitation leather tote
//     for (const grainside::Leftover& left : result.left) std::cout << left.words << ": " << left.why_not << '\n';
//     // prints: Waterproof: what would be true cannot be known from the listing
//
// Each finding's own wording is put in its place: in the case of the words replaced, with the article in front put
// right, without a word twice. Words that mean nothing are taken out where the phrase stands without them. Then the
// whole listing is checked again. An edit that leaves a finding on its words, or that brings one elsewhere, is taken
// back and told among what is left; this repeats until nothing changes. The reworded listing never has more findings
// than the listing. Rewording it again changes nothing in any listing of the corpus; one that disagrees with itself in
// several places may have more to settle in a second run.
//
// Only what the listing itself says, or readings of a dossier show, is ever written: no test result, certificate or
// share is made up. Same listing, book and options, same edits. Never fails. Not thread-safe: make one a thread; the
// book must outlive it.
#ifndef GRAINSIDE_REWORD_H
#define GRAINSIDE_REWORD_H

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "grainside/checker.h"
#include "grainside/dossier.h"
#include "grainside/judge.h"
#include "grainside/listing.h"

namespace grainside {
inline namespace v0 {

inline constexpr std::uint32_t kNoRule = 0xffffffff;

struct RewordOptions {
    // Take out words that need a proof which is not named ('waterproof'), too. Otherwise they are left for a person,
    // who may have the proof. Words that mean nothing are taken out either way.
    bool leave_out_unproven = false;
    // Besides, take out words of every grade where the rule says that they can go, and where no other wording is known:
    // unsupported and vague ones, and those that disagree with another statement. For a person who chooses edits one by
    // one; facts may go with such words.
    bool leave_out_all = false;
};

// Words of the listing that an edit takes as true.
struct Taken {
    std::uint32_t field = 0;
    std::string words;  // empty: it takes none
};

// Spans are half-open and count bytes of the listing as it was given.
struct Edit {
    std::uint32_t field = 0;
    std::uint32_t start = 0;
    std::uint32_t end = 0;
    std::string words;    // what stands there; more than the finding's words where an article or a space changes too
    std::string wording;  // what is to stand there; empty = left out
    std::string because;
    std::uint32_t rule = kNoRule;  // index into RuleBook::rules(); kNoRule: readings of a dossier
    Grade grade = Grade::vague;
    // Where the listing disagrees with itself: the statement that the wording follows. Whether that is the true one,
    // the seller must know.
    Taken taken = {};
    // The finding's words, where these are taken out: `words` and `wording` may have an article or a letter beside
    // them that changes. Else empty.
    std::string left_out = {};
};

// A finding that stands after the edits.
struct Leftover {
    std::uint32_t field = 0;
    std::uint32_t start = 0;
    std::uint32_t end = 0;
    std::string words;
    std::string because;
    std::string why_not;  // why there is no edit
    std::string remedy;   // what a person can do; may be empty
    std::uint32_t rule = kNoRule;
    Grade grade = Grade::vague;
};

struct Rewording {
    std::vector<Edit> edits;         // by field and start; they never overlap
    std::vector<Leftover> left;      // by field and start
    std::vector<std::string> texts;  // of all fields, after the edits
    // Documents on file that cover a claim of the listing as it was given: CheckResult::proofs_met.
    std::vector<std::uint32_t> proofs_met = {};
};

class Reworder {
public:
    explicit Reworder(const RuleBook& book, CheckOptions check = {}, RewordOptions options = {});
    Reworder(Reworder&&) noexcept;
    Reworder& operator=(Reworder&&) noexcept;
    ~Reworder();

    // By the words. The result lives until the next call.
    const Rewording& reword(const Listing& listing);
    // By the words and the readings of a dossier that has a listing: what they contradict is named as what it was
    // identified to be. `judge` was made with the same book.
    const Rewording& reword(const Dossier& dossier, Judge& judge);

private:
    struct Workspace;
    std::unique_ptr<Workspace> work_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_REWORD_H
