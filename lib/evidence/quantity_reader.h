// A quantity that stands in a document, read by lib/measure and its faults told at their place.
#ifndef GRAINSIDE_EVIDENCE_QUANTITY_READER_H
#define GRAINSIDE_EVIDENCE_QUANTITY_READER_H

#include <optional>
#include <string>
#include <string_view>

#include "evidence/entry_reader.h"
#include "measure/quantity_text.h"

namespace grainside::evidence {

// Faults: "wrong-type", "bad-quantity" (empty, too long or no quantity at all), and the other codes of
// measure::QuantityFault as they are: "decimal-comma", "out-of-range", "missing-unit", "unknown-unit", "wrong-unit",
// "mixed-units", "bad-uncertainty", "range-reversed", "too-few-repeats", "open-ended", "not-positive".
std::optional<measure::ParsedQuantity> read_quantity(const EntryReader& reader, document::Node node,
                                                     measure::Dimension expected);

// The code under which a quantity's fault is told of a document: "bad-quantity" for what is none at all.
std::string_view code_in_documents(std::string_view code) noexcept;

// A reading: what can be less than nothing only a temperature and the coordinates a and b of a colour are. Faults also:
// "no-uncertainty", "negative", "above-100" (of shares).
std::optional<measure::Measured> read_measured(const EntryReader& reader, document::Node node,
                                               measure::Dimension expected);
// The same without the bounds.
std::optional<measure::Measured> read_signed(const EntryReader& reader, document::Node node,
                                             measure::Dimension expected);

// A number of the book with its unit, without uncertainty. Faults also: "bad-bound" (a range, repeats, an uncertainty).
std::optional<measure::ParsedQuantity> read_bound(const EntryReader& reader, document::Node node,
                                                  measure::Dimension expected);

// {above, at_least, below, at_most}: one end, or two that leave something between them. `unit` gets the unit as
// written. Faults: those of read_bound, and "missing-key" (no bound), "bad-bound" (two on one side, or nothing between
// them).
std::optional<measure::Limit> read_interval(const EntryReader& reader, document::Node node, measure::Dimension expected,
                                            std::string& unit);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_QUANTITY_READER_H
