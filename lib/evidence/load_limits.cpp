#include "evidence/load_limits.h"

#include <fmt/format.h>

#include <algorithm>

#include "evidence/entry_reader.h"
#include "evidence/quantity_names.h"
#include "evidence/quantity_reader.h"
#include "rules/references.h"

namespace grainside::evidence {

using document::Faults;
using document::Node;
using measure::Dimension;

namespace {

constexpr double kLeastFactor = 0.01;
constexpr double kMostFactor = 100;

// True if some value is within both.
bool overlap(const measure::Limit& a, const measure::Limit& b) {
    const auto apart = [](const measure::Limit& below, const measure::Limit& above) {
        if (!below.upper || !above.lower) return false;
        if (*below.upper != *above.lower) return *below.upper < *above.lower;
        return !(below.upper_inclusive && above.lower_inclusive);
    };
    return !apart(a, b) && !apart(b, a);
}

class LimitLoader {
public:
    LimitLoader(const EntryReader& reader, EvidenceData& data) : reader_(reader), data_(data) {}

    void load(Node node) {
        if (!reader_.check_keys(node, {"limit",        "title",      "because",     "say_instead", "markets",
                                       "in_force",     "categories", "claims",      "not_claims",  "kinds",
                                       "quantity",     "supports",   "contradicts", "stated",      "no_part_is",
                                       "within_parts", "needs",      "factor",      "instead_of",  "sources"})) {
            return;
        }
        Limit limit;
        limit.id = reader_.required_id(node, "limit");
        limit.title = reader_.required_text(node, "title");
        limit.because = reader_.required_text(node, "because");
        limit.say_instead = reader_.text(node, "say_instead");
        if (!limit.id.empty() && index_of(data_.limits, limit.id) != kNone) {
            reader_.error(node.find("limit"), "duplicate-limit", fmt::format("limit '{}' is defined twice", limit.id),
                          "an id is permanent and stands once");
        }
        read_scope(node, limit);
        read_claims(node, limit);
        read_ground(node, limit);
        if (const Node factor = node.find("factor"); factor.exists()) {
            limit.factor = reader_.number(factor, kLeastFactor, kMostFactor).value_or(1);
        }
        if (const Node instead = node.find("instead_of"); instead.exists()) {
            reader_.each_text(instead, [&](Node one) {
                if (const auto other = reader_.choice(one, ids_of(data_.limits), "limit")) {
                    limit.instead_of.push_back(*other);
                }
            });
        }
        limit.sources = reader_.required_sources(node);
        data_.limits.push_back(std::move(limit));
    }

private:
    void read_scope(Node node, Limit& limit) {
        if (const Node markets = node.find("markets"); markets.exists()) {
            limit.markets = rules::read_markets(reader_.document(), markets, reader_.book().markets, reader_.faults());
        }
        if (const Node in_force = node.find("in_force"); in_force.exists()) {
            limit.in_force = rules::read_in_force(reader_.document(), in_force, reader_.faults());
        }
        if (const Node categories = node.find("categories"); categories.exists()) {
            std::vector<std::string_view> names;
            for (const vocabulary::Category& category : reader_.book().vocabulary.categories) {
                names.push_back(category.name);
            }
            reader_.each_text(categories, [&](Node one) {
                if (const auto at = reader_.choice(one, names, "category")) limit.categories |= 1U << *at;
            });
        }
    }

    void read_claims(Node node, Limit& limit) {
        if (const Node claims = node.find("claims"); claims.exists()) {
            limit.claims = reader_.concepts(claims);
        } else {
            reader_.error(node, "missing-key", "`claims` must stand here");
        }
        if (const Node except = node.find("not_claims"); except.exists()) limit.not_claims = reader_.concepts(except);
        if (const Node kinds = node.find("kinds"); kinds.exists()) {
            std::vector<std::string_view> names;
            for (std::size_t k = 0; k < kKindCount; ++k) names.push_back(name_of(static_cast<Kind>(k)));
            reader_.each_text(kinds, [&](Node one) {
                if (const auto at = reader_.choice(one, names, "kind")) limit.kinds |= 1U << *at;
            });
        }
        if (const Node needs = node.find("needs"); needs.exists()) limit.needs = reader_.require_concept(needs);
    }

