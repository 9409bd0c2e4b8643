#include "cost/usual_costs.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <optional>

#include "cost/line_text.h"
#include "evidence/cost_value.h"
#include "evidence/evidence_data.h"
#include "rules/book_data.h"

namespace grainside::cost {

using evidence::CostBounds;
using evidence::CostEntry;
using evidence::CostInput;
using evidence::CostValue;
using evidence::UsualCost;

namespace {

constexpr double kMinutes = 60;  // in an hour
constexpr double kSlack = 1e-9;  // of a range's upper end, far below what anyone writes

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

// Whole words, any case, ASCII.
bool names(std::string_view text, std::string_view words) {
    const auto small = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
    for (std::size_t at = 0; at + words.size() <= text.size(); ++at) {
        const bool same = std::equal(words.begin(), words.end(), text.begin() + static_cast<std::ptrdiff_t>(at),
                                     [&](char a, char b) { return small(a) == small(b); });
        const std::size_t end = at + words.size();
        if (same && (at == 0 || !is_letter(text[at - 1])) && (end == text.size() || !is_letter(text[end]))) return true;
    }
    return false;
}

class UsualFinder {
public:
    UsualFinder(const EvidenceBook& book, const evidence::DossierData& dossier)
        : costs_(book.data().costs), vocabulary_(book.rule_book().data().vocabulary), dossier_(dossier) {
        for (std::size_t i = 0; i < vocabulary_.categories.size(); ++i) {
            if (vocabulary_.categories[i].name == dossier.category) category_ = 1U << i;
        }
    }

    // Those for one input of a group's line; `material` 0: of any.
    std::vector<const UsualCost*> find(CostInput input, CostGroup group, ConceptId material, bool whole) const {
        std::vector<const UsualCost*> found;
        bool any_named = false;
        for (const UsualCost& usual : costs_.usual) {
            const bool fits = usual.range.input == input && usual.whole_product == whole && in_group(usual, group) &&
                              of_material(usual, material) && in_category(usual);
            if (!fits) continue;
            found.push_back(&usual);
            any_named = any_named || is_named(usual);
        }
        // Words of the sample single out its kind: a tote is held against totes.
        if (any_named) std::erase_if(found, [&](const UsualCost* usual) { return !is_named(*usual); });
        return found;
    }

    // Of the sample's category.
    Part main_part() const {
        return category_ == 0 ? Part::body
                              : vocabulary_.categories[static_cast<std::size_t>(std::countr_zero(category_))].main_part;
    }

    bool of_material(const UsualCost& usual, ConceptId material) const {
        if (usual.materials.empty() || material == 0) return true;
        // 'Leather' may be full grain: what is usual for that is not unusual for it.
        return std::any_of(usual.materials.begin(), usual.materials.end(),
                           [&](ConceptId one) { return vocabulary_.concepts.related(material, one); });
    }

private:
    static bool in_group(const UsualCost& usual, CostGroup group) {
        return usual.groups.empty() || std::find(usual.groups.begin(), usual.groups.end(), group) != usual.groups.end();
    }
    bool in_category(const UsualCost& usual) const {
        return usual.categories == 0 || category_ == 0 || (usual.categories & category_) != 0;
    }
    bool is_named(const UsualCost& usual) const {
        return std::any_of(usual.named.begin(), usual.named.end(),
                           [&](const std::string& words) { return names(dossier_.what, words); });
    }

    const evidence::CostBook& costs_;
    const vocabulary::Vocabulary& vocabulary_;
    const evidence::DossierData& dossier_;
    std::uint32_t category_ = 0;  // 0: not known
};

std::vector<UsualRange> ranges_of(const std::vector<const UsualCost*>& found) {
    std::vector<UsualRange> ranges;
    ranges.reserve(found.size());
    for (const UsualCost* const usual : found) ranges.push_back(usual_range(*usual));
    return ranges;
}

// An end that only the arithmetic puts outside counts as the end.
double distance(const CostBounds& value, const CostBounds& range) {
    const double away = std::max({0.0, range.low - value.high, value.low - range.high});
    return away <= kSlack * std::abs(range.high) ? 0 : away;
}

// Three digits at least, and never an exponent where all digits of the whole say more.
std::string plain_number(double value) {
    return value < 99.95 ? fmt::format("{:.3g}", value) : fmt::format("{:.0f}", value);
}

// The nearest of the ranges, where the value overlaps none of them.
const UsualCost* outside(const CostBounds& value, const std::vector<const UsualCost*>& found,
                         const std::vector<CostBounds>& ranges) {
    const UsualCost* nearest = nullptr;
    double least = 0;
    for (std::size_t i = 0; i < found.size(); ++i) {
        const double away = distance(value, ranges[i]);
        if (away == 0) return nullptr;
        if (nearest != nullptr && away >= least) continue;
        nearest = found[i];
        least = away;
    }
    return nearest;
}

class UnusualFinder {
public:
    UnusualFinder(const EvidenceBook& book, const evidence::DossierData& dossier, const evidence::DossierCosts& costs)
        : finder_(book, dossier), costs_(costs) {}

