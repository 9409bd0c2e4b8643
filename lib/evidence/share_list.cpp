#include "evidence/share_list.h"

#include <fmt/format.h>

#include <cmath>

#include "evidence/quantity_reader.h"

namespace grainside::evidence {

using document::Node;

namespace {

constexpr double kBeyondDoubt = 3;  // standard uncertainties

}  // namespace

ShareList read_share_list(const EntryReader& reader, Node node, const std::function<bool(Node)>& is_known) {
    ShareList shares;
    if (!node.is_mapping()) {
        reader.error(node, "wrong-type", "expected a mapping of names to shares",
                     "as in `{Zn: 95.2 \xC2\xB1 0.5 %, Al: 4.1 \xC2\xB1 0.3 %}`");
        return shares;
    }
    double sum = 0;
    double variance = 0;
    bool any = false;
    for (Node one : node) {
        any = true;
        const bool known = is_known(one);
        const auto measured = read_measured(reader, one, measure::Dimension::share);
        if (!known || !measured) continue;
        sum += measured->value;
        variance += measured->u * measured->u;
        shares.emplace_back(one.key(), *measured);
    }
    if (!any) reader.error(node, "empty-reading", "this list is empty", "name what was found, or leave it out");
    // The sum of decimals may be off in its last digits.
    if (sum - kBeyondDoubt * std::sqrt(variance) > kWhole + kPercentSlack) {
        reader.error(node, "above-100", fmt::format("the shares add up to {:.4g} %", sum),
                     "by more than their uncertainties explain");
    }
    return shares;
}

}  // namespace grainside::evidence
