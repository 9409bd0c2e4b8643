#include "rules/rule_matcher.h"

#include <algorithm>
#include <bit>

namespace grainside::rules {

namespace {

// Bounds that keep a hostile record linear in its claims; an ordinary listing is far below both.
constexpr std::uint32_t kNeighbours = 64;    // claims looked at on either side within a phrase or sentence
constexpr std::size_t kMostDistinct = 1024;  // different statements looked through for a part or the whole listing

std::uint64_t look_of(const Claim& claim) {
    std::uint64_t hash = claim.says | std::uint64_t{claim.called} << 16 | std::uint64_t{claim.place} << 32;
    hash = hash * 0x9e3779b97f4a7c15ULL + claim.marks;
    hash = hash * 0x9e3779b97f4a7c15ULL + (static_cast<unsigned>(claim.part) | static_cast<unsigned>(claim.kind) << 8U |
                                           unsigned{claim.negated} << 16U | unsigned{claim.hedged} << 17U |
                                           unsigned{claim.look_alike} << 18U | unsigned{claim.family} << 19U);
    // Else a list of shares would be one look, and each claim be held against all before it.
    if (claim.quantity) hash = hash * 0x9e3779b97f4a7c15ULL + std::bit_cast<std::uint64_t>(claim.quantity->low);
    hash ^= hash >> 31;
    return hash * 0xbf58476d1ce4e5b9ULL;
}

static_assert(kNeighbours <= 64);  // one bit a claim in RuleMatcher::candidates

// A plain loop: nearly every rule has one condition, which std::any_of is not made for.
bool any_holds(const std::vector<ClaimCondition>& conditions, const Claim& claim, const ListingFacts& listing) {
    for (const ClaimCondition& condition : conditions) {
        if (condition.holds(claim, listing)) return true;
    }
    return false;
}

bool is_within(Reach reach, const Claim& claim, const Claim& other) {
    switch (reach) {
        case Reach::phrase:
            return other.phrase == claim.phrase;
        case Reach::sentence:
            return other.sentence == claim.sentence;
        case Reach::part:
            return of_one_thing(other, claim);
        case Reach::anywhere:
            return true;
        case Reach::elsewhere:
            // A title that a text labels stands apart from that text, as a name does from a description.
            return of_one_thing(other, claim) &&
                   (other.field != claim.field || other.has(Mark::title) != claim.has(Mark::title));
        case Reach::noun:
            return of_one_thing(other, claim) && claim.family != 0 && other.family != 0;
        case Reach::part_in_sentence:
            return other.sentence == claim.sentence && of_one_thing(other, claim);
    }
    return false;
}

bool same_quantity(const Claim& a, const Claim& b) {
    if (a.quantity.has_value() != b.quantity.has_value() || a.of_total != b.of_total) return false;
    return !a.quantity || (a.quantity->low == b.quantity->low && a.quantity->high == b.quantity->high &&
                           a.quantity->unit == b.quantity->unit);
}

// In all that a condition can ask of a claim by itself.
bool look_alike(const Claim& a, const Claim& b) {
    return a.says == b.says && a.called == b.called && a.place == b.place && a.marks == b.marks && a.part == b.part &&
           a.family == b.family && a.kind == b.kind && a.negated == b.negated && a.hedged == b.hedged &&
           a.look_alike == b.look_alike && same_quantity(a, b);
}

// A title is read first, wherever its record has it: the members of a JSON object have no order.
bool stands_behind(const Claim& other, const Claim& claim) {
    if (other.has(Mark::title) != claim.has(Mark::title)) return claim.has(Mark::title);
    return other.field == claim.field ? other.start >= claim.end : other.field > claim.field;
}

}  // namespace

RuleMatcher::RuleMatcher(const BookData& book)
    : book_(book), selections_(book), said_(book.vocabulary.concepts.size()) {
    gates_.reserve(book.compiled.size());
    unless_gates_.reserve(book.compiled.size());
    for (const CompiledRule& rule : book.compiled) {
        gates_.emplace_back(rule.when);
        unless_gates_.emplace_back(rule.unless);
    }
}

void RuleMatcher::select(std::span<const std::string> markets, std::string_view on) {
    selected_ = &selections_.of(markets, on);
}

// What `find_beside` looks at.
void RuleMatcher::take_in(std::span<const Claim> claims) {
    kinds_said_ = 0;
    for (const Claim& claim : claims) kinds_said_ |= 1U << static_cast<unsigned>(claim.kind);
    if (claims.size() <= kNeighbours) {
        negated_ = 0;
        of_part_ = {};
        of_kind_ = {};
        std::uint64_t bit = 1;
        for (const Claim& claim : claims) {
            of_part_[static_cast<std::size_t>(claim.part)] |= bit;
            of_kind_[static_cast<std::size_t>(claim.kind)] |= bit;
            if (claim.negated) negated_ |= bit;
            bit <<= 1;
        }
        all_ = bit - 1;  // of 64 claims all bits: the one has left the word
        return;
    }
    said_.clear();
    for (const Claim& claim : claims) said_.insert(claim.says);
    distinct_.clear();
    constexpr std::size_t kSlots = 4 * kMostDistinct;
    seen_.assign(kSlots, kNoClaim);
    for (std::uint32_t i = 0; i < claims.size(); ++i) {
        std::size_t at = look_of(claims[i]) % kSlots;
        while (seen_[at] != kNoClaim && !look_alike(claims[distinct_[seen_[at]].first], claims[i]))
            at = (at + 1) % kSlots;
        if (seen_[at] != kNoClaim) {
            distinct_[seen_[at]].last = i;
        } else if (distinct_.size() < kMostDistinct) {
            seen_[at] = static_cast<std::uint32_t>(distinct_.size());
            distinct_.push_back({i, i});
        }
    }
}

// Whether some claim of the listing may meet it.
bool RuleMatcher::is_present(const ClaimCondition& condition) const noexcept {
    return (condition.kinds & kinds_said_) != 0 && condition.says.intersects(said_);
}

// A country and what it lies in agree: 'European hides, tanned in Spain'.
bool RuleMatcher::same_country(const Claim& claim, const Claim& other) const {
    return claim.place == other.place || book_.vocabulary.concepts.related(claim.place, other.place);
}

// What a condition asks of two claims together.
bool RuleMatcher::fits(const BesideCondition& condition, const Claim& claim, const Claim& other) const {
    if (condition.later && !stands_behind(other, claim)) return false;
    if (condition.same_place &&
        (*condition.same_place ? !same_country(claim, other)
                               : other.place == 0 || claim.place == 0 || same_country(claim, other))) {
        return false;
    }
    return !condition.differs || *condition.differs != book_.vocabulary.concepts.related(claim.says, other.says);
}

// The claims that may meet a condition beside `claim`; none of the others does.
std::uint64_t RuleMatcher::candidates(const BesideCondition& condition, const Claim& claim) const noexcept {
    const bool of_one_part = condition.reach == Reach::part || condition.reach == Reach::elsewhere ||
                             condition.reach == Reach::noun || condition.reach == Reach::part_in_sentence;
    std::uint64_t found = of_one_part ? of_part_[static_cast<std::size_t>(claim.part)] : all_;
    if (condition.claim.negated) found &= *condition.claim.negated ? negated_ : ~negated_;
    if ((kinds_said_ & ~condition.claim.kinds) != 0) {
        std::uint64_t of_kinds = 0;
        for (std::uint32_t kinds = kinds_said_ & condition.claim.kinds; kinds != 0; kinds &= kinds - 1)
            of_kinds |= of_kind_[static_cast<std::size_t>(std::countr_zero(kinds))];
        found &= of_kinds;
    }
    return found;
}

// All claims are near enough for every reach.
std::uint32_t RuleMatcher::find_among_few(std::span<const Claim> claims, std::uint32_t at, const ListingFacts& listing,
                                          const std::vector<BesideCondition>& conditions) const {
    const Claim& claim = claims[at];
    for (const BesideCondition& condition : conditions) {
        std::uint64_t others = candidates(condition, claim) & ~(std::uint64_t{1} << at);
        for (; others != 0; others &= others - 1) {
            const auto i = static_cast<std::uint32_t>(std::countr_zero(others));
            if (condition.claim.holds(claims[i], listing) && is_within(condition.reach, claim, claims[i]) &&
                fits(condition, claim, claims[i])) {
                return i;
            }
        }
    }
    return kNoClaim;
}

std::uint32_t RuleMatcher::find_beside(std::span<const Claim> claims, std::uint32_t at, const ListingFacts& listing,
                                       const std::vector<BesideCondition>& conditions) const {
    if (claims.size() <= kNeighbours) return find_among_few(claims, at, listing, conditions);
    const Claim& claim = claims[at];
    const auto from = at > kNeighbours ? at - kNeighbours : 0;
    const auto to = static_cast<std::uint32_t>(std::min<std::size_t>(claims.size(), std::size_t{at} + kNeighbours + 1));
    for (const BesideCondition& condition : conditions) {
        if (!is_present(condition.claim)) continue;
        const auto meets = [&](std::uint32_t i) {
            return i != at && is_within(condition.reach, claim, claims[i]) &&
                   condition.claim.holds(claims[i], listing) && fits(condition, claim, claims[i]);
        };
        if (condition.reach == Reach::phrase || condition.reach == Reach::sentence ||
            condition.reach == Reach::part_in_sentence) {
            for (std::uint32_t i = from; i < to; ++i) {
                if (meets(i)) return i;
            }
            continue;
        }
        for (const Alike& alike : distinct_) {
            if (meets(alike.first)) return alike.first;
            if (alike.last != alike.first && meets(alike.last)) return alike.last;
        }
    }
    return kNoClaim;
}

// Whether the listing's other claims are what the rule asks for. `against` becomes the statement beside it, for a rule
// that asks for one.
bool RuleMatcher::has_company(const CompiledRule& rule, std::span<const Claim> claims, std::uint32_t at,
                              const ListingFacts& listing, std::uint32_t& against) const {
    against = kNoClaim;
    if (!rule.beside.empty()) {
        against = find_beside(claims, at, listing, rule.beside);
        if (against == kNoClaim) return false;
    }
    return rule.unless_beside.empty() || find_beside(claims, at, listing, rule.unless_beside) == kNoClaim;
}

void RuleMatcher::match(std::span<const Claim> claims, const ListingFacts& listing, std::vector<Finding>& findings) {
    take_in(claims);
    for (std::uint32_t at = 0; at < claims.size(); ++at) {
        const Claim& claim = claims[at];
        for (std::uint32_t index : selected_->rules_of(claim.says)) {
            if (!gates_[index].admits(claim)) continue;
            const CompiledRule& rule = book_.compiled[index];
            if (!any_holds(rule.when, claim, listing)) continue;
            if (unless_gates_[index].admits(claim) && any_holds(rule.unless, claim, listing)) continue;
            std::uint32_t against = kNoClaim;
            if (!has_company(rule, claims, at, listing, against)) continue;
            Finding finding;
            finding.against = against;
            finding.rule = index;
            finding.claim = at;
            finding.start = claim.start;
            finding.end = rule.over_list && claim.list_end > claim.end ? claim.list_end : claim.end;
            finding.grade = book_.rules[index].grade;
            finding.basis = book_.rules[index].basis;
            findings.push_back(finding);
        }
    }
}

std::size_t RuleMatcher::count_alone(const CompiledRule& rule, std::span<const Claim> claims,
                                     const ListingFacts& listing) {
    take_in(claims);
    std::size_t count = 0;
    for (std::uint32_t at = 0; at < claims.size(); ++at) {
        std::uint32_t against = kNoClaim;
        if (any_holds(rule.when, claims[at], listing) && !any_holds(rule.unless, claims[at], listing) &&
            has_company(rule, claims, at, listing, against)) {
            ++count;
        }
    }
    return count;
}

}  // namespace grainside::rules
