// Writing in which markets a listing stands: a view for people, JSON Lines for programs, CSV (RFC 4180) for tables.
//
//     grainside::MarketCheck check(book, {.markets = {"us", "eu"}, .on = "2026-11-26"});
//     grainside::Listing listing;
//     listing.id = "t-1";
//     listing.fields = {{"name", "Tote in cotton"}};
//     const grainside::MarketContext context{book, listing, check.options(), check.check(listing)};
//     std::string table;
//     grainside::write_market_columns(table);
//     grainside::write_market_rows(context, table);
//     std::string records;
//     grainside::write_market_records(context, records);
//     std::cout << records.substr(0, records.find(",\"on\"")) << "}\n";
//     // prints: {"listing":"t-1","market":"us","name":"United States"}
//
// Output is appended to a string that the caller writes and clears; nothing here prints. Text from a listing comes out
// inert, as in report.h. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_MARKET_REPORT_H
#define GRAINSIDE_MARKET_REPORT_H

#include <span>
#include <string>

#include "grainside/listing.h"
#include "grainside/market_check.h"
#include "grainside/report.h"

namespace grainside {
inline namespace v0 {

// A listing with what a MarketCheck said of it; all outlive it.
struct MarketContext {
    const RuleBook& book;
    const Listing& listing;
    const MarketCheckOptions& asked;
    std::span<const MarketAnswer> answers;
};

// A table of the markets; where the copy stands and where not; what to change, told once for all markets in which it is
// the same; what is coming. End with write_view_end.
void write_market_view(const MarketContext& context, const ViewOptions& options, std::string& out);

// One line a market: {"listing","market","name","on"?,"rules","stands","worst","findings":[{"field","start","end",
// "words","grade","rule","because","say_instead"?,"remedy"?,"leave_out"?,"sources":[{"source","cite","from_memory"?}]}],
// "coming":[{"day","field","start","end","words","before","after","rule","stands"}],"more_days"?}.
void write_market_records(const MarketContext& context, std::string& out);

// The names of the columns, then one row a market.
void write_market_columns(std::string& out);
void write_market_rows(const MarketContext& context, std::string& out);

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_MARKET_REPORT_H
