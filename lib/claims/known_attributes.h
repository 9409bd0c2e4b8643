// What the names of attributes were read as before.
#ifndef GRAINSIDE_CLAIMS_KNOWN_ATTRIBUTES_H
#define GRAINSIDE_CLAIMS_KNOWN_ATTRIBUTES_H

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

#include "claims/regions.h"

namespace grainside::claims {

// A catalog has a few dozen names of attributes ('Lining', 'Hardware') and repeats them in every listing; what one says
// depends on nothing but itself and the category. Bounded: a name that finds no room takes the place of another, so
// that a hostile catalog with ever new names costs what it would cost without this. Not thread-safe.
class KnownAttributes {
public:
    // Null where `name` has to be read.
    const Region* find(std::string_view name, std::uint8_t category) const noexcept {
        for (std::size_t i = 0, at = place_of(name, category); i < kTried; ++i, at = (at + 1) % kSlots) {
            if (slots_[at].holds(name, category)) return &slots_[at].region;
            if (slots_[at].length == 0) break;
        }
        return nullptr;
    }

    // Names that are empty or longer than kLongest are not kept.
    void remember(std::string_view name, std::uint8_t category, const Region& region) noexcept {
        if (name.empty() || name.size() > kLongest) return;
        std::size_t at = place_of(name, category);
        for (std::size_t i = 0, tried = at; i < kTried; ++i, tried = (tried + 1) % kSlots) {
            if (slots_[tried].length != 0) continue;
            at = tried;
            break;
        }
        Slot& slot = slots_[at];
        std::copy(name.begin(), name.end(), slot.name.begin());
        slot.length = static_cast<std::uint8_t>(name.size());
        slot.category = category;
        slot.region = region;
    }

private:
    static constexpr std::size_t kSlots = 256;
    static constexpr std::size_t kTried = 4;
    static constexpr std::size_t kLongest = 40;  // bytes

    struct Slot {
        std::array<char, kLongest> name{};
        std::uint8_t length = 0;  // 0 = an empty slot
        std::uint8_t category = 0;
        Region region;

        bool holds(std::string_view wanted, std::uint8_t wanted_category) const noexcept {
            return category == wanted_category && length != 0 && std::string_view(name.data(), length) == wanted;
        }
    };

    static std::size_t place_of(std::string_view name, std::uint8_t category) noexcept {
        std::uint32_t hash = category;
        for (const char c : name.substr(0, kLongest)) hash = (hash ^ static_cast<unsigned char>(c)) * 0x9e3779b1U;
        return hash >> 24;
    }
    static_assert(kSlots == 256);  // as many as place_of tells apart

    std::vector<Slot> slots_ = std::vector<Slot>(kSlots);
};

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_KNOWN_ATTRIBUTES_H
