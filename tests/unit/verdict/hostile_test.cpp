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
#include "support/hostile_texts.h"

namespace grainside {
namespace {

constexpr std::size_t kTimes = 100'000;

using support::HostileText;
using support::kHostileTexts;

const RuleBook& book() {
    static const RuleBook built_in = std::move(RuleBook::built_in()).value();
    return built_in;
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

Outcome check_as_child(const HostileText& row) {
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
Outcome check(const HostileText& row, rlim_t seconds) {
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

std::string name_of_row(const testing::TestParamInfo<HostileText>& info) {
    return std::string(info.param.name);
}

class HostileRecords : public testing::TestWithParam<HostileText> {};

TEST_P(HostileRecords, ComeToAnEndInMemoryInProportion) {
    EXPECT_EQ(check(GetParam(), 20), fine);
}

INSTANTIATE_TEST_SUITE_P(Rows, HostileRecords, testing::ValuesIn(kHostileTexts), name_of_row);

TEST(HostileRecords, HaveAsManyClaimsAndFindingsAsTheySay) {
    Checker checker(book());
    const std::string text = repeated(kHostileTexts[0], kTimes);
    const CheckResult& result = checker.check(listing_of(text));
    EXPECT_EQ(result.claim_count, kTimes);
    EXPECT_EQ(result.findings.size(), kTimes);  // design.md 10: reported each time they stand
}

}  // namespace
}  // namespace grainside
