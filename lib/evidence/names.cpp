#include "evidence/names.h"

#include "grainside/cost.h"

namespace grainside {
inline namespace v0 {

std::string_view name_of(CostGroup group) noexcept {
    constexpr std::string_view kGroups[] = {"materials", "hardware",  "labour", "overhead", "packing", "margin",
                                            "freight",   "insurance", "duty",   "fees",     "other"};
    return kGroups[static_cast<std::size_t>(group)];
}

}  // namespace v0
}  // namespace grainside

namespace grainside::evidence {

namespace {

constexpr std::string_view kHarms[] = {"none", "mark", "cut", "destroy"};
constexpr std::string_view kWho[] = {"anyone", "practised", "laboratory"};
constexpr std::string_view kWhenWorn[] = {"counts", "lowers", "spoils"};
constexpr std::string_view kComputes[] = {"nothing", "density", "coat-share", "colour-change"};
constexpr std::string_view kLikelihoodBy[] = {"table", "density", "composition"};

static_assert(std::size(kHarms) == kHarmCount);

}  // namespace

std::string_view name_of(Harm harm) noexcept {
    return kHarms[static_cast<std::size_t>(harm)];
}
std::string_view name_of(Who who) noexcept {
    return kWho[static_cast<std::size_t>(who)];
}

std::span<const std::string_view> harm_names() noexcept {
    return kHarms;
}
std::span<const std::string_view> who_names() noexcept {
    return kWho;
}
std::span<const std::string_view> when_worn_names() noexcept {
    return kWhenWorn;
}
std::span<const std::string_view> computes_names() noexcept {
    return kComputes;
}
std::span<const std::string_view> likelihood_by_names() noexcept {
    return kLikelihoodBy;
}

}  // namespace grainside::evidence
