// Concessions in records and views. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_CONCESSION_TEXT_H
#define GRAINSIDE_REPORT_CONCESSION_TEXT_H

#include <cstddef>
#include <string>
#include <string_view>

#include "grainside/concessions.h"

namespace grainside::report {

// The concession that meets the finding or verdict `at`, in force or not; nullptr where there is none, and for a
// `conceded` of nullptr.
const Concession* concession_of(const Conceded* conceded, std::size_t at);

// ,"concession":{"reason","owner","until"}; of one that ran out "expired_concession"; nothing where there is none.
void append_concession_member(std::string& out, const Conceded* conceded, std::size_t at);

// The label and the text of a view's line: "until 2026-12-31 by packaging: the old labels are used up first".
std::string_view concession_label(const Conceded& conceded, std::size_t at);
std::string concession_line(const Conceded& conceded, std::size_t at);

// How many findings or verdicts out of `all` count; all of them for nullptr.
std::size_t counting(const Conceded* conceded, std::size_t all);

// "; 2 conceded"; nothing where none is.
void append_conceded_count(std::string& out, std::size_t conceded);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_CONCESSION_TEXT_H
