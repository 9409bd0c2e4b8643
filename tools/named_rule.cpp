#include "named_rule.h"

#include <fmt/format.h>

#include <string_view>
#include <vector>

#include "document/faults.h"

namespace grainside::tools {

bool report_unknown_rule(const RuleBook& book, const std::string& id, Diagnostics& diagnostics) {
    if (book.find_rule(id) != nullptr) return false;
    std::vector<std::string_view> names;
    for (const RuleInfo& rule : book.rules()) names.push_back(rule.id);
    const std::string_view near = document::nearest(id, names);
    diagnostics.error("there is no rule '" + id + "'",
                      near.empty() ? "`grainside rules list` shows all" : fmt::format("did you mean `{}`?", near));
    return true;
}

}  // namespace grainside::tools
