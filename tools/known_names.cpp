#include "known_names.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <vector>

#include "document/faults.h"

namespace grainside::tools {
namespace {

bool is_known_name(std::string_view what, const std::string& name, const std::vector<std::string_view>& names,
                   std::string_view lists_all, Diagnostics& diagnostics) {
    if (std::find(names.begin(), names.end(), name) != names.end()) return true;
    const std::string_view near = document::nearest(name, names);
    diagnostics.error(fmt::format("there is no {} '{}'", what, name), near.empty()
                                                                          ? fmt::format("`{}` shows all", lists_all)
                                                                          : fmt::format("did you mean `{}`?", near));
    return false;
}

}  // namespace

bool is_known_rule(const RuleBook& book, const std::string& id, Diagnostics& diagnostics) {
    std::vector<std::string_view> names;
    for (const RuleInfo& rule : book.rules()) names.push_back(rule.id);
    return is_known_name("rule", id, names, "grainside rules list", diagnostics);
}

bool is_known_group(const RuleBook& book, const std::string& group, Diagnostics& diagnostics) {
    std::vector<std::string_view> names;
    for (const RuleInfo& rule : book.rules()) names.push_back(rule.group);
    return is_known_name("group of rules", group, names, "grainside rules list", diagnostics);
}

bool is_known_source(const RuleBook& book, const std::string& id, Diagnostics& diagnostics) {
    std::vector<std::string_view> names;
    for (const SourceInfo& source : book.sources()) names.push_back(source.id);
    return is_known_name("source", id, names, "grainside sources", diagnostics);
}

}  // namespace grainside::tools
