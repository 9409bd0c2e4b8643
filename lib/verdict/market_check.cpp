#include "grainside/market_check.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "grainside/checker.h"
#include "rules/book_data.h"
#include "verdict/market_days.h"

namespace grainside {
inline namespace v0 {

namespace {

// Rules that apply together, with a market and a day for which they do, and what they find.
struct AskedRules {
    CheckOptions options;
    std::vector<MarketFinding> findings;
};

struct AskedDay {
    std::string day;
    std::size_t asked = 0;  // index of AskedRules
};

struct AskedMarket {
    std::vector<AskedDay> days;
    MarketRules rules = MarketRules::general;
    bool more_days = false;
};

bool names(const std::vector<std::string>& markets, const std::string& market) {
    return std::find(markets.begin(), markets.end(), market) != markets.end();
}

auto place_of(const MarketFinding& finding) {
    return std::tuple(finding.field, finding.start, finding.end);
}

}  // namespace

struct MarketCheck::Workspace {
    Workspace(const RuleBook& rule_book, MarketCheckOptions check_options)
        : book(rule_book), options(std::move(check_options)), checker(rule_book) {
        if (options.markets.empty()) options.markets = book.markets();
        std::map<verdict::RuleSelection, std::size_t> known;
        for (const std::string& market : options.markets) plan(market, known);
    }

    void plan(const std::string& market, std::map<verdict::RuleSelection, std::size_t>& known) {
        verdict::MarketDays days = verdict::market_days(book.data(), market, options.on, kMostLaterDays);
        AskedMarket& planned = markets.emplace_back();
        planned.rules = rules_of(market, days.days.front().rules);
        planned.more_days = days.more;
        for (verdict::MarketDay& day : days.days) {
            const auto [at, is_new] = known.emplace(std::move(day.rules), asked.size());
            if (is_new) asked.push_back({CheckOptions{{market}, day.day}, {}});
            planned.days.push_back({std::move(day.day), at->second});
        }
    }

    MarketRules rules_of(const std::string& market, const verdict::RuleSelection& applying) const {
        MarketRules found = MarketRules::general;
        for (std::size_t i = 0; i < applying.size(); ++i) {
            const RuleInfo& rule = book.rules()[i];
            if (!applying[i] || rule.markets.empty()) continue;
            if (names(rule.markets, market)) return MarketRules::own;
            found = MarketRules::larger;
        }
        return found;
    }

    void ask(const Listing& listing, AskedRules& rules, bool first) {
        if (first) fields_too_long = checker.check(listing).fields_too_long;
        const CheckResult& result = checker.check_again(listing, rules.options);
        rules.findings.clear();
        for (const Finding& finding : result.findings) {
            rules.findings.push_back({result.mentions[finding.claim].field, finding.start, finding.end, finding.grade,
                                      finding.rule, checker.say_instead(listing, finding)});
        }
    }

    bool stands(const std::vector<MarketFinding>& findings) const {
        return std::none_of(findings.begin(), findings.end(),
                            [&](const MarketFinding& finding) { return finding.grade <= options.fail_at; });
    }

    void answer(const AskedMarket& market, MarketAnswer& told) const {
        told.rules = market.rules;
        told.more_days = market.more_days;
        told.findings = asked[market.days.front().asked].findings;
        told.stands = stands(told.findings);
        told.worst.reset();
        for (const MarketFinding& finding : told.findings) {
            if (!told.worst || finding.grade < *told.worst) told.worst = finding.grade;
        }
        told.changes.clear();
        for (std::size_t day = 1; day < market.days.size(); ++day) {
            add_changes(market.days[day].day, asked[market.days[day - 1].asked].findings,
                        asked[market.days[day].asked].findings, told.changes);
        }
    }

    // Both are sorted by place.
    void add_changes(const std::string& day, const std::vector<MarketFinding>& before,
                     const std::vector<MarketFinding>& after, std::vector<MarketChange>& changes) const {
        const bool then = stands(after);
        const auto add = [&](const MarketFinding& at, const MarketFinding* was, const MarketFinding* will) {
            MarketChange change{day, at.field, at.start, at.end, {}, {}, at.rule, then};
            if (was != nullptr) change.before = was->grade;
            if (will != nullptr) change.after = will->grade;
            if (change.before != change.after) changes.push_back(std::move(change));
        };
        auto was = before.begin();
        auto will = after.begin();
        while (was != before.end() || will != after.end()) {
            if (will == after.end() || (was != before.end() && place_of(*was) < place_of(*will))) {
                add(*was, &*was, nullptr);
                ++was;
            } else if (was == before.end() || place_of(*will) < place_of(*was)) {
                add(*will, nullptr, &*will);
                ++will;
            } else {
                add(*will, &*was, &*will);
                ++was;
                ++will;
            }
        }
    }

    const RuleBook& book;
    MarketCheckOptions options;
    Checker checker;
    std::vector<AskedRules> asked;
    std::vector<AskedMarket> markets;
    std::vector<MarketAnswer> answers;
    std::uint32_t fields_too_long = 0;
};

MarketCheck::MarketCheck(const RuleBook& book, MarketCheckOptions options)
    : work_(std::make_unique<Workspace>(book, std::move(options))) {}
MarketCheck::MarketCheck(MarketCheck&&) noexcept = default;
MarketCheck& MarketCheck::operator=(MarketCheck&&) noexcept = default;
MarketCheck::~MarketCheck() = default;

std::span<const MarketAnswer> MarketCheck::check(const Listing& listing) {
    for (std::size_t i = 0; i < work_->asked.size(); ++i) work_->ask(listing, work_->asked[i], i == 0);
    work_->answers.resize(work_->markets.size());
    for (std::size_t i = 0; i < work_->markets.size(); ++i) {
        work_->answers[i].market = work_->options.markets[i];
        work_->answer(work_->markets[i], work_->answers[i]);
    }
    return work_->answers;
}

std::uint32_t MarketCheck::fields_too_long() const noexcept {
    return work_->fields_too_long;
}

const MarketCheckOptions& MarketCheck::options() const noexcept {
    return work_->options;
}

}  // namespace v0
}  // namespace grainside
