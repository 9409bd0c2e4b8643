// What is read of a text that begins, ends or is stretched at any word, as one number: tests/scoring/README.md says
// what for.
#ifndef GRAINSIDE_TESTS_SCORING_CUT_TEXTS_H
#define GRAINSIDE_TESTS_SCORING_CUT_TEXTS_H

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "grainside/checker.h"
#include "grainside/listing.h"
#include "grainside/rule_book.h"

namespace grainside::scoring {

// Reads changed texts one after the other, each as the only field of a listing, and keeps a digest of all lines. Not
// thread-safe.
class CutTexts {
public:
    // `checker` is one of `book`, and what was checked last with it is lost. `in_full`, where it is not null, takes
    // each text and its lines: which of them changed.
    CutTexts(const RuleBook& book, Checker& checker, std::string* in_full)
        : book_(book), checker_(checker), in_full_(in_full) {}

    // Every few words in a row of each field: what stands at the border of a text stands in the middle of another.
    void cut(const Listing& listing);
    // Each field with one word left out, and with one to eight words that mean nothing put in, at each place between
    // two words: what reaches how far.
    void stretch(const Listing& listing);

    // "~ 311 texts, 207 claims, 9 findings, 3f2a9c0155b6e0d1\n" of all texts so far.
    std::string line() const;

private:
    void read(std::string_view field, std::string_view text);
    void add(std::string_view line);

    const RuleBook& book_;
    Checker& checker_;
    std::string* in_full_;
    std::size_t texts_ = 0;
    std::size_t claims_ = 0;
    std::size_t findings_ = 0;
    std::uint64_t digest_ = 0xcbf29ce484222325ULL;  // FNV-1a, 64 bit
};

}  // namespace grainside::scoring

#endif  // GRAINSIDE_TESTS_SCORING_CUT_TEXTS_H
