// Memory that runs out, at each piece that is asked for: std::bad_alloc comes out, nothing else does, and what has seen
// it works on as if it had not.
//
// Pieces are counted of operator new, not of malloc: libraries in C have their own ways, and tests/cli takes the memory
// of the whole process away.
#include <gtest/gtest.h>

#include <new>
#include <ostream>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/checker.h"
#include "grainside/dossier_report.h"
#include "grainside/judge.h"
#include "grainside/listing_reader.h"
#include "grainside/report.h"
#include "grainside/reword.h"
#include "grainside/sarif.h"
#include "grainside/survey.h"
#include "support/allocations.h"
#include "support/built_in_evidence.h"

namespace grainside {
namespace {

const RuleBook& book() {
    return support::built_in_book();
}

const Listing& listing() {
    static const Listing one = [] {
        Listing made;
        made.id = "pouch";
        made.fields = {{"name", "Genuine PU leather pouch, waterproof"},
                       {"description",
                        "Made of premium vegan leather with an alligator print and lined with 60 % cotton. "
                        "Full grain leather strap, 1.2-1.4 mm. Is the zip brass? Yes. Eco-friendly!"},
                       {"material", "split leather"},
                       {"additionalProperty.Lining", "suede"}};
        return made;
    }();
    return one;
}

std::string records_of(Checker& checker) {
    std::string out;
    const RecordWriter writer(book());
    const CheckResult& result = checker.check(listing());
    writer.write_claims(listing(), result, out);
    writer.write_findings(listing(), result, checker, out);
    write_view(book(), listing(), result, checker, {}, out);
    return out;
}

std::string check() {
    Checker checker(book());
    return records_of(checker);
}

std::string reword() {
    Reworder reworder(book());
    const Rewording& result = reworder.reword(listing());
    std::string out;
    for (const std::string& text : result.texts) out += text + '\n';
    return out;
}

std::string survey() {
    Checker checker(book());
    SurveyTally tally(book());
    tally.add(listing(), checker.check(listing()), checker);
    const Survey result = tally.survey();
    return std::to_string(tally.listings()) + ' ' + std::to_string(result.wordings.size()) + result.worst.front().id;
}

std::string read(std::string_view name, std::string_view bytes) {
    ListingReader reader = ListingReader::from_memory(std::string(name), bytes, {});
    Listing read;
    std::vector<Issue> issues;
    std::string out;
    while (reader.next(read, issues)) {
        out += read.id;
        for (const Field& field : read.fields) out += '\n' + std::string(field.name) + ": " + std::string(field.text);
    }
    for (const Issue& issue : issues) out += '\n' + issue.message;
    return out;
}

std::string judge() {
    const Dossier dossier = support::dossier_of(
        "sample: {what: Belt, price: 60 EUR}\n"
        "listing: {name: Genuine leather belt, description: 'Solid brass buckle, 3.5 mm.'}\n"
        "parts:\n  body:\n    readings:\n      - {method: species-laboratory, outcome: reads-pig}\n");
    Judge judge(book(), support::built_in_evidence());
    std::string out;
    write_judgement_records({book(), support::built_in_evidence(), dossier}, judge.judge(dossier), judge.options(),
                            out);
    return out;
}

std::string load() {
    const auto loaded = RuleBook::built_in();
    return loaded ? std::string(loaded.value().digest()) : "did not load";
}

struct Job {
    std::string_view name;
    std::string (*run)();
};

void PrintTo(const Job& job, std::ostream* out) {
    *out << job.name;
}

constexpr Job kJobs[] = {
    {"check", check},
    {"reword", reword},
    {"survey", survey},
    {"judge", judge},
    {"load_the_book", load},
    {"read_json_lines",
     [] {
         return read("x.jsonl",
                     "{\"name\":\"Bag\",\"material\":[\"cork\",\"leather\"],\"additionalProperty\":[{\"name\":"
                     "\"Lining\",\"value\":\"cotton\"}]}\n{\"name\": }\n{\"name\":\"Be\\u006ct\"}\n");
     }},
    {"read_json",
     [] {
         return read("x.json", "[{\"name\":\"Bag\",\"description\":\"<p>PU</p>\"},{\"name\":3},{\"name\":\"Belt\"}]");
     }},
    {"read_table", [] { return read("x.csv", "name,description,Lining\nBag,\"a \"\"big\"\" one\",silk\nBelt,,\n"); }},
    {"read_page",
     [] {
         return read(
             "x.html",
             "<html><title>Bag</title><body><main><h1>Bag</h1><table><tr><th>Material</th><td>PU &amp; cork</td>"
             "</tr></table><p>A bag</p><ul><li>one</ul></main><script type='application/ld+json'>{\"@type\":"
             "\"Product\",\"name\":\"Bag\"}</script></body></html>");
     }},
    {"read_markdown", [] { return read("x.md", "# Bag\n\n- leather\n- [cork](x)\n"); }},
};

std::string name_of_job(const testing::TestParamInfo<Job>& info) {
    return std::string(info.param.name);
}

// How many places are tried where there are many; all are where a job is small.
constexpr std::size_t kPlaces = 40;
constexpr std::size_t kFew = 400;

class OutOfMemory : public testing::TestWithParam<Job> {};

TEST_P(OutOfMemory, ComesOutAsBadAllocAndLeavesNothingBehind) {
    const auto run = GetParam().run;
    const std::string want = run();
    const std::size_t before = support::allocations().count;
    ASSERT_EQ(run(), want);
    const std::size_t all = support::allocations().count - before;
    ASSERT_GT(all, 0U);
    const std::size_t stride = all <= kFew ? 1 : all / kPlaces;
    std::size_t thrown = 0;
    std::size_t other = 0;  // an answer, though a piece was not given, must be the whole one
    for (std::size_t left = 0; left < all; left += stride) {
        std::string got;
        bool is_thrown = false;
        {
            const support::NoMemoryAfter none(left);
            try {
                got = run();
            } catch (const std::bad_alloc&) {
                is_thrown = true;
            }
        }
        if (is_thrown) {
            ++thrown;
        } else if (got != want) {
            ++other;
        }
    }
    EXPECT_EQ(other, 0U);
    EXPECT_GT(thrown, 0U);
    EXPECT_EQ(run(), want) << "nothing is left of it";
}

INSTANTIATE_TEST_SUITE_P(Jobs, OutOfMemory, testing::ValuesIn(kJobs), name_of_job);

// Its buffers are then half grown and half filled.
TEST(OutOfMemoryInAChecker, LeavesItFitForTheNextListing) {
    const std::string want = check();
    for (std::size_t left = 0;; ++left) {
        Checker checker(book());
        bool is_thrown = false;
        {
            const support::NoMemoryAfter none(left);
            try {
                checker.check(listing());
            } catch (const std::bad_alloc&) {
                is_thrown = true;
            }
        }
        ASSERT_EQ(records_of(checker), want) << "after " << left << " pieces";
        if (!is_thrown) break;
    }
}

}  // namespace
}  // namespace grainside
