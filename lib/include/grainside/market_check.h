// May this copy be published there as it stands? One listing, asked of many markets, today and on the days to come.
//
//     grainside::MarketCheck check(book, {.markets = {"us", "eu"}, .on = "2026-06-01"});
//     grainside::Listing listing;
//     listing.fields = {{"name", "Carbon neutral tote in cotton"}};
//     for (const grainside::MarketAnswer& answer : check.check(listing)) {
//         std::cout << answer.market << (answer.stands ? ": stands" : ": does not stand") << '\n';
//         for (const grainside::MarketChange& change : answer.changes) {
//             std::cout << "from " << change.day << (change.stands ? ": stands" : ": does not stand") << '\n';
//         }
//     }
//     // prints: us: stands
//     // prints: eu: stands
//     // prints: from 2026-09-27: does not stand
//
// A listing is read once; markets and days for which the same rules apply are asked once. Checking never fails. Not
// thread-safe: make one a thread; they may share one RuleBook, which must outlive them.
#ifndef GRAINSIDE_MARKET_CHECK_H
#define GRAINSIDE_MARKET_CHECK_H

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "grainside/finding.h"
#include "grainside/listing.h"
#include "grainside/rule_book.h"

namespace grainside {
inline namespace v0 {

// Of the days to come on which other rules apply in a market, so many are looked at, the nearest first.
inline constexpr std::size_t kMostLaterDays = 32;

struct MarketCheckOptions {
    std::vector<std::string> markets;   // in the letters of the book; empty: every market, in the order of the book
    std::string on;                     // YYYY-MM-DD; empty: rules whatever their dates, and no later days
    Grade fail_at = Grade::misleading;  // copy with a finding of this grade or a worse one does not stand
};

struct MarketFinding {
    std::uint32_t field = 0;  // index into Listing::fields
    std::uint32_t start = 0;  // half-open byte span in that field
    std::uint32_t end = 0;
    Grade grade = Grade::vague;
    std::uint32_t rule = 0;   // index into RuleBook::rules()
    std::string say_instead;  // wording that passes there by itself; empty: none is known
};

// What a later day changes for words of the listing.
struct MarketChange {
    std::string day;  // from which on
    std::uint32_t field = 0, start = 0, end = 0;
    std::optional<Grade> before, after;  // nothing: no finding stands on these words
    std::uint32_t rule = 0;              // that speaks from then on, or does no longer
    bool stands = false;                 // whether the copy stands in the market from that day on
};

// Whose rules a market is asked by, besides the general ones.
enum class MarketRules : std::uint8_t {
    own,     // rules in force are made for it
    larger,  // none are, but some for a market that it lies within
    general  // neither
};

struct MarketAnswer {
    std::string market;
    MarketRules rules = MarketRules::general;
    bool stands = true;
    std::optional<Grade> worst;           // nothing: no finding
    std::vector<MarketFinding> findings;  // sorted by field, start, grade, rule
    std::vector<MarketChange> changes;    // sorted by day, field, start
    bool more_days = false;               // there are days behind kMostLaterDays, which were not looked at
};

class MarketCheck {
public:
    // REQUIRES: `options.markets` are markets of the book.
    MarketCheck(const RuleBook& book, MarketCheckOptions options);
    MarketCheck(MarketCheck&&) noexcept;
    MarketCheck& operator=(MarketCheck&&) noexcept;
    ~MarketCheck();

    // One answer a market. They live until the next call.
    std::span<const MarketAnswer> check(const Listing& listing);

    // Of the last listing: fields over kMaxFieldBytes, which were not read.
    std::uint32_t fields_too_long() const noexcept;

    const MarketCheckOptions& options() const noexcept;

private:
    struct Workspace;
    std::unique_ptr<Workspace> work_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_MARKET_CHECK_H
