// What people read of a dossier, word for word: a change of the view shows here. On the small book, so that a change of
// a rule does not; only the line with the book's digest is left out.
#include <re2/re2.h>

#include <string>

#include "cli_test.h"
#include "small_dossiers.h"

namespace grainside::tests {
namespace {

class DossierView : public CliTest {
protected:
    void SetUp() override {
        CliTest::SetUp();
        write_small_evidence("book");
    }
    // Standard output without the line of the digest, which must be the last.
    std::string view_of(std::vector<std::string> arguments) const {
        arguments.insert(arguments.end(), {"--rules", "book"});
        const ProcessResult result = run(std::move(arguments));
        EXPECT_EQ(result.err, "");
        const std::size_t last = result.out.rfind('\n', result.out.size() - 2) + 1;
        EXPECT_TRUE(RE2::FullMatch(result.out.substr(last),
                                   "Rule book [0-9a-f]{16}: [0-9]+ rules, [0-9]+ concepts, [0-9]+ term forms\\.\n"))
            << result.out;
        return result.out.substr(0, last);
    }
};

constexpr const char* kEnd =
    "This is not legal advice; local law and licensed practice decide. A grade judges\n"
    "words and evidence, never intent. 'From memory' marks a source whose text could\n"
    "not be seen when the rule was written.\n";

// The shares by hand, without the book's slip of 1 %: cotton 0.50 * 0.20 * 0.01, silk half of it, polyurethane
// 0.25 * 0.80 * 0.98, which is 99.2 % polyurethane. A coat of 0.16 mm with a standard uncertainty of 0.01 mm is above
// 0.15 mm with the 84 % of one standard deviation; 4 such readings would make its expanded uncertainty the 0.01 mm that
// lie between, and it must be further away than that. A reading weighs what the odds lose without it; the test
// WeighEachReadingByLeavingItOut of the commands has the figures.
TEST_F(DossierView, OfAJudgement) {
    write_file("tote.yaml",
               "sample: {what: \"Tote, tan\", category: bag, bought: 2024-08-14, price: 89.00 EUR, condition: used, "
               "months_in_use: 3}\n"
               "listing: {name: Cotton tote, description: \"Lining: silk. Waterproof. Cotton, too.\", region: eu}\n"
               "parts:\n"
               "  body:\n"
               "    readings:\n"
               "      - {method: look, outcome: film, date: 2024-08-20}\n"
               "      - {method: flame, outcome: melts, date: 2024-08-21, note: from the seam}\n"
               "  lining: {readings: [{method: section, coat: 0.16 \xC2\xB1 0.02 mm, date: 2024-08-22}]}\n");
    std::string wanted = R"(tote
Tote, tan; bought 2024-08-14 for 89.00 EUR; used, 3 months in use

whole
  unsupported    'Waterproof' (description)
      reads as     waterproof
      because      No reading on record speaks of it, and no test of this book
                   would.

body
  contradicted   'Cotton' (name), 'Cotton' (description)
      reads as     cotton
      because      The readings show polyurethane (99.0 %); cotton is false of
                   it.
      belief       true 0.7 %, false 99.3 %
      readings     A thread in the flame, 2024-08-21: it melts (16.8 decibans
                   against it, 48 to 1)
                   A look with the naked eye, 2024-08-20: a film without yarns
                   (4.9 decibans against it, 3.1 to 1)
      changes      Without 'A thread in the flame' of 2024-08-21 it would be
                   inconclusive.
      source       Law of the tests, section 1

lining
  inconclusive   'silk' (description)
      reads as     silk
      because      The coat of the lining is 0.160 +- 0.020 mm, too near to the
                   limit (above 0.15 mm) to decide. Silk has no thick coat, says
                   the limit of the tests.
      belief       false 84 %, not told apart 16 %
      limits       The coat of what is called silk (eu): lining coat 0.160 +-
                   0.020 mm; undecided (above 0.15 mm); by A section under the
                   microscope, 2024-08-22
      changes      5 readings of coat in all would settle it, if their mean
                   stays and their scatter is at random.
                   For its effort 'A thread in the flame' (5 min, about 1 euro,
                   harm: cut, by practised hands) would tell most about silk.
      source       Law of the tests, section 1

What the readings show
  body: what the sheet is
      99.0 %  polyurethane (before any reading 25 %)
  lining: its readings tell nothing of what it is

Cautions of the methods named
  - Only in a fume hood. (A thread in the flame)
  - Keep water at hand. (A thread in the flame)
  - Cut away from the hand. (A section under the microscope)

What the methods stand on
  - A look with the naked eye: Law of the tests, section 1
  - A thread in the flame: Standard of the tests (from memory)
  - A section under the microscope: Law of the tests, section 1

4 verdicts: 2 contradicted, 1 unsupported, 1 inconclusive
Decision rule for limits: both-guarded; a belief decides from 95 %; markets: eu.

)";
    RE2::GlobalReplace(&wanted, "\\+-", "\xC2\xB1");
    EXPECT_EQ(view_of({"judge", "tote.yaml", "--on", "2026-11-26"}), wanted + kEnd);
}

// The two readings of one look, which tell the same, count once and a half: with 0.97313 and 0.01283 for smelling of
// hair (slip included) silk is (0.97313 / 0.01283)^1.5 / 2 = 330 times as probable as cotton, with one of them 38
// times; polyurethane, whose chance of yarns is 0.20375 against 0.79775, is 2586 times less so. That leaves 99.66 % of
// silk. A caution that methods share is told once.
TEST_F(DossierView, OfWhatReadingsBearOut) {
    std::string methods = read_file(folder() / "book/methods/small.yaml");
    ASSERT_TRUE(
        RE2::Replace(&methods, R"(\[Cut away from the hand\.\])", "[Cut away from the hand., Keep water at hand.]"));
    write_file("book/methods/small.yaml", methods);
    write_file("scarf.yaml", kBorneOutDossier);
    std::string wanted = R"(scarf
Scarf

body
  consistent     'Silk' (name)
      reads as     silk
      because      The readings show silk (99.7 %).
      belief       true 99.7 %, false 0.3 %
      readings     A thread in the flame, 2024-08-21: smell of burnt hair (14.1
                   decibans for it, 26 to 1)
                   A thread in the flame, 2024-08-22: smell of burnt hair (14.1
                   decibans for it, 26 to 1)
                   A look with the naked eye, 2024-08-20: yarns can be seen (1.2
                   decibans for it, 1.3 to 1)
      limits       The coat of what is called silk (eu): body coat 0.100 +- 0.020
                   mm; met (not above 0.15 mm); by A section under the
                   microscope, 2024-08-22
      changes      It would stand without any one of its readings.
      source       Law of the tests, section 1

What the readings show
  body: what the sheet is
      99.7 %  silk (before any reading 25 %)
  lining: what the sheet is
        57 %  polyurethane (before any reading 25 %)
        29 %  cotton (before any reading 50 %)
        14 %  silk (before any reading 25 %)

Read, and no claim asked about it
  - lining: A look with the naked eye, 2024-08-20: a film without yarns

Cautions of the methods named
  - Only in a fume hood. (A thread in the flame)
  - Keep water at hand. (A thread in the flame; A section under the microscope)
  - Cut away from the hand. (A section under the microscope)

What the methods stand on
  - A look with the naked eye: Law of the tests, section 1
  - A thread in the flame: Standard of the tests (from memory)
  - A section under the microscope: Law of the tests, section 1

1 verdict: 1 consistent
Decision rule for limits: both-guarded; a belief decides from 95 %; markets: eu.

)";
    RE2::GlobalReplace(&wanted, "\\+-", "\xC2\xB1");
    EXPECT_EQ(view_of({"judge", "scarf.yaml"}), wanted + kEnd);
}

