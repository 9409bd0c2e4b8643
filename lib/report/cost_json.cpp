#include "report/cost_json.h"

#include <string>

#include "report/rounded.h"

namespace grainside::report {
namespace {

template <typename Items, typename Write>
void list(JsonWriter& json, std::string_view key, const Items& items, const Write& write) {
    json.key(key);
    json.begin_array();
    for (const auto& item : items) {
        json.begin_object();
        write(item);
        json.end_object();
    }
    json.end_array();
}

}  // namespace

void write_amount(JsonWriter& json, std::string_view key, const CostAmount& amount) {
    json.key(key);
    json.begin_object();
    json.member("value", rounded(amount.value));
    json.member("u", rounded(amount.u));
    json.member("low", rounded(amount.low));
    json.member("high", rounded(amount.high));
    json.end_object();
}

void CostJson::write_line(const CostLine& line, std::string_view currency) {
    json_.member("group", name_of(line.group));
    json_.member("item", std::string_view(line.item));
    json_.optional_member("part", line.part);
    json_.member("currency", currency);
    write_amount(json_, "amount", line.amount);
    json_.member("basis", std::string_view(line.basis));
    write_usual_list("usual", line.usual);
    if (line.line > 0) json_.member("line", std::uint64_t{line.line});
}

void CostJson::write_sums(const CostEstimate& cost) {
    write_amount(json_, "materials", cost.materials);
    write_amount(json_, "making", cost.making);
    write_amount(json_, "maker_price", cost.maker_price);
    write_amount(json_, "total", cost.total);
    write_amount(json_, "by_propagation", cost.by_propagation);
    json_.member("tolerance", rounded(cost.tolerance));
    json_.key("methods_agree");
    json_.value_bool(cost.methods_agree);
    json_.member("trials", std::uint64_t{cost.trials});
    json_.optional_member("duty_base", cost.duty_base);
    list(json_, "drivers", cost.drivers, [&](const CostDriver& driver) {
        json_.member("item", std::string_view(driver.item));
        json_.member("input", std::string_view(driver.input));
        json_.member("share", rounded(driver.share));
    });
    list(json_, "gaps", cost.gaps, [&](const CostGap& gap) {
        json_.member("what", std::string_view(gap.what));
        write_usual_list("usual", gap.usual);
    });
    list(json_, "unusual", cost.unusual, [&](const UnusualCost& one) {
        json_.member("item", std::string_view(one.item));
        json_.member("input", std::string_view(one.input));
        json_.member("value", std::string_view(one.value));
        json_.key("usual");
        write_usual(one.usual);
    });
    if (cost.multiple) write_price(*cost.multiple);
    write_usual_list("usual_multiples", cost.usual_multiples);
    json_.key("remarks");
    json_.begin_array();
    for (const std::string& remark : cost.remarks) json_.value(std::string_view(remark));
    json_.end_array();
}

void CostJson::write_price(const PriceMultiple& price) {
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

void CostJson::write_usual(const UsualRange& usual) {
    json_.begin_object();
    json_.member("id", std::string_view(usual.id));
    json_.member("title", std::string_view(usual.title));
    json_.member("range", std::string_view(usual.range));
    json_.key("sources");
    json_.begin_array();
    for (const std::uint32_t one : usual.sources) json_.value(source_id_(one));
    json_.end_array();
    json_.end_object();
}

void CostJson::write_usual_list(std::string_view key, const std::vector<UsualRange>& ranges) {
    json_.key(key);
    json_.begin_array();
    for (const UsualRange& one : ranges) write_usual(one);
    json_.end_array();
}

}  // namespace grainside::report
