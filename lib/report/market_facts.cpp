#include "report/market_facts.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <map>
#include <tuple>

#include "report/plain_lines.h"
#include "report/rule_facts.h"

namespace grainside::report {
namespace {

constexpr std::size_t kWordCells = 120;
constexpr std::size_t kFieldCells = 60;

void add_once(std::vector<std::string>& texts, std::string_view text) {
    if (std::find(texts.begin(), texts.end(), text) == texts.end()) texts.emplace_back(text);
}

void add_for_market(std::vector<TextOfMarkets>& texts, const std::string& text, const std::string& market) {
    auto known = std::find_if(texts.begin(), texts.end(), [&](const TextOfMarkets& one) { return one.text == text; });
    if (known == texts.end()) known = texts.insert(known, {text, {}});
    add_once(known->markets, market);
}

std::string grade_text(const std::optional<Grade>& grade) {
    return grade ? std::string(name_of(*grade)) : "not flagged";
}

std::string change_text(const MarketContext& context, const MarketChange& change) {
    std::string text =
        fmt::format("'{}' ({}) will be {}, until then {} [{}]",
                    one_line(words_of(context.listing, change.field, change.start, change.end), kWordCells),
                    one_line(context.listing.fields[change.field].name, kFieldCells), grade_text(change.after),
                    grade_text(change.before), context.book.rules()[change.rule].id);
    return text + (change.stands ? "; it stands then" : "; it does not stand then");
}

}  // namespace

MarketAdvice advice_of(const RuleBook& book, const MarketFinding& finding) {
    const RuleInfo& rule = book.rules()[finding.rule];
    if (!finding.say_instead.empty()) return {"say instead", finding.say_instead, rule.leave_out};
    if (!rule.remedy.empty()) return {"remedy", rule.remedy, rule.leave_out};
    return {{}, {}, rule.leave_out};
}

std::string_view words_of(const Listing& listing, std::uint32_t field, std::uint32_t start, std::uint32_t end) {
    return listing.fields[field].text.substr(start, end - start);
}

std::vector<SharedFinding> shared_findings(const MarketContext& context) {
    std::vector<SharedFinding> shared;
    std::map<std::tuple<std::string, Grade, std::string, bool>, std::size_t> known;
    for (const MarketAnswer& answer : context.answers) {
        for (const MarketFinding& finding : answer.findings) {
            if (finding.grade > context.asked.fail_at) continue;
            const RuleInfo& rule = context.book.rules()[finding.rule];
            MarketAdvice advice = advice_of(context.book, finding);
            std::string words(words_of(context.listing, finding.field, finding.start, finding.end));
            const auto [at, is_new] =
                known.emplace(std::tuple(words, finding.grade, advice.text, advice.leave_out), shared.size());
            if (is_new) {
                shared.emplace_back();
                shared.back().words = std::move(words);
                shared.back().grade = finding.grade;
                shared.back().advice = std::move(advice);
            }
            SharedFinding& one = shared[at->second];
            add_once(one.fields, context.listing.fields[finding.field].name);
            add_once(one.markets, answer.market);
            add_for_market(one.reasons, rule.because, answer.market);
            add_for_market(one.rules, rule.id, answer.market);
            for (const std::string& cite : cites_of(context.book, rule)) add_for_market(one.cites, cite, answer.market);
        }
    }
    return shared;
}

std::vector<SharedChange> shared_changes(const MarketContext& context) {
    std::map<std::pair<std::string, std::string>, std::vector<std::string>> by_text;
    for (const MarketAnswer& answer : context.answers) {
        for (const MarketChange& change : answer.changes) {
            add_once(by_text[{change.day, change_text(context, change)}], answer.market);
        }
    }
    std::vector<SharedChange> shared;
    shared.reserve(by_text.size());
    for (auto& [key, markets] : by_text) shared.push_back({key.first, key.second, std::move(markets)});
    return shared;
}

std::string market_list(const std::vector<std::string>& markets) {
    return fmt::format("{}", fmt::join(markets, ", "));
}

std::string short_market_list(const std::vector<std::string>& markets) {
    constexpr std::size_t kMost = 6;
    constexpr std::size_t kShown = 3;
    if (markets.size() <= kMost) return market_list(markets);
    return fmt::format("{} and {} more", fmt::join(markets.begin(), markets.begin() + kShown, ", "),
                       markets.size() - kShown);
}

}  // namespace grainside::report
