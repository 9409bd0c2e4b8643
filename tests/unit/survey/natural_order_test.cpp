// Names with numbers in them, in the order in which people count.
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "survey/natural_order.h"

namespace grainside::survey {
namespace {

TEST(NaturalOrder, CountsNumbersAndIsTotal) {
    const std::vector<std::string> kInOrder = {"",
                                               "2",
                                               "10",
                                               "099",
                                               "99",
                                               "100",
                                               "99999999999999999999998",
                                               "99999999999999999999999",
                                               "a",
                                               "a.json:2",
                                               "a.json:10",
                                               "a2.json:1",
                                               "a10.json:1",
                                               "b",
                                               "b-",
                                               "b-007",
                                               "b-07",
                                               "b-7",
                                               "b-7a",
                                               "b-8",
                                               "ba",
                                               "\xC3\xA9"};
    for (std::size_t one = 0; one < kInOrder.size(); ++one) {
        for (std::size_t other = 0; other < kInOrder.size(); ++other) {
            EXPECT_EQ(natural_order(kInOrder[one], kInOrder[other]), one <=> other)
                << kInOrder[one] << " and " << kInOrder[other];
        }
    }
}

}  // namespace
}  // namespace grainside::survey
