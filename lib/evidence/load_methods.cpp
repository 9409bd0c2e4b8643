#include "evidence/load_methods.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "evidence/entry_reader.h"
#include "evidence/names.h"
#include "evidence/outcome_tables.h"
#include "evidence/quantity_names.h"
#include "evidence/quantity_reader.h"

namespace grainside::evidence {

using document::Faults;
using document::Node;
using measure::Dimension;

namespace {

constexpr double kMostMinutes = 100'000;
constexpr double kMostEuro = 1'000'000;
// How `reads` writes that a quantity is a plain number.
constexpr std::string_view kNumberUnit = "none";

// Keys of a reading that are no quantities: a quantity of that name could not be written down.
constexpr std::string_view kReadingKeys[] = {"method", "outcome", "date", "photo", "note", "composition", "shares"};

struct Needed {
    std::string_view name;
    Dimension dimension;
    std::string_view unit;
};
constexpr Needed kForDensity[] = {{"in_air", Dimension::mass, "g"},
                                  {"in_water", Dimension::mass, "g"},
                                  {"water", Dimension::temperature,
                                   "\xC2\xB0"
                                   "C"}};
constexpr Needed kForCoatShare[] = {{"coat", Dimension::length, "mm"}, {"total", Dimension::length, "mm"}};
constexpr Needed kForColourChange[] = {{"before", Dimension::number, kColourUnit},
                                       {"after", Dimension::number, kColourUnit}};

std::span<const Needed> needed_for(Computes what) {
    switch (what) {
        case Computes::nothing:
            return {};
        case Computes::density:
            return kForDensity;
        case Computes::coat_share:
            return kForCoatShare;
        case Computes::colour_change:
            return kForColourChange;
    }
    return {};
}

bool is_quantity_name(std::string_view name) {
    if (name.empty() || name.front() < 'a' || name.front() > 'z') return false;
    return std::all_of(name.begin(), name.end(),
                       [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '_'; });
}

class MethodLoader {
public:
    MethodLoader(const EntryReader& reader, EvidenceData& data) : reader_(reader), data_(data) {}

    void load(Node node) {
        if (!reader_.check_keys(node,
                                {"method",      "title",        "how",      "looks_at",      "parts",   "harm",
                                 "minutes",     "cost",         "who",      "cautions",      "sources", "outcomes",
                                 "likelihood",  "reads",        "computes", "likelihood_by", "frames",  "worn",
                                 "reliability", "says_nothing", "implies",  "only_if",       "usual"})) {
            return;
        }
        Method method;
        method.id = reader_.required_id(node, "method");
        method.title = reader_.required_text(node, "title");
        method.how = reader_.required_text(node, "how");
        method.looks_at = reader_.required_id(node, "looks_at");
        if (!method.id.empty() && index_of(data_.methods, method.id) != kNone) {
            reader_.error(node.find("method"), "duplicate-method",
                          fmt::format("method '{}' is defined twice", method.id), "an id is permanent and stands once");
        }
        read_effort(node, method);
        method.sources = reader_.required_sources(node);
        read_outcomes(node, method);
        read_quantities(node, method);
        read_likelihood_by(node, method);
        read_figures(node, method);
        read_parts(node, method);
        check_worth(node, method);
        data_.methods.push_back(std::move(method));
    }

private:
    template <typename Enum>
    void read_choice(Node entry, std::string_view key, std::span<const std::string_view> names, Enum& value) {
        const Node node = entry.find(key);
        if (!node.exists()) return;
        if (const auto at = reader_.choice(node, names, key)) value = static_cast<Enum>(*at);
    }

    void read_effort(Node node, Method& method) {
        for (const std::string_view key : {"harm", "who"}) {
            if (!node.find(key).exists()) {
                reader_.error(node, "missing-key", fmt::format("`{}` must stand here", key));
            }
        }
        read_choice(node, "harm", harm_names(), method.harm);
        read_choice(node, "who", who_names(), method.who);
        read_choice(node, "worn", when_worn_names(), method.when_worn);
        method.minutes = reader_.required_number(node, "minutes", 0, kMostMinutes).value_or(0);
        method.cost = reader_.required_number(node, "cost", 0, kMostEuro).value_or(0);
        if (const Node cautions = node.find("cautions"); cautions.exists()) method.cautions = reader_.texts(cautions);
        if (const Node reliability = node.find("reliability"); reliability.exists()) {
            if (const auto percent = reader_.number(reliability, kWhole / 2, kWhole)) {
                method.reliability = *percent / kWhole;
            }
        }
    }

