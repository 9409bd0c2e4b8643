#include "evidence/day_check.h"

#include <fmt/format.h>

namespace grainside::evidence {

using document::Node;

std::string DayCheck::read(Node entry, std::string_view key) const {
    const Node node = entry.find(key);
    if (!node.exists()) return {};
    const auto day = read_date(reader_.document(), node, reader_.faults());
    if (!day) return {};
    if (!today_.empty() && *day > today_) {
        reader_.error(node, "future-date", fmt::format("{} lies in the future; today is {}", *day, today_),
                      "write the day on which it was done");
    } else if (*day < earliest_) {
        reader_.faults().warning(reader_.document(), node, "early-date",
                                 fmt::format("{} is before {}, earlier than dossiers are about", *day, earliest_),
                                 "is the year right?");
    }
    return std::string(*day);
}

std::string DayCheck::read_after_purchase(Node entry, std::string_view key) const {
    std::string day = read(entry, key);
    if (!day.empty() && day < bought_) {
        reader_.faults().warning(reader_.document(), entry.find(key), "before-purchase",
                                 fmt::format("{} is before the purchase on {}", day, bought_),
                                 "is this the sample that was bought?");
    }
    return day;
}

}  // namespace grainside::evidence
