#include "verdict/limit_decision.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "evidence/quantity_names.h"
#include "measure/pooled.h"
#include "measure/repeats.h"
#include "measure/unit.h"

namespace grainside::verdict {
namespace {

using evidence::EvidenceData;
using evidence::Limit;
using evidence::Reading;
using identify::any_above;
using identify::PartEvidence;
using measure::Decision;
using measure::Measured;
using vocabulary::ConceptTree;

// The names of the quantities that together make up what the limit is about, in one reading.
bool counts(const ConceptTree& tree, const Limit& limit, const Claim& claim, const std::string& name) {
    if (limit.quantity == evidence::kFibreShare) {
        // Of 'wool' the merino counts too.
        const std::string prefix = std::string(evidence::kFibreShare) + '.';
        if (!name.starts_with(prefix)) return false;
        const ConceptId fibre = tree.find(std::string_view(name).substr(prefix.size()));
        return fibre != 0 && tree.is_a(fibre, claim.says);
    }
    const std::vector<std::string> elements = evidence::elements_of(limit.quantity);
    if (elements.empty()) return name == limit.quantity;
    return std::any_of(elements.begin(), elements.end(), [&](const std::string& element) {
        return name == std::string(evidence::kContent) + '.' + element;
    });
}

// The quantity in one reading: several parts of a sum are added, their uncertainties taken as independent. `found`
// tells how many were.
std::optional<Measured> quantity_in(const ConceptTree& tree, const Limit& limit, const Claim& claim,
                                    const Reading& reading, std::size_t& found) {
    std::optional<Measured> sum;
    found = 0;
    for (const evidence::NamedQuantity& quantity : reading.quantities) {
        if (!counts(tree, limit, claim, quantity.name)) continue;
        ++found;
        if (!sum) {
            sum = quantity.measured;
        } else {
            sum->value += quantity.measured.value;
            sum->u = std::hypot(sum->u, quantity.measured.u);
            sum->dof = std::min(sum->dof, quantity.measured.dof);
        }
    }
    return sum;
}

// A claim's own number in the working unit of `dimension`.
std::optional<std::pair<double, double>> stated_range(const Claim& claim, measure::Dimension dimension) {
    if (!claim.quantity) return std::nullopt;
    if (dimension == measure::Dimension::length) {
        const auto millimetres = in_millimetres(claim.quantity);
        if (!millimetres) return std::nullopt;
        return std::pair{millimetres->low, millimetres->high};
    }
    const bool fits = dimension == measure::Dimension::share && claim.quantity->unit == Unit::percent;
    if (!fits) return std::nullopt;
    return std::pair{claim.quantity->low, claim.quantity->high};
}

// The region outside of a one-sided bound; nothing for an interval, whose outside has two pieces.
std::optional<measure::Limit> outside_of(const measure::Limit& bound) {
    if (bound.lower && bound.upper) return std::nullopt;
    measure::Limit outside;
    if (bound.lower) {
        outside.upper = bound.lower;
        outside.upper_inclusive = !bound.lower_inclusive;
    } else {
        outside.lower = bound.upper;
        outside.lower_inclusive = !bound.upper_inclusive;
    }
    return outside;
}

measure::Limit scaled(measure::Limit bound, double factor) {
    if (bound.lower) *bound.lower *= factor;
    if (bound.upper) *bound.upper *= factor;
    return bound;
}

std::string number(double value, const std::string& unit) {
    const measure::UnitInfo* info = measure::find_unit(unit);
    const double shown = info == nullptr ? value : measure::from_working(value, *info);
    return unit.empty() || unit == "none" ? fmt::format("{:.4g}", shown) : fmt::format("{:.4g} {}", shown, unit);
}

std::string bound_text(const measure::Limit& bound, const std::string& unit) {
    std::string text;
    if (bound.lower) text = (bound.lower_inclusive ? "at least " : "above ") + number(*bound.lower, unit);
    if (bound.upper) {
        if (!text.empty()) text += " and ";
        text += (bound.upper_inclusive ? "at most " : "below ") + number(*bound.upper, unit);
    }
    return text;
}

// Where the claim is false and where it is true, in the working unit.
struct Regions {
    std::optional<measure::Limit> contradicts, supports;
    std::string contradicted_by, supported_by;
};

std::optional<Regions> regions_of(const EvidenceData& data, const ConceptTree& tree, const Limit& limit,
                                  const Claim& claim) {
    Regions regions;
    if (!limit.stated_tolerance) {
        if (limit.contradicts) regions.contradicts = scaled(*limit.contradicts, limit.factor);
        if (limit.supports) regions.supports = scaled(*limit.supports, limit.factor);
        const std::string times = limit.factor == 1 ? "" : fmt::format(", the limit times {:.3g}", limit.factor);
        if (regions.contradicts) regions.contradicted_by = bound_text(*regions.contradicts, limit.unit) + times;
        if (regions.supports) regions.supported_by = bound_text(*regions.supports, limit.unit) + times;
        return regions;
    }
    const auto dimension = evidence::dimension_of(limit.quantity, data, tree);
    const auto stated = dimension ? stated_range(claim, *dimension) : std::nullopt;
    if (!stated) return std::nullopt;
    measure::Limit agrees;
    agrees.lower = stated->first - *limit.stated_tolerance;
    if (!limit.only_below) agrees.upper = stated->second + *limit.stated_tolerance;
    regions.supports = agrees;
    const std::string tolerance = number(*limit.stated_tolerance, limit.unit);
    const std::string said = stated->first == stated->second
                                 ? number(stated->first, limit.unit)
                                 : number(stated->first, limit.unit) + " to " + number(stated->second, limit.unit);
    const bool none_less = limit.only_below && *limit.stated_tolerance == 0;
    regions.supported_by = none_less          ? fmt::format("the stated {}, or more", said)
                           : limit.only_below ? fmt::format("the stated {}, or up to {} less", said, tolerance)
                                              : fmt::format("the stated {}, give or take {}", said, tolerance);
    return regions;
}

Decision decide(const Measured& value, const measure::Limit& bound, const DecisionPolicy& policy) {
    return measure::decide(value, bound, policy.rule, policy.guard);
}

// A claim fails where the quantity lies in `contradicts`: held against what is allowed where that has one piece, so
// that the decision rules mean what they say.
Decision allowed(const Measured& value, const measure::Limit& contradicts, const DecisionPolicy& policy) {
    if (const auto outside = outside_of(contradicts)) return decide(value, *outside, policy);
    const Decision inside = decide(value, contradicts, policy);
    if (inside == Decision::undecided) return inside;
    return inside == Decision::conforms ? Decision::fails : Decision::conforms;
}

void settle(const Limit& limit, const Regions& regions, const DecisionPolicy& policy, LimitDecision& decision) {
    const Measured& value = decision.value;
    decision.says = LimitVerdict::met;
    if (limit.stated_tolerance) {
        decision.support = measure::conformity_probability(value, *regions.supports);
        decision.contradiction = 1 - decision.support;
        const Decision agreed = decide(value, *regions.supports, policy);
        decision.says = agreed == Decision::conforms ? LimitVerdict::supports
                        : agreed == Decision::fails  ? LimitVerdict::contradicts
                                                     : LimitVerdict::undecided;
        return;
    }
    if (regions.contradicts) {
        decision.contradiction = measure::conformity_probability(value, *regions.contradicts);
        const Decision passes = allowed(value, *regions.contradicts, policy);
        if (passes == Decision::fails) decision.says = LimitVerdict::contradicts;
        if (passes == Decision::undecided) decision.says = LimitVerdict::undecided;
    }
    if (regions.supports) {
        decision.support = measure::conformity_probability(value, *regions.supports);
        if (decision.says == LimitVerdict::contradicts) return;
        const Decision supported = decide(value, *regions.supports, policy);
        decision.between = decision.says == LimitVerdict::met && supported == Decision::fails;
        decision.says = supported == Decision::conforms ? LimitVerdict::supports : LimitVerdict::undecided;
    }
}

// The bound that an undecided value lies too near to: what would contradict, unless that is clearly passed.
bool near_to_contradiction(const Regions& regions, const DecisionPolicy& policy, const Measured& value) {
    return regions.contradicts &&
           (!regions.supports || allowed(value, *regions.contradicts, policy) == Decision::undecided);
}

// More readings of the same kind: what scatters shrinks, and nothing here tells what is systematic.
std::optional<int> repeats_for(const measure::Limit& bound, const DecisionPolicy& policy,
                               const LimitDecision& decision) {
    const measure::ReadingParts parts{decision.value.value,
                                      decision.value.u * std::sqrt(static_cast<double>(decision.readings.size())), 0};
    return measure::repeats_to_settle(parts, bound, policy.guard);
}

}  // namespace

std::string LimitDecision::bound() const {
    if (says == LimitVerdict::contradicts && !contradicted_by.empty()) return contradicted_by;
    if (says == LimitVerdict::supports) return supported_by;
    if (says == LimitVerdict::met && !contradicted_by.empty()) return "not " + contradicted_by;
    if (contradicted_by.empty() || supported_by.empty()) return contradicted_by + supported_by;
    return fmt::format("contradicts {}, supports {}", contradicted_by, supported_by);
}

bool speaks_of(const ConceptTree& tree, const Limit& limit, const Claim& claim) {
    if (claim.negated) return false;
    if (limit.kinds != 0 && (limit.kinds >> static_cast<unsigned>(claim.kind) & 1U) == 0) return false;
    return any_above(tree, limit.claims, claim.says) && !any_above(tree, limit.not_claims, claim.says);
}

std::optional<LimitDecision> decide_limit(const ConceptTree& tree, const EvidenceData& data, const Limit& limit,
                                          const Claim& claim, const PartEvidence& part, bool sample_is_worn,
                                          const DecisionPolicy& policy) {
    const std::optional<Regions> regions = regions_of(data, tree, limit, claim);
    if (!regions) return std::nullopt;
    LimitDecision decision;
    decision.limit = &limit;
    decision.part = part.record.part;
    decision.contradicted_by = regions->contradicted_by;
    decision.supported_by = regions->supported_by;
    std::vector<Measured> values;
    const std::size_t members = evidence::elements_of(limit.quantity).size();  // 0: no sum
    bool wear_lowers = false;
    bool whole = false;
    for (std::size_t i = 0; i < part.record.readings.size(); ++i) {
        const Reading& reading = part.record.readings[i];
        const auto when_worn = data.methods[reading.method].when_worn;
        if (sample_is_worn && when_worn == evidence::WhenWorn::spoils) continue;
        std::size_t found = 0;
        const auto value = quantity_in(tree, limit, claim, reading, found);
        if (!value) continue;
        if (found >= members && !whole) {
            // One that read all members makes those that read some of them needless.
            whole = true;
            values.clear();
            decision.readings.clear();
            wear_lowers = false;
        }
        if (whole && found < members) continue;
        wear_lowers = wear_lowers || (sample_is_worn && when_worn == evidence::WhenWorn::lowers);
        values.push_back(*value);
        decision.readings.push_back(static_cast<std::uint32_t>(i));
    }
    if (values.empty()) return decision;
    decision.partial = !whole;
    decision.value = measure::pooled(values);
    // A factor of the standard takes the place of the guard band.
    DecisionPolicy own = policy;
    if (limit.factor != 1) own.guard = 0;
    settle(limit, *regions, own, decision);
    if (decision.says == LimitVerdict::undecided && !decision.between) {
        const bool contradiction = near_to_contradiction(*regions, own, decision.value);
        decision.near = contradiction ? decision.contradicted_by : decision.supported_by;
        decision.repeats = repeats_for(contradiction ? *regions->contradicts : *regions->supports, own, decision);
    }
    if (decision.says == LimitVerdict::supports) {
        decision.needs_unshown = limit.needs != 0 && identify::belief_in(tree, data, part.beliefs, {&limit.needs, 1}) <
                                                         data.judging.decided_at;
        if (decision.partial || decision.needs_unshown) {
            decision.says = LimitVerdict::undecided;
            decision.support = 0;
        }
    }
    // What wear has taken away was there when the sample was new.
    const bool low = regions->contradicts
                         ? regions->contradicts->upper.has_value()
                         : regions->supports->lower && decision.value.value < *regions->supports->lower;
    if (wear_lowers && low && decision.says == LimitVerdict::contradicts) {
        decision.says = LimitVerdict::undecided;
        decision.worn_out = true;
    }
    return decision;
}

LimitDecision decide_absence(const ConceptTree& tree, const EvidenceData& data, const Limit& limit,
                             const PartEvidence& part) {
    LimitDecision decision;
    decision.limit = &limit;
    decision.part = part.record.part;
    const double none = 1 - identify::belief_in(tree, data, part.beliefs, limit.no_part_is);
    for (const std::size_t frame : frames_that_tell(tree, data, limit, part)) {
        for (const identify::WeighedReading& reading : part.beliefs[frame].readings) {
            const auto index = static_cast<std::uint32_t>(reading.reading);
            if (std::find(decision.readings.begin(), decision.readings.end(), index) == decision.readings.end()) {
                decision.readings.push_back(index);
            }
        }
    }
    std::sort(decision.readings.begin(), decision.readings.end());
    if (decision.readings.empty()) return decision;
    decision.contradiction = 1 - none;
    const double enough = data.judging.decided_at;
    decision.says = decision.contradiction >= enough ? LimitVerdict::contradicts
                    : none >= enough                 ? LimitVerdict::met
                                                     : LimitVerdict::undecided;
    return decision;
}

std::vector<std::size_t> frames_that_tell(const ConceptTree& tree, const EvidenceData& data, const Limit& limit,
                                          const PartEvidence& part) {
    std::vector<std::size_t> frames;
    const auto add = [&](std::size_t frame) {
        const bool read = !part.beliefs[frame].readings.empty();
        if (read && std::find(frames.begin(), frames.end(), frame) == frames.end()) frames.push_back(frame);
    };
    for (std::size_t i = 0; i < data.frames.size(); ++i) {
        const evidence::Frame& frame = data.frames[i];
        const bool knows = std::any_of(frame.candidates.begin(), frame.candidates.end(), [&](const auto& candidate) {
            return candidate.is != 0 && any_above(tree, limit.no_part_is, candidate.is);
        });
        if (!knows || part.beliefs[i].posterior.empty()) continue;
        if (frame.of == evidence::kNone || identify::makes_sense(tree, data, part.beliefs, i)) {
            add(i);
        } else {
            add(frame.of);  // what it is tells that the question does not arise
        }
    }
    return frames;
}

}  // namespace grainside::verdict
