#include "verdict/examination/condition_keys.h"

#include <fmt/format.h>

namespace grainside::verdict {

using rules::ClaimCondition;
using vocabulary::ConceptSet;

namespace {

ConceptSet every_concept(std::size_t count) {
    ConceptSet set(count);
    for (std::size_t id = 1; id < count; ++id) set.insert(static_cast<ConceptId>(id));
    return set;
}

bool asks_for_all(const ConceptSet& set, std::size_t count) {
    for (std::size_t id = 1; id < count; ++id) {
        if (!set.contains(static_cast<ConceptId>(id))) return false;
    }
    return true;
}

}  // namespace

std::vector<Key> keys_of(const ClaimCondition& condition, std::size_t concept_count) {
    std::vector<Key> keys;
    ClaimCondition nothing;
    nothing.says = every_concept(concept_count);
    nothing.negated.reset();  // `negated: no` holds in every condition that says nothing of it, so it is no key
    const auto add = [&](std::string_view name, bool asked, auto copy) {
        if (!asked) return;
        keys.push_back({name, nothing});
        copy(keys.back().alone);
    };
    const ClaimCondition& c = condition;
    add("says", !asks_for_all(c.says, concept_count), [&](ClaimCondition& to) { to.says = c.says; });
    add("called", c.called_asked, [&](ClaimCondition& to) {
        to.called = c.called;
        to.called_asked = true;
    });
    add("not_called", !c.not_called.empty(), [&](ClaimCondition& to) { to.not_called = c.not_called; });
    add("in_place", c.in_place_asked, [&](ClaimCondition& to) {
        to.in_place = c.in_place;
        to.in_place_asked = true;
    });
    add("kind", c.kinds != nothing.kinds, [&](ClaimCondition& to) { to.kinds = c.kinds; });
    add("part", c.parts != nothing.parts || c.main_part || c.not_main_part, [&](ClaimCondition& to) {
        to.parts = c.parts;
        to.main_part = c.main_part;
        to.not_main_part = c.not_main_part;
    });
    add("category", c.categories != nothing.categories, [&](ClaimCondition& to) { to.categories = c.categories; });
    add("marked", c.marked != 0, [&](ClaimCondition& to) { to.marked = c.marked; });
    add("marked_all", c.marked_all != 0, [&](ClaimCondition& to) { to.marked_all = c.marked_all; });
    add("unmarked", c.unmarked != 0, [&](ClaimCondition& to) { to.unmarked = c.unmarked; });
    add("negated", c.negated.value_or(false), [&](ClaimCondition& to) { to.negated = c.negated; });
    add("hedged", c.hedged.has_value(), [&](ClaimCondition& to) { to.hedged = c.hedged; });
    add("quantity", c.quantity.has_value(), [&](ClaimCondition& to) { to.quantity = c.quantity; });
    add("borrowed", c.borrowed.has_value(), [&](ClaimCondition& to) { to.borrowed = c.borrowed; });
    add("look_alike", c.look_alike.has_value(), [&](ClaimCondition& to) { to.look_alike = c.look_alike; });
    add("of_total", c.of_total.has_value(), [&](ClaimCondition& to) { to.of_total = c.of_total; });
    add("millimetres", c.millimetres.has_value(), [&](ClaimCondition& to) { to.millimetres = c.millimetres; });
    add("share", c.share.has_value(), [&](ClaimCondition& to) { to.share = c.share; });
    return keys;
}

bool says_anything(const ClaimCondition& condition, std::size_t concept_count) {
    return asks_for_all(condition.says, concept_count);
}

std::string clause_name(std::string_view key, std::size_t index, std::size_t count) {
    return count == 1 ? std::string(key) : fmt::format("{}[{}]", key, index + 1);
}

}  // namespace grainside::verdict
