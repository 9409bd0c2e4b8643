// Word classes as bits: which of them a term can have, or a segment holds.
#ifndef GRAINSIDE_VOCABULARY_ROLE_SET_H
#define GRAINSIDE_VOCABULARY_ROLE_SET_H

#include <array>
#include <cstdint>
#include <initializer_list>

#include "vocabulary/sense.h"

namespace grainside::vocabulary {

// Asking is one or two instructions, so that a stage with nothing to do costs nothing.
class RoleSet {
public:
    constexpr RoleSet() = default;
    constexpr RoleSet(std::initializer_list<Role> roles) {
        for (const Role role : roles) insert(role);
    }

    constexpr void insert(Role role) noexcept { bits_[word(role)] |= bit(role); }
    constexpr void insert_all(RoleSet other) noexcept {
        bits_[0] |= other.bits_[0];
        bits_[1] |= other.bits_[1];
    }
    constexpr bool has(Role role) const noexcept { return (bits_[word(role)] & bit(role)) != 0; }
    constexpr bool any(RoleSet wanted) const noexcept {
        return ((bits_[0] & wanted.bits_[0]) | (bits_[1] & wanted.bits_[1])) != 0;
    }

private:
    static constexpr std::size_t word(Role role) { return static_cast<std::size_t>(role) / 64; }
    static constexpr std::uint64_t bit(Role role) { return std::uint64_t{1} << (static_cast<unsigned>(role) % 64); }

    std::array<std::uint64_t, 2> bits_{};
};
static_assert(static_cast<unsigned>(Role::breaks) < 128);

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_ROLE_SET_H
