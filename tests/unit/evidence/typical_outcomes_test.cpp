// Likelihoods of the default book that follow from what an outcome means. How often it is seen is common practice
// without a source and is not repeated here; that it is seen more often than any other is.
#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "evidence/evidence_data.h"
#include "identify/likelihood.h"
#include "support/built_in_evidence.h"

namespace grainside::evidence {
namespace {

std::size_t outcome_named(const Method& method, std::string_view id) {
    for (std::size_t i = 0; i < method.outcomes.size(); ++i) {
        if (method.outcomes[i].id == id) return i;
    }
    throw std::runtime_error(method.id + " has no outcome " + std::string(id));
}

// What a test says by the meaning of its words: whoever is this is mostly seen as that. A row in which anything else is
// seen oftener is upside down. That the outcome speaks for the material more than for most others follows: the chance
// of it lies above the average over all candidates.
struct TypicalRow {
    std::string_view method, frame, candidate, outcome;
};

constexpr TypicalRow kTypical[] = {
    {"fibre-analysis", "sheet", "cotton", "cotton"},
    {"fibre-analysis", "sheet", "linen", "linen"},
    {"fibre-analysis", "sheet", "wool", "wool"},
    {"fibre-analysis", "sheet", "silk", "silk"},
    {"fibre-analysis", "sheet", "polyester", "polyester"},
    {"fibre-analysis", "sheet", "nylon", "polyamide"},
    {"fibre-analysis", "sheet", "viscose", "viscose"},
    {"fibre-analysis", "sheet", "full-grain-leather", "no-textile"},
    {"fibre-analysis", "sheet", "coated-split-leather", "no-textile"},
    {"fibre-analysis", "sheet", "bonded-leather", "no-textile"},
    {"fibre-analysis", "sheet", "cork-sheet", "no-textile"},
    {"fibre-analysis", "sheet", "paper-sheet", "no-textile"},
    {"fibre-analysis", "sheet", "silicone", "no-textile"},
    {"fibre-analysis", "sheet", "pu-coated-fabric", "coat-on-fibres"},
    {"fibre-analysis", "sheet", "pvc-coated-fabric", "coat-on-fibres"},
    {"fibre-analysis", "sheet", "microfibre-synthetic", "coat-on-fibres"},
    {"fibre-analysis", "sheet", "microsuede", "polyester"},
    {"ftir-surface", "sheet", "pu-coated-fabric", "polyurethane"},
    {"ftir-surface", "sheet", "pvc-coated-fabric", "pvc"},
    {"ftir-surface", "sheet", "microfibre-synthetic", "polyurethane"},
    {"ftir-surface", "sheet", "coated-split-leather", "polyurethane"},
    {"ftir-surface", "sheet", "nubuck", "protein"},
    {"ftir-surface", "sheet", "suede", "protein"},
    {"ftir-surface", "sheet", "cotton", "cellulose"},
    {"ftir-surface", "sheet", "linen", "cellulose"},
    {"ftir-surface", "sheet", "viscose", "cellulose"},
    {"ftir-surface", "sheet", "paper-sheet", "cellulose"},
    {"ftir-surface", "sheet", "wool", "protein"},
    {"ftir-surface", "sheet", "silk", "protein"},
    {"ftir-surface", "sheet", "polyester", "polyester"},
    {"ftir-surface", "sheet", "microsuede", "polyester"},
    {"ftir-surface", "sheet", "nylon", "polyamide"},
    {"ftir-surface", "sheet", "silicone", "silicone"},
    {"ftir-cut-edge", "sheet", "full-grain-leather", "protein"},
    {"ftir-cut-edge", "sheet", "corrected-grain-leather", "protein"},
    {"ftir-cut-edge", "sheet", "suede", "protein"},
    {"ftir-cut-edge", "sheet", "coated-split-leather", "protein"},
    {"ftir-cut-edge", "sheet", "bonded-leather", "protein-and-binder"},
    {"ftir-cut-edge", "sheet", "leather-fibreboard", "protein-and-binder"},
    {"ftir-cut-edge", "sheet", "pu-coated-fabric", "polyurethane"},
    {"ftir-cut-edge", "sheet", "pvc-coated-fabric", "pvc"},
    {"ftir-cut-edge", "sheet", "cotton", "plant-matter"},
    {"ftir-cut-edge", "sheet", "cork-sheet", "plant-matter"},
    {"ftir-cut-edge", "sheet", "polyester", "polyester"},
    {"ftir-cut-edge", "sheet", "nylon", "polyamide"},
    {"ftir-cut-edge", "sheet", "silicone", "silicone"},
    {"ftir-cut-edge", "sheet", "wool", "protein"},
    {"section-microscopy", "sheet", "full-grain-leather", "grain-whole"},
    {"section-microscopy", "sheet", "corrected-grain-leather", "grain-buffed"},
    {"section-microscopy", "sheet", "nubuck", "grain-napped"},
    {"section-microscopy", "sheet", "suede", "no-grain-napped"},
    {"section-microscopy", "sheet", "coated-split-leather", "no-grain-coated"},
    {"section-microscopy", "sheet", "bonded-leather", "chopped-fibre"},
    {"section-microscopy", "sheet", "leather-fibreboard", "chopped-fibre"},
    {"section-microscopy", "sheet", "pu-coated-fabric", "coat-on-yarns"},
    {"section-microscopy", "sheet", "microfibre-synthetic", "microfibre-and-foam"},
    {"section-microscopy", "sheet", "cotton", "yarns-only"},
    {"section-microscopy", "sheet", "cork-sheet", "other-sheet"},
    {"section-microscopy", "sheet", "silicone", "other-sheet"},
    {"cut-edge", "sheet", "full-grain-leather", "fibre-and-grain"},
    {"cut-edge", "sheet", "corrected-grain-leather", "fibre-under-film"},
    {"cut-edge", "sheet", "nubuck", "fibre-and-nap"},
    {"cut-edge", "sheet", "suede", "fibre-and-nap"},
    {"cut-edge", "sheet", "coated-split-leather", "fibre-under-film"},
    {"cut-edge", "sheet", "bonded-leather", "chopped-fibre"},
    {"cut-edge", "sheet", "leather-fibreboard", "chopped-fibre"},
    {"cut-edge", "sheet", "pvc-coated-fabric", "yarns-under-coat"},
    {"cut-edge", "sheet", "microfibre-synthetic", "bundles-in-foam"},
    {"cut-edge", "sheet", "polyester", "yarns-alone"},
    {"cut-edge", "sheet", "silicone", "solid-or-layers"},
    {"loupe", "sheet", "suede", "nap"},
    {"loupe", "sheet", "cotton", "weave"},
    {"loupe", "sheet", "cork-sheet", "flakes"},
    {"loupe", "sheet", "pu-coated-fabric", "repeating-print"},
    {"loupe", "species", "bovine-leather", "pores-even"},
    {"loupe", "species", "goat-leather", "pores-in-rows"},
    {"loupe", "species", "sheep-leather", "pores-in-rows"},
    {"loupe", "species", "pig-leather", "pores-in-threes"},
    {"loupe", "species", "ostrich-leather", "quill-bumps"},
    {"loupe", "species", "crocodile-leather", "scales"},
    {"loupe", "species", "snake-leather", "scales"},
    {"loupe", "species", "fish-leather", "scales"},
    {"species-laboratory", "species", "bovine-leather", "reads-bovine"},
    {"species-laboratory", "species", "sheep-leather", "reads-sheep"},
    {"species-laboratory", "species", "goat-leather", "reads-goat"},
    {"species-laboratory", "species", "pig-leather", "reads-pig"},
    {"species-laboratory", "species", "deer-leather", "reads-deer"},
    {"species-laboratory", "species", "horse-leather", "reads-horse"},
    {"species-laboratory", "species", "crocodile-leather", "reads-crocodile"},
    {"species-laboratory", "species", "snake-leather", "reads-snake"},
    {"species-laboratory", "species", "ostrich-leather", "reads-ostrich"},
    {"species-laboratory", "species", "fish-leather", "reads-fish"},
    {"species-laboratory", "sheet", "cotton", "not-decided"},
    {"hot-wire", "sheet", "pvc-coated-fabric", "green-flame"},
    {"hot-wire", "sheet", "pu-coated-fabric", "no-green"},
    {"hot-wire", "sheet", "full-grain-leather", "no-green"},
    {"hot-wire", "sheet", "silicone", "no-green"},
    {"flame-on-fibre", "sheet", "full-grain-leather", "burnt-hair"},
    {"flame-on-fibre", "sheet", "wool", "burnt-hair"},
    {"flame-on-fibre", "sheet", "pvc-coated-fabric", "green-edge-black-bead"},
    {"flame-on-fibre", "sheet", "polyester", "melts-to-bead"},
    {"flame-on-fibre", "sheet", "cotton", "burns-like-paper"},
    {"flame-on-fibre", "sheet", "viscose", "burns-like-paper"},
    {"flame-on-fibre", "sheet", "silicone", "white-ash"},
    {"back-side", "sheet", "full-grain-leather", "fibrous-back"},
    {"back-side", "sheet", "pu-coated-fabric", "woven-back"},
    {"back-side", "sheet", "cotton", "woven-back"},
    {"back-side", "sheet", "microfibre-synthetic", "felt-back"},
    {"back-side", "sheet", "leather-fibreboard", "board-back"},
    {"boil", "tannage", "chrome-tanned", "little-changed"},
    {"boil", "tannage", "vegetable-tanned", "shrinks-and-hardens"},
    {"boil", "tannage", "aldehyde-tanned", "shrinks-and-hardens"},
    {"xrf-leather", "tannage", "chrome-tanned", "chromium-much"},
    {"xrf-leather", "tannage", "vegetable-tanned", "chromium-trace"},
    {"xrf-leather", "tannage", "aldehyde-tanned", "chromium-trace"},
    {"metals-laboratory", "tannage", "chrome-tanned", "chromium-much"},
    {"metals-laboratory", "tannage", "vegetable-tanned", "chromium-trace"},
    {"metals-laboratory", "tannage", "aldehyde-tanned", "chromium-trace"},
    {"touch-and-smell", "tannage", "vegetable-tanned", "bark-smell"},
    {"touch-and-smell", "tannage", "oil-tanned", "oil-smell"},
    {"magnet", "metal", "carbon-steel", "strong-pull"},
    {"magnet", "metal", "stainless-steel-430", "strong-pull"},
    {"magnet", "metal", "stainless-steel-304", "no-pull"},
    {"magnet", "metal", "stainless-steel-316", "no-pull"},
    {"magnet", "metal", "brass-cw614n", "no-pull"},
    {"magnet", "metal", "zinc-alloy-3", "no-pull"},
    {"weighing-in-water", "metal", "zinc-alloy-5", "reads-near-zinc"},
    {"weighing-in-water", "metal", "brass-cw617n", "reads-near-brass"},
    {"weighing-in-water", "metal", "bronze", "reads-near-bronze"},
    {"weighing-in-water", "metal", "copper", "reads-near-bronze"},
    {"weighing-in-water", "metal", "stainless-steel-304", "reads-near-steel"},
    {"weighing-in-water", "metal", "carbon-steel", "reads-near-steel"},
    {"weighing-in-water", "metal", "aluminium-6061", "reads-near-aluminium"},
    {"weighing-in-water", "metal", "sterling-silver", "reads-near-silver"},
    {"weighing-in-water", "metal", "karat-gold", "reads-near-gold"},
    {"weighing-in-water", "metal", "abs-plastic", "reads-near-plastic"},
    {"xrf-filed", "metal", "zinc-alloy-2", "reads-as-zinc-alloy"},
    {"xrf-filed", "metal", "brass-c26000", "reads-as-brass"},
    {"xrf-filed", "metal", "brass-cw614n", "reads-as-leaded-brass"},
    {"xrf-filed", "metal", "bronze", "reads-as-bronze"},
    {"xrf-filed", "metal", "nickel-silver", "reads-as-nickel-silver"},
    {"xrf-filed", "metal", "copper", "reads-as-copper"},
    {"xrf-filed", "metal", "stainless-steel-304", "reads-as-304"},
    {"xrf-filed", "metal", "stainless-steel-316", "reads-as-316"},
    {"xrf-filed", "metal", "stainless-steel-201", "reads-as-201"},
    {"xrf-filed", "metal", "stainless-steel-430", "reads-as-430"},
    {"xrf-filed", "metal", "carbon-steel", "reads-as-plain-steel"},
    {"xrf-filed", "metal", "aluminium-adc12", "reads-as-aluminium"},
    {"xrf-filed", "metal", "sterling-silver", "reads-as-silver"},
    {"xrf-filed", "metal", "karat-gold", "reads-as-gold"},
    {"xrf-filed", "metal", "abs-plastic", "reads-little-metal"},
    {"acid-spot", "metal", "karat-gold", "no-change"},
    {"acid-spot", "metal", "stainless-steel-316", "no-change"},
    {"acid-spot", "metal", "brass-cw508l", "green"},
    {"acid-spot", "metal", "copper", "green"},
    {"acid-spot", "metal", "zinc-alloy-3", "fizzes-grey"},
    {"acid-spot", "metal", "sterling-silver", "cream"},
    {"acid-spot", "metal", "carbon-steel", "dark-spot"},
    {"file-mark", "metal", "brass-cw508l", "yellow-core"},
    {"file-mark", "metal", "copper", "red-core"},
    {"file-mark", "metal", "zinc-alloy-3", "grey-soft-core"},
    {"file-mark", "metal", "carbon-steel", "grey-hard-core"},
    {"file-mark", "metal", "aluminium-6063", "white-light-core"},
    {"file-mark", "metal", "abs-plastic", "plastic-core"},
    {"xrf-surface", "surface", "gold-plated", "reads-gold"},
    {"xrf-surface", "surface", "silver-plated", "reads-silver"},
    {"xrf-surface", "surface", "nickel-plated", "reads-nickel"},
    {"xrf-surface", "surface", "chrome-plated", "reads-chromium"},
    {"xrf-surface", "surface", "brass-plated", "reads-copper-and-zinc"},
    {"xrf-surface", "surface", "palladium-plated", "reads-palladium"},
    {"xrf-surface", "surface", "pvd-coated", "reads-zirconium-or-titanium"},
    {"plating-section", "surface", "gold-plated", "layers-seen"},
    {"plating-section", "surface", "nickel-plated", "layers-seen"},
    {"plating-section", "surface", "bare-metal", "no-layer"},
    {"nickel-wipe", "nickel-given-off", "gives-nickel", "pink"},
    {"nickel-wipe", "nickel-given-off", "gives-no-nickel", "no-colour"},
    {"nickel-wipe", "surface", "nickel-plated", "pink"},
    {"lead-swab", "lead-at-hand", "lead-at-hand", "red"},
    {"lead-swab", "lead-at-hand", "no-lead-at-hand", "no-colour"},
    {"lead-swab", "metal", "brass-c36000", "red"},
    {"coat-microscopy", "sheet", "pu-coated-fabric", "coat-on-cloth"},
    {"coat-microscopy", "sheet", "suede", "no-coat"},
    {"coat-microscopy", "leather-finish", "aniline", "no-coat"},
    {"solvent-wipe", "sheet", "pvc-coated-fabric", "tacky"},
    {"solvent-wipe", "leather-finish", "aniline", "dye-grain-whole"},
    {"water-drop", "leather-finish", "aniline", "soaks-in"},
    {"water-drop", "leather-finish", "pigmented", "stands"},
    {"rub", "colour-hold", "keeps-its-colour", "felt-clean"},
    {"rub", "colour-hold", "gives-colour-off", "felt-stained"},
    {"perspiration", "colour-hold", "keeps-its-colour", "cloth-clean"},
    {"perspiration", "colour-hold", "gives-colour-off", "cloth-stained"},
    {"salt-spray", "corroding", "stays-bright", "bright"},
    {"salt-spray", "corroding", "corrodes", "corroded"},
    {"flex", "surface-hold", "surface-holds", "whole"},
    {"flex", "surface-hold", "surface-breaks", "broken"},
    {"peel", "surface-hold", "surface-holds", "coat-holds"},
    {"peel", "surface-hold", "surface-breaks", "coat-comes-off"},
    {"seam-pull", "seam", "holds-its-load", "holds"},
    {"seam-pull", "seam", "gives-way", "gives-way"},
    {"shower", "water", "keeps-water-out", "inside-dry"},
    {"shower", "water", "lets-water-in", "inside-wet"},
    {"water-penetration", "water", "keeps-water-out", "no-passage"},
    {"water-penetration", "water", "lets-water-in", "passes-early"},
    {"scratch", "scratching", "resists-scratching", "no-mark"},
};

TEST(Likelihoods, ShowAMaterialMostlyAsWhatItIs) {
    const EvidenceData& data = support::built_in_evidence().data();
    for (const TypicalRow& row : kTypical) {
        const std::string name = std::string(row.method) + " of " + std::string(row.candidate);
        const Method& method = data.methods[support::method_named(row.method)];
        const std::size_t frame = support::frame_named(row.frame);
        const std::size_t own = support::candidate_named(frame, row.candidate);
        const std::size_t at = outcome_named(method, row.outcome);
        const std::vector<double>& chance = identify::table_for(method, frame)->chance;
        const std::size_t outcomes = method.outcomes.size();
        double average = 0;
        for (std::size_t i = 0; i < outcomes; ++i) {
            if (i != at) {
                EXPECT_LT(chance[own * outcomes + i], chance[own * outcomes + at])
                    << name << ": rather " << method.outcomes[i].id;
            }
        }
        for (std::size_t i = 0; i < data.frames[frame].candidates.size(); ++i) {
            average += data.frames[frame].candidates[i].prior * chance[i * outcomes + at];
        }
        EXPECT_GT(chance[own * outcomes + at], average) << name;
    }
}

// A law of nature or of words that every table must keep: an outcome worse in its scale is never likelier of what holds
// than of what fails, by the ratio of the two. Outcomes stand from best to worst.
TEST(Likelihoods, OfWorseOutcomesSpeakMoreAgainst) {
    const EvidenceData& data = support::built_in_evidence().data();
    struct Row {
        std::string_view method, frame;
        std::vector<std::string_view> best_to_worst;
    };
    const Row rows[] = {
        {"rub", "colour-hold", {"felt-clean", "felt-tinted", "felt-stained"}},
        {"perspiration", "colour-hold", {"cloth-clean", "cloth-tinted", "cloth-stained"}},
        {"salt-spray", "corroding", {"bright", "tarnished", "corroded"}},
        {"damp-salt-cloth", "corroding", {"unchanged", "dulled", "rusted"}},
        {"flex", "surface-hold", {"whole", "fine-cracks", "broken"}},
        {"peel", "surface-hold", {"coat-holds", "coat-lifts", "coat-comes-off"}},
        {"seam-pull", "seam", {"holds", "seam-opens", "gives-way"}},
        {"hang-weight", "seam", {"holds", "stretched", "gave-way"}},
        {"shower", "water", {"inside-dry", "inside-damp", "inside-wet"}},
        {"water-drop", "water", {"stands", "soaks-slowly", "soaks-in"}},
        {"water-penetration", "water", {"no-passage", "passes-late", "passes-early"}},
        {"nickel-wipe", "nickel-given-off", {"no-colour", "faint-pink", "pink"}},
        {"lead-swab", "lead-at-hand", {"no-colour", "faint-red", "red"}},
    };
    for (const Row& row : rows) {
        const Method& method = data.methods[support::method_named(row.method)];
        const std::size_t frame = support::frame_named(row.frame);
        ASSERT_EQ(data.frames[frame].candidates.size(), 2U) << row.frame;  // what holds stands first
        const std::vector<double>& chance = identify::table_for(method, frame)->chance;
        double before = 0;
        for (const std::string_view id : row.best_to_worst) {
            const std::size_t at = outcome_named(method, id);
            const double ratio = chance[method.outcomes.size() + at] / chance[at];
            EXPECT_GT(ratio, before) << row.method << ' ' << id;
            before = ratio;
        }
        EXPECT_GT(before, 1) << row.method;
    }
}

}  // namespace
}  // namespace grainside::evidence
