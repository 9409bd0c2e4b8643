// What a listing asserts of one part.
//
//     grainside::Listing listing;
//     listing.fields = {{"description", "Body in genuine leather, 4-5 oz. No PVC in the lining."}};
//     grainside::Checker checker(book);
//     for (const grainside::Claim& claim : checker.check(listing).mentions) {
//         if (!grainside::is_claim_kind(claim.kind)) continue;
//         std::cout << grainside::name_of(claim.part) << ": " << grainside::name_of(claim.kind) << ", "
//                   << (claim.negated ? "not " : "") << book.concept_wording(claim.says);
//         if (claim.has(grainside::Mark::genuine)) std::cout << ", called genuine";
//         if (const auto thick = grainside::in_millimetres(claim.quantity)) {
//             std::cout << ", " << thick->low << " to " << thick->high << " mm";
//         }
//         std::cout << '\n';
//     }
//     // prints: body: material, leather, called genuine
//     // prints: body: measure, thickness, 1.5875 to 1.98438 mm
//     // prints: body: material, not PVC
//
// Plain values. A claim's span counts bytes of the field's text, and its concepts hold for the book that read it.
#ifndef GRAINSIDE_CLAIM_H
#define GRAINSIDE_CLAIM_H

#include <cstdint>
#include <optional>
#include <string_view>

namespace grainside {
inline namespace v0 {

// The parts of a product that claims speak of. The words that name them live in rules/parts.yaml.
enum class Part : std::uint8_t {
    whole,
    body,
    lining,
    hardware,
    strap,
    handle,
    trim,
    edge,
    sole,
    upper,
    zip,
    thread,
    filling
};
inline constexpr std::size_t kPartCount = 13;
std::string_view name_of(Part part) noexcept;
std::optional<Part> part_named(std::string_view name) noexcept;

// What a claim speaks of. `quality` and `craft` are mentions (praise, handwork, care advice): rules ask for them, and
// findings may stand on them, but they are no claims and `claims` never lists them.
enum class Kind : std::uint8_t {
    material,
    species,
    grain,
    finish,
    plating,
    tanning,
    composition,
    measure,
    performance,
    origin,
    certification,
    environmental,
    quality,
    craft
};
inline constexpr std::size_t kKindCount = 14;
std::string_view name_of(Kind kind) noexcept;
std::optional<Kind> kind_named(std::string_view name) noexcept;
constexpr bool is_claim_kind(Kind kind) noexcept {
    return kind < Kind::quality;
}

// A concept of the rule book's tree; 0 is none. Meaningful only together with the book that gave it.
using ConceptId = std::uint16_t;

enum class Unit : std::uint8_t {
    none,
    percent,
    millimetre,
    micrometre,
    ounce_leather,
    ounce_cloth,
    iron,
    gram_per_square_metre,
    denier,
    tex,
    kilogram_per_cubic_metre,
    karat,
    fineness,
    thread_count,
    fill_power
};
std::string_view name_of(Unit unit) noexcept;

// A stated number: `low` = `high` unless a range was given. In `unit`, as written, not converted.
struct Quantity {
    double low = 0;
    double high = 0;
    Unit unit = Unit::none;
};

// A thickness in millimetres, whichever unit it was stated in; nothing for other units.
std::optional<Quantity> in_millimetres(const std::optional<Quantity>& quantity) noexcept;

// What stands beside a claim, as bits of Claim::marks. Rules ask for these by name (rules/README.md explains each).
enum class Mark : std::uint32_t {
    genuine = 1U << 0,           // 'genuine', 'real', 'authentic' before it
    solid = 1U << 1,             // 'solid'
    pure = 1U << 2,              // 'pure'
    all = 1U << 3,               // 'all', 'entirely', '100%'
    imitation = 1U << 4,         // 'faux', 'imitation', 'man-made'
    look = 1U << 5,              // '-look', '-effect', '-inspired'
    praised = 1U << 6,           // a word of praise before it
    coated = 1U << 7,            // said to be coated
    asterisk = 1U << 8,          // an asterisk follows
    method = 1U << 9,            // a standard is named in the same sentence
    result = 1U << 10,           // and a result
    document = 1U << 11,         // a certificate or report with a number, in the same sentence
    shares_off = 1U << 12,       // first of a list of percentages that do not add up to 100
    title = 1U << 13,            // stands in the listing's name
    specification = 1U << 14,    // stands in an attribute, the material field or behind a label
    on_product = 1U << 15,       // the phrase's head is the product: 'leather tote'
    on_part = 1U << 16,          // the phrase's head is a part: 'leather trim'
    on_material = 1U << 17,      // a statement whose phrase's head is a material: 'waterproof leather'
    more_than = 1U << 18,        // 'more', 'less': a comparison of amounts
    likened = 1U << 19,          // only likened: 'mink-soft'
    blend = 1U << 20,            // said to be a blend
    first_share = 1U << 21,      // the first, so the largest, of a list of percentages
    listed = 1U << 22,           // joined to another by 'and', '/', '+' or '&'
    labelled_part = 1U << 23,    // behind a label or in a field that names its part or asks for the material
    before_word = 1U << 24,      // prose, and an unknown word right behind it: 'leather punch'
    before_material = 1U << 25,  // right before another material of its phrase: 'leather polyester'
    part_named = 1U << 26,       // a noun names its part, in its phrase or in one that it hangs on
    bracketed = 1U << 27,  // begins a bracket right behind the phrase of another material: 'leather (polyurethane)'
    explained = 1U << 28,  // such a bracket stands right behind its phrase
};
std::string_view name_of(Mark mark) noexcept;
std::optional<Mark> mark_named(std::string_view name) noexcept;
inline constexpr int kMarkCount = 29;

// Claim::family of a noun that may name several things of a part, as 'side' does.
inline constexpr std::uint8_t kOneOfSeveral = 255;

struct Claim {
    std::uint32_t field = 0;  // index into Listing::fields
    std::uint32_t start = 0;  // half-open byte span in the field's text
    std::uint32_t end = 0;
    ConceptId says = 0;
    ConceptId called = 0;  // the noun it borrows: 'PU leather' says polyurethane, called leather; 0 = none
    ConceptId place = 0;   // of an origin claim: the country; 0 = none
    Part part = Part::whole;
    Kind kind = Kind::material;
    std::uint8_t family = 0;  // of the noun that names its part: a buckle is no ring, though both are hardware; 0 = any
    double of_total = 0;  // of a coat's thickness: its share of the part's thickness, where both are stated; percent
    bool negated = false;
    bool hedged = false;
    bool look_alike = false;  // written with letters of another script
    std::optional<Quantity> quantity;
    std::uint32_t marks = 0;     // bits of Mark
    std::uint32_t phrase = 0;    // numbers the phrases of a listing: equal for what stands in one phrase
    std::uint32_t sentence = 0;  // numbers its sentences, items and labelled values
    std::uint32_t list_end = 0;  // of a claim marked shares_off: where its list of percentages ends

    bool has(Mark mark) const noexcept { return (marks & static_cast<std::uint32_t>(mark)) != 0; }
};

// Of one part, and not of two nouns that name different things there.
inline bool of_one_thing(const Claim& a, const Claim& b) noexcept {
    if (a.part != b.part || a.family == kOneOfSeveral || b.family == kOneOfSeveral) return false;
    return a.family == b.family || a.family == 0 || b.family == 0;
}

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_CLAIM_H
