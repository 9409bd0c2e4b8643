// Costs as members of JSON objects, the same in every record that holds some. Thread-safe for distinct writers.
#ifndef GRAINSIDE_REPORT_COST_JSON_H
#define GRAINSIDE_REPORT_COST_JSON_H

#include <cstdint>
#include <functional>
#include <string_view>
#include <vector>

#include "grainside/cost.h"
#include "report/json_writer.h"

namespace grainside::report {

// "key":{"value","u","low","high"}
void write_amount(JsonWriter& json, std::string_view key, const CostAmount& amount);

class CostJson {
public:
    // The id of a source of the rule book, by its index.
    using SourceId = std::function<std::string_view(std::uint32_t)>;

    CostJson(JsonWriter& json, SourceId source_id) : json_(json), source_id_(std::move(source_id)) {}

    // "group","item","part"?,"currency","amount","basis","usual","line"?
    void write_line(const CostLine& line, std::string_view currency);
    // "materials" to "remarks". REQUIRES: the estimate is on record.
    void write_sums(const CostEstimate& cost);

private:
    void write_price(const PriceMultiple& price);
    void write_usual(const UsualRange& usual);
    void write_usual_list(std::string_view key, const std::vector<UsualRange>& ranges);

    JsonWriter& json_;
    SourceId source_id_;
};

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_COST_JSON_H
