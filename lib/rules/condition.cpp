#include "rules/condition.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <limits>
#include <string_view>
#include <vector>

namespace grainside::rules {

using document::Document;
using document::Faults;
using document::Node;
using vocabulary::ConceptSet;
using vocabulary::Vocabulary;

namespace {

constexpr std::string_view kMainPart = "main";

class ConditionReader {
public:
    ConditionReader(const Document& document, const Vocabulary& vocabulary, Faults& faults)
        : document_(document), vocabulary_(vocabulary), faults_(faults) {}

    ClaimCondition read(Node node) {
        ClaimCondition condition;
        condition.says = every_concept();
        bool says_asked = false;
        std::uint32_t without_parts = 0;
        std::uint32_t without_categories = 0;
        for (Node child : node) {
            const std::string_view key = child.key();
            if (key == "says" || key == "says_only") {
                if (!says_asked) condition.says = ConceptSet(vocabulary_.concepts.size());
                says_asked = true;
                condition.says.insert_all(concepts(child, key == "says"));
            } else if (key == "not_says" || key == "called" || key == "not_called" || key == "borrowed") {
                read_called(child, condition);
            } else if (key == "in_place") {
                condition.in_place = places(child);
                condition.in_place_asked = true;
            } else if (key == "kind") {
                condition.kinds = names(child, "unknown-kind", "kind", kKindCount,
                                        [](std::size_t i) { return name_of(static_cast<Kind>(i)); });
            } else if (key == "part") {
                condition.parts = parts(child);
                each(child, [&](Node one) { condition.main_part = condition.main_part || one.text() == kMainPart; });
            } else if (key == "not_part") {
                without_parts = parts(child);
                each(child,
                     [&](Node one) { condition.not_main_part = condition.not_main_part || one.text() == kMainPart; });
            } else if (key == "category") {
                condition.categories = categories(child);
            } else if (key == "not_category") {
                without_categories = categories(child);
            } else if (key == "marked") {
                condition.marked = marks(child);
            } else if (key == "marked_all") {
                condition.marked_all = marks(child);
            } else if (key == "unmarked") {
                condition.unmarked = marks(child);
            } else if (key == "negated") {
                condition.negated = yes_no_any(child);
            } else if (key == "hedged") {
                condition.hedged = yes_no_any(child);
            } else if (key == "quantity") {
                condition.quantity = yes_no_any(child);
            } else if (key == "look_alike") {
                condition.look_alike = yes_no_any(child);
            } else if (key == "share") {
                condition.share = read_range(child, 100);
            } else if (key == "of_total") {
                condition.of_total = read_range(child, 100);
            } else if (key == "millimetres") {
                condition.millimetres = read_range(child, std::numeric_limits<double>::max());
            }
        }
        condition.parts &= ~without_parts;
        condition.categories &= ~without_categories;
        if (const Node without = node.find("not_says"); without.exists()) {
            condition.says.remove_all(concepts(without, true));
        }
        condition.plain = condition.is_plain();
        return condition;
    }

private:
    ConceptSet every_concept() const { return ConceptSet::of_all(vocabulary_.concepts.size()); }

    ConceptSet concepts(Node node, bool with_descendants) {
        ConceptSet set(vocabulary_.concepts.size());
        const auto add = [&](Node one) {
            const ConceptId id = vocabulary_.concepts.require(document_, one, faults_);
            if (id == 0) return;
            if (with_descendants) {
                set.insert_all(vocabulary_.concepts[id].descendants);
            } else {
                set.insert(id);
            }
        };
        each(node, add);
        return set;
    }

    // The places named and all that lies within them.
    ConceptSet places(Node node) {
        ConceptSet set(vocabulary_.concepts.size());
        each(node, [&](Node one) {
            const ConceptId id = vocabulary_.concepts.require(document_, one, faults_);
            if (id == 0) return;
            if (id == vocabulary_.known.place || !vocabulary_.concepts.is_a(id, vocabulary_.known.place)) {
                faults_.error(document_, one, "unknown-place", fmt::format("'{}' is no place", one.text()),
                              "name an id that a `place` entry of the vocabulary has, such as united-states");
                return;
            }
            set.insert_all(vocabulary_.concepts[id].descendants);
        });
        return set;
    }

    void read_called(Node node, ClaimCondition& condition) {
        if (node.key() == "called") {
            condition.called = concepts(node, true);
            condition.called_asked = true;
        } else if (node.key() == "not_called") {
            condition.not_called = concepts(node, true);
        } else if (node.key() == "borrowed") {
            condition.borrowed = read_yes_no(document_, node, faults_);
        }
    }

    template <typename Visit>
    void each(Node node, Visit visit) {
        if (node.is_scalar()) {
            visit(node);
        } else if (node.is_sequence()) {
            for (Node one : node) visit(one);
        } else {
            faults_.error(document_, node, "wrong-type",
                          fmt::format("`{}` is one name or a list of names", node.key()));
        }
    }

