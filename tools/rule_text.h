// Rules as text for people and as records. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_TOOLS_RULE_TEXT_H
#define GRAINSIDE_TOOLS_RULE_TEXT_H

#include <cstddef>
#include <span>
#include <string>

#include "grainside/rule_book.h"

namespace grainside::tools {

// One rule a line: id, group, grade, markets, title.
void append_rule_table(std::span<const RuleInfo* const> rules, std::string& out);

// Everything of one rule, wrapped to `width` cells.
void append_rule_text(const RuleBook& book, const RuleInfo& rule, const std::string& folder, std::size_t width,
                      std::string& out);

enum class RuleDetail {
    summary,     // sources as ids, no proof
    everything,  // sources with their texts, the condition in words, and the proof
};
void append_rule_record(const RuleBook& book, const RuleInfo& rule, const std::string& folder, RuleDetail detail,
                        std::string& out);

// A rule's file as one would open it from here; `folder` is that of --rules, empty for the built-in book.
std::string rule_path(const std::string& folder, const std::string& file);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_RULE_TEXT_H
