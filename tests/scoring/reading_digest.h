// What is read of many texts, as one number: tests/scoring/README.md says what for.
#ifndef GRAINSIDE_TESTS_SCORING_READING_DIGEST_H
#define GRAINSIDE_TESTS_SCORING_READING_DIGEST_H

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "grainside/checker.h"
#include "grainside/rule_book.h"

namespace grainside::scoring {

// Reads texts one after the other, each as the only field of a listing, and keeps a digest of all lines. Not
// thread-safe.
class ReadingDigest {
public:
    // `checker` is one of `book`, and what was checked last with it is lost. `in_full`, where it is not null, takes
    // each text and its lines: which of them changed.
    ReadingDigest(const RuleBook& book, Checker& checker, std::string* in_full)
        : book_(book), checker_(checker), in_full_(in_full) {}

    void read(std::string_view field, std::string_view text);

    // "~ 311 texts, 207 claims, 9 findings, 3f2a9c0155b6e0d1\n" of all texts so far.
    std::string line() const;

private:
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

#endif  // GRAINSIDE_TESTS_SCORING_READING_DIGEST_H