    UnusualCosts take() {
        for (const CostEntry& entry : costs_.entries) {
            for (const CostValue& value : entry.values) check(entry, value);
        }
        check_labour();
        check_areas();
        UnusualCosts result{std::move(unusual_), {}};
        for (const Dropped& dropped : dropped_) {
            result.remarks.push_back(fmt::format(
                "Not held against what is usual, for want of a rate: {}. `exchange: {{{}: ...}}` with the rate of the "
                "day lets it be.",
                fmt::join(dropped.values, ", "), dropped.currency));
        }
        return result;
    }

private:
    struct Dropped {
        std::string_view currency;  // of the ranges
        std::vector<std::string> values;
    };

    // In the currency of the costs; nothing without a rate.
    std::optional<CostBounds> in_costs(const CostValue& value) const {
        const CostBounds bounds = evidence::bounds_of(value);
        if (value.currency.empty() || value.currency == costs_.currency) return bounds;
        const evidence::ExchangeRate* const rate = evidence::find_exchange(costs_, value.currency);
        if (rate == nullptr) return std::nullopt;
        const CostBounds worth = evidence::bounds_of(rate->worth);
        return CostBounds{bounds.low * worth.low, bounds.high * worth.high};
    }

    void check(const CostEntry& entry, const CostValue& value) {
        if (value.usual != evidence::kNoCostIndex) return;
        const std::optional<CostBounds> bounds = in_costs(value);
        if (!bounds) return;
        std::vector<const UsualCost*> comparable;
        std::vector<CostBounds> ranges;
        std::string_view missing;
        for (const UsualCost* const usual : finder_.find(value.input, entry.group, entry.material, false)) {
            const std::optional<CostBounds> range = in_costs(usual->range);
            // What is usual for a material says nothing of a line that names none.
            const bool unknown = entry.material == 0 && !usual->materials.empty();
            if (unknown || usual->range.per != value.per) continue;
            if (!range) {
                missing = usual->range.currency;
                continue;
            }
            comparable.push_back(usual);
            ranges.push_back(*range);
        }
        if (const UsualCost* const usual = outside(*bounds, comparable, ranges)) {
            unusual_.push_back({entry.item, evidence::words_of(value.input), value.written, usual_range(*usual)});
        }
        if (!missing.empty()) drop(missing, fmt::format("{} of {}", evidence::words_of(value.input), entry.item));
    }

    void drop(std::string_view currency, std::string what) {
        const auto known = std::find_if(dropped_.begin(), dropped_.end(),
                                        [&](const Dropped& dropped) { return dropped.currency == currency; });
        Dropped& dropped = known != dropped_.end() ? *known : dropped_.emplace_back();
        dropped.currency = currency;
        dropped.values.push_back(std::move(what));
    }

    // What all lines together state, against what is usual for the whole product.
    void check_whole(CostInput input, CostGroup group, ConceptId material, const CostBounds& sum, std::string value) {
        const std::vector<const UsualCost*> found = finder_.find(input, group, material, true);
        std::vector<CostBounds> ranges;
        ranges.reserve(found.size());
        for (const UsualCost* const usual : found) ranges.push_back(evidence::bounds_of(usual->range));
        if (const UsualCost* const usual = outside(sum, found, ranges)) {
            unusual_.push_back(
                {std::string(name_of(group)), evidence::words_of(input), std::move(value), usual_range(*usual)});
        }
    }

    static std::string spread_text(const CostBounds& sum, double unit, std::string_view name) {
        const double low = sum.low / unit;
        const double high = sum.high / unit;
        if (high - low < kSlack * high) return fmt::format("{} {} in all", plain_number(low), name);
        return fmt::format("{}-{} {} in all", plain_number(low), plain_number(high), name);
    }

