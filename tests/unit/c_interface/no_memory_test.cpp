// Memory that runs out, at pieces all over each call: the C functions give a status, leave NULL behind, and what was
// asked works on afterwards. No exception comes out: one would end the program.
#include <gtest/gtest.h>

#include <cstddef>
#include <functional>
#include <memory>
#include <string_view>

#include "grainside/grainside_c.h"
#include "support/allocations.h"

namespace grainside {
namespace {

// Frees through the function of its name, whichever way a test ends.
template <typename T, void (*free_it)(T*)>
struct Freed {
    void operator()(T* handle) const { free_it(handle); }
};
using Book = std::unique_ptr<GrainsideBook, Freed<GrainsideBook, grainside_book_free>>;
using Checker = std::unique_ptr<GrainsideChecker, Freed<GrainsideChecker, grainside_checker_free>>;
using Judge = std::unique_ptr<GrainsideJudge, Freed<GrainsideJudge, grainside_judge_free>>;

const GrainsideBook* book() {
    static const Book one([] {
        GrainsideBook* made = nullptr;
        EXPECT_EQ(grainside_book_built_in(&made, nullptr), grainside_ok);
        return made;
    }());
    return one.get();
}

// The first places are tried one by one, and about so many of the others.
constexpr std::size_t kFirst = 40;
constexpr std::size_t kOthers = 15;

// `call` with memory that ends after 0, 1, 2 ... pieces. It gives `well` or says that there is none.
std::size_t times_without_memory(GrainsideStatus well, const std::function<GrainsideStatus()>& call) {
    const std::size_t before = support::allocations().count;
    EXPECT_EQ(call(), well);
    const std::size_t all = support::allocations().count - before;
    std::size_t told = 0;
    const std::size_t stride = all / kOthers + 1;
    for (std::size_t left = 0; left < all; left += left < kFirst ? 1 : stride) {
        const support::NoMemoryAfter none(left);
        const GrainsideStatus status = call();
        if (status == grainside_no_memory) ++told;
        if (status != grainside_no_memory && status != well) ADD_FAILURE() << left << ": " << status;
    }
    EXPECT_EQ(call(), well) << "nothing is left of it";
    return told;
}

TEST(NoMemory, IsToldWhereABookIsLoaded) {
    EXPECT_GT(times_without_memory(grainside_ok,
                                   [] {
                                       GrainsideBook* made = nullptr;
                                       const GrainsideStatus status = grainside_book_built_in(&made, nullptr);
                                       EXPECT_EQ(made != nullptr, status == grainside_ok);
                                       grainside_book_free(made);
                                       return status;
                                   }),
              10U);
    EXPECT_GT(times_without_memory(grainside_faults,
                                   [] {
                                       GrainsideBook* made = nullptr;
                                       GrainsideIssues* issues = nullptr;
                                       const GrainsideStatus status =
                                           grainside_book_load(grainside_text("no/such"), &made, &issues);
                                       EXPECT_EQ(issues != nullptr, status == grainside_faults);
                                       grainside_issues_free(issues);
                                       return status;
                                   }),
              3U);
}

TEST(NoMemory, IsToldWhereAListingIsChecked) {
    const GrainsideField fields[] = {
        {grainside_text("name"), grainside_text("Genuine PU leather pouch, waterproof")},
        {grainside_text("description"), grainside_text("Premium vegan leather, lined with 60 % cotton.")}};
    const GrainsideListing listing = {grainside_text("p"), {}, {}, {}, fields, 2};
    EXPECT_GT(times_without_memory(grainside_ok,
                                   [&] {
                                       GrainsideChecker* made = nullptr;
                                       if (const GrainsideStatus status =
                                               grainside_checker_make(book(), nullptr, &made, nullptr);
                                           status != grainside_ok) {
                                           EXPECT_EQ(made, nullptr);
                                           return status;
                                       }
                                       const Checker checker(made);
                                       const GrainsideResult* result = nullptr;
                                       GrainsideText records{};
                                       GrainsideFinding finding{};
                                       GrainsideStatus status = grainside_check(made, &listing, &result);
                                       EXPECT_EQ(result != nullptr, status == grainside_ok);
                                       if (status == grainside_ok)
                                           status = grainside_result_finding(result, 0, &finding);
                                       if (status == grainside_ok)
                                           status = grainside_result_finding_records(result, &records);
                                       if (status == grainside_ok)
                                           status = grainside_result_claim_records(result, &records);
                                       return status;
                                   }),
              30U);
}

// The reader goes on with the next record; the checker is the same throughout.
TEST(NoMemory, IsToldWhereAListingIsRead) {
    GrainsideChecker* made = nullptr;
    ASSERT_EQ(grainside_checker_make(book(), nullptr, &made, nullptr), grainside_ok);
    const Checker checker(made);
    EXPECT_GT(times_without_memory(
                  grainside_end,
                  [&] {
                      GrainsideReader* reader = nullptr;
                      GrainsideStatus status = grainside_reader_of_bytes(
                          grainside_text("x.jsonl"),
                          grainside_text("{\"name\":\"PU leather bag\"}\n{\"name\": }\n{\"name\":\"Be\\u006ct\"}\n"),
                          grainside_format_automatic, &reader);
                      while (status == grainside_ok) {
                          const GrainsideResult* result = nullptr;
                          GrainsideIssues* issues = nullptr;
                          status = grainside_check_next(made, reader, &result, &issues);
                          grainside_issues_free(issues);
                      }
                      grainside_reader_free(reader);
                      return status;
                  }),
              8U);
}

TEST(NoMemory, IsToldWhereADossierIsJudged) {
    EXPECT_GT(times_without_memory(
                  grainside_ok,
                  [] {
                      GrainsideJudge* made = nullptr;
                      if (const GrainsideStatus status = grainside_judge_make(book(), nullptr, {}, &made, nullptr);
                          status != grainside_ok) {
                          EXPECT_EQ(made, nullptr);
                          return status;
                      }
                      const Judge judge(made);
                      const GrainsideJudgement* judgement = nullptr;
                      GrainsideIssues* issues = nullptr;
                      GrainsideText text{};
                      GrainsideStatus status = grainside_judge_bytes(
                          made, grainside_text("belt.yaml"),
                          grainside_text("sample: {what: Belt, price: 60 EUR}\n"
                                         "listing: {name: Genuine leather belt, description: 'Solid brass buckle.'}\n"
                                         "parts:\n  body:\n    readings:\n"
                                         "      - {method: species-laboratory, outcome: reads-pig}\n"),
                          grainside_text("."), &judgement, &issues);
                      grainside_issues_free(issues);
                      if (status == grainside_ok) status = grainside_judgement_records(judgement, &text);
                      if (status == grainside_ok) {
                          status = grainside_judgement_report(judgement, grainside_report_markdown, &text);
                      }
                      return status;
                  }),
              10U);
}

}  // namespace
}  // namespace grainside
