// What would support an unsupported claim, in records and views. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_DEMAND_TEXT_H
#define GRAINSIDE_REPORT_DEMAND_TEXT_H

#include <string>
#include <vector>

#include "grainside/finding.h"
#include "grainside/rule_book.h"

namespace grainside::report {

// "ISO 811, a water column of 1,500 mm or more (textile; from memory)"
std::string demand_text(const RuleBook& book, const Demand& demand);

// One of them a demand for a claim of `says`; none for a grade other than unsupported.
std::vector<std::string> demand_texts(const RuleBook& book, ConceptId says, Grade grade);

// "would support it: ISO 811, ...; or IEC 60529, ..."; empty where nothing is demanded or the grade is another.
std::string demands_line(const RuleBook& book, ConceptId says, Grade grade);

// ,"would_support":[{"of"?,"standard","number","sources","from_memory"?}]; nothing where nothing is demanded.
void append_demands_member(std::string& out, const RuleBook& book, ConceptId says);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_DEMAND_TEXT_H
