// Proofs on file: documents that support claims which words alone leave unsupported (rules/EVIDENCE.md, section 10).
//
//     auto filed = grainside::FiledProofs::parse("filed.yaml",
//                                                "- document: Test report 4711\n"
//                                                "  laboratory: Harbour Test House\n"
//                                                "  date: 2026-03-02\n"
//                                                "  expires: 2029-03-01\n"
//                                                "  scope: {listings: [tote-1], says: [waterproof]}\n"
//                                                "  standard: ISO 811\n"
//                                                "  result: water column 2,000 mm\n",
//                                                ".", book);
//     if (!filed) return 2;
//     const auto shared = std::make_shared<const grainside::FiledProofs>(std::move(filed).value());
//     grainside::Checker checker(book, {.on = "2026-11-26", .proofs = shared});
//     grainside::Listing listing;
//     listing.id = "tote-1";
//     listing.fields = {{"name", "Waterproof tote"}};
//     const grainside::CheckResult& result = checker.check(listing);
//     for (const grainside::ClaimOnFile& claim : result.on_file) {
//         if (claim.lifted) std::cout << grainside::proof_text(shared->all()[claim.proof]) << '\n';
//     }
//     // prints: Test report 4711, Harbour Test House, 2026-03-02, runs out 2029-03-01
//     const grainside::CheckResult& later = checker.check_again(listing, {.on = "2029-03-02", .proofs = shared});
//     const grainside::ClaimOnFile& claim = later.on_file.front();
//     std::cout << grainside::why_not_lifted(book, shared->all()[claim.proof], claim.outcome,
//                                            later.mentions[claim.claim].says)
//               << '\n';
//     // prints: Test report 4711 ran out on 2029-03-01
//
// A file is a YAML list; each entry names a document, who issued it, its date and what it speaks of. A finding of grade
// unsupported is lifted where an entry covers its claim: the same concept or a kind of it, on that part, in that
// listing, on a day on which the document holds, by a standard that the rule book asks for, with a result. What
// misleads or means nothing is lifted only where a document beside the words would silence its rule. A document is
// taken at its word: whether its result reaches the number asked is for people. Reading reports every fault of every
// file at once.
//
// Limits: files of 4 MiB, 20,000 entries, texts of 500 bytes, 100 listings or concepts an entry.
#ifndef GRAINSIDE_FILED_PROOFS_H
#define GRAINSIDE_FILED_PROOFS_H

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/claim.h"
#include "grainside/result.h"
#include "grainside/rule_book.h"

namespace grainside {
inline namespace v0 {

inline constexpr std::size_t kMaxFiledProofs = 20'000;
inline constexpr std::size_t kMaxFiledProofText = 500;
inline constexpr std::size_t kMaxFiledProofScope = 100;
inline constexpr std::uint32_t kNoProof = 0xffffffff;

struct FiledProof {
    std::string document;               // "Test report 4711"
    std::string laboratory;             // who issued it
    std::string date;                   // the day from which it holds, YYYY-MM-DD
    std::string expires;                // the last day on which it holds; empty = it does not run out
    std::vector<std::string> listings;  // ids, or base names of their files; empty = any
    std::vector<Part> parts;            // empty or with `whole` = any
    std::vector<ConceptId> says;        // claims that say one of these, or a kind of it
    std::string standard;               // "ISO 811"; may be empty
    std::string result;                 // "water column 2,000 mm"; may be empty
    std::string copy;                   // the document's own file as the entry names it; may be empty
    std::string sha256;                 // of that file, where the entry states it
    std::string file;                   // where the entry stands
    std::uint32_t line = 0;
};

// What a document makes of a claim that it covers.
enum class ProofOutcome : std::uint8_t {
    supports,
    ran_out,        // its last day is over
    not_yet,        // it is dated later than the day asked
    no_result,      // the rule book asks for a number, and it states none
    other_standard  // by a standard that the rule book does not ask for
};

// Immutable once read; any number of threads may share it.
class FiledProofs {
public:
    // All files together, in their order; concepts are looked up in `book`, which need not live on. Faults: those of
    // YAML; "unreadable", "wrong-type", "unknown-key", "missing-key", "unknown-concept", "unknown-part", "bad-date" (it
    // runs out before it holds), "too-long", "too-many-proofs", "duplicate-proof", "outside-folder", "too-large",
    // "bad-digest", "digest-differs".
    static Result<FiledProofs> read(std::span<const std::filesystem::path> files, const RuleBook& book);
    // `file` names the text in faults; files that entries name are looked for in `folder` and below.
    static Result<FiledProofs> parse(std::string file, std::string text, const std::filesystem::path& folder,
                                     const RuleBook& book);

    FiledProofs(FiledProofs&&) noexcept;
    FiledProofs& operator=(FiledProofs&&) noexcept;
    ~FiledProofs();

    // In the order of the files.
    std::span<const FiledProof> all() const noexcept;
    // A copy of these, then those of `more`.
    FiledProofs joined_by(const FiledProofs& more) const;

    struct Index;  // for the library's own stages
    const Index& index() const noexcept { return *index_; }
    explicit FiledProofs(std::unique_ptr<Index> index);

private:
    std::unique_ptr<Index> index_;
};

// "Test report 4711, Harbour Test House, 2026-03-02, runs out 2029-03-01". Texts as the file has them: not inert.
std::string proof_text(const FiledProof& proof);

// Why a document does not support a claim of `says`: "Test report 4711 names ISO 5403; ISO 811 or IEC 60529 is asked".
// Empty for `supports`. Not inert.
std::string why_not_lifted(const RuleBook& book, const FiledProof& proof, ProofOutcome outcome, ConceptId says);

// Keeps account of which entries covered a claim. Not thread-safe; the proofs must outlive it.
class ProofLedger {
public:
    explicit ProofLedger(const FiledProofs& proofs) : proofs_(proofs), met_(proofs.all().size()) {}

    // CheckResult::proofs_met of a check with these proofs, or with these joined by others behind them.
    void add(std::span<const std::uint32_t> met);
    void add(const ProofLedger& other);
    // A warning for each that covered none ("proof-unused"), in the order of the files.
    std::vector<Issue> unused() const;

private:
    const FiledProofs& proofs_;
    std::vector<bool> met_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_FILED_PROOFS_H