    // Outcomes that tell nothing; 'unclear' tells nothing by its name.
    void read_silent_outcomes(Node node, Method& method) {
        const auto silence = [&](std::size_t at) {
            if (at != kNone) method.outcomes[at].says_nothing = true;
        };
        const Node silent = node.find("says_nothing");
        if (!silent.exists()) {
            silence(index_of(method.outcomes, "unclear"));
            return;
        }
        reader_.each_text(silent, [&](Node one) {
            silence(reader_.choice(one, ids_of(method.outcomes), "outcome").value_or(kNone));
        });
    }

    // "at most 0.15 mm", both where there are two.
    static std::string written_bound(Node bound) {
        std::string text;
        for (const Node end : bound) {
            if (!text.empty()) text += " and ";
            text.append(end.key()).append(" ").append(end.text());
        }
        std::replace(text.begin(), text.end(), '_', ' ');
        return text;
    }

    // A mapping of quantities that the method tells to their bounds.
    void each_bound(Node quantities, const Method& method,
                    const std::function<void(Node, const measure::Limit&)>& visit) {
        for (Node bound : quantities) {
            const auto dimension = dimension_in(method, bound.key());
            if (!dimension) {
                reader_.error_at_key(bound, "unknown-quantity",
                                     fmt::format("method '{}' does not read `{}`", method.id, bound.key()));
                continue;
            }
            std::string unit;
            if (const auto interval = read_interval(reader_, bound, *dimension, unit)) visit(bound, *interval);
        }
    }

    // A mapping of outcomes to such mappings, under `key`.
    void read_bounds_of_outcomes(Node node, std::string_view key, const Method& method, std::vector<Implied>& bounds) {
        const Node of_outcomes = node.find(key);
        if (!of_outcomes.exists()) return;
        if (!of_outcomes.is_mapping()) {
            reader_.error(of_outcomes, "wrong-type",
                          fmt::format("`{}` is a mapping of outcomes to the bound of a quantity", key));
            return;
        }
        for (Node one : of_outcomes) {
            const auto outcome = reader_.choice_of_key(one, ids_of(method.outcomes), "outcome");
            if (!one.is_mapping()) {
                reader_.error(one, "wrong-type",
                              "write the quantity and its bound, as in `{coat: {at_most: 0.15 mm}}`");
                continue;
            }
            each_bound(one, method, [&](Node bound, const measure::Limit& interval) {
                if (outcome) bounds.push_back({*outcome, std::string(bound.key()), interval, written_bound(bound)});
            });
        }
    }

    void read_figures(Node node, Method& method) {
        read_bounds_of_outcomes(node, "implies", method, method.implies);
        read_bounds_of_outcomes(node, "only_if", method, method.only_if);
        // An outcome that follows from a single bound is not seen beyond it, unless the book says otherwise.
        for (std::size_t outcome = 0; outcome < method.outcomes.size(); ++outcome) {
            const auto of_it = [outcome](const Implied& one) { return one.outcome == outcome; };
            const auto& implied = method.implies;
            if (std::any_of(method.only_if.begin(), method.only_if.end(), of_it)) continue;
            if (std::count_if(implied.begin(), implied.end(), of_it) != 1) continue;
            method.only_if.push_back(*std::find_if(implied.begin(), implied.end(), of_it));
        }
        const Node usual = node.find("usual");
        if (usual.exists() && !usual.is_mapping()) {
            reader_.error(usual, "wrong-type", "`usual` is a mapping of quantities to their bounds");
            return;
        }
        each_bound(usual, method, [&](Node bound, const measure::Limit& interval) {
            method.usual.push_back({std::string(bound.key()), interval, written_bound(bound)});
        });
    }

    // In which dimension the method itself tells the quantity.
    std::optional<measure::Dimension> dimension_in(const Method& method, std::string_view quantity) const {
        for (const QuantityRead& one : method.reads) {
            const bool member = quantity.starts_with(one.name) && quantity.substr(one.name.size()).starts_with('.');
            if (one.name == quantity || member) return one.dimension;
        }
        for (const ComputedQuantity& one : computed_by(method.computes)) {
            if (one.name == quantity) return one.dimension;
        }
        return std::nullopt;
    }

