#include "claims/known_attributes.h"

#include <gtest/gtest.h>

#include <string>

namespace grainside::claims {
namespace {

Region region_of(Part part) {
    Region region;
    region.kind = RegionKind::part;
    region.part = part;
    return region;
}

TEST(KnownAttributes, TellWhatWasRememberedForTheNameAndTheCategory) {
    KnownAttributes known;
    EXPECT_EQ(known.find("Lining", 3), nullptr);
    known.remember("Lining", 3, region_of(Part::lining));
    ASSERT_NE(known.find("Lining", 3), nullptr);
    EXPECT_EQ(known.find("Lining", 3)->part, Part::lining);
    EXPECT_EQ(known.find("Lining", 4), nullptr);
    EXPECT_EQ(known.find("Linin", 3), nullptr);
    EXPECT_EQ(known.find("lining", 3), nullptr);
}

TEST(KnownAttributes, LeaveOutEmptyAndLongNames) {
    KnownAttributes known;
    const std::string long_name(41, 'x');
    known.remember(long_name, 1, region_of(Part::lining));
    known.remember("", 1, region_of(Part::lining));
    EXPECT_EQ(known.find(long_name, 1), nullptr);
    EXPECT_EQ(known.find(long_name.substr(0, 40), 1), nullptr);
    EXPECT_EQ(known.find("", 1), nullptr);
}

// A hostile catalog names ever new attributes: each is either unknown or what it was remembered as, and the last one
// is known.
TEST(KnownAttributes, StayTrueWhenOthersTakeTheirPlace) {
    KnownAttributes known;
    constexpr int kNames = 5'000;
    const auto part_of = [](int i) { return i % 2 == 0 ? Part::lining : Part::hardware; };
    for (int i = 0; i < kNames; ++i) {
        const std::string name = "attribute " + std::to_string(i);
        known.remember(name, 0, region_of(part_of(i)));
        ASSERT_NE(known.find(name, 0), nullptr) << name;
    }
    int kept = 0;
    for (int i = 0; i < kNames; ++i) {
        const Region* const region = known.find("attribute " + std::to_string(i), 0);
        if (region == nullptr) continue;
        ++kept;
        EXPECT_EQ(region->part, part_of(i)) << i;
    }
    EXPECT_GT(kept, 100);
    EXPECT_LE(kept, 256);
}

}  // namespace
}  // namespace grainside::claims
