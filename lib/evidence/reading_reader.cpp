#include "evidence/reading_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "evidence/computed_quantities.h"
#include "evidence/quantity_names.h"
#include "evidence/quantity_reader.h"
#include "evidence/share_list.h"
#include "measure/conformity.h"
#include "measure/unit.h"

namespace grainside::evidence {

using document::Node;
using measure::Dimension;
using measure::Measured;

namespace {

constexpr std::string_view kOutcome = "outcome";
constexpr std::string_view kPlainKeys[] = {"method", kOutcome, "date", "photo", "note"};
constexpr const char* kWhereMethodsAre = "the folder methods/ of the rule book has them all";
constexpr double kWhitest = 100;
// Surfaces stay within about 128 of the grey axis; this finds a lost decimal point.
constexpr double kMostColourful = 200;

bool is_colour(const QuantityRead& quantity) {
    return quantity.unit == kColourUnit;
}

// The key under which readings write a quantity.
std::string_view key_of(const QuantityRead& quantity) {
    if (quantity.name == kContent) return "composition";
    if (quantity.name == kFibreShare) return "shares";
    return quantity.name;
}

std::vector<std::string_view> part_names(PartSet parts) {
    std::vector<std::string_view> names;
    for (std::size_t p = 0; p < kPartCount; ++p) {
        if ((parts & part_bit(static_cast<Part>(p))) != 0) names.push_back(name_of(static_cast<Part>(p)));
    }
    return names;
}

class ReadingReader {
public:
    ReadingReader(const EntryReader& reader, Node entry, const EvidenceData& data, const Method& method)
        : reader_(reader), entry_(entry), data_(data), method_(method) {}

    void read(Reading& reading) {
        check_keys();
        read_outcome(reading);
        for (const QuantityRead& quantity : method_.reads) {
            const Node node = entry_.find(key_of(quantity));
            if (node.exists()) read_quantity(node, quantity, reading);
        }
        compute_quantities(reader_, entry_, method_, reading);
        if (reading.outcome == kNone) {
            imply_outcome(reading);
        } else {
            check_figures(reading);
        }
        check_usual(reading);
        check_worth();
    }

private:
    void check_keys() {
        std::vector<std::string_view> known(std::begin(kPlainKeys), std::end(kPlainKeys));
        // The fault of an outcome where there can be none is told with the outcome.
        if (method_.outcomes.empty()) std::erase(known, kOutcome);
        for (const QuantityRead& quantity : method_.reads) known.push_back(key_of(quantity));
        for (Node child : entry_) {
            const std::string_view key = child.key();
            if (key == kOutcome || std::find(known.begin(), known.end(), key) != known.end()) continue;
            if (is_quantity(key)) {
                reader_.error_at_key(child, "unread-quantity",
                                     fmt::format("method '{}' does not read `{}`", method_.id, key), what_it_reads());
            } else {
                reader_.error_at_key(child, "unknown-key", fmt::format("the key `{}` is not known", key),
                                     document::key_hint(child, known, reader_.faults()));
            }
        }
    }

    bool is_quantity(std::string_view key) const {
        const auto names = quantity_names(data_);
        if (std::find(names.begin(), names.end(), key) != names.end()) return true;
        return std::any_of(data_.methods.begin(), data_.methods.end(), [key](const Method& method) {
            return std::any_of(method.reads.begin(), method.reads.end(),
                               [key](const QuantityRead& quantity) { return key_of(quantity) == key; });
        });
    }

    std::string what_it_reads() const {
        std::vector<std::string_view> keys;
        for (const QuantityRead& quantity : method_.reads) keys.push_back(key_of(quantity));
        if (keys.empty()) return "it has outcomes only";
        return fmt::format("it reads {}", fmt::join(keys, ", "));
    }

    void read_outcome(Reading& reading) {
        const Node outcome = entry_.find("outcome");
        if (!outcome.exists()) return;
        if (method_.outcomes.empty()) {
            reader_.error(outcome, "unknown-outcome", fmt::format("method '{}' has no outcomes", method_.id),
                          what_it_reads());
            return;
        }
        reading.outcome = index_of(method_.outcomes, outcome.text());
        if (reading.outcome != kNone) return;
        // All of them: one who is unsure of a word wants to see the others.
        const std::vector<std::string_view> names = ids_of(method_.outcomes);
        reader_.faults().met(outcome.text(), names);
        const std::string_view near = document::nearest(outcome.text(), names);
        reader_.error(outcome, "unknown-outcome",
                      fmt::format("method '{}' has no outcome '{}'", method_.id, outcome.text()),
                      fmt::format("{}one of {}", near.empty() ? "" : fmt::format("did you mean `{}`? ", near),
                                  fmt::join(names, ", ")));
    }

