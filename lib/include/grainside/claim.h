// What a listing asserts of one part.
#ifndef GRAINSIDE_CLAIM_H
#define GRAINSIDE_CLAIM_H

#include <cstdint>
#include <optional>
#include <string_view>

namespace grainside {
inline namespace v0 {

// The parts of a product that claims speak of. The words that name them live in rules/parts.yaml.
enum class Part : std::uint8_t {
    whole, body, lining, hardware, strap, handle, trim, edge, sole, upper, zip, thread, filling
};
inline constexpr std::size_t kPartCount = 13;
std::string_view name_of(Part part) noexcept;
std::optional<Part> part_named(std::string_view name) noexcept;

// What a claim speaks of. `quality` and `craft` are mentions (praise, handwork, care advice): rules ask for them, and
// findings may stand on them, but they are no claims and `claims` never lists them.
enum class Kind : std::uint8_t {
    material, species, grain, finish, plating, tanning, composition, measure, performance, origin, certification,
    environmental, quality, craft
};
inline constexpr std::size_t kKindCount = 14;
std::string_view name_of(Kind kind) noexcept;
std::optional<Kind> kind_named(std::string_view name) noexcept;
constexpr bool is_claim_kind(Kind kind) noexcept { return kind < Kind::quality; }

// A concept of the rule book's tree; 0 is none. Meaningful only together with the book that gave it.
using ConceptId = std::uint16_t;

enum class Unit : std::uint8_t {
    none, percent, millimetre, micrometre, ounce_leather, ounce_cloth, iron, gram_per_square_metre, denier, tex,
    kilogram_per_cubic_metre, karat, fineness, thread_count, fill_power
};
std::string_view name_of(Unit unit) noexcept;

// A stated number: `low` = `high` unless a range was given. In `unit`, as written, not converted.
struct Quantity {
    double low = 0;
    double high = 0;
    Unit unit = Unit::none;
};

struct Claim {
    std::uint32_t field = 0;  // index into Listing::fields
    std::uint32_t start = 0;  // half-open byte span in the field's text
    std::uint32_t end = 0;
    ConceptId says = 0;
    ConceptId called = 0;  // the noun it borrows: 'PU leather' says polyurethane, called leather; 0 = none
    Part part = Part::whole;
    Kind kind = Kind::material;
    bool negated = false;
    bool hedged = false;
    bool look_alike = false;  // written with letters of another script
    std::optional<Quantity> quantity;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_CLAIM_H