// A measured value as the dossier writes it, and as the limit is told.
TEST_F(DossierView, OfQuantitiesIsAsWritten) {
    write_file("purse.yaml",
               "sample: {what: Purse}\n"
               "listing: {name: Silk purse, region: us}\n"
               "parts: {body: {readings: [{method: section, coat: \"300 \xC2\xB1 20 \xC2\xB5m\"}]}}\n");
    const std::string unasked = view_of({"judge", "purse.yaml"});
    EXPECT_NE(unasked.find("Read, and no claim asked about it\n"
                           "  - body: A section under the microscope: coat 300 \xC2\xB1 20 \xC2\xB5m\n"),
              std::string::npos)
        << unasked;
    const std::string asked = view_of({"judge", "purse.yaml", "--market", "eu"});
    EXPECT_EQ(asked.find("no claim asked"), std::string::npos) << asked;
    EXPECT_NE(asked.find(": body coat 0.300 \xC2\xB1 0.020\n"
                         "                   mm; contradicts (above 0.15 mm); by A section under the\n"),
              std::string::npos)
        << asked;
}

TEST_F(DossierView, OfAnIdentity) {
    write_file("tote.yaml", kClearDossier);
    EXPECT_EQ(view_of({"identify", "tote.yaml"}), std::string(R"(tote
Tote, tan; bought 2024-08-14 for 89.00 EUR; used, 3 months in use

What the readings show
  body: what the sheet is
      99.0 %  polyurethane (before any reading 25 %)
      readings     A look with the naked eye, 2024-08-20: a film without yarns
                   (6.0 decibans for polyurethane, 3.9 to 1)
                   A thread in the flame, 2024-08-21: it melts (18.8 decibans
                   for polyurethane, 76 to 1)

Cautions of the methods named
  - Only in a fume hood. (A thread in the flame)
  - Keep water at hand. (A thread in the flame)

What the methods stand on
  - A look with the naked eye: Law of the tests, section 1
  - A thread in the flame: Standard of the tests (from memory)

)") + kEnd);
}

}  // namespace
}  // namespace grainside::tests