    template <typename NameOf>
    std::uint32_t names(Node node, std::string_view code, std::string_view what, std::size_t count, NameOf name) {
        std::uint32_t mask = 0;
        each(node, [&](Node one) {
            std::vector<std::string_view> known;
            for (std::size_t i = 0; i < count; ++i) {
                if (name(i) == one.text()) {
                    mask |= 1U << i;
                    return;
                }
                known.push_back(name(i));
            }
            faults_.error(document_, one, code, fmt::format("there is no {} '{}'", what, one.text()),
                          faults_.suggestion(one.text(), known));
        });
        return mask;
    }

    std::uint32_t parts(Node node) {
        // The last bit stands for 'main'; the caller reads it from the text.
        return names(node, "unknown-part", "part", kPartCount + 1,
                     [](std::size_t i) { return i < kPartCount ? name_of(static_cast<Part>(i)) : kMainPart; }) &
               ((1U << kPartCount) - 1);
    }
    std::uint32_t marks(Node node) {
        return names(node, "unknown-mark", "mark", kMarkCount,
                     [](std::size_t i) { return name_of(static_cast<Mark>(1U << i)); });
    }
    std::uint32_t categories(Node node) {
        return names(node, "unknown-category", "category", std::min<std::size_t>(vocabulary_.categories.size(), 32),
                     [&](std::size_t i) { return std::string_view(vocabulary_.categories[i].name); });
    }

    std::optional<bool> yes_no_any(Node node) {
        if (node.text() == "any") return std::nullopt;
        return read_yes_no(document_, node, faults_);
    }

    // Both ends included; `to` is `most` where it is left out.
    std::optional<Range> read_range(Node node, double most) {
        Range range{0, most};
        if (!check_keys(document_, node, {"from", "to"}, faults_)) return std::nullopt;
        if (const Node from = node.find("from"); from.exists()) {
            range.from = read_number(document_, from, faults_).value_or(0);
        }
        if (const Node to = node.find("to"); to.exists()) {
            range.to = read_number(document_, to, faults_).value_or(most);
        }
        if (range.from > range.to) faults_.error(document_, node, "out-of-range", "`from` is above `to`");
        return range;
    }

    const Document& document_;
    const Vocabulary& vocabulary_;
    Faults& faults_;
};

}  // namespace

ClaimCondition read_condition(const Document& document, Node node, const Vocabulary& vocabulary, Faults& faults) {
    if (!check_keys(document, node, {"says",       "says_only", "not_says",    "called",   "not_called",   "borrowed",
                                     "kind",       "part",      "not_part",    "category", "not_category", "marked",
                                     "marked_all", "unmarked",  "negated",     "hedged",   "quantity",     "look_alike",
                                     "share",      "of_total",  "millimetres", "in_place"},
                    faults)) {
        return {};
    }
    return ConditionReader(document, vocabulary, faults).read(node);
}

BesideCondition read_beside(const Document& document, Node node, const Vocabulary& vocabulary, Faults& faults) {
    BesideCondition beside;
    if (!check_keys(document, node,
                    {"says",     "says_only", "not_says", "called",       "not_called", "borrowed",   "kind",
                     "part",     "not_part",  "category", "not_category", "marked",     "marked_all", "unmarked",
                     "negated",  "hedged",    "quantity", "look_alike",   "share",      "of_total",   "millimetres",
                     "in_place", "reach",     "place",    "differs",      "later"},
                    faults)) {
        return beside;
    }
    beside.claim = ConditionReader(document, vocabulary, faults).read(node);
    if (const Node reach = node.find("reach"); reach.exists()) {
        constexpr std::string_view kNames[] = {"phrase", "sentence",        "part", "anywhere", "elsewhere",
                                               "noun",   "part-in-sentence"};
        const auto* const named = std::find(std::begin(kNames), std::end(kNames), reach.text());
        if (named != std::end(kNames)) {
            beside.reach = static_cast<Reach>(named - std::begin(kNames));
        } else {
            faults.error(document, reach, "unknown-reach", fmt::format("there is no reach '{}'", reach.text()),
                         faults.suggestion(reach.text(), kNames));
        }
    }
    if (const Node place = node.find("place"); place.exists()) {
        if (place.text() == "same" || place.text() == "different") {
            beside.same_place = place.text() == "same";
        } else {
            faults.error(document, place, "wrong-type", "`place` is same or different");
        }
    }
    if (const Node differs = node.find("differs"); differs.exists()) {
        beside.differs = read_yes_no(document, differs, faults);
    }
    if (const Node later = node.find("later"); later.exists()) {
        beside.later = read_yes_no(document, later, faults).value_or(false);
    }
    return beside;
}

}  // namespace grainside::rules
