// The comparison of a claim with a candidate, step by step (rules/EVIDENCE.md, section 1), and what it makes of claims
// that the trade knows the answer to.
#include "identify/claim_bearing.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "rules/book_data.h"
#include "support/built_in_evidence.h"

namespace grainside::identify {
namespace {

using support::built_in_book;
using support::built_in_evidence;
using support::concept_named;

constexpr auto kHolds = Bearing::holds;
constexpr auto kFails = Bearing::fails;
constexpr auto kOpen = Bearing::open;

const vocabulary::ConceptTree& tree() {
    return built_in_book().data().vocabulary.concepts;
}

evidence::Candidate candidate(std::string_view is) {
    evidence::Candidate made;
    made.id = is;
    made.is = is == "unknown" ? ConceptId{0} : concept_named(is);
    return made;
}

std::vector<ConceptId> concepts(const std::vector<std::string_view>& names) {
    std::vector<ConceptId> ids;
    ids.reserve(names.size());
    for (const std::string_view name : names) ids.push_back(concept_named(name));
    return ids;
}

std::vector<Bearing> compared(std::vector<evidence::Candidate> candidates, std::string_view says) {
    evidence::Frame frame;
    frame.candidates = std::move(candidates);
    return bearings_of(tree(), frame, concept_named(says));
}

using Bearings = std::vector<Bearing>;

TEST(ClaimBearing, WhatItIsAndAllAboveHolds) {
    EXPECT_EQ(compared({candidate("full-grain-leather"), candidate("cotton")}, "full-grain-leather"),
              (Bearings{kHolds, kFails}));
    EXPECT_EQ(compared({candidate("full-grain-leather"), candidate("cotton")}, "leather"), (Bearings{kHolds, kFails}));
}

TEST(ClaimBearing, WhatIsBorneOutAndAllAboveHolds) {
    evidence::Candidate fabric = candidate("pu-coated-fabric");
    fabric.bears_out = concepts({"polyester"});
    EXPECT_EQ(compared({fabric, candidate("suede")}, "polyester"), (Bearings{kHolds, kFails}));
    EXPECT_EQ(compared({fabric, candidate("suede")}, "textile"), (Bearings{kHolds, kFails}));
}

TEST(ClaimBearing, TrueGoesBeforeRuledOut) {
    evidence::Candidate nubuck = candidate("nubuck");
    nubuck.rules_out = concepts({"grain-leather"});
    EXPECT_EQ(compared({nubuck, candidate("cotton")}, "grain-leather"), (Bearings{kHolds, kFails}));
}

// 'Suede split' lies below suede, which step 3 would leave open, and below the ruled-out split, which goes first.
TEST(ClaimBearing, RuledOutGoesBeforeOpen) {
    evidence::Candidate suede = candidate("suede");
    suede.rules_out = concepts({"split-leather"});
    evidence::Candidate plain = candidate("suede");
    EXPECT_EQ(compared({suede, plain}, "suede-split"), (Bearings{kFails, kOpen}));
    evidence::Candidate both = candidate("cotton");
    both.rules_out = concepts({"leather"});
    both.leaves_open = concepts({"leather"});
    EXPECT_EQ(compared({both, plain}, "leather"), (Bearings{kFails, kHolds}));
}

TEST(ClaimBearing, WhatIsLeftOpenAndAllBelowIsOpen) {
    evidence::Candidate fabric = candidate("pu-coated-fabric");
    fabric.leaves_open = concepts({"textile"});
    EXPECT_EQ(compared({fabric, candidate("cotton")}, "textile"), (Bearings{kOpen, kHolds}));
    EXPECT_EQ(compared({fabric, candidate("cotton")}, "cotton"), (Bearings{kOpen, kHolds}));
    // What does not lie below it is not left open with it.
    EXPECT_EQ(compared({fabric, candidate("suede")}, "leather"), (Bearings{kFails, kHolds}));
}

TEST(ClaimBearing, MoreThanItIsStaysOpen) {
    EXPECT_EQ(compared({candidate("bovine-leather"), candidate("goat-leather")}, "box-calf"),
              (Bearings{kOpen, kFails}));
    EXPECT_EQ(compared({candidate("stainless-steel-316"), candidate("stainless-steel-304")}, "stainless-steel-316l"),
              (Bearings{kOpen, kFails}));
}

TEST(ClaimBearing, WhatIsNoConceptIsOpenButForWhatItRulesOut) {
    evidence::Candidate unknown = candidate("unknown");
    unknown.rules_out = concepts({"leather"});
    EXPECT_EQ(compared({unknown, candidate("cotton")}, "cotton"), (Bearings{kOpen, kHolds}));
    EXPECT_EQ(compared({unknown, candidate("suede")}, "leather"), (Bearings{kFails, kHolds}));
    EXPECT_EQ(compared({unknown, candidate("calf-leather")}, "calf-leather"), (Bearings{kFails, kHolds}));
    unknown.bears_out = concepts({"calf-leather"});
    EXPECT_EQ(compared({unknown, candidate("cotton")}, "calf-leather"), (Bearings{kHolds, kFails}));
}

// Nobody is nappa; it is a grain leather, and so are two of these.
TEST(ClaimBearing, TheNearestKinOfWhatNobodyIsStaysOpen) {
    EXPECT_EQ(compared({candidate("full-grain-leather"), candidate("nubuck"), candidate("suede"), candidate("cotton")},
                       "nappa"),
              (Bearings{kOpen, kOpen, kFails, kFails}));
}

// Nearest: acrylic is a synthetic fibre as nylon is; cotton is kin from further off, as cloth, where nobody is nearer.
TEST(ClaimBearing, OnlyTheNearestKinStaysOpen) {
    EXPECT_EQ(compared({candidate("nylon"), candidate("cotton"), candidate("suede")}, "acrylic-fibre"),
              (Bearings{kOpen, kFails, kFails}));
    EXPECT_EQ(compared({candidate("wool"), candidate("cotton"), candidate("suede")}, "acrylic-fibre"),
              (Bearings{kOpen, kOpen, kFails}));
}

// Cashmere and leather both come from an animal, which is a trait and makes no kin.
TEST(ClaimBearing, TraitsMakeNoKin) {
    ASSERT_TRUE(tree().is_a(concept_named("cashmere"), concept_named("trait-animal-derived")));
    ASSERT_TRUE(tree().is_a(concept_named("suede"), concept_named("trait-animal-derived")));
    EXPECT_EQ(compared({candidate("suede"), candidate("cotton")}, "cashmere"), (Bearings{kFails, kOpen}));
}

// In a frame whose kin are apart, who is not listed is none of the listed; what lies below one of them stays open.
TEST(ClaimBearing, KinThatAreApartAreFalse) {
    evidence::Frame frame;
    frame.candidates = {candidate("zinc-alloy-3"), candidate("stainless-steel-316"), candidate("unknown")};
    EXPECT_EQ(bearings_of(tree(), frame, concept_named("titanium")), (Bearings{kOpen, kOpen, kOpen}));
    frame.kin_apart = true;
    EXPECT_EQ(bearings_of(tree(), frame, concept_named("titanium")), (Bearings{kFails, kFails, kOpen}));
    EXPECT_EQ(bearings_of(tree(), frame, concept_named("stainless-steel-316l")), (Bearings{kFails, kOpen, kOpen}));
}

TEST(ClaimBearing, SomebodyWhoIsItLeavesNoKin) {
    EXPECT_EQ(compared({candidate("nappa"), candidate("full-grain-leather")}, "nappa"), (Bearings{kHolds, kFails}));
}

// ---- the default book --------------------------------------------------------------------------------------------

struct Row {
    std::string_view name, frame, candidate, says;
    Bearing want;
};

// EN 15987 (leather keeps its fibre structure; a coated textile is no leather); 'top grain' has two meanings in trade
// glossaries; brass, steel and zinc by their standards' families; the rest: common practice, no source.
constexpr Row kRows[] = {
    {"full_grain_is_leather", "sheet", "full-grain-leather", "leather", kHolds},
    {"full_grain_is_no_split", "sheet", "full-grain-leather", "split-leather", kFails},
    {"full_grain_is_not_corrected", "sheet", "full-grain-leather", "corrected-grain-leather", kFails},
    {"full_grain_may_be_top_grain", "sheet", "full-grain-leather", "top-grain-leather", kHolds},
    {"corrected_may_be_top_grain", "sheet", "corrected-grain-leather", "top-grain-leather", kHolds},
    {"corrected_is_not_full_grain", "sheet", "corrected-grain-leather", "full-grain-leather", kFails},
    {"suede_is_no_top_grain", "sheet", "suede", "top-grain-leather", kFails},
    {"suede_may_be_a_split", "sheet", "suede", "split-leather", kOpen},
    {"coated_fabric_is_no_leather", "sheet", "pu-coated-fabric", "leather", kFails},
    {"vinyl_is_no_leather", "sheet", "pvc-coated-fabric", "leather", kFails},
    {"microfibre_is_no_leather", "sheet", "microfibre-synthetic", "leather", kFails},
    {"bonded_is_no_leather", "sheet", "bonded-leather", "leather", kFails},
    {"cotton_is_no_leather", "sheet", "cotton", "leather", kFails},
    {"coated_fabric_is_polyurethane", "sheet", "pu-coated-fabric", "polyurethane", kHolds},
    {"coated_fabric_is_no_pvc", "sheet", "pu-coated-fabric", "polyvinyl-chloride", kFails},
    {"coated_fabric_may_have_a_cloth", "sheet", "pu-coated-fabric", "textile", kOpen},
    {"coated_fabric_may_have_polyester", "sheet", "pu-coated-fabric", "polyester", kOpen},
    {"coated_fabric_is_no_cashmere", "sheet", "pu-coated-fabric", "cashmere", kFails},
    {"full_grain_is_no_cloth", "sheet", "full-grain-leather", "textile", kFails},
    {"full_grain_may_be_nappa", "sheet", "full-grain-leather", "nappa", kOpen},
    {"corrected_may_be_nappa", "sheet", "corrected-grain-leather", "nappa", kOpen},
    {"nubuck_is_no_nappa", "sheet", "nubuck", "nappa", kFails},
    {"suede_is_no_nappa", "sheet", "suede", "nappa", kFails},
    {"coated_fabric_is_no_nappa", "sheet", "pu-coated-fabric", "nappa", kFails},
    {"cotton_is_cloth", "sheet", "cotton", "textile", kHolds},
    {"cotton_is_no_polyester", "sheet", "cotton", "polyester", kFails},
    {"cotton_may_be_waxed", "sheet", "cotton", "coated-canvas", kOpen},
    {"goat_is_no_cow", "species", "goat-leather", "cowhide", kFails},
    {"cattle_may_be_calf", "species", "bovine-leather", "calf-leather", kOpen},
    {"chrome_is_not_vegetable", "tannage", "chrome-tanned", "vegetable-tanned", kFails},
    {"vegetable_may_be_oak", "tannage", "vegetable-tanned", "oak-bark-tanned", kOpen},
    {"cw508l_is_brass", "metal", "brass-cw508l", "brass", kHolds},
    {"leaded_is_brass", "metal", "brass-c36000", "brass", kHolds},
    {"zinc_is_no_brass", "metal", "zinc-alloy-3", "brass", kFails},
    {"bronze_is_no_brass", "metal", "bronze", "brass", kFails},
    {"abs_is_no_brass", "metal", "abs-plastic", "brass", kFails},
    {"abs_is_plastic", "metal", "abs-plastic", "plastic", kHolds},
    {"zinc_is_no_plastic", "metal", "zinc-alloy-3", "plastic", kFails},
    {"grade_316_may_be_316l", "metal", "stainless-steel-316", "stainless-steel-316l", kOpen},
    {"grade_304_is_no_316l", "metal", "stainless-steel-304", "stainless-steel-316l", kFails},
    {"brass_is_no_316l", "metal", "brass-cw508l", "stainless-steel-316l", kFails},
    {"grade_304_is_stainless", "metal", "stainless-steel-304", "stainless-steel", kHolds},
    {"plain_steel_is_not_stainless", "metal", "carbon-steel", "stainless-steel", kFails},
    {"steel_is_no_titanium", "metal", "carbon-steel", "titanium", kFails},
    {"what_is_not_listed_may_be_titanium", "metal", "other-metal", "titanium", kOpen},
    {"what_is_not_listed_may_be_silk", "sheet", "other-sheet", "silk", kOpen},
    {"silver_is_no_titanium", "metal", "sterling-silver", "titanium", kFails},
    {"lacquer_may_lie_on_gold", "surface", "electrophoretic-lacquer", "gold-plated", kOpen},
    {"bare_metal_is_not_plated", "surface", "bare-metal", "gold-plated", kFails},
    {"a_pass_is_no_proof", "water", "keeps-water-out", "waterproof", kOpen},
    {"a_pass_is_resistance", "water", "keeps-water-out", "water-resistant", kHolds},
    {"a_failure_denies", "water", "lets-water-in", "waterproof", kFails},
};

class BuiltInBearing : public testing::TestWithParam<Row> {};

TEST_P(BuiltInBearing, IsWhatTheTradeSays) {
    const Row& row = GetParam();
    const std::size_t frame = support::frame_named(row.frame);
    const auto bearings = bearings_of(tree(), built_in_evidence().data().frames[frame], concept_named(row.says));
    EXPECT_EQ(bearings.at(support::candidate_named(frame, row.candidate)), row.want);
}

INSTANTIATE_TEST_SUITE_P(Rows, BuiltInBearing, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

// What every candidate of its frame denies, any reading would contradict, however good the goods (candidates.yaml).
TEST(BuiltInBearing, NoClaimOfAFrameIsFalseOfAll) {
    for (const evidence::Frame& frame : built_in_evidence().data().frames) {
        for (std::size_t id = 1; id < tree().size(); ++id) {
            const auto says = static_cast<ConceptId>(id);
            bool asked = false;
            for (const ConceptId claim : frame.claims) asked = asked || tree().is_a(says, claim);
            if (!asked || tree()[says].name.starts_with("trait-")) continue;
            const auto bearings = bearings_of(tree(), frame, says);
            EXPECT_TRUE(std::any_of(bearings.begin(), bearings.end(), [](Bearing one) { return one != kFails; }))
                << frame.id << " " << tree()[says].name;
        }
    }
}

TEST(Asks, ForItsPartsAndForWhatLiesBelowItsClaims) {
    const auto& frames = built_in_evidence().data().frames;
    const auto asked = [&](std::string_view frame, Part part, std::string_view says) {
        return asks(tree(), frames[support::frame_named(frame)], part, concept_named(says));
    };
    EXPECT_TRUE(asked("sheet", Part::body, "leather"));
    EXPECT_TRUE(asked("sheet", Part::lining, "full-grain-leather"));
    EXPECT_FALSE(asked("sheet", Part::hardware, "leather"));
    EXPECT_FALSE(asked("sheet", Part::body, "brass"));
    EXPECT_TRUE(asked("metal", Part::hardware, "brass"));
    EXPECT_FALSE(asked("metal", Part::body, "brass"));
    EXPECT_TRUE(asked("species", Part::body, "cowhide"));
    EXPECT_FALSE(asked("species", Part::body, "leather"));
}

}  // namespace
}  // namespace grainside::identify
