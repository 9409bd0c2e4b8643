// The rule book of these tests: the concepts and parts of the default book, and four rules of its own, whose texts
// stand in tests/unit/report/book.
#ifndef GRAINSIDE_TESTS_REPORT_SMALL_BOOK_H
#define GRAINSIDE_TESTS_REPORT_SMALL_BOOK_H

#include <string>
#include <string_view>
#include <vector>

#include "grainside/checker.h"
#include "grainside/report.h"

namespace grainside::report {

// Loaded once.
const RuleBook& small_book();

// One of its rules holds in some markets only, the United States among them.
CheckOptions us_options();

// REQUIRES: the small book has a rule of that id.
std::uint32_t rule_index(std::string_view id);

// A listing "l1" whose fields own nothing.
Listing listing_of(std::vector<Field> fields, std::string_view id = "l1");

}  // namespace grainside::report

#endif  // GRAINSIDE_TESTS_REPORT_SMALL_BOOK_H