    // Only where all work is told by its time.
    void check_labour() {
        CostBounds sum;
        for (const CostEntry& entry : costs_.entries) {
            if (entry.group != CostGroup::labour) continue;
            if (!add(entry, CostInput::time, sum)) return;
        }
        if (sum.high > 0)
            check_whole(CostInput::time, CostGroup::labour, 0, sum, spread_text(sum, 1 / kMinutes, "min"));
    }

    // Of the lines that state a material which the ranges are for, where the main part is among them: leather that only
    // trims a bag is less than that of a leather bag.
    void check_areas() {
        CostBounds sum;
        ConceptId material = 0;
        bool main_part = false;
        for (const CostEntry& entry : costs_.entries) {
            if (entry.group != CostGroup::materials || entry.material == 0) continue;
            if (finder_.find(CostInput::area, entry.group, entry.material, true).empty()) continue;
            if (!add(entry, CostInput::area, sum)) return;
            material = entry.material;
            main_part = main_part || !entry.part || entry.part == finder_.main_part();
        }
        if (material == 0 || !main_part) return;
        const measure::UnitInfo* const feet = measure::find_unit("sq ft");
        check_whole(CostInput::area, CostGroup::materials, material, sum, spread_text(sum, feet->factor, feet->name));
    }

    static bool add(const CostEntry& entry, CostInput input, CostBounds& sum) {
        const CostValue* const value = evidence::find_value(entry, input);
        if (value == nullptr) return false;
        const CostValue* const count = evidence::find_value(entry, CostInput::count);
        const CostBounds times = count == nullptr ? CostBounds{1, 1} : evidence::bounds_of(*count);
        const CostBounds bounds = evidence::bounds_of(*value);
        sum.low += bounds.low * times.low;
        sum.high += bounds.high * times.high;
        return true;
    }

    UsualFinder finder_;
    const evidence::DossierCosts& costs_;
    std::vector<UnusualCost> unusual_;
    std::vector<Dropped> dropped_;
};

}  // namespace

std::vector<CostGap> gaps_of(const EvidenceBook& book, const evidence::DossierData& dossier,
                             const evidence::DossierCosts& costs) {
    const UsualFinder finder(book, dossier);
    std::vector<CostGap> gaps;
    for (const CostEntry& entry : costs.entries) {
        for (const CostInput input : evidence::lacking(entry)) {
            std::vector<const UsualCost*> found = finder.find(input, entry.group, entry.material, false);
            // A line's own area or time is not that of the whole product, but better than nothing.
            if (found.empty()) found = finder.find(input, entry.group, entry.material, true);
            if (input == CostInput::cutting_yield && found.empty()) {
                found = finder.find(CostInput::waste, entry.group, entry.material, false);
            }
            // A price of leather by its area is nothing that a length of thread could have.
            if (input == CostInput::price) {
                std::erase_if(found, [&](const UsualCost* usual) {
                    const auto area = evidence::find_value(entry, CostInput::area);
                    return usual->range.per == measure::Dimension::area && area == nullptr;
                });
            }
            gaps.push_back({fmt::format("{}: {}", entry.item, evidence::words_of(input)), ranges_of(found)});
        }
    }
    for (const CostGroup group : book.data().costs.expected) {
        if ((costs.stated & evidence::group_bit(group)) != 0) continue;
        std::vector<UsualRange> usual;
        if (group == CostGroup::labour) usual = ranges_of(finder.find(CostInput::time, group, 0, true));
        if (group == CostGroup::materials) usual = ranges_of(finder.find(CostInput::area, group, 0, true));
        gaps.push_back({std::string(name_of(group)), std::move(usual)});
    }
    return gaps;
}

UnusualCosts unusual_costs(const EvidenceBook& book, const evidence::DossierData& dossier,
                           const evidence::DossierCosts& costs) {
    return UnusualFinder(book, dossier, costs).take();
}

std::vector<UsualRange> usual_multiples(const EvidenceBook& book) {
    std::vector<UsualRange> ranges;
    for (const UsualCost& usual : book.data().costs.usual) {
        if (usual.range.input == CostInput::multiple) ranges.push_back(usual_range(usual));
    }
    return ranges;
}

}  // namespace grainside::cost
