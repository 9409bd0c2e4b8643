#include "evidence/load_alloys.h"

#include <fmt/format.h>

#include <algorithm>

#include "evidence/elements.h"
#include "evidence/entry_reader.h"
#include "evidence/range_text.h"

namespace grainside::evidence {

using document::Faults;
using document::Node;

namespace {

constexpr double kDensestSolid = 23;  // g/cm3; osmium has 22.6

// The range of a scalar. Fault: "bad-range".
std::optional<RangeText> read_range(const EntryReader& reader, Node node, std::string_view example) {
    std::optional<RangeText> read = parse_range(node.text());
    if (!read) {
        reader.error(node, "bad-range", fmt::format("'{}' is no range", node.text()),
                     fmt::format("low-high, as in `{}`", example));
        return std::nullopt;
    }
    if (read->range.low > read->range.high) {
        reader.error(node, "bad-range", fmt::format("the range '{}' is upside down", node.text()),
                     "the lower number stands first");
        return std::nullopt;
    }
    return read;
}

class AlloyLoader {
public:
    AlloyLoader(const EntryReader& reader, EvidenceData& data) : reader_(reader), data_(data) {}

    void load(Node node) {
        if (!reader_.check_keys(node, {"alloy", "name", "density", "balance", "window", "tolerance", "sources"}))
            return;
        Alloy alloy;
        alloy.id = reader_.required_id(node, "alloy");
        alloy.name = reader_.required_text(node, "name");
        if (!alloy.id.empty() && index_of(data_.alloys, alloy.id) != kNone) {
            reader_.error(node.find("alloy"), "duplicate-alloy", fmt::format("alloy '{}' is defined twice", alloy.id));
        }
        if (const Node density = node.find("density"); density.exists()) alloy.density = read_density(density);
        if (node.find("window").exists()) {
            read_window(node, alloy);
        } else {
            if (!node.find("density").exists()) {
                reader_.error(node, "missing-key", "an alloy needs `density` or `window`, or both");
            }
            for (const std::string_view key : {"balance", "tolerance"}) {
                const Node needless = node.find(key);
                if (needless.exists()) {
                    reader_.error_at_key(needless, "missing-key", fmt::format("`{}` needs a `window`", key));
                }
            }
        }
        alloy.sources = reader_.required_sources(node);
        data_.alloys.push_back(std::move(alloy));
    }

private:
    std::optional<measure::Range> read_density(Node node) {
        const std::optional<RangeText> read = read_range(reader_, node, "6.6-6.7 g/cm3");
        if (!read) return std::nullopt;
        const measure::UnitInfo* unit = measure::find_unit(read->unit);
        if (unit == nullptr || unit->dimension != measure::Dimension::density) {
            reader_.error(node, "bad-range", fmt::format("'{}' is no unit of density", read->unit),
                          fmt::format("one of {}", fmt::join(measure::unit_names(measure::Dimension::density), ", ")));
            return std::nullopt;
        }
        const measure::Range range{measure::to_working(read->range.low, *unit),
                                   measure::to_working(read->range.high, *unit)};
        if (range.low <= 0 || range.high > kDensestSolid) {
            reader_.error(node, "bad-range", fmt::format("no solid has a density of '{}'", node.text()),
                          "is the unit right?");
            return std::nullopt;
        }
        return range;
    }

    void read_window(Node node, Alloy& alloy) {
        const Node elements = node.find("window");
        measure::AlloyWindow window;
        window.balance = reader_.text(node, "balance");
        if (!window.balance.empty()) reader_.choice(node.find("balance"), element_symbols(), "element");
        if (!elements.is_mapping()) {
            reader_.error(elements, "wrong-type", "`window` is a mapping of elements to ranges");
            return;
        }
        double highs = 0;
        bool sound = true;
        for (Node one : elements) {
            const std::optional<measure::Range> range = read_element(one, window.balance);
            sound = sound && range;
            if (!range) continue;
            highs += range->high;
            window.elements.push_back({std::string(one.key()), range->low, range->high, 0});
        }
        if (const Node tolerance = node.find("tolerance"); tolerance.exists()) read_tolerance(tolerance, window);
        if (sound && window.balance.empty() && highs < kWhole) {
            reader_.error(elements, "bad-window",
                          fmt::format("the highs add up to {:.4g} % and nothing makes up the rest", highs),
                          "name the element that does in `balance`");
        } else if (sound && !measure::fit_window(window, {})) {
            reader_.error(elements, "bad-window", "no composition fits this window",
                          "do the low ends alone make more than 100 %?");
        }
        alloy.window = std::move(window);
    }

    std::optional<measure::Range> read_element(Node one, std::string_view balance) {
        const std::optional<RangeText> read = read_range(reader_, one, "3.7-4.3");
        if (!reader_.check_element(one) || !read) return std::nullopt;
        if ((!read->unit.empty() && read->unit != "%") || read->range.high > kWhole) {
            reader_.error(one, "bad-range", "a window is in percent, 0 to 100");
            return std::nullopt;
        }
        if (one.key() == balance) {
            reader_.error_at_key(one, "bad-window", fmt::format("'{}' is the balance already", balance),
                                 "the balance is what the others leave");
            return std::nullopt;
        }
        return read->range;
    }

    void read_tolerance(Node tolerance, measure::AlloyWindow& window) {
        if (!tolerance.is_mapping()) {
            reader_.error(tolerance, "wrong-type", "`tolerance` is a mapping of elements to percent");
            return;
        }
        for (Node one : tolerance) {
            const std::optional<double> width = reader_.number(one, 0, kWhole);
            if (!reader_.check_element(one) || !width) continue;
            const auto listed =
                std::find_if(window.elements.begin(), window.elements.end(),
                             [&](const measure::ElementRange& range) { return range.symbol == one.key(); });
            if (listed == window.elements.end()) {
                reader_.error_at_key(one, "bad-window", fmt::format("'{}' has no window to widen", one.key()),
                                     "list it in `window`");
            } else {
                listed->tolerance = *width;
            }
        }
    }

    const EntryReader& reader_;
    EvidenceData& data_;
};

}  // namespace

void load_alloys(const rules::BookData& book, EvidenceData& data, Faults& faults) {
    each_entry(book, "alloys.yaml", faults,
               [&](const EntryReader& reader, Node node) { AlloyLoader(reader, data).load(node); });
}

}  // namespace grainside::evidence
