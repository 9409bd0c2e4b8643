// How rules fare against one another over texts: which hold, which speak, which are beaten by whom.
#ifndef GRAINSIDE_VERDICT_EXAMINATION_RULE_TALLY_H
#define GRAINSIDE_VERDICT_EXAMINATION_RULE_TALLY_H

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "grainside/finding.h"
#include "rules/book_data.h"
#include "rules/rule_matcher.h"
#include "verdict/examination/proof_texts.h"
#include "verdict/examination/settings.h"

namespace grainside::verdict {

// One rule in one market.
struct RuleInMarket {
    bool held = false;        // on some day its condition held of some words
    bool spoke = false;       // and once no other rule took its place
    bool spoke_last = false;  // so in the last span in which it is in force, which for most rules is from some day on
    // In that span: the rules whose findings overlapped its words and stood, each time that it was beaten. Nothing:
    // never beaten.
    std::optional<std::vector<std::uint32_t>> always_beaten_by;
};

// Not thread-safe; one a thread.
class RuleTally {
public:
    explicit RuleTally(const rules::BookData& book);

    // What a rule asks of the words depends on no market and no day, so each text is matched once; then each setting
    // keeps what is in force there.
    void add(const ReadText& text);

    const std::vector<MarketSetting>& settings() const noexcept { return settings_; }
    const RuleInMarket& of(std::size_t setting, std::size_t rule) const { return cells_[setting * rules_ + rule]; }

private:
    void settle(const ReadText& text);
    void take_down(const ReadText& text, std::size_t setting, std::uint32_t span);

    std::size_t rules_;
    rules::RuleMatcher matcher_;
    std::vector<MarketSetting> settings_;
    std::vector<RuleInMarket> cells_;  // by setting, then rule
    // Of one text: what all rules raise, what those in force do, and what is kept of that, by place and by rule.
    std::vector<Finding> all_, raised_, last_raised_, kept_, standing_;
};

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_EXAMINATION_RULE_TALLY_H
