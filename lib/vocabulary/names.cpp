// The names of parts, kinds, units, grades and bases, as they stand in rule files and records.
#include <array>
#include <bit>

#include "grainside/claim.h"
#include "grainside/finding.h"

namespace grainside {
inline namespace v0 {

namespace {

constexpr std::array<std::string_view, kPartCount> kParts = {"whole",  "body",   "lining", "hardware", "strap",
                                                             "handle", "trim",   "edge",   "sole",     "upper",
                                                             "zip",    "thread", "filling"};
constexpr std::array<std::string_view, kKindCount> kKinds = {
    "material", "species",     "grain",  "finish",        "plating",       "tanning", "composition",
    "measure",  "performance", "origin", "certification", "environmental", "quality", "craft"};
constexpr std::array<std::string_view, 15> kUnits = {"none",
                                                     "percent",
                                                     "millimetre",
                                                     "micrometre",
                                                     "ounce-leather",
                                                     "ounce-cloth",
                                                     "iron",
                                                     "gram-per-square-metre",
                                                     "denier",
                                                     "tex",
                                                     "kilogram-per-cubic-metre",
                                                     "karat",
                                                     "fineness",
                                                     "thread-count",
                                                     "fill-power"};
constexpr std::array<std::string_view, 6> kGrades = {"contradicted", "misleading", "unsupported",
                                                     "inconclusive", "vague",      "consistent"};
constexpr std::array<std::string_view, 3> kBases = {"wording", "cross-check", "evidence"};

constexpr std::array<std::string_view, kMarkCount> kMarks = {
    "genuine",     "solid",           "pure",          "all",         "imitation", "look",
    "praised",     "coated",          "asterisk",      "method",      "result",    "document",
    "shares-off",  "title",           "specification", "on-product",  "on-part",   "on-material",
    "more-than",   "likened",         "blend",         "first-share", "listed",    "labelled-part",
    "before-word", "before-material", "part-named",    "bracketed",   "explained"};

template <typename Enum, std::size_t N>
std::optional<Enum> named(const std::array<std::string_view, N>& names, std::string_view name) {
    for (std::size_t i = 0; i < N; ++i) {
        if (names[i] == name) return static_cast<Enum>(i);
    }
    return std::nullopt;
}

}  // namespace

std::string_view name_of(Part part) noexcept {
    return kParts[static_cast<std::size_t>(part)];
}
std::string_view name_of(Kind kind) noexcept {
    return kKinds[static_cast<std::size_t>(kind)];
}
std::string_view name_of(Unit unit) noexcept {
    return kUnits[static_cast<std::size_t>(unit)];
}
std::string_view name_of(Grade grade) noexcept {
    return kGrades[static_cast<std::size_t>(grade)];
}
std::string_view name_of(Basis basis) noexcept {
    return kBases[static_cast<std::size_t>(basis)];
}
std::string_view name_of(Mark mark) noexcept {
    return kMarks[static_cast<std::size_t>(std::countr_zero(static_cast<std::uint32_t>(mark)))];
}
std::optional<Mark> mark_named(std::string_view name) noexcept {
    for (std::size_t i = 0; i < kMarks.size(); ++i) {
        if (kMarks[i] == name) return static_cast<Mark>(1U << i);
    }
    return std::nullopt;
}
std::optional<Part> part_named(std::string_view name) noexcept {
    return named<Part>(kParts, name);
}
std::optional<Kind> kind_named(std::string_view name) noexcept {
    return named<Kind>(kKinds, name);
}
std::optional<Grade> grade_named(std::string_view name) noexcept {
    return named<Grade>(kGrades, name);
}

std::optional<Quantity> in_millimetres(const std::optional<Quantity>& quantity) noexcept {
    if (!quantity) return std::nullopt;
    // An inch is 25.4 mm (international yard and pound agreement, 1959); of leather an ounce is 1/64 and an iron 1/48
    // of it (trade usage).
    constexpr double kInch = 25.4;
    const auto times = [&](double factor) {
        return Quantity{quantity->low * factor, quantity->high * factor, Unit::millimetre};
    };
    switch (quantity->unit) {
        case Unit::millimetre:
            return quantity;
        case Unit::micrometre:
            return times(1e-3);
        case Unit::ounce_leather:
            return times(kInch / 64);
        case Unit::iron:
            return times(kInch / 48);
        default:
            return std::nullopt;
    }
}

}  // namespace v0
}  // namespace grainside
