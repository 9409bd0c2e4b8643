// The evidence half of a rule book: which tests there are, what their outcomes say, where limits lie.
//
//     if (!grainside::EvidenceBook::is_there(book)) return 2;  // a folder may hold rules on wording only
//     const auto loaded = grainside::EvidenceBook::load(book);
//     if (!loaded) {
//         for (const grainside::Issue& issue : loaded.issues()) std::cerr << grainside::to_text(issue);
//         return 2;
//     }
//     const grainside::EvidenceBook& tests = loaded.value();
//     std::cout << std::boolalpha << (tests.method_count() > 0 && &tests.rule_book() == &book) << '\n';
//     // prints: true
//
// It is loaded apart from the RuleBook because checking wording does not need it. Immutable once loaded; any number of
// threads may use one without locking. The RuleBook must outlive it, where it was when it was asked for: do not move
// it. Copies are left out because a book is large; share it by reference or move it.
#ifndef GRAINSIDE_EVIDENCE_BOOK_H
#define GRAINSIDE_EVIDENCE_BOOK_H

#include <cstddef>
#include <memory>
#include <string>
#include <vector>

#include "grainside/result.h"
#include "grainside/rule_book.h"

namespace grainside {

namespace evidence {
struct EvidenceData;
}

inline namespace v0 {

class EvidenceBook {
public:
    // Whether `book` has any file of the evidence half; a folder may hold rules on wording only.
    static bool is_there(const RuleBook& book) noexcept;
    // From the files that `book` was made from. Every fault is among the issues, with its place (rules/EVIDENCE.md has
    // the codes).
    static Result<EvidenceBook> load(const RuleBook& book);

    EvidenceBook(EvidenceBook&&) noexcept;
    EvidenceBook& operator=(EvidenceBook&&) noexcept;
    ~EvidenceBook();

    const RuleBook& rule_book() const noexcept { return *book_; }
    std::size_t method_count() const noexcept;
    std::size_t limit_count() const noexcept;
    std::size_t candidate_count() const noexcept;

    const evidence::EvidenceData& data() const noexcept { return *data_; }  // for the library's own stages

private:
    EvidenceBook(const RuleBook& book, std::unique_ptr<evidence::EvidenceData> data);
    const RuleBook* book_;
    std::unique_ptr<evidence::EvidenceData> data_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_EVIDENCE_BOOK_H
