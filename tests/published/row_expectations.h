// What a test expects of the rows of one file.
#ifndef GRAINSIDE_TESTS_PUBLISHED_ROW_EXPECTATIONS_H
#define GRAINSIDE_TESTS_PUBLISHED_ROW_EXPECTATIONS_H

#include <gtest/gtest.h>

#include <cstddef>
#include <span>
#include <string>
#include <vector>

#include "known_differences.h"
#include "published_rows.h"

namespace grainside::published {

// The rows of corpus/published/`file`; none where it cannot be read, which expect_file() tells. GoogleTest asks for
// rows before any test runs, when nothing can fail yet.
std::vector<Row> rows_of(const std::string& file);

// That `file` is readable, holds `count` rows, and that every known difference is one of them and named once.
void expect_file(const std::string& file, std::size_t count, std::span<const KnownDifference> known);

// That the default book agrees with `row` or, for a row in `known`, still differs from it.
void expect_agreement(const Row& row, std::span<const KnownDifference> known);

inline std::string name_of_row(const testing::TestParamInfo<Row>& info) {
    return info.param.name;
}

}  // namespace grainside::published

#endif  // GRAINSIDE_TESTS_PUBLISHED_ROW_EXPECTATIONS_H
