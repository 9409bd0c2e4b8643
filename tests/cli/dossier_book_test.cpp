// What the keys of an evidence book change in what judge and identify say of a dossier. The small book is changed in
// one place, the figures by hand are without its slip of 1 %, and the descriptions of the keys are those of
// rules/EVIDENCE.md.
#include <re2/re2.h>

#include <string>

#include "cli_test.h"

namespace grainside::tests {
namespace {

class DossierBook : public CliTest {
protected:
    void SetUp() override {
        CliTest::SetUp();
        write_small_evidence("book");
    }
    void change(const std::string& file, const std::string& from, const std::string& to) const {
        std::string text = read_file(folder() / "book" / file);
        const std::size_t at = text.find(from);
        ASSERT_NE(at, std::string::npos) << from;
        write_file("book/" + file, text.replace(at, from.size(), to));
    }
    std::string records_of(const std::string& command, const std::string& dossier) const {
        const ProcessResult result = run_with_input({command, "--format", "jsonl", "-", "--rules", "book"}, dossier);
        EXPECT_NE(result.status, 2) << result.err;
        EXPECT_EQ(result.err, "");
        return result.out;
    }
};

// What `records` of identify believe of `candidate`; -1 where they do not tell.
double belief_in(const std::string& candidate, const std::string& records) {
    double share = -1;
    RE2::PartialMatch(records, "\"candidate\":\"" + candidate + R"(","prior":[0-9.]+,"probability":([0-9.e-]+))",
                      &share);
    return share;
}

constexpr double kSlip = 0.01;

const std::string kLookedAt = "sample: {what: Tote}\nparts: {body: {readings: [{method: look, outcome: ";

// The share that 'unclear' has in each row is no evidence, and the rest is scaled: a film is 80 of 90 on polyurethane
// and 20 of 60 on the others, so that 0.25 * 0.889 of it stands against 0.75 * 0.333.
TEST_F(DossierBook, HasAnOutcomeThatTellsNothing) {
    change("methods/small.yaml", "film: a film without yarns}", "film: a film without yarns, unclear: neither}");
    change("methods/small.yaml", "{yarns: 20, film: 80}", "{yarns: 10, film: 80, unclear: 10}");
    change("methods/small.yaml", "{yarns: 80, film: 20}", "{yarns: 40, film: 20, unclear: 40}");
    EXPECT_EQ(belief_in("cotton", records_of("identify", kLookedAt + "unclear}]}}\n")), -1);
    const std::string film = records_of("identify", kLookedAt + "film}]}}\n");
    EXPECT_NEAR(belief_in("polyurethane", film), 0.471, kSlip) << film;
    const std::string both = records_of("identify", kLookedAt + "unclear}, {method: look, outcome: film}]}}\n");
    EXPECT_NEAR(belief_in("polyurethane", both), belief_in("polyurethane", film), 1e-5) << both;

    // By another name the book must say so: else 0.25 * 0.1 of polyurethane stands against 0.75 * 0.4.
    change("methods/small.yaml", "unclear: neither}", "vague: neither}\n  says_nothing: [vague]");
    change("methods/small.yaml", "unclear: 10", "vague: 10");
    change("methods/small.yaml", "unclear: 40", "vague: 40");
    EXPECT_EQ(belief_in("cotton", records_of("identify", kLookedAt + "vague}]}}\n")), -1);
    change("methods/small.yaml", "\n  says_nothing: [vague]", "");
    EXPECT_NEAR(belief_in("polyurethane", records_of("identify", kLookedAt + "vague}]}}\n")), 0.077, kSlip);
}

// 0.30 mm is thick beyond its uncertainty; 0.16 mm, give or take 0.02 mm, neither thick nor thin.
TEST_F(DossierBook, LetsAQuantityImplyAnOutcome) {
    change("methods/small.yaml", "  reads: {coat: mm}\n",
           "  reads: {coat: mm}\n"
           "  outcomes: {thick: a thick coat, thin: a thin coat}\n"
           "  implies: {thick: {coat: {above: 0.15 mm}}, thin: {coat: {at_most: 0.15 mm}}}\n"
           "  likelihood: {sheet: {polyurethane: {thick: 90, thin: 10}, others: {thick: 10, thin: 90}}}\n");
    const auto read = [&](const std::string& coat) {
        return records_of("identify", "sample: {what: Tote}\nparts: {body: {readings: [{method: section, coat: " +
                                          coat + " \xC2\xB1 0.02 mm}]}}\n");
    };
    const std::string thick = read("0.30");
    EXPECT_NE(thick.find(R"("method":"section","outcome":"thick")"), std::string::npos) << thick;
    EXPECT_NEAR(belief_in("polyurethane", thick), 0.75, kSlip) << "0.25 * 0.9 against 0.75 * 0.1";
    const std::string thin = read("0.10");
    EXPECT_NEAR(belief_in("polyurethane", thin), 0.036, kSlip) << "0.25 * 0.1 against 0.75 * 0.9";
    const std::string between = read("0.16");
    EXPECT_EQ(between.find("\"outcome\""), std::string::npos) << between;
    EXPECT_EQ(belief_in("polyurethane", between), -1) << between;
}

// No candidate is linen; of them cotton is nearest to it, a fibre of plants too. Without the slip: cotton 0.5 * 0.98 *
// 0.8 stands against silk 0.25 * 0.01 * 0.8 and polyurethane 0.25 * 0.01 * 0.2. Where kin is apart none of them can be
// linen, but that was believed before any reading, so that the readings decide nothing.
TEST_F(DossierBook, SaysWhetherKinIsOpen) {
    const std::string dossier =
        "sample: {what: Tote}\n"
        "listing: {name: Linen tote}\n"
        "parts: {body: {readings: [{method: flame, outcome: paper}, {method: look, outcome: yarns}]}}\n";
    const auto share_in = [](const std::string& key, const std::string& records) {
        double share = -1;
        RE2::PartialMatch(records, '"' + key + "\":([0-9.e-]+)", &share);
        return share;
    };
    const std::string open = records_of("judge", dossier);
    EXPECT_NEAR(share_in("probability_open", open), 0.994, kSlip) << open;
    EXPECT_NEAR(share_in("probability_false", open), 0.006, kSlip) << open;
    change("candidates.yaml", "  title: what the sheet is\n", "  title: what the sheet is\n  kin: apart\n");
    const std::string apart = records_of("judge", dossier);
    EXPECT_EQ(share_in("probability_open", apart), 0) << apart;
    EXPECT_EQ(share_in("probability_false", apart), 1) << apart;
    EXPECT_NE(apart.find("\"grade\":\"inconclusive\""), std::string::npos) << apart;
}

// One part in five is something else, which melts as often as the others on average, each by how common it is:
// (0.4 * 0.01 + 0.2 * 0.01 + 0.2 * 0.98) / 0.8. So it keeps its fifth, and polyurethane gets 0.196 of 0.2525.
TEST_F(DossierBook, LeavesRoomForWhatItDoesNotList) {
    change("candidates.yaml", "{candidate: polyurethane, prior: 1}\n",
           "{candidate: polyurethane, prior: 1}\n"
           "    - {candidate: something-else, prior: 1, unlisted: yes, name: something else}\n");
    const std::string melts =
        records_of("identify", "sample: {what: Tote}\nparts: {body: {readings: [{method: flame, outcome: melts}]}}\n");
    EXPECT_NEAR(belief_in("polyurethane", melts), 0.776, kSlip) << melts;
    EXPECT_NEAR(belief_in("something-else", melts), 0.2, kSlip) << melts;
}

}  // namespace
}  // namespace grainside::tests
