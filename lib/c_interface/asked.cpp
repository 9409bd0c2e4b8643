#include "c_interface/asked.h"

#include <algorithm>
#include <string>
#include <utility>

#include "document/day.h"

namespace grainside::c_interface {
namespace {

Issue fault(std::string code, std::string message, std::string hint) {
    Issue issue;
    issue.code = std::move(code);
    issue.message = std::move(message);
    issue.hint = std::move(hint);
    return issue;
}

}  // namespace

bool is_whole(const GrainsideCheckOptions* options) noexcept {
    if (options == nullptr) return true;
    if (!is_text(options->on) || (options->markets == nullptr && options->market_count != 0)) return false;
    return std::all_of(options->markets, options->markets + options->market_count, is_text);
}

void require_day(std::string_view day, std::vector<Issue>& issues) {
    if (day.empty() || document::is_day(day)) return;
    issues.push_back(fault("no-such-day", "'" + std::string(day) + "' is no day", "write it as YYYY-MM-DD"));
}

CheckOptions check_options_of(const GrainsideCheckOptions* options, const RuleBook& book, std::vector<Issue>& issues) {
    CheckOptions asked;
    if (options == nullptr) return asked;
    const std::vector<std::string> known = book.markets();
    for (std::size_t at = 0; at < options->market_count; ++at) {
        const std::string_view market = view_of(options->markets[at]);
        if (std::find(known.begin(), known.end(), market) != known.end()) {
            asked.markets.emplace_back(market);
            continue;
        }
        std::string all;
        for (const std::string& one : known) all.append(all.empty() ? "the book has " : ", ").append(one);
        issues.push_back(fault("unknown-market", "there is no market '" + std::string(market) + "'", std::move(all)));
    }
    asked.on = view_of(options->on);
    require_day(asked.on, issues);
    return asked;
}

}  // namespace grainside::c_interface