    void read_outcomes(Node node, Method& method) {
        const Node outcomes = node.find("outcomes");
        if (outcomes.exists() && !outcomes.is_mapping()) {
            reader_.error(outcomes, "wrong-type", "`outcomes` is a mapping of ids to what they mean");
        } else {
            for (Node one : outcomes) {
                if (!reader_.check_id(one, one.key())) continue;
                if (!one.is_scalar() || one.text().empty()) {
                    reader_.error(one, "wrong-type", "an outcome is told in plain words");
                }
                method.outcomes.push_back({std::string(one.key()), std::string(one.text())});
            }
        }
        read_silent_outcomes(node, method);
        const Node likelihood = node.find("likelihood");
        if (!likelihood.exists()) return;
        if (!likelihood.is_mapping()) {
            reader_.error(likelihood, "wrong-type", "`likelihood` is a mapping of frames to tables");
            return;
        }
        if (method.outcomes.empty()) {
            reader_.error_at_key(likelihood, "missing-key", "`likelihood` needs `outcomes`");
            return;
        }
        bool sound = true;
        for (Node table : likelihood) {
            const auto frame = reader_.choice_of_key(table, ids_of(data_.frames), "frame");
            sound = sound && frame;
            if (!frame) continue;
            auto read = read_outcome_table(reader_, table, *frame, method, data_);
            sound = sound && read;
            if (read) method.tables.push_back(std::move(*read));
        }
        if (sound) check_possible(outcomes, method);
    }

    // An outcome that no material ever shows: with it on record nothing would be left.
    void check_possible(Node outcomes, const Method& method) {
        const std::size_t count = method.outcomes.size();
        std::vector<char> seen(count, 0);
        for (const OutcomeTable& table : method.tables) {
            for (std::size_t i = 0; i < table.chance.size(); ++i) {
                if (table.chance[i] > 0) seen[i % count] = 1;
            }
        }
        for (Node one : outcomes) {
            const std::size_t at = index_of(method.outcomes, one.key());
            if (at == kNone || seen[at] != 0) continue;
            reader_.error_at_key(one, "impossible-outcome",
                                 fmt::format("no row gives the outcome '{}' a share", one.key()));
        }
    }

    void read_quantities(Node node, Method& method) {
        read_choice(node, "computes", computes_names(), method.computes);
        const Node quantities = node.find("reads");
        if (quantities.exists() && !quantities.is_mapping()) {
            reader_.error(quantities, "wrong-type", "`reads` is a mapping of quantities to units");
        } else {
            for (Node one : quantities) read_quantity(one, method);
        }
        for (const Needed& needed : needed_for(method.computes)) {
            const auto found = std::find_if(method.reads.begin(), method.reads.end(),
                                            [&](const QuantityRead& one) { return one.name == needed.name; });
            // The formula says what is read; `reads` may say it again.
            if (found == method.reads.end()) {
                QuantityRead implied{std::string(needed.name), needed.dimension, std::string(needed.unit)};
                check_same_elsewhere(node.find("computes"), implied);
                method.reads.push_back(std::move(implied));
            } else if (found->dimension != needed.dimension ||
                       (found->unit == kColourUnit) != (needed.unit == kColourUnit)) {
                reader_.error(quantities.find(needed.name), "wrong-dimension",
                              fmt::format("this formula needs `{}` in {}", needed.name, needed.unit),
                              "`computes` says what is read; it need not stand in `reads`");
            }
        }
    }

    void read_quantity(Node node, Method& method) {
        const std::string_view name = node.key();
        const bool taken = std::find(std::begin(kReadingKeys), std::end(kReadingKeys), name) != std::end(kReadingKeys);
        if (!is_quantity_name(name) || taken) {
            reader_.error_at_key(node, "bad-id", fmt::format("'{}' cannot be the name of a quantity", name),
                                 taken ? "a reading has another key of that name"
                                       : "use lower-case letters, digits, hyphens and underscores");
            return;
        }
        QuantityRead read;
        read.name = name;
        read.unit = node.text();
        if (read.unit == kNumberUnit) read.unit.clear();
        const measure::UnitInfo* unit = measure::find_unit(read.unit);
        if (read.unit == kColourUnit) {
            read.dimension = Dimension::number;
        } else if (!node.is_scalar() || unit == nullptr) {
            reader_.error(node, "unknown-unit", fmt::format("'{}' is no unit", node.text()),
                          fmt::format("mm, %, g, g/cm3 ...; `{}` for a plain number, `{}` for a colour", kNumberUnit,
                                      kColourUnit));
            return;
        } else {
            read.dimension = unit->dimension;
        }
        if ((name == kContent || name == kFibreShare) && read.dimension != Dimension::share) {
            reader_.error(node, "wrong-dimension", fmt::format("`{}` is read in %", name));
            return;
        }
        check_same_elsewhere(node, read);
        method.reads.push_back(std::move(read));
    }