    void read_quantity(Node node, const QuantityRead& quantity, Reading& reading) {
        if (quantity.name == kContent) {
            reading.composition = read_share_list(reader_, node, [&](Node one) { return reader_.check_element(one); });
            for (const auto& [element, share] : reading.composition) {
                reading.quantities.push_back({fmt::format("{}.{}", kContent, element), share, Dimension::share,
                                              std::string(node.find(element).text())});
            }
        } else if (quantity.name == kFibreShare) {
            const auto is_concept = [&](Node one) {
                if (reader_.book().vocabulary.concepts.find(one.key()) != 0) return true;
                reader_.error_at_key(one, "unknown-concept", fmt::format("there is no concept '{}'", one.key()),
                                     "fibres are named by their ids in concepts.yaml");
                return false;
            };
            for (const auto& [fibre, share] : read_share_list(reader_, node, is_concept)) {
                reading.quantities.push_back({fmt::format("{}.{}", kFibreShare, fibre), share, Dimension::share,
                                              std::string(node.find(fibre).text())});
            }
        } else if (is_colour(quantity)) {
            read_colour(node, quantity.name, reading);
        } else if (const auto measured = read_measured(reader_, node, quantity.dimension)) {
            reading.quantities.push_back({quantity.name, *measured, quantity.dimension, std::string(node.text())});
        }
    }

    void read_colour(Node node, std::string_view name, Reading& reading) {
        if (!reader_.check_keys(node, {"L", "a", "b"})) return;
        for (const std::string_view key : {"L", "a", "b"}) {
            const Node one = node.find(key);
            if (!one.exists()) {
                reader_.error(node, "missing-key", fmt::format("`{}` must stand here", key),
                              "a colour has `L`, `a` and `b`");
                continue;
            }
            const std::optional<Measured> measured = key == "L" ? read_measured(reader_, one, Dimension::number)
                                                                : read_signed(reader_, one, Dimension::number);
            if (!measured) continue;
            if (std::fabs(measured->value) > (key == "L" ? kWhitest : kMostColourful)) {
                reader_.error(one, "out-of-range", fmt::format("no surface has {} = {}", key, measured->value),
                              "L runs from 0 to 100, a and b seldom beyond 128 on either side");
                continue;
            }
            reading.quantities.push_back(
                {fmt::format("{}.{}", name, key), *measured, Dimension::number, std::string(one.text())});
        }
    }

    // What the numbers surely are goes for the word that was not written.
    void imply_outcome(Reading& reading) const {
        for (const Implied& implied : method_.implies) {
            for (const NamedQuantity& quantity : reading.quantities) {
                if (quantity.name != implied.quantity) continue;
                if (measure::decide(quantity.measured, implied.bound) != measure::Decision::conforms) continue;
                reading.outcome = implied.outcome;
                return;
            }
        }
    }

    static const NamedQuantity* quantity_of(const Reading& reading, std::string_view name) {
        const auto found = std::find_if(reading.quantities.begin(), reading.quantities.end(),
                                        [name](const NamedQuantity& one) { return one.name == name; });
        return found == reading.quantities.end() ? nullptr : &*found;
    }

    // Outcomes whose every bound the numbers surely meet.
    std::vector<std::string> outcomes_by_figures(const Reading& reading) const {
        std::vector<std::string> fitting;
        for (std::size_t outcome = 0; outcome < method_.outcomes.size(); ++outcome) {
            bool any = false;
            bool all = true;
            for (const Implied& bound : method_.only_if) {
                if (bound.outcome != outcome) continue;
                any = true;
                const NamedQuantity* quantity = quantity_of(reading, bound.quantity);
                all = all && quantity != nullptr &&
                      measure::decide(quantity->measured, bound.bound) == measure::Decision::conforms;
            }
            if (any && all) {
                fitting.push_back(
                    fmt::format("`{}` ({})", method_.outcomes[outcome].id, method_.outcomes[outcome].means));
            }
        }
        return fitting;
    }

    // The word and the numbers would count twice, once on either side.
    void check_figures(const Reading& reading) const {
        for (const Implied& bound : method_.only_if) {
            if (bound.outcome != reading.outcome) continue;
            const NamedQuantity* quantity = quantity_of(reading, bound.quantity);
            if (quantity == nullptr || measure::decide(quantity->measured, bound.bound) != measure::Decision::fails) {
                continue;
            }
            const std::vector<std::string> fitting = outcomes_by_figures(reading);
            reader_.error(entry_.find(kOutcome), "outcome-against-figures",
                          fmt::format("the outcome '{}' is not seen with {} {}: it asks for {}",
                                      method_.outcomes[reading.outcome].id, bound.quantity, figure_text(*quantity),
                                      bound.written),
                          fitting.empty()
                              ? "correct the outcome or the figures, or leave the outcome out"
                              : fmt::format("the figures give {}; correct one of the two, or leave the outcome out",
                                            fmt::join(fitting, ", ")));
            return;
        }
    }

