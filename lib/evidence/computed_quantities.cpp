#include "evidence/computed_quantities.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "evidence/colour_change.h"
#include "evidence/quantity_names.h"
#include "measure/coat_share.h"
#include "measure/grey_scale.h"
#include "measure/water.h"
#include "measure/weighing.h"

namespace grainside::evidence {

using document::Node;
using measure::Dimension;
using measure::Measured;

namespace {

class Computation {
public:
    Computation(const EntryReader& reader, Node entry, Reading& reading)
        : reader_(reader), entry_(entry), reading_(reading) {}

    void run(Computes what) {
        switch (what) {
            case Computes::nothing:
                return;
            case Computes::density:
                return density();
            case Computes::coat_share:
                return share_of_coat();
            case Computes::colour_change:
                return change_of_colour();
        }
    }

private:
    const Measured* find(std::string_view name) const {
        const auto found = std::find_if(reading_.quantities.begin(), reading_.quantities.end(),
                                        [name](const NamedQuantity& one) { return one.name == name; });
        return found == reading_.quantities.end() ? nullptr : &found->measured;
    }

    // Tells of inputs that were not written; those with a fault of their own have been told. Without any of them the
    // reading is of something else, an outcome for instance.
    bool has_all(std::initializer_list<std::string_view> names) const {
        if (std::none_of(names.begin(), names.end(), [&](auto name) { return entry_.find(name).exists(); }))
            return false;
        bool all = true;
        for (const std::string_view name : names) {
            if (entry_.find(name).exists()) continue;
            all = false;
            reader_.error(entry_, "missing-quantity", fmt::format("`{}` must stand here", name),
                          fmt::format("the method works with `{}`", fmt::join(names, "`, `")));
        }
        return all;
    }

    void add(std::string_view name, const Measured& measured, Dimension dimension) {
        reading_.quantities.push_back({std::string(name), measured, dimension});
    }

    void density() {
        if (!has_all({"in_air", "in_water", "water"})) return;
        const Measured* in_air = find("in_air");
        const Measured* in_water = find("in_water");
        const Measured* water = find("water");
        if (in_air == nullptr || in_water == nullptr || water == nullptr) return;
        if (in_water->value >= in_air->value) {
            reader_.error(entry_.find("in_water"), "floats", "what is weighed in water weighs less than in air",
                          "are the two weights swapped?");
            return;
        }
        if (!measure::water_density(water->value)) {
            reader_.error(entry_.find("water"), "out-of-range",
                          "the density of water is known here from 0 to 40 \xC2\xB0"
                          "C",
                          "let the water take the temperature of the room");
            return;
        }
        const auto weighed = measure::weigh_density_in_water(*in_air, *in_water, *water);
        if (!weighed) return not_computable("a density");
        add("density", weighed->density, Dimension::density);
    }

    void share_of_coat() {
        if (!entry_.find("coat").exists() && !entry_.find("total").exists()) return;
        const Measured* coat = find("coat");
        const Measured* total = find("total");
        for (const std::string_view name : {"coat", "total"}) {
            if (entry_.find(name).exists()) continue;
            reader_.faults().warning(reader_.document(), entry_, "missing-quantity",
                                     fmt::format("without `{}` there is no share of the coat", name),
                                     "measure both on one section");
        }
        if (coat == nullptr || total == nullptr) return;
        const double excess = coat->value - total->value;
        if (excess > 2 * std::hypot(coat->u, total->u)) {
            reader_.error(entry_.find("coat"), "coat-above-total", "the coat is thicker than the whole material",
                          "are the two thicknesses swapped?");
            return;
        }
        // Within their uncertainty the two may stand the wrong way round; the coat is then all there is.
        const Measured coat_within{.value = std::min(coat->value, total->value), .u = coat->u, .dof = coat->dof};
        const auto share = measure::coat_share(coat_within, *total);
        if (!share) return not_computable("a share of the coat");
        add("coat-share", *share, Dimension::share);
    }

    std::optional<MeasuredColour> find_colour(std::string_view name) const {
        MeasuredColour colour;
        constexpr std::string_view kAxes[] = {"L", "a", "b"};
        for (std::size_t i = 0; i < colour.size(); ++i) {
            const Measured* coordinate = find(fmt::format("{}.{}", name, kAxes[i]));
            if (coordinate == nullptr) return std::nullopt;
            colour[i] = *coordinate;
        }
        return colour;
    }

    void change_of_colour() {
        if (!has_all({"before", "after"})) return;
        const auto before = find_colour("before");
        const auto after = find_colour("after");
        if (!before || !after) return;
        const ColourChange change = colour_change(*before, *after);
        const auto rating = measure::grey_scale_rating(change.difference);
        if (!rating) return not_computable("a rating");
        add("colour-change", change.ciede2000, Dimension::number);
        add("grey-scale", *rating, Dimension::number);
    }

    void not_computable(std::string_view what) {
        reader_.error(entry_, "not-computable", fmt::format("the numbers of this reading do not give {}", what),
                      "is one of them 0, or in another unit than the others?");
    }

    const EntryReader& reader_;
    Node entry_;
    Reading& reading_;
};

}  // namespace

void compute_quantities(const EntryReader& reader, Node entry, const Method& method, Reading& reading) {
    const std::size_t read = reading.quantities.size();
    Computation(reader, entry, reading).run(method.computes);
    // Numbers far outside of any bench overflow; a verdict must not rest on what is left of them.
    const bool all_finite = std::all_of(reading.quantities.begin() + static_cast<std::ptrdiff_t>(read),
                                        reading.quantities.end(), [](const NamedQuantity& one) {
                                            return std::isfinite(one.measured.value) && std::isfinite(one.measured.u) &&
                                                   one.measured.u >= 0;
                                        });
    if (all_finite) return;
    reader.error(entry, "not-computable", "the numbers of this reading are beyond what can be worked with",
                 "is an exponent wrong?");
    reading.quantities.resize(read);
}

bool needs_all_quantities(Computes what) noexcept {
    return what == Computes::density || what == Computes::colour_change;
}

}  // namespace grainside::evidence
