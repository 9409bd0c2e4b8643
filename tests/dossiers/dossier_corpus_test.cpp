// Every dossier of corpus/dossiers is judged, and each label met. Rules count as of the day on which the listing was
// captured, so that the answer does not change with the calendar.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "grainside/dossier.h"
#include "grainside/evidence_book.h"
#include "grainside/judge.h"
#include "grainside/rule_book.h"
#include "labels.h"

namespace grainside::tests {
namespace {

constexpr const char* kToday = "2026-11-26";
constexpr double kDecided = 0.95;

struct Books {
    Books() : rules(std::move(RuleBook::built_in()).value()), evidence(std::move(EvidenceBook::load(rules)).value()) {}
    RuleBook rules;
    EvidenceBook evidence;
};

const Books& books() {
    static const Books kBooks;
    return kBooks;
}

Dossier read(const std::string& name) {
    auto dossier = Dossier::read(std::string(GRAINSIDE_DOSSIERS) + '/' + name + ".yaml", books().evidence, {kToday});
    for (const Issue& issue : dossier.issues()) ADD_FAILURE() << to_text(issue);
    return std::move(dossier).value();
}

bool is_known_gap(const ClaimLabel& label) {
    return std::any_of(std::begin(kKnownGaps), std::end(kKnownGaps),
                       [&](const KnownGap& gap) { return label.dossier == gap.dossier && label.words == gap.words; });
}

bool is_known_gap(const PartLabel& label) {
    return std::any_of(std::begin(kKnownPartGaps), std::end(kKnownPartGaps), [&](const KnownPartGap& gap) {
        return label.dossier == gap.dossier && label.part == gap.part && label.frame == gap.frame;
    });
}

// A label names a candidate, or what a candidate is: 'brass' for one of its alloys.
bool meets(const PartLabel& label, const CandidateBelief& first) {
    if (label.candidate.empty()) return first.posterior < kDecided;
    const ConceptId wanted = books().rules.find_concept(label.candidate);
    const ConceptId is = books().rules.find_concept(first.id);
    const bool same = first.id == label.candidate || (wanted != 0 && is != 0 && books().rules.is_a(is, wanted));
    return same && first.posterior >= kDecided;
}

// The byte at which the label's words stand.
std::size_t place_of(const ClaimLabel& label, std::string_view text) {
    std::size_t at = text.find(label.words);
    for (int i = 1; i < label.nth && at != std::string_view::npos; ++i) at = text.find(label.words, at + 1);
    return at;
}

// The verdict on the claim that the label means: of those on its words one of its part, and one on exactly its words,
// go first ('full grain calf leather' is two claims). Where the part was read otherwise the verdict still counts: parts
// are scored on the labelled listings.
const Verdict* verdict_for(const ClaimLabel& label, const Listing& listing, const Judgement& judgement) {
    const Verdict* found = nullptr;
    int best = -1;
    for (const Verdict& verdict : judgement.verdicts) {
        const Claim& claim = judgement.check->mentions[verdict.claim];
        const Field& field = listing.fields[claim.field];
        if (field.name != label.field) continue;
        const std::size_t at = place_of(label, field.text);
        if (at == std::string_view::npos || claim.start >= at + label.words.size() || claim.end <= at) continue;
        const bool same_words = claim.start == at && claim.end == at + label.words.size();
        const int fit = (name_of(claim.part) == label.part ? 2 : 0) + (same_words ? 1 : 0);
        if (fit <= best) continue;
        best = fit;
        found = &verdict;
    }
    return found;
}

class DossierCorpus : public testing::TestWithParam<std::string> {};

TEST_P(DossierCorpus, IsJudgedAsLabelled) {
    const Dossier dossier = read(GetParam());
    Judge judge(books().rules, books().evidence);
    const Judgement& judgement = judge.judge(dossier);
    for (const ClaimLabel& label : read_claim_labels()) {
        if (label.dossier != GetParam()) continue;
        ASSERT_NE(dossier.listing(), nullptr);
        const Verdict* verdict = verdict_for(label, *dossier.listing(), judgement);
        const std::string got(verdict == nullptr ? "no claim read" : std::string(name_of(verdict->grade)));
        if (is_known_gap(label)) {
            EXPECT_NE(got, label.grade) << "'" << label.words << "' is met now: take it out of kKnownGaps";
            continue;
        }
        EXPECT_EQ(got, label.grade) << label.part << " '" << label.words << "' (" << label.why << ")\n"
                                    << (verdict == nullptr ? "" : verdict->because);
    }
}

TEST_P(DossierCorpus, ShowsWhatThePartsAre) {
    const Dossier dossier = read(GetParam());
    Judge judge(books().rules, books().evidence);
    const Judgement& judgement = judge.identify(dossier);
    for (const PartLabel& label : read_part_labels()) {
        if (label.dossier != GetParam()) continue;
        bool found = false;
        for (const PartJudgement& part : judgement.parts) {
            for (const FrameBelief& belief : part.frames) {
                if (name_of(part.part) != label.part || belief.frame != label.frame) continue;
                found = true;
                const CandidateBelief first = belief.candidates.front();
                if (is_known_gap(label)) {
                    EXPECT_FALSE(meets(label, first)) << label.part << ": take it out of kKnownPartGaps";
                } else {
                    EXPECT_TRUE(meets(label, first))
                        << label.part << " is " << label.candidate << ": " << first.id << ' ' << first.posterior;
                }
                EXPECT_EQ(belief.contradictory, label.contradictory) << label.part << ": " << belief.conflict;
            }
        }
        // A question that no reading moved is not told.
        EXPECT_TRUE(found || label.candidate.empty()) << label.part << ' ' << label.frame << " has no belief";
    }
}

// Nothing is ever called consistent without a reading, a limit that a reading meets, or a document for it.
TEST_P(DossierCorpus, IsConsistentOnlyByEvidence) {
    const Dossier dossier = read(GetParam());
    Judge judge(books().rules, books().evidence);
    const Judgement& judgement = judge.judge(dossier);
    for (const Verdict& verdict : judgement.verdicts) {
        if (verdict.grade != Grade::consistent) continue;
        const ClaimOnFile* filed = on_file(*judgement.check, verdict.claim);
        if (filed != nullptr && filed->outcome == ProofOutcome::supports) continue;
        const bool reading = std::any_of(verdict.readings.begin(), verdict.readings.end(),
                                         [](const WeighedEvidence& one) { return one.decibans > 0; });
        const bool limit = std::any_of(verdict.limits.begin(), verdict.limits.end(),
                                       [](const LimitResult& one) { return one.says == LimitVerdict::supports; });
        EXPECT_TRUE(reading || limit) << verdict.because;
    }
}

INSTANTIATE_TEST_SUITE_P(All, DossierCorpus, testing::ValuesIn(dossier_names()),
                         [](const auto& row) { return row.param; });

TEST(DossierLabels, NameDossiersThatExist) {
    const std::vector<std::string> names = dossier_names();
    EXPECT_GE(names.size(), 12U);
    std::set<std::string> labelled;
    for (const ClaimLabel& label : read_claim_labels()) labelled.insert(label.dossier);
    for (const PartLabel& label : read_part_labels()) labelled.insert(label.dossier);
    for (const std::string& name : labelled) {
        EXPECT_TRUE(std::binary_search(names.begin(), names.end(), name)) << name;
    }
    for (const std::string& name : names) EXPECT_TRUE(labelled.contains(name)) << name << " has no label";
}

}  // namespace
}  // namespace grainside::tests
