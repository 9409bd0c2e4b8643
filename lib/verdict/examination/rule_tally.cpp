#include "verdict/examination/rule_tally.h"

#include <algorithm>

#include "verdict/one_cause.h"

namespace grainside::verdict {

namespace {

bool same(std::span<const Finding> a, std::span<const Finding> b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Finding& one, const Finding& other) {
        return one.rule == other.rule && one.claim == other.claim;
    });
}

bool before(const Finding& a, const Finding& b) {
    return a.rule != b.rule ? a.rule < b.rule : a.claim < b.claim;
}

}  // namespace

RuleTally::RuleTally(const rules::BookData& book)
    : rules_(book.rules.size()),
      matcher_(book),
      settings_(settings_of(book)),
      cells_(settings_.size() * book.rules.size()) {
    std::vector<std::string> everywhere;
    for (const rules::Market& market : book.markets) everywhere.push_back(market.name);
    matcher_.select(everywhere, {});
}

void RuleTally::add(const ReadText& text) {
    all_.clear();
    matcher_.match(text.claims, text.facts, all_);
    if (all_.empty()) return;
    last_raised_.clear();
    for (std::size_t setting = 0; setting < settings_.size(); ++setting) {
        const std::vector<Span>& spans = settings_[setting].spans;
        for (std::uint32_t span = 0; span < spans.size(); ++span) {
            raised_.clear();
            for (const Finding& finding : all_) {
                if (spans[span].in_force[finding.rule] != 0) raised_.push_back(finding);
            }
            if (raised_.empty()) continue;
            if (!same(raised_, last_raised_)) settle(text);
            take_down(text, setting, span);
        }
    }
}

void RuleTally::settle(const ReadText& text) {
    last_raised_ = raised_;
    kept_ = raised_;
    keep_one_per_cause(text.fields, text.claims, kept_);
    standing_ = kept_;
    std::sort(standing_.begin(), standing_.end(), before);
}

void RuleTally::take_down(const ReadText& text, std::size_t setting, std::uint32_t span) {
    const auto field = [&](const Finding& finding) { return text.claims[finding.claim].field; };
    for (const Finding& finding : raised_) {
        RuleInMarket& cell = cells_[setting * rules_ + finding.rule];
        const bool last = settings_[setting].last_span[finding.rule] == span;
        cell.held = true;
        if (std::binary_search(standing_.begin(), standing_.end(), finding, before)) {
            cell.spoke = true;
            cell.spoke_last = cell.spoke_last || last;
            continue;
        }
        if (cell.spoke_last || !last) continue;
        // kept_ is sorted by field and start, and no two of it overlap.
        auto other = std::partition_point(kept_.begin(), kept_.end(), [&](const Finding& one) {
            return field(one) < field(finding) || (field(one) == field(finding) && one.end <= finding.start);
        });
        std::vector<std::uint32_t> winners;
        for (; other != kept_.end() && field(*other) == field(finding) && other->start < finding.end; ++other) {
            if (other->rule != finding.rule) winners.push_back(other->rule);
        }
        std::sort(winners.begin(), winners.end());
        winners.erase(std::unique(winners.begin(), winners.end()), winners.end());
        if (!cell.always_beaten_by) {
            cell.always_beaten_by = std::move(winners);
        } else {
            std::erase_if(*cell.always_beaten_by, [&](std::uint32_t rule) {
                return !std::binary_search(winners.begin(), winners.end(), rule);
            });
        }
    }
}

}  // namespace grainside::verdict
