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
// 0.15 mm with the 84 % of one standard deviation.
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
      because      The readings show polyurethane (99.0 %); 'Cotton' is false of
                   it.
      belief       true 0.7 %, false 99.3 %
      readings     A thread in the flame, 2024-08-21: it melts (15.8 decibans
                   against it, 38 to 1)
                   A look with the naked eye, 2024-08-20: a film without yarns
                   (3.9 decibans against it, 2.5 to 1)
      changes      Without 'A thread in the flame' of 2024-08-21 it would be
                   inconclusive.
      source       Law of the tests, section 1

lining
  inconclusive   'silk' (description)
      reads as     silk
      because      Coat of the lining is 0.160 +- 0.020 mm: too near to the limit
                   (above 0.15 mm) to decide.
      belief       false 84 %, not told apart 16 %
      limits       The coat of what is called silk (eu): lining coat 0.160 +-
                   0.020 mm; undecided (above 0.15 mm)
      changes      4 readings of coat in all would settle it, if their mean
                   stays and their scatter is at random.
                   For its effort 'A thread in the flame' (5 min, about 1 euro,
                   harm: cut, by practised hands) would tell most about 'silk'.
      source       Law of the tests, section 1

What the readings show
  body: what the sheet is
      99.0 %  polyurethane (before any reading 25 %)
  lining: its readings tell nothing of what it is

Cautions of the methods named
  - A thread in the flame: Only in a fume hood.
  - A thread in the flame: Keep water at hand.
  - A section under the microscope: Cut away from the hand.

4 verdicts: 2 contradicted, 1 unsupported, 1 inconclusive
Decision rule for limits: both-guarded; a belief decides from 95 %; markets: eu.

)";
    RE2::GlobalReplace(&wanted, "\\+-", "\xC2\xB1");
    EXPECT_EQ(view_of({"judge", "tote.yaml", "--on", "2026-11-26"}), wanted + kEnd);
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
  - A thread in the flame: Only in a fume hood.
  - A thread in the flame: Keep water at hand.

)") + kEnd);
}

}  // namespace
}  // namespace grainside::tests
