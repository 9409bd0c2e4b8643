// The labels of corpus/dossiers: what a reader of the policy, who never saw the program, expects of each claim and
// part.
#ifndef GRAINSIDE_TESTS_DOSSIERS_LABELS_H
#define GRAINSIDE_TESTS_DOSSIERS_LABELS_H

#include <string>
#include <vector>

namespace grainside::tests {

struct ClaimLabel {
    std::string dossier, field, words, part, grade, why;
    int nth = 1;  // which occurrence of the words in the field, from 1
};
struct PartLabel {
    std::string dossier, part, frame;
    std::string candidate;  // empty: the readings do not decide
    bool contradictory = false;
};

// Throw std::runtime_error where a line cannot be read, so that no label is lost in silence.
std::vector<ClaimLabel> read_claim_labels();
std::vector<PartLabel> read_part_labels();

// The names of the dossiers: every *.yaml of the folder, sorted.
std::vector<std::string> dossier_names();

// A label that the program does not meet, and why that is left so. The test fails when one is met, so that the entry
// goes.
struct KnownGap {
    const char* dossier;
    const char* words;
    const char* reason;
};
inline constexpr KnownGap kKnownGaps[] = {
    {"brass_skin_zinc_core", "nylon",
     "'Military-grade webbing on the shoulder, nylon': webbing names no part, so the nylon is read of the body"},
    {"vegan_with_leather_trim", "Made in\nPortugal",
     "a line that ends in 'Made in' and goes on with a capital is read as two items"},
};

}  // namespace grainside::tests

#endif  // GRAINSIDE_TESTS_DOSSIERS_LABELS_H