    // A quantity with bounds, a quantity that the claim states, or parts that the product must not have.
    void read_ground(Node node, Limit& limit) {
        const Node quantity = node.find("quantity");
        const Node no_part_is = node.find("no_part_is");
        const Node stated = node.find("stated");
        const bool bounded = node.find("supports").exists() || node.find("contradicts").exists();
        if (no_part_is.exists()) {
            for (const std::string_view key : {"quantity", "stated", "supports", "contradicts", "factor"}) {
                const Node other = node.find(key);
                if (other.exists()) {
                    reader_.error_at_key(other, "both-ways", fmt::format("`{}` cannot stand beside `no_part_is`", key));
                }
            }
            limit.no_part_is = reader_.concepts(no_part_is);
            if (const Node within = node.find("within_parts"); within.exists()) {
                limit.within_parts = reader_.parts(within);
            }
            return;
        }
        if (const Node within = node.find("within_parts"); within.exists()) {
            reader_.error_at_key(within, "missing-key", "`within_parts` needs `no_part_is`");
        }
        if (!quantity.exists()) {
            reader_.error(node, "missing-key", "a limit needs `quantity` or `no_part_is`");
            return;
        }
        if (stated.exists() == bounded) {
            reader_.error(node, stated.exists() ? "both-ways" : "missing-key",
                          stated.exists() ? "`stated` cannot stand beside bounds"
                                          : "a quantity needs `supports`, `contradicts` or `stated`");
            return;
        }
        limit.quantity = quantity.text();
        const auto dimension = dimension_of(limit.quantity, data_, reader_.book().vocabulary.concepts);
        if (!dimension) {
            reader_.error(quantity, "unknown-quantity",
                          fmt::format("no method reads or computes '{}'", quantity.text()),
                          reader_.faults().suggestion(quantity.text(), quantity_names(data_)));
            return;
        }
        if (stated.exists()) {
            read_stated(stated, *dimension, limit);
        } else if (limit.quantity == kContent || limit.quantity == kFibreShare) {
            reader_.error(quantity, "unknown-quantity",
                          fmt::format("'{0}' is many quantities; bounds need one of them", limit.quantity),
                          fmt::format("write `{}`", limit.quantity == kContent ? "content.Cr" : "fibre-share.cotton"));
        } else {
            read_bounds(node, *dimension, limit);
        }
    }

    void read_stated(Node stated, Dimension dimension, Limit& limit) {
        if (!reader_.check_keys(stated, {"tolerance", "side"})) return;
        const Node tolerance = stated.find("tolerance");
        if (!tolerance.exists()) {
            reader_.error(stated, "missing-key", "`tolerance` must stand here", "`0 mm` where none is allowed");
        } else if (const auto read = read_bound(reader_, tolerance, dimension)) {
            if (read->measured.value < 0 || dimension == Dimension::temperature) {
                reader_.error(tolerance, "bad-bound", "a tolerance is a difference and not negative");
            }
            limit.stated_tolerance = read->measured.value;
            limit.unit = read->unit->name;
        }
        if (const Node side = stated.find("side"); side.exists()) {
            constexpr std::string_view kSides[] = {"both", "below"};
            if (const auto at = reader_.choice(side, kSides, "side")) limit.only_below = *at == 1;
        }
    }

    void read_bounds(Node node, Dimension dimension, Limit& limit) {
        const Node contradicts = node.find("contradicts");
        if (const Node supports = node.find("supports"); supports.exists()) {
            limit.supports = read_interval(reader_, supports, dimension, limit.unit);
        }
        if (contradicts.exists()) limit.contradicts = read_interval(reader_, contradicts, dimension, limit.unit);
        if (limit.supports && limit.contradicts && overlap(*limit.supports, *limit.contradicts)) {
            reader_.error(contradicts, "both-ways", "a value can lie within `supports` and `contradicts` at once");
        }
    }

    const EntryReader& reader_;
    EvidenceData& data_;
};

}  // namespace

void load_limits(const rules::BookData& book, EvidenceData& data, Faults& faults) {
    each_entry(book, "limits/", faults,
               [&](const EntryReader& reader, Node node) { LimitLoader(reader, data).load(node); });
}

}  // namespace grainside::evidence
