// What the evidence half of a rule book holds (rules/EVIDENCE.md): frames and candidates, alloys, methods, limits,
// usual costs and the judging policy. Plain data, filled once by the loaders and immutable afterwards.
#ifndef GRAINSIDE_EVIDENCE_EVIDENCE_DATA_H
#define GRAINSIDE_EVIDENCE_EVIDENCE_DATA_H

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "evidence/cost_data.h"
#include "grainside/claim.h"
#include "grainside/rule_book.h"
#include "measure/alloy_window.h"
#include "measure/conformity.h"
#include "measure/unit.h"
#include "rules/references.h"

namespace grainside::evidence {

inline constexpr std::size_t kNone = static_cast<std::size_t>(-1);

// One bit a part.
using PartSet = std::uint16_t;
constexpr PartSet part_bit(Part part) noexcept {
    return static_cast<PartSet>(1U << static_cast<unsigned>(part));
}
inline constexpr PartSet kAllParts = static_cast<PartSet>((1U << kPartCount) - 1);

// What a part may be made of, or may do: one answer to a frame's question.
struct Candidate {
    std::string id;
    std::string name;
    ConceptId is = 0;  // 0: no concept has this id
    double prior = 0;  // 0 to 1; those of a frame add up to 1
    std::vector<ConceptId> bears_out, rules_out, leaves_open;
    std::size_t alloy = kNone;
    bool unlisted = false;  // stands for what the frame does not list: it explains every reading as well as the average
};

struct Frame {
    std::string id;
    std::string title;
    PartSet parts = 0;
    std::vector<ConceptId> claims;
    ConceptId within = 0;
    std::size_t of = kNone;  // the frame that tells whether the part is `within`
    bool kin_apart = false;  // a claim that no candidate has is false of its kin, and not open
    std::vector<Candidate> candidates;
};

struct Alloy {
    std::string id;
    std::string name;
    std::optional<measure::Range> density;       // g/cm3
    std::optional<measure::AlloyWindow> window;  // percent by mass
    std::vector<std::uint32_t> sources;
};

// What a test does to the sample.
enum class Harm : std::uint8_t { none, mark, cut, destroy };
inline constexpr std::size_t kHarmCount = 4;
std::string_view name_of(Harm harm) noexcept;

enum class Who : std::uint8_t { anyone, practised, laboratory };
inline constexpr std::size_t kWhoCount = 3;
std::string_view name_of(Who who) noexcept;

// What wear of the sample does to a method's readings.
enum class WhenWorn : std::uint8_t { counts, lowers, spoils };
// Which quantity a method works out from those it reads.
enum class Computes : std::uint8_t { nothing, density, coat_share, colour_change };
enum class LikelihoodBy : std::uint8_t { table, density, composition };

struct Outcome {
    std::string id;
    std::string means;
    bool says_nothing = false;  // seen as often whatever the part is
};

// An outcome that the quantities of a reading imply where none is stated: the first whose bound is surely met.
struct Implied {
    std::size_t outcome = 0;
    std::string quantity;
    measure::Limit bound;
    std::string written = {};  // the bound as the book has it: "at most 0.15 mm"
};

// What a quantity of such goods usually is: beyond it a value is told as a likely slip of the pen, and no more.
struct UsualRange {
    std::string quantity;
    measure::Limit bound;
    std::string written;
};

// How often each outcome is seen, given the candidate.
struct OutcomeTable {
    std::size_t frame = 0;
    std::vector<double> chance;  // [candidate * outcome count + outcome], 0 to 1; a candidate's add up to 1
};

// A quantity that a method reads: its name and the unit in which the book gives it.
struct QuantityRead {
    std::string name;
    measure::Dimension dimension{};
    std::string unit;
};

struct Method {
    std::string id, title, how, looks_at;
    PartSet parts = 0;
    Harm harm = Harm::none;
    Who who = Who::anyone;
    double minutes = 0;
    double cost = 0;  // euro
    std::vector<std::string> cautions;
    std::vector<std::uint32_t> sources;
    std::vector<Outcome> outcomes;
    std::vector<OutcomeTable> tables;
    std::vector<Implied> implies;
    std::vector<Implied> only_if;  // what the quantities are where the outcome is seen; all of an outcome's hold
    std::vector<UsualRange> usual;
    std::vector<QuantityRead> reads;
    Computes computes = Computes::nothing;
    LikelihoodBy likelihood_by = LikelihoodBy::table;
    std::vector<std::size_t> frames;  // of likelihood_by
    WhenWorn when_worn = WhenWorn::counts;
    double reliability = 0.95;  // 0.5 to 1
};

// The two ways in which a quantity may decide a claim, and the two in which something else does.
struct Limit {
    std::string id, title, because, say_instead;
    std::vector<std::string> markets;
    rules::InForce in_force;
    std::uint32_t categories = 0;  // bits of category numbers; 0: all
    std::vector<ConceptId> claims, not_claims;
    std::uint32_t kinds = 0;  // bits of Kind; 0: all
    std::string quantity;     // empty with `no_part_is`
    std::optional<measure::Limit> supports, contradicts;
    std::optional<double> stated_tolerance;  // in the working unit of the quantity
    bool only_below = false;                 // of `stated`
    std::vector<ConceptId> no_part_is;
    PartSet within_parts = kAllParts;
    ConceptId needs = 0;
    double factor = 1;
    std::string unit;                     // as the book writes the bound; for printing
    std::vector<std::size_t> instead_of;  // limits that it takes the place of where it applies
    std::vector<std::uint32_t> sources;
};

struct Judging {
    std::string earliest;      // YYYY-MM-DD; an earlier day is told as a likely slip of the pen; empty: none is
    double decided_at = 0.95;  // belief, 0.5 to 1
    double from_even = 0.8;    // belief that the readings alone must reach from even odds, 0.5 to 1
    double guard = 1;          // expanded uncertainties (k = 2) from a limit
    double same_look = 0.5;    // 0 to 1
    // How often a reading by these hands is a slip, 0 to 0.5: by Who.
    std::array<double, kWhoCount> slip{0.02, 0.01, 0.003};
    double conflict = 10;  // decibans
    double minute_weight = 0.5;
    std::array<double, kHarmCount> harm_weight{0, 5, 20, 60};
    double least_bits = 0.02;
};

struct EvidenceData {
    std::vector<Frame> frames;
    std::vector<Alloy> alloys;
    std::vector<Method> methods;
    std::vector<Limit> limits;
    CostBook costs;
    Judging judging;
};

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_EVIDENCE_DATA_H
