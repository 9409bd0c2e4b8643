// Dossiers of the small evidence book (tests/cli/evidence_book) in the shapes that the commands meet.
#ifndef GRAINSIDE_TESTS_CLI_SMALL_DOSSIERS_H
#define GRAINSIDE_TESTS_CLI_SMALL_DOSSIERS_H

namespace grainside::tests {

// Called cotton, and melts in the flame as polyurethane does.
extern const char* const kClearDossier;
// Called cotton on the strength of one weak reading.
extern const char* const kThinDossier;
// Readings, but nothing claimed.
extern const char* const kNoListingDossier;
// Nothing but the sample.
extern const char* const kBareDossier;
// Called silk; its coat of 0.16 mm, give or take 0.02 mm, lies near the limit of 0.15 mm.
extern const char* const kNearDossier;
// Called silk; the flame says so twice, its thin coat passes, and of its lining nothing is claimed.
extern const char* const kBorneOutDossier;
// Called cotton; before any reading 60 % polyurethane are believed, and not the book's 25 %.
extern const char* const kOwnPriorsDossier;
// The flame says cotton, the solvent polyurethane.
extern const char* const kContradictoryDossier;
// The clear one, and a laboratory says that it is polyurethane.
extern const char* const kConfirmedDossier;
// An unknown method in line 4 and a value without uncertainty in line 5.
extern const char* const kBrokenDossier;
// Escape sequences, overrides of the text's direction and markup in every text of the dossier.
extern const char* const kHostileDossier;

}  // namespace grainside::tests

#endif  // GRAINSIDE_TESTS_CLI_SMALL_DOSSIERS_H