    // As written; what was worked out, with its expanded uncertainty.
    static std::string figure_text(const NamedQuantity& quantity) {
        if (!quantity.written.empty()) return quantity.written;
        const std::string_view unit = measure::working_unit(quantity.dimension).name;
        return fmt::format("{:.4g} \xC2\xB1 {:.2g}{}{}", quantity.measured.value, 2 * quantity.measured.u,
                           unit.empty() ? "" : " ", unit);
    }

    void check_usual(const Reading& reading) const {
        for (const UsualRange& usual : method_.usual) {
            const NamedQuantity* quantity = quantity_of(reading, usual.quantity);
            if (quantity == nullptr) continue;
            const Node place = entry_.find(usual.quantity).exists() ? entry_.find(usual.quantity) : entry_;
            if (measure::decide(quantity->measured, usual.bound) == measure::Decision::fails) {
                reader_.faults().warning(reader_.document(), place, "unusual-value",
                                         fmt::format("{} of {} is unusual: it is {} as a rule", usual.quantity,
                                                     figure_text(*quantity), usual.written),
                                         "are the decimal point and the unit right?");
            } else if (usual.bound.lower && 2 * quantity->measured.u > quantity->measured.value) {
                reader_.faults().warning(
                    reader_.document(), place, "wide-uncertainty",
                    fmt::format("the uncertainty of {} {} is larger than the value", usual.quantity,
                                figure_text(*quantity)),
                    "what stands behind \xC2\xB1 is the expanded uncertainty (k = 2), in the unit of the value");
            }
        }
    }

    void check_worth() {
        const bool any = entry_.find("outcome").exists() ||
                         std::any_of(method_.reads.begin(), method_.reads.end(), [&](const QuantityRead& quantity) {
                             return entry_.find(key_of(quantity)).exists();
                         });
        if (any) return;
        reader_.error(entry_, "empty-reading", "this reading has neither an outcome nor a quantity",
                      method_.outcomes.empty()
                          ? what_it_reads()
                          : fmt::format("outcomes are {}", fmt::join(ids_of(method_.outcomes), ", ")));
    }

    const EntryReader& reader_;
    Node entry_;
    const EvidenceData& data_;
    const Method& method_;
};

}  // namespace

Reading read_reading(const EntryReader& reader, Node node, std::optional<Part> part, const EvidenceData& data,
                     const DayCheck& days) {
    Reading reading;
    reading.method = kNone;
    reading.line = node.line();
    if (!node.is_mapping()) {
        reader.error(node, "wrong-type", "a reading is a mapping", "as in `{method: ..., outcome: ...}`");
        return reading;
    }
    reading.date = days.read_after_purchase(node, "date");
    reading.photo = reader.text(node, "photo");
    reading.note = reader.text(node, "note");
    const Node method = node.find("method");
    if (!method.exists()) {
        // Whose keys else may stand here, the method says.
        constexpr std::string_view kBeforeMethod[] = {"method", "date", "photo", "note"};
        for (const Node child : node) reader.faults().met(child.key(), kBeforeMethod);
        reader.error(node, "missing-key", "a reading needs `method`", kWhereMethodsAre);
        return reading;
    }
    reading.method = index_of(data.methods, method.text());
    if (reading.method == kNone) {
        std::vector<std::string_view> of_part;
        for (const Method& known : data.methods) {
            if (!part || (known.parts & part_bit(*part)) != 0) of_part.push_back(known.id);
        }
        reader.faults().met(method.text(), of_part);
        const std::string hint = document::suggestion(method.text(), ids_of(data.methods));
        reader.error(method, "unknown-method", fmt::format("there is no method '{}'", method.text()),
                     hint.empty() ? std::string(kWhereMethodsAre) : hint);
        return reading;
    }
    const Method& used = data.methods[reading.method];
    if (part && (used.parts & part_bit(*part)) == 0) {
        reader.error(method, "wrong-part", fmt::format("method '{}' is not for the part '{}'", used.id, name_of(*part)),
                     fmt::format("it is for {}", fmt::join(part_names(used.parts), ", ")));
    }
    ReadingReader(reader, node, data, used).read(reading);
    return reading;
}

}  // namespace grainside::evidence
