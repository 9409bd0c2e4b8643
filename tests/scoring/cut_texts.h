// What is read of a text that begins, ends or is stretched at any word, as one number: tests/scoring/README.md says
// what for.
#ifndef GRAINSIDE_TESTS_SCORING_CUT_TEXTS_H
#define GRAINSIDE_TESTS_SCORING_CUT_TEXTS_H

#include <string>

#include "grainside/checker.h"
#include "grainside/listing.h"
#include "grainside/rule_book.h"
#include "reading_digest.h"

namespace grainside::scoring {

// Not thread-safe.
class CutTexts {
public:
    // As ReadingDigest has them.
    CutTexts(const RuleBook& book, Checker& checker, std::string* in_full) : digest_(book, checker, in_full) {}

    // Every few words in a row of each field: what stands at the border of a text stands in the middle of another.
    void cut(const Listing& listing);
    // Each field with one word left out, and with one to eight words that mean nothing put in, at each place between
    // two words: what reaches how far.
    void stretch(const Listing& listing);

    // That of all texts so far.
    std::string line() const { return digest_.line(); }

private:
    ReadingDigest digest_;
};

}  // namespace grainside::scoring

#endif  // GRAINSIDE_TESTS_SCORING_CUT_TEXTS_H
