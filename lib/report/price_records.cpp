// What a sample costs as JSON Lines.
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/cost_report.h"
#include "report/cost_json.h"
#include "report/json_writer.h"
#include "report/price_table.h"
#include "report/rounded.h"

namespace grainside {
inline namespace v0 {

using report::JsonWriter;
using report::rounded;
using report::write_amount;

namespace {

class PriceRecords {
public:
    PriceRecords(const DossierContext& context, const CostEstimate& cost, std::string& out)
        : context_(context),
          cost_(cost),
          json_(out),
          costs_(json_, [&context](std::uint32_t one) { return std::string_view(context.book.sources()[one].id); }) {}

    void write_line(const CostLine& line) {
        json_.begin_object();
        json_.member("dossier", context_.dossier.id());
        costs_.write_line(line, cost_.currency);
        json_.end_object();
    }

    void write_end(const WhatIf* what_if) {
        json_.begin_object();
        json_.member("dossier", context_.dossier.id());
        json_.key("on_record");
        json_.value_bool(cost_.on_record);
        json_.optional_member("currency", cost_.currency);
        json_.member("lines", std::uint64_t{cost_.lines.size()});
        if (cost_.on_record) costs_.write_sums(cost_);
        if (what_if != nullptr) write_what_if(*what_if);
        json_.member("rule_book", context_.book.digest());
        json_.end_object();
    }

private:
    void write_what_if(const WhatIf& what_if) {
        json_.key("what_if");
        json_.begin_object();
        json_.key("changes");
        json_.begin_array();
        for (const CostChange& change : what_if.changes) {
            json_.begin_object();
            json_.member("item", std::string_view(change.item));
            json_.member("key", std::string_view(change.key));
            json_.member("value", std::string_view(change.value));
            json_.end_object();
        }
        json_.end_array();
        write_amount(json_, "making_before", what_if.before.making);
        write_amount(json_, "total_before", what_if.before.total);
        if (what_if.before.multiple) write_amount(json_, "multiple_before", what_if.before.multiple->multiple);
        json_.end_object();
    }

    DossierContext context_;
    const CostEstimate& cost_;
    JsonWriter json_;
    report::CostJson costs_;
};

}  // namespace

void write_price_records(const DossierContext& context, const CostEstimate& cost, const WhatIf* what_if,
                         std::string& out) {
    for (const CostLine& line : cost.lines) {
        PriceRecords(context, cost, out).write_line(line);
        out += '\n';
    }
    PriceRecords(context, cost, out).write_end(what_if);
    out += '\n';
}

void write_comparison_records(std::span<const PricedSample> samples, std::string& out) {
    if (samples.size() < 2) return;
    for (const report::SellerSamples& seller : report::by_seller(samples)) {
        JsonWriter json(out);
        json.begin_object();
        json.member("seller", seller.seller);
        json.key("samples");
        json.begin_array();
        for (const PricedSample* const sample : seller.samples) {
            const CostEstimate& cost = sample->cost;
            json.begin_object();
            json.member("dossier", std::string_view(sample->id));
            json.optional_member("currency", cost.currency);
            if (cost.on_record) write_amount(json, "total", cost.total);
            if (cost.multiple) {
                json.member("net", rounded(cost.multiple->net));
                write_amount(json, "multiple", cost.multiple->multiple);
                json.key("floor_only");
                json.value_bool(cost.multiple->floor_only);
            }
            json.end_object();
        }
        json.end_array();
        json.end_object();
        out += '\n';
    }
}

}  // namespace v0
}  // namespace grainside
