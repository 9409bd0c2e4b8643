#include <gtest/gtest.h>
#include <sys/resource.h>
#include <unistd.h>

#include <cstddef>
#include <cstdio>
#include <string>
#include <string_view>
#include <thread>
#include <vector>

#include "grainside/listing_reader.h"
#include "reading.h"
#include "support/allocations.h"

namespace grainside::testing_listing {
namespace {

#if defined(__SANITIZE_ADDRESS__)
constexpr bool kSanitized = true;
#elif defined(__has_feature)
constexpr bool kSanitized = __has_feature(address_sanitizer);
#else
constexpr bool kSanitized = false;
#endif

bool write_all(int descriptor, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t count = ::write(descriptor, bytes.data(), bytes.size());
        if (count <= 0) return false;
        bytes.remove_prefix(static_cast<std::size_t>(count));
    }
    return true;
}

long peak_kilobytes() {
    rusage usage{};
    ::getrusage(RUSAGE_SELF, &usage);
    return usage.ru_maxrss;
}

// A first line of 300 MB must not be held: the longest record is 64 MiB, which is copied once while the buffer grows.
TEST(MemoryTest, LineBeyondTheLimitIsPassedOver) {
    int ends[2];
    ASSERT_EQ(::pipe(ends), 0);
    std::thread writer([&] {
        const std::string megabyte(1000000, 'x');
        bool open = write_all(ends[1], "{\"name\":\"");
        for (int i = 0; i < 300 && open; ++i) open = write_all(ends[1], megabyte);
        if (open) write_all(ends[1], "\"}\n{\"sku\":\"2\",\"name\":\"short\"}\n");
        ::close(ends[1]);
    });
    const long before = peak_kilobytes();
    {
        auto reader = open_descriptor(ends[0], InputFormat::json_lines);
        ::close(ends[0]);
        EXPECT_EQ(read_all(reader), "1:1 error record-too-large\n2@2 2 name='short'");
        EXPECT_GT(reader.bytes_read(), 300000000U);
    }
    writer.join();
    // The address sanitizer keeps freed memory for a while.
    EXPECT_LT(peak_kilobytes() - before, (kSanitized ? 600 : 160) * 1024);
}

TEST(MemoryTest, LineJustWithinTheLimitIsRead) {
    int ends[2];
    ASSERT_EQ(::pipe(ends), 0);
    const std::size_t letters = kMaxRecordBytes - std::string_view("{\"sku\":\"1\",\"name\":\"\"}").size();
    std::thread writer([&] {
        const std::string line = std::string("{\"sku\":\"1\",\"name\":\"") + std::string(letters, 'x') + "\"}\n";
        if (write_all(ends[1], line)) write_all(ends[1], "{\"sku\":\"2\",\"name\":\"short\"}");
        ::close(ends[1]);
    });
    auto reader = open_descriptor(ends[0], InputFormat::json_lines);
    ::close(ends[0]);
    Listing listing;
    std::vector<Issue> issues;
    ASSERT_TRUE(reader.next(listing, issues));
    EXPECT_EQ(listing.fields[0].text.size(), letters);
    EXPECT_TRUE(issues.empty());
    EXPECT_TRUE(reader.next(listing, issues));
    EXPECT_EQ(listing.id, "2");
    writer.join();
}

// Listings of all kinds, with texts that have to be built (escapes, ids, names of properties), of different sizes.
std::string catalog(std::size_t count) {
    std::string out;
    for (std::size_t i = 0; i < count; ++i) {
        out += i % 3 == 0 ? "{" : "{\"sku\":\"s\",";
        out +=
            "\"name\":\"Tote \\u00e9\\n" + std::string(i % 50 * 40, 'x') +
            "\",\"material\":[\"a\",{\"name\":\"b\"}],\"unknown\":[[{\"x\":[1,2]}]],"
            "\"additionalProperty\":[{\"name\":\"T\",\"value\":1.4,\"unitText\":\"mm\"},{\"name\":\"L\\t\",\"value\":"
            "[\"c\",\"d\"]}],\"offers\":{\"eligibleRegion\":\"DE\"}}\n";
        if (i % 10 == 5) out += "{\"@graph\":[{\"name\":\"g\"},{\"name\":\"h\\n\"}]}\n\n";
    }
    return out;
}

TEST(MemoryTest, NothingIsAllocatedForARecordAfterWarmingUp) {
    const std::string text = catalog(600);
    const std::string path = testing::TempDir() + "/grainside_allocations_" + std::to_string(::getpid()) + ".jsonl";
    FILE* file = std::fopen(path.c_str(), "wb");
    ASSERT_NE(file, nullptr);
    ASSERT_EQ(std::fwrite(text.data(), 1, text.size(), file), text.size());
    std::fclose(file);

    auto from_file = ListingReader::open(path, {});
    ASSERT_TRUE(from_file);
    auto from_memory = ListingReader::from_memory("m", text, {.format = InputFormat::json_lines});
    for (ListingReader* reader : {&from_file.value(), &from_memory}) {
        Listing listing;
        std::vector<Issue> issues;
        for (int i = 0; i < 200; ++i) ASSERT_TRUE(reader->next(listing, issues));
        const std::size_t before = support::allocations().count;
        std::size_t listings = 0;
        // The last ones lie too near to the end of the memory and are copied.
        for (; listings < 500; ++listings) ASSERT_TRUE(reader->next(listing, issues));
        EXPECT_EQ(support::allocations().count - before, 0U);
        EXPECT_TRUE(issues.empty());
    }
    std::remove(path.c_str());
}

TEST(MemoryTest, CountingWorks) {
    const std::size_t before = support::allocations().count;
    const std::string text(1000, 'x');
    EXPECT_EQ(text.size(), 1000U);
    EXPECT_GT(support::allocations().count, before);
}

}  // namespace
}  // namespace grainside::testing_listing
