// What a reader gave, in one line a listing and one line an issue, so that a table can hold it.
#ifndef GRAINSIDE_TESTS_UNIT_LISTING_READING_H
#define GRAINSIDE_TESTS_UNIT_LISTING_READING_H

#include <gtest/gtest.h>

#include <ostream>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/listing_reader.h"

namespace grainside::testing_listing {

// "RECORD@LINE ID [LANGUAGE REGION] FIELD='TEXT' ..."; the brackets only where something is stated. Line feeds, NUL and
// the like are written as \n and \xNN.
std::string dump(const Listing& listing);
// "LINE:COLUMN error CODE"
std::string dump(const Issue& issue);

// All that comes, listings and issues in the order in which `next` gives them, a line each: issues stand before the
// listing of the same call.
std::string read_all(ListingReader& reader);
std::string read_memory(std::string_view bytes, InputFormat format);

// Opens what `descriptor` is, through its path under /dev/fd.
ListingReader open_descriptor(int descriptor, InputFormat format);

struct Row {
    std::string_view name;
    std::string_view input;
    std::string_view want;
};
inline std::string row_name(const testing::TestParamInfo<Row>& info) {
    return std::string(info.param.name);
}
inline void PrintTo(const Row& row, std::ostream* out) {
    *out << row.name;
}

}  // namespace grainside::testing_listing

#endif  // GRAINSIDE_TESTS_UNIT_LISTING_READING_H
