// Records in which one thing stands 100,000 times: checking them comes to an end, in memory in proportion.
//
// Ratios of times fail on a busy machine, so none is taken. Each record is checked in a child process whose processor
// time is limited: what is linear needs a small part of it, what is quadratic in 100,000 claims takes 10^10 steps.
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <string>
#include <string_view>

#include "grainside/checker.h"
#include "support/allocations.h"

namespace grainside {
namespace {

constexpr std::size_t kTimes = 100'000;

struct Row {
    std::string_view name;
    std::string_view first, repeated, last;
};

constexpr Row kRows[] = {
    {"sentences", "", "PU leather. ", ""},
    {"one_sentence", "", "leather, ", ""},
    {"one_phrase", "", "leather ", ""},
    {"conjunctions", "", "leather and ", ""},
    {"lines_of_labels", "", "Lining: cotton\n", ""},
    {"shares", "", "1% cotton, ", ""},
    {"negators", "", "no leather, ", "or cotton"},
    {"comparisons", "", "like leather or ", ""},
    {"disagreeing_origins", "Made in Italy. ", "Made in China. ", ""},
    {"modifiers", "", "genuine ", "leather"},
    {"table", "", "| Lining | cotton ", "|"},
    {"open_brackets", "", "(leather ", ""},
    {"teaching", "leather ", "means ", ""},
    {"accessories", "", "dust bag and ", ""},
    {"numbers_in_a_phrase", "", "1.2-1.4 mm ", "leather"},
    {"statements_in_a_phrase", "", "waterproof ", ""},
    {"materials_in_a_phrase", "", "leather cotton ", ""},
    {"shares_in_a_phrase", "", "30% cotton ", ""},
    {"sold_separately", "", "not included ", ""},
    {"labels_in_a_line", "", "lining: ", ""},
    {"tied_to_a_sale", "leather ", "and not included ", ""},
    {"supplied", "", "supplied with a leather ", ""},
    {"shares_of_two_parts", "", "9% cotton lining, 9% silk handle, 9% goo, ", ""},
    {"praise", "", "premium leather. ", ""},
    {"brackets_behind_a_sale", "", "not included ( ", ""},
    {"lists_before_a_sale", "", "leather and ", "not included"},
    {"accessory_brackets", "", "tissue ( ", ""},
    {"colour_names", "the colour ", "is called ", ""},
    {"other_goods", "", "leather sofa ", ""},
    {"copulas", "", "leather is ", ""},
    {"tannage_labels", "", "tannage: chrome ", ""},
    {"with_and_without", "", "with no leather ", ""},
};

const RuleBook& book() {
    static const RuleBook built_in = std::move(RuleBook::built_in()).value();
    return built_in;
}

std::string repeated(const Row& row, std::size_t times) {
    std::string text(row.first);
    for (std::size_t i = 0; i < times; ++i) text += row.repeated;
    return text += row.last;
}

Listing listing_of(const std::string& text) {
    Listing listing;
    listing.fields.push_back({"description", text});
    return listing;
}

enum Outcome : int {
    fine = 0,
    too_much_memory = 1,
    allocates_again = 2,
    outside_the_text = 3,
    did_not_end = 4,
    crashed = 5
};

std::size_t bytes_for(const Listing& listing) {
    Checker checker(book());
    const auto before = support::allocations();
    checker.check(listing);
    return support::allocations().bytes - before.bytes;
}

Outcome check_as_child(const Row& row) {
    const std::string tenth = repeated(row, kTimes / 10);
    const std::string text = repeated(row, kTimes);
    const Listing listing = listing_of(text);
    Checker checker(book());
    const auto start = support::allocations();
    checker.check(listing);
    const auto grown = support::allocations();
    // Buffers that double may take twice what they hold, and the sum of all sizes on the way is twice that again.
    if (grown.bytes - start.bytes > 40 * bytes_for(listing_of(tenth))) return too_much_memory;
    const auto before = support::allocations();
    const CheckResult& result = checker.check(listing);
    if (support::allocations().count != before.count) return allocates_again;
    for (const Claim& claim : result.mentions) {
        if (claim.start >= claim.end || claim.end > text.size()) return outside_the_text;
    }
    return fine;
}

// In a child that may use `seconds` of processor time.
Outcome check(const Row& row, rlim_t seconds) {
    book();  // loaded once, in the parent
    const pid_t child = ::fork();
    if (child == 0) {
        const rlimit time{seconds, seconds + 1};
        ::setrlimit(RLIMIT_CPU, &time);
        const rlimit no_core{0, 0};
        ::setrlimit(RLIMIT_CORE, &no_core);
        ::_exit(check_as_child(row));
    }
    int status = 0;
    EXPECT_EQ(::waitpid(child, &status, 0), child);
    if (WIFEXITED(status)) return static_cast<Outcome>(WEXITSTATUS(status));
    return WIFSIGNALED(status) && WTERMSIG(status) == SIGXCPU ? did_not_end : crashed;
}

std::string name_of_row(const testing::TestParamInfo<Row>& info) {
    return std::string(info.param.name);
}

class HostileRecords : public testing::TestWithParam<Row> {};

TEST_P(HostileRecords, ComeToAnEndInMemoryInProportion) {
    EXPECT_EQ(check(GetParam(), 20), fine);
}

INSTANTIATE_TEST_SUITE_P(Rows, HostileRecords, testing::ValuesIn(kRows), name_of_row);

TEST(HostileRecords, HaveAsManyClaimsAndFindingsAsTheySay) {
    Checker checker(book());
    const std::string text = repeated(kRows[0], kTimes);
    const CheckResult& result = checker.check(listing_of(text));
    EXPECT_EQ(result.claim_count, kTimes);
    EXPECT_EQ(result.findings.size(), kTimes);  // design.md 10: reported each time they stand
}

}  // namespace
}  // namespace grainside