    // A limit asks for a quantity by its name, whichever method read it.
    void check_same_elsewhere(Node node, const QuantityRead& read) {
        for (const Method& other : data_.methods) {
            for (const QuantityRead& one : other.reads) {
                const bool colours_agree = (one.unit == kColourUnit) == (read.unit == kColourUnit);
                if (one.name != read.name || (one.dimension == read.dimension && colours_agree)) continue;
                reader_.error(
                    node, "wrong-dimension",
                    fmt::format("method '{}' reads `{}` as a {}", other.id, one.name, measure::name_of(one.dimension)),
                    "what is not the same needs a name of its own");
                return;
            }
            for (const ComputedQuantity& one : computed_by(other.computes)) {
                if (one.name != read.name || one.dimension == read.dimension) continue;
                reader_.error(node, "wrong-dimension",
                              fmt::format("method '{}' computes `{}` as a {}", other.id, one.name,
                                          measure::name_of(one.dimension)));
            }
        }
    }

    void read_likelihood_by(Node node, Method& method) {
        read_choice(node, "likelihood_by", likelihood_by_names(), method.likelihood_by);
        const Node frames = node.find("frames");
        if (method.likelihood_by == LikelihoodBy::table) {
            if (frames.exists()) {
                reader_.error_at_key(frames, "missing-key", "`frames` needs `likelihood_by`",
                                     "with `likelihood` the frames stand there");
            }
            return;
        }
        if (!frames.exists()) {
            reader_.error(node, "missing-key", "`likelihood_by` needs `frames`");
            return;
        }
        const bool by_density = method.likelihood_by == LikelihoodBy::density;
        const bool has_quantity =
            by_density ? method.computes == Computes::density || reads(method, "density") : reads(method, kContent);
        if (!has_quantity) {
            reader_.error(node.find("likelihood_by"), "missing-quantity",
                          fmt::format("this needs `{}` among `reads`{}", by_density ? "density" : kContent,
                                      by_density ? " or `computes: density`" : ""));
        }
        reader_.each_text(frames, [&](Node one) {
            const auto frame = reader_.choice(one, ids_of(data_.frames), "frame");
            if (!frame) return;
            if (std::find(method.frames.begin(), method.frames.end(), *frame) != method.frames.end()) return;
            method.frames.push_back(*frame);
            check_alloys(one, data_.frames[*frame], by_density);
        });
    }

    // A candidate whose alloy has no density, or no window, is as likely as not at any value; one without an alloy was
    // forgotten.
    void check_alloys(Node place, const Frame& frame, bool by_density) {
        std::vector<std::string_view> without;
        bool any = false;
        for (const Candidate& candidate : frame.candidates) {
            if (candidate.unlisted) continue;
            if (candidate.alloy == kNone) {
                without.push_back(candidate.id);
                continue;
            }
            const Alloy& alloy = data_.alloys[candidate.alloy];
            any = any || (by_density ? alloy.density.has_value() : alloy.window.has_value());
        }
        if (!without.empty()) {
            reader_.error(place, "missing-alloy", fmt::format("no alloy is named for {}", fmt::join(without, ", ")),
                          "each candidate of the frame needs an `alloy`");
        } else if (!any) {
            reader_.error(place, "missing-alloy",
                          fmt::format("no candidate of '{}' has an alloy with a {}", frame.id,
                                      by_density ? "`density`" : "`window`"));
        }
    }

    void read_parts(Node node, Method& method) {
        PartSet asked = 0;
        const auto add = [&](std::size_t frame) {
            if (frame != kNone) asked = static_cast<PartSet>(asked | data_.frames[frame].parts);
        };
        for (Node table : node.find("likelihood")) add(index_of(data_.frames, table.key()));
        for (const std::size_t frame : method.frames) add(frame);
        const Node parts = node.find("parts");
        method.parts = parts.exists() ? reader_.parts(parts) : asked;
        if (!parts.exists() && asked == 0) {
            reader_.error(node, "missing-key", "a method without frames needs `parts`");
        }
        if (method.parts == 0) return;
        for (Node table : node.find("likelihood")) {
            const std::size_t frame = index_of(data_.frames, table.key());
            if (frame == kNone || (data_.frames[frame].parts & method.parts) != 0) continue;
            reader_.error_at_key(table, "no-common-part",
                                 fmt::format("frame '{}' asks of none of this method's parts", table.key()));
        }
    }

    void check_worth(Node node, const Method& method) {
        if (node.find("reads").exists() || node.find("computes").exists()) return;
        // Outcomes without a table would be written down and never read.
        if (method.outcomes.empty() || !node.find("likelihood").exists()) {
            reader_.error(node, "nothing-to-see",
                          fmt::format("method '{}' has neither outcomes with a `likelihood` nor `reads`", method.id));
        }
    }

    const EntryReader& reader_;
    EvidenceData& data_;
};

}  // namespace

void load_methods(const rules::BookData& book, EvidenceData& data, Faults& faults) {
    each_entry(book, "methods/", faults,
               [&](const EntryReader& reader, Node node) { MethodLoader(reader, data).load(node); });
}

}  // namespace grainside::evidence
