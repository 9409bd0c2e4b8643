// What a sample costs as JSON Lines.
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/cost_report.h"
#include "report/json_writer.h"
#include "report/price_table.h"
#include "report/rounded.h"

namespace grainside {
inline namespace v0 {

using report::JsonWriter;
using report::rounded;

namespace {

void write_amount(JsonWriter& json, std::string_view key, const CostAmount& amount) {
    json.key(key);
    json.begin_object();
    json.member("value", rounded(amount.value));
    json.member("u", rounded(amount.u));
    json.member("low", rounded(amount.low));
    json.member("high", rounded(amount.high));
    json.end_object();
}

class PriceRecords {
public:
    PriceRecords(const DossierContext& context, const CostEstimate& cost, std::string& out)
        : context_(context), cost_(cost), json_(out) {}

    void write_line(const CostLine& line) {
        json_.begin_object();
        json_.member("dossier", context_.dossier.id());
        json_.member("group", name_of(line.group));
        json_.member("item", std::string_view(line.item));
        json_.optional_member("part", line.part);
        json_.member("currency", std::string_view(cost_.currency));
        write_amount(json_, "amount", line.amount);
        json_.member("basis", std::string_view(line.basis));
        write_usual("usual", line.usual);
        if (line.line > 0) json_.member("line", std::uint64_t{line.line});
        json_.end_object();
    }

    void write_end(const WhatIf* what_if) {
        json_.begin_object();
        json_.member("dossier", context_.dossier.id());
        json_.key("on_record");
        json_.value_bool(cost_.on_record);
        json_.optional_member("currency", cost_.currency);
        json_.member("lines", std::uint64_t{cost_.lines.size()});
        if (cost_.on_record) write_estimate();
        if (what_if != nullptr) write_what_if(*what_if);
        json_.member("rule_book", context_.book.digest());
        json_.end_object();
    }

private:
    void write_estimate() {
        write_amount(json_, "materials", cost_.materials);
        write_amount(json_, "making", cost_.making);
        write_amount(json_, "maker_price", cost_.maker_price);
        write_amount(json_, "total", cost_.total);
        write_amount(json_, "by_propagation", cost_.by_propagation);
        json_.member("tolerance", rounded(cost_.tolerance));
        json_.key("methods_agree");
        json_.value_bool(cost_.methods_agree);
        json_.member("trials", std::uint64_t{cost_.trials});
        json_.optional_member("duty_base", cost_.duty_base);
        list("drivers", cost_.drivers, [&](const CostDriver& driver) {
            json_.member("item", std::string_view(driver.item));
            json_.member("input", std::string_view(driver.input));
            json_.member("share", rounded(driver.share));
        });
        list("gaps", cost_.gaps, [&](const CostGap& gap) {
            json_.member("what", std::string_view(gap.what));
            write_usual("usual", gap.usual);
        });
        list("unusual", cost_.unusual, [&](const UnusualCost& one) {
            json_.member("item", std::string_view(one.item));
            json_.member("input", std::string_view(one.input));
            json_.member("value", std::string_view(one.value));
            json_.key("usual");
            write_range(one.usual);
        });
        if (cost_.multiple) write_price(*cost_.multiple);
        write_usual("usual_multiples", cost_.usual_multiples);
        json_.key("remarks");
        json_.begin_array();
        for (const std::string& remark : cost_.remarks) json_.value(std::string_view(remark));
        json_.end_array();
    }

    void write_price(const PriceMultiple& price) {
        json_.key("price");
        json_.begin_object();
        json_.member("paid", std::string_view(price.paid));
        json_.member("net", rounded(price.net));
        json_.optional_member("sales_tax", price.sales_tax);
        write_amount(json_, "multiple", price.multiple);
        json_.key("floor_only");
        json_.value_bool(price.floor_only);
        json_.end_object();
    }

    void write_what_if(const WhatIf& what_if) {
        json_.key("what_if");
        json_.begin_object();
        list("changes", what_if.changes, [&](const CostChange& change) {
            json_.member("item", std::string_view(change.item));
            json_.member("key", std::string_view(change.key));
            json_.member("value", std::string_view(change.value));
        });
        write_amount(json_, "making_before", what_if.before.making);
        write_amount(json_, "total_before", what_if.before.total);
        if (what_if.before.multiple) write_amount(json_, "multiple_before", what_if.before.multiple->multiple);
        json_.end_object();
    }

    template <typename Items, typename Write>
    void list(std::string_view key, const Items& items, Write write) {
        json_.key(key);
        json_.begin_array();
        for (const auto& item : items) {
            json_.begin_object();
            write(item);
            json_.end_object();
        }
        json_.end_array();
    }

    void write_range(const UsualRange& usual) {
        json_.begin_object();
        json_.member("id", std::string_view(usual.id));
        json_.member("title", std::string_view(usual.title));
        json_.member("range", std::string_view(usual.range));
        json_.key("sources");
        json_.begin_array();
        for (const std::uint32_t one : usual.sources) json_.value(std::string_view(context_.book.sources()[one].id));
        json_.end_array();
        json_.end_object();
    }

    void write_usual(std::string_view key, const std::vector<UsualRange>& usual) {
        json_.key(key);
        json_.begin_array();
        for (const UsualRange& one : usual) write_range(one);
        json_.end_array();
    }

    DossierContext context_;
    const CostEstimate& cost_;
    JsonWriter json_;
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
