#include "unknown_regions.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <utility>

#include "evidence/region_market.h"

namespace grainside::tools {
namespace {

constexpr std::size_t kMostKeptRegions = 8;
constexpr std::size_t kMostShownOfRegion = 40;

}  // namespace

UnknownRegions::UnknownRegions(const RuleBook& book, const CheckOptions& options)
    : known_(book.markets()), is_asked_(options.markets.empty()) {}

void UnknownRegions::add(const Listing& listing) {
    if (!is_asked_ || listing.region.empty()) return;
    std::vector<std::string> unknown;
    bool are_codes = true;
    std::string_view rest = listing.region;
    for (std::string_view word = evidence::take_region(rest); !word.empty(); word = evidence::take_region(rest)) {
        const bool is_code = word.size() == 2;
        are_codes = are_codes && is_code;
        std::string market = is_code ? evidence::market_of_code(word) : std::string();
        if (is_code && std::find(known_.begin(), known_.end(), market) != known_.end()) continue;
        if (std::find(unknown.begin(), unknown.end(), market) == unknown.end()) unknown.push_back(std::move(market));
    }
    if (unknown.empty()) return;
    ++listings_;
    if (are_codes) {
        for (std::string& code : unknown) note(std::move(code), 1);
        return;
    }
    // A name of several words is one region.
    const std::string_view stated = listing.region;
    note(stated.size() <= kMostShownOfRegion ? std::string(stated)
                                             : std::string(stated.substr(0, kMostShownOfRegion)) + "...",
         1);
}

void UnknownRegions::add(const UnknownRegions& other) {
    listings_ += other.listings_;
    has_others_ = has_others_ || other.has_others_;
    for (const auto& [region, listings] : other.regions_) note(region, listings);
}

void UnknownRegions::note(std::string region, std::uint64_t listings) {
    regions_[std::move(region)] += listings;
    if (regions_.size() <= kMostKeptRegions) return;
    regions_.erase(std::prev(regions_.end()));
    has_others_ = true;
}

void UnknownRegions::report(Diagnostics& diagnostics) const {
    if (listings_ == 0) return;
    std::vector<std::string> told;
    for (const auto& [region, listings] : regions_) told.push_back(fmt::format("'{}' ({})", region, listings));
    Issue issue;
    issue.severity = Issue::Severity::warning;
    issue.code = "unknown-region";
    issue.message =
        fmt::format("{} for which the book has no market: {}{}; no rules of a market were asked for these",
                    listings_ == 1 ? "1 listing states a region" : fmt::format("{} listings state regions", listings_),
                    fmt::join(told, ", "), has_others_ ? " and others" : "");
    issue.hint = fmt::format(
        "the book has {}; a region is a code of two letters (ISO 3166-1); --market asks for "
        "markets whatever listings state",
        fmt::join(known_, ", "));
    diagnostics.report(issue);
}

}  // namespace grainside::tools
