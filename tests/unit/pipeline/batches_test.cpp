// What batches give, put together, is what one ListingReader after the other gives.
#include "listing/listing_batches.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <fstream>
#include <mutex>
#include <string>
#include <string_view>
#include <thread>
#include <vector>

#include "grainside/source_place.h"
#include "support/temporary_folder.h"
#include "unit/listing/reading.h"

namespace grainside {
namespace {

using namespace std::string_literals;

// A listing with all that is known of it, and where its fields stand.
std::string whole_dump(const Listing& listing) {
    std::string out = testing_listing::dump(listing) + " <" + std::string(listing.seller) + ">";
    SourcePlaces places;
    for (std::size_t field = 0; field < listing.fields.size(); ++field) {
        const auto region = places.find(listing, field, 0, listing.fields[field].text.size());
        out += region ? " " + std::to_string(region->bytes.start) + "-" + std::to_string(region->bytes.end) + "=" +
                            std::to_string(region->from.line) + ":" + std::to_string(region->from.column)
                      : " nowhere";
    }
    return out + "\n";
}

std::string dump_all(const std::vector<Issue>& issues) {
    std::string out;
    for (const Issue& issue : issues) out += to_text(issue);
    return out;
}

std::string by_reader(ListingReader reader, std::uint64_t from_record = 1) {
    std::string out;
    Listing listing;
    std::vector<Issue> issues;
    while (reader.next(listing, issues)) {
        if (listing.record >= from_record) out += dump_all(issues) + whole_dump(listing);
        issues.clear();
    }
    return out + dump_all(issues);
}

std::string by_batches(ListingBatches batches) {
    std::string out;
    ListingBatch batch;
    BatchStep step;
    IssueRun run;
    std::vector<Issue> told;
    while (batches.take(batch)) {
        do {
            batch.next(step);
            run.add(step, told);
            out += dump_all(std::exchange(told, {}));
            if (step.kind == BatchStep::a_listing) out += whole_dump(step.listing);
        } while (step.kind != BatchStep::end_of_batch);
    }
    run.end(told);
    return out + dump_all(told);
}

// The lines of listings among those of issues.
std::string listing_lines(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const std::string_view line = text.substr(0, text.find('\n') + 1);
        const std::size_t digits = line.find_first_not_of("0123456789");
        if (digits != 0 && line.substr(digits).starts_with('@')) out += line;
        text.remove_prefix(line.size());
    }
    return out;
}

struct Row {
    std::string_view name;
    InputFormat format;
    std::string text;
};

std::string many_broken() {
    std::string text;
    for (int i = 0; i < 1100; ++i) text += i == 50 ? "{\"name\":\"a\"}\n" : "x\n";
    return text + "{\"name\":\"b\"}\n{\"name\":\"c\"}\n";
}

const Row kRows[] = {
    {"nothing", InputFormat::json_lines, ""},
    {"empty_lines", InputFormat::json_lines, "\n\n \t\r\n{\"name\":\"a\"}\n\r\n{\"name\":\"b\"}"},
    {"crlf", InputFormat::json_lines, "{\"name\":\"a\"}\r\n{\"sku\":\"s\",\"name\":\"b\"}\r\n"},
    {"marks", InputFormat::json_lines,
     "\xEF\xBB\xBF{\"name\":\"a\"}\n\xEF\xBB\xBF{\"name\":\"b\"}\n\xEF\xBB\xBF\n\xEF\xBB\xBF\xEF\xBB\xBF\n{\"name\":"
     "\"c\"}"},
    {"utf16", InputFormat::json_lines, "\xFF\xFE{\n}\n"},
    {"broken", InputFormat::json_lines, "{\"name\":\"a\"}\n{\"name\":}\n[1]\n{}\n{\"name\":\"b\",\"sku\":[1]}\n{"},
    {"graph", InputFormat::json_lines,
     R"({"@graph":[{"@type":"Product","name":"a"},{"@type":"Thing","name":"no"},{"name":"b"}]})"
     "\n{\"name\":\"c\"}\n"
     R"({"name":"d","x":"@graph"})"
     "\n{\"name\":\"e\"}\n"},
    {"graph_with_escapes", InputFormat::json_lines,
     R"({"\u0040graph":[{"name":"a"},{"name":"b"}]})"
     "\n"
     R"({"@\u0067raph":[{"name":"c"},{"name":"d"}]})"
     "\n"
     R"({"@gr\u0061ph":[{"name":"e"},{"name":"f"}]})"
     "\n{\"name\":\"g\"}\n"},
    {"empty_or_broken_graph", InputFormat::json_lines,
     "{\"@graph\":[]}\n{\"@graph\":[{\"name\":\"a\"},{}\n{\"@graph\":3,\"name\":\"b\"}\n{\"@graph\":[1,{\"name\":\"c\"}"
     "]}"
     "\n{\"name\":\"d\"}\n"},
    {"odd_bytes", InputFormat::json_lines, "{\"name\":\"\xFF\"}\n{\"name\":\"\\u00e9\\\"x\"}\n\0\n{\"name\":\"z\"}\n"s},
    {"offer", InputFormat::json_lines,
     "{\"name\":\"a\",\"offers\":{\"eligibleRegion\":\"FR\",\"seller\":{\"name\":\"S\"}},\"inLanguage\":\"fr\"}\n"},
    {"array", InputFormat::json,
     "[{\"name\":\"a\"},\n {\"name\": },\n {\"@graph\":[{\"name\":\"b\"},{\"name\":\"\\u00e9c\"}]},\n "
     "{\"name\":\"d\"}]"},
    {"one_object", InputFormat::json, "\xEF\xBB\xBF{\"name\":\"a\"}"},
    {"text", InputFormat::text, "Genuine leather.\nOr not."},
    {"markdown", InputFormat::markdown, "# Tote\n\nLeather.\n"},
    {"many_broken", InputFormat::json_lines, many_broken()},
};

class BatchesTest : public testing::TestWithParam<Row> {
protected:
    static std::vector<std::size_t> sizes() {
        std::vector<std::size_t> sizes;
        const std::size_t size = GetParam().text.size();
        for (std::size_t bytes = 1; bytes <= size + 1; bytes += size > 1000 ? 97 : 1) sizes.push_back(bytes);
        sizes.push_back(BatchOptions().batch_bytes);
        return sizes;
    }
};

TEST_P(BatchesTest, AtEverySizeTheyGiveWhatTheReaderGives) {
    const Row& row = GetParam();
    const ReadOptions reading{.format = row.format};
    const std::string want = by_reader(ListingReader::from_memory("f", row.text, reading));
    for (const std::size_t bytes : sizes()) {
        const BatchOptions options{.reading = reading, .batch_bytes = bytes};
        ASSERT_EQ(by_batches(ListingBatches::from_memory("f", row.text, options)), want) << bytes;
    }
}

TEST_P(BatchesTest, FromFilesLargerAndSmallerThanABatchToo) {
    const Row& row = GetParam();
    const support::TemporaryFolder folder;
    const std::string path = (folder.path() / "f").string();
    std::ofstream(path, std::ios::binary) << row.text;
    const std::string missing = (folder.path() / "missing").string();
    const ReadOptions reading{.format = row.format};
    std::string want;
    for (const std::string& input : {path, path, missing, path}) {
        auto reader = ListingReader::open(input, reading);
        want += reader ? by_reader(std::move(reader).value()) : dump_all(reader.issues());
    }
    for (const std::size_t bytes : {std::size_t{1}, row.text.size() / 2 + 1, std::size_t{1} << 20}) {
        const BatchOptions options{.reading = reading, .batch_bytes = bytes};
        EXPECT_EQ(by_batches(ListingBatches({path, path, missing, path}, options)), want) << bytes;
    }
}

TEST_P(BatchesTest, FromARecordOnTheyGiveTheRest) {
    const Row& row = GetParam();
    const ReadOptions reading{.format = row.format};
    for (std::uint64_t from = 1; from <= 9; ++from) {
        const std::string all = by_reader(ListingReader::from_memory("f", row.text, reading), from);
        for (const std::size_t bytes : sizes()) {
            const BatchOptions options{.reading = reading, .batch_bytes = bytes, .from_record = from};
            const std::string rest = by_batches(ListingBatches::from_memory("f", row.text, options));
            EXPECT_EQ(listing_lines(rest), listing_lines(all)) << from << " in " << bytes;
            // Issues before the first of these listings may be about records that are passed over.
            if (row.name == "many_broken") continue;  // fewer issues are told of, so that others are
            EXPECT_TRUE(all.ends_with(rest)) << from << " in " << bytes << '\n' << all << "---\n" << rest;
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Rows, BatchesTest, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

// A pipe with a part of a catalog in it: a batch is what is there, and nothing is waited for twice.
TEST(Batches, OfAPipeHaveWhatIsThere) {
    int ends[2];
    ASSERT_EQ(::pipe(ends), 0);
    const std::string first = "{\"name\":\"a\"}\n{\"na";
    ASSERT_EQ(::write(ends[1], first.data(), first.size()), static_cast<ssize_t>(first.size()));
    ListingBatches batches({"/dev/fd/" + std::to_string(ends[0])}, {.reading = {.format = InputFormat::json_lines}});
    ListingBatch batch;
    BatchStep step;
    ASSERT_TRUE(batches.take(batch)) << "the second line is not complete, and is not waited for";
    EXPECT_EQ(batch.next(step), BatchStep::a_listing);
    EXPECT_EQ(batch.next(step), BatchStep::end_of_batch);
    const std::string second = "me\":\"b\"}\n";
    ASSERT_EQ(::write(ends[1], second.data(), second.size()), static_cast<ssize_t>(second.size()));
    ASSERT_TRUE(batches.take(batch));
    EXPECT_EQ(batch.next(step), BatchStep::a_listing);
    EXPECT_EQ(step.listing.record, 2U);
    ::close(ends[1]);
    ::close(ends[0]);
}

TEST(Batches, AWaitEndsWhenItIsWoken) {
    for (const InputFormat format : {InputFormat::automatic, InputFormat::json_lines, InputFormat::json}) {
        int ends[2];
        int wake[2];
        ASSERT_EQ(::pipe(ends), 0);
        ASSERT_EQ(::pipe(wake), 0);
        ASSERT_EQ(::write(ends[1], "[", 1), 1);
        ListingBatches batches({"/dev/fd/" + std::to_string(ends[0])},
                               {.reading = {.format = format}, .wake_descriptor = wake[0]});
        bool took = true;
        std::thread taker([&] {
            ListingBatch batch;
            took = batches.take(batch);
        });
        ASSERT_EQ(::write(wake[1], "x", 1), 1);
        taker.join();
        EXPECT_FALSE(took) << "nothing is made of what broke off";
        for (const int end : {ends[0], ends[1], wake[0], wake[1]}) ::close(end);
    }
}

TEST(Batches, ManyThreadsTakeEachListingOnce) {
    const support::TemporaryFolder folder;
    std::vector<std::string> paths;
    std::vector<std::string> want;
    for (int i = 0; i < 200; ++i) {
        const std::string path = paths.emplace_back((folder.path() / (std::to_string(i) + ".jsonl")).string());
        std::string text;
        // Some of these are opened when they are taken, others by the thread that has them.
        for (int record = 1; record <= i % 50 + 1; ++record) {
            text += "{\"name\":\"" + std::to_string(i) + "\"}\n";
            want.push_back(path + ":" + std::to_string(record));
        }
        std::ofstream(path, std::ios::binary) << text;
    }
    ListingBatches batches(paths, {.batch_bytes = 200});
    EXPECT_NE(batches.total_bytes(), 0U);
    std::mutex mutex;
    std::vector<std::string> got;
    std::vector<std::thread> threads;
    for (int i = 0; i < 8; ++i) {
        threads.emplace_back([&] {
            ListingBatch batch;
            BatchStep step;
            while (batches.take(batch)) {
                while (batch.next(step) != BatchStep::end_of_batch) {
                    EXPECT_TRUE(step.issues.empty());
                    if (step.kind != BatchStep::a_listing) continue;
                    const std::lock_guard lock(mutex);
                    got.emplace_back(step.listing.id);
                }
            }
        });
    }
    for (std::thread& thread : threads) thread.join();
    std::sort(want.begin(), want.end());
    std::sort(got.begin(), got.end());
    EXPECT_EQ(got, want);
}

}  // namespace
}  // namespace grainside
