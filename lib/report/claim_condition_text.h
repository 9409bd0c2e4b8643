// What one condition asks of a claim, as a noun phrase. Thread-safe.
#ifndef GRAINSIDE_REPORT_CLAIM_CONDITION_TEXT_H
#define GRAINSIDE_REPORT_CLAIM_CONDITION_TEXT_H

#include <string>
#include <string_view>
#include <vector>

#include "document/document.h"
#include "report/mark_text.h"
#include "rules/book_data.h"

namespace grainside::report {

// "a material or species claim that says leather or a kind of it, of the main part, without 'faux', 'imitation' or the
// like before it". `article` stands in front: "a", or "another" of a condition on a second claim, whose keys of reach
// are told here too.
std::string claim_condition_text(const rules::BookData& book, const MarkTexts& marks, document::Node condition,
                                 std::string_view article);

// The texts of a node that is one text or a list of them.
std::vector<std::string_view> texts_of(document::Node node);

// "a", "a or b", "a, b or c".
std::string listed(const std::vector<std::string>& texts, std::string_view conjunction);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_CLAIM_CONDITION_TEXT_H
