#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "verdict/examination/findings.h"

namespace grainside::verdict {

namespace {

class ShadowFinder {
public:
    ShadowFinder(const rules::BookData& book, std::span<const std::uint32_t> models, const RuleTally& tally,
                 std::span<const char> dead, Remarks& remarks)
        : book_(book), models_(models), tally_(tally), dead_(dead), remarks_(remarks) {}

    void look(std::uint32_t rule) {
        bool held = false;
        bool spoke = false;
        // The rule that always wins, since when ("" where it always did), and in which markets.
        std::map<std::pair<std::uint32_t, std::string>, std::vector<std::string>> by_winner;
        for (std::size_t setting = 0; setting < tally_.settings().size(); ++setting) {
            const RuleInMarket& cell = tally_.of(setting, rule);
            held = held || cell.held;
            spoke = spoke || cell.spoke;
            if (!cell.held || cell.spoke_last || !cell.always_beaten_by || cell.always_beaten_by->empty()) continue;
            const MarketSetting& where = tally_.settings()[setting];
            const std::string since = cell.spoke ? ' ' + where.spans[where.last_span[rule]].begins : std::string();
            by_winner[{cell.always_beaten_by->front(), since}].push_back(where.market.empty() ? "no market"
                                                                                              : where.market);
        }
        bool told = false;
        for (const auto& [winner, markets] : by_winner) {
            told = tell(rule, winner.first, fmt::format("{}{}", fmt::join(markets, ", "), winner.second)) || told;
        }
        if (!spoke && !told && dead_[rule] == 0) tell_silent(rule, held);
    }

private:
    // What a market's rule takes from its model is taken on purpose, unless it grades it less severely.
    bool is_meant(std::uint32_t rule, std::uint32_t winner) const {
        return models_[winner] == rule && book_.rules[winner].grade <= book_.rules[rule].grade;
    }

    // The winner is in force in fewer markets: the law of one place, before what holds in more of them.
    bool is_narrower(std::uint32_t winner, std::uint32_t rule) const {
        const auto in_force = [](const MarketSetting& setting, std::uint32_t which) {
            return setting.last_span[which] != kNever;
        };
        return std::any_of(tally_.settings().begin(), tally_.settings().end(), [&](const MarketSetting& setting) {
            return in_force(setting, rule) && !in_force(setting, winner);
        });
    }

    std::string_view why(std::uint32_t rule, std::uint32_t winner) const {
        return book_.rules[winner].grade < book_.rules[rule].grade
                   ? "with a worse grade"
                   : "and wins by more words or an earlier place in the book";
    }

    // True where something was told.
    bool tell(std::uint32_t rule, std::uint32_t winner, const std::string& where) {
        if (is_meant(rule, winner)) return false;
        const RuleInfo& hidden = book_.rules[rule];
        const RuleInfo& other = book_.rules[winner];
        const bool note = is_narrower(winner, rule);
        remarks_.add(
            note ? Issue::Severity::note : Issue::Severity::error, note ? "overruled-rule" : "shadowed-rule", hidden,
            fmt::format("rule '{}' never speaks in {}: each time '{}' ({}:{}) holds of the same words {}", hidden.id,
                        where, other.id, other.file, other.line, why(rule, winner)),
            note ? "right where the law of that market is stricter; else narrow the other rule"
                 : "give one of the two an `unless` or a narrower `when`, end this one (`in_force`), or withdraw it",
            other.id);
        return true;
    }

    void tell_silent(std::uint32_t rule, bool held) {
        const RuleInfo& silent = book_.rules[rule];
        remarks_.add(Issue::Severity::error, "silent-rule", silent,
                     held ? fmt::format("rule '{}' never speaks: other rules take its place on every text", silent.id)
                          : fmt::format("rule '{}' never speaks: its condition holds for no text", silent.id),
                     "`grainside rules prove` shows what its own texts get instead");
    }

    const rules::BookData& book_;
    std::span<const std::uint32_t> models_;
    const RuleTally& tally_;
    std::span<const char> dead_;
    Remarks& remarks_;
};

}  // namespace

void find_shadowed_rules(const rules::BookData& book, std::span<const std::uint32_t> models, const RuleTally& tally,
                         std::span<const char> dead, Remarks& remarks) {
    ShadowFinder finder(book, models, tally, dead, remarks);
    for (std::uint32_t rule = 0; rule < book.rules.size(); ++rule) finder.look(rule);
}

}  // namespace grainside::verdict
