// What entries of the book refer to by name: markets, sources, days in force. Rules and limits share it.
#ifndef GRAINSIDE_RULES_REFERENCES_H
#define GRAINSIDE_RULES_REFERENCES_H

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "document/document.h"
#include "document/faults.h"
#include "grainside/rule_book.h"
#include "rules/book_data.h"

namespace grainside::rules {

// When an entry of the book is in force: first and last day as YYYY-MM-DD; empty is open.
struct InForce {
    std::string from;
    std::string until;
    // An empty `day` asks for entries whatever their dates.
    bool on(std::string_view day) const noexcept {
        return day.empty() || ((from.empty() || from <= day) && (until.empty() || day <= until));
    }
};

// The texts of `node`, each a market of the book. Faults: "unknown-market" (the name is kept), "wrong-type".
std::vector<std::string> read_markets(const document::Document& document, document::Node node,
                                      std::span<const Market> known, document::Faults& faults);
// The indices of the sources that `node` names. Faults: "unknown-source" (left out), "wrong-type".
std::vector<std::uint32_t> read_sources(const document::Document& document, document::Node node,
                                        std::span<const SourceInfo> known, document::Faults& faults);
// {from, until}. Faults: "unknown-key", "wrong-type", "bad-date".
InForce read_in_force(const document::Document& document, document::Node node, document::Faults& faults);

// `asked` and the larger markets that they lie within. Views into both.
std::vector<std::string_view> reach_of(std::span<const std::string> asked, std::span<const Market> known);
// An entry without markets holds everywhere.
bool holds_in(std::span<const std::string> markets, std::span<const std::string_view> reach) noexcept;

}  // namespace grainside::rules

#endif  // GRAINSIDE_RULES_REFERENCES_H
