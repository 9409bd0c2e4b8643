// Reference tables of the measurement checks: comma-separated values without quotes, a header line first.
#ifndef GRAINSIDE_TESTS_PUBLISHED_MEASUREMENT_CSV_FILE_H
#define GRAINSIDE_TESTS_PUBLISHED_MEASUREMENT_CSV_FILE_H

#include <string>
#include <vector>

namespace grainside::published {

using CsvRow = std::vector<std::string>;

// The rows after the header. A file that cannot be opened, another header or a row of another length fails the running
// test and gives no rows.
std::vector<CsvRow> read_csv(const std::string& path, const std::string& header);

// The whole of the text as a number, "inf" too; anything else fails the running test and gives NaN.
double number_in(const std::string& text);

}  // namespace grainside::published

#endif  // GRAINSIDE_TESTS_PUBLISHED_MEASUREMENT_CSV_FILE_H
