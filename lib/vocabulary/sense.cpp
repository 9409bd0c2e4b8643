#include "vocabulary/sense.h"

#include <array>
#include <utility>

namespace grainside::vocabulary {

namespace {

constexpr auto kRoles = std::to_array<std::pair<std::string_view, Role>>({
    {"determiner", Role::determiner},
    {"own", Role::own},
    {"link", Role::link},
    {"with", Role::with},
    {"comes-along", Role::comes_along},
    {"at-part", Role::at_part},
    {"backing", Role::backing},
    {"copula", Role::copula},
    {"conjunction", Role::conjunction},
    {"alternative", Role::alternative},
    {"negator", Role::negator},
    {"negation-end", Role::negation_end},
    {"exception", Role::exception},
    {"free-suffix", Role::free_suffix},
    {"hedge", Role::hedge},
    {"genuine", Role::genuine},
    {"solid", Role::solid},
    {"pure", Role::pure},
    {"all", Role::all},
    {"all-after", Role::all_after},
    {"imitation", Role::imitation},
    {"look", Role::look},
    {"coated", Role::coated},
    {"comparison", Role::comparison},
    {"comparison-suffix", Role::comparison_suffix},
    {"other-product", Role::other_product},
    {"other-product-after", Role::other_product_after},
    {"accessory-before", Role::accessory_before},
    {"teaching", Role::teaching},
    {"crowd", Role::crowd},
    {"crowd-opener", Role::crowd_opener},
    {"reviewer", Role::reviewer},
    {"currency", Role::currency},
    {"care", Role::care},
    {"idiom", Role::idiom},
    {"colour", Role::colour},
    {"tone-word", Role::tone_word},
    {"blend", Role::blend},
    {"standard", Role::standard},
    {"document", Role::document},
    {"result", Role::result},
    {"affirm", Role::affirm},
    {"deny", Role::deny},
    {"thickness-word", Role::thickness_word},
    {"coat-word", Role::coat_word},
    {"size-word", Role::size_word},
    {"silent-label", Role::silent_label},
    {"main-label", Role::main_label},
    {"colour-label", Role::colour_label},
    {"origin-label", Role::origin_label},
    {"leather-origin-label", Role::leather_origin_label},
    {"answer-label", Role::answer_label},
    {"question-label", Role::question_label},
    {"plain-label", Role::plain_label},
    {"title-label", Role::title_label},
    {"more-than", Role::more_than},
    {"purpose", Role::purpose},
    {"article", Role::article},
    {"breaks", Role::breaks},
    {"accessory", Role::accessory},
    {"thing", Role::thing},
    {"naming", Role::naming},
    {"making", Role::making},
    {"tannage-label", Role::tannage_label},
});

constexpr auto kConditions = std::to_array<std::pair<std::string_view, Condition>>({
    {"words", Condition::always},
    {"before_hide", Condition::before_hide},
    {"before_material", Condition::before_material},
    {"before_product", Condition::before_product},
    {"before_hardware", Condition::before_hardware},
    {"after_genuine", Condition::after_genuine},
    {"after_borrower", Condition::after_borrower},
    {"as_value", Condition::as_value},
    {"with_edge", Condition::with_edge},
    {"with_hardware", Condition::with_hardware},
    {"likened", Condition::likened},
    {"after_own", Condition::after_own},
    {"after_share", Condition::after_share},
    {"as_tannage", Condition::as_tannage},
});

}  // namespace

std::optional<Role> role_named(std::string_view name) noexcept {
    for (const auto& [text, role] : kRoles) {
        if (text == name) return role;
    }
    return std::nullopt;
}

std::optional<Condition> condition_named(std::string_view key) noexcept {
    for (const auto& [text, condition] : kConditions) {
        if (text == key) return condition;
    }
    return std::nullopt;
}

}  // namespace grainside::vocabulary
