// In a program of its own: the counting operator new does not get along with that of a library that other tests use.
#include <gtest/gtest.h>

#include <string>

#include "grainside/report.h"
#include "small_book.h"
#include "support/allocations.h"

namespace grainside::report {
namespace {

// A wording to use instead is made by the checker; all else is copied from what was made once.
TEST(RecordWriterMemory, AsksForNoneOnceTheOutputHasGrown) {
    Checker checker(small_book());
    const RecordWriter writer(small_book());
    const Listing listing = listing_of({{"name", "Cotton, silk \x1B \xFF"}, {"material", "Linen, cotton"}});
    const CheckResult& result = checker.check(listing);
    ASSERT_EQ(result.findings.size(), 3U);
    std::string out;
    for (int round = 0; round < 2; ++round) {
        out.clear();
        const std::size_t before = support::allocations().count;
        writer.write_findings(listing, result, checker, out);
        writer.write_claims(listing, result, out);
        if (round == 1) {
            EXPECT_EQ(support::allocations().count - before, 0U);
        }
    }
}

}  // namespace
}  // namespace grainside::report
