#include <fcntl.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <thread>
#include <vector>

#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/json_lines_source.h"
#include "listing/line_splitter.h"
#include "reading.h"

namespace grainside::testing_listing {
namespace {

// A pipe that holds `bytes`, which have to fit into it (64 KiB), and then ends.
int pipe_with(std::string_view bytes) {
    int ends[2];
    EXPECT_EQ(::pipe(ends), 0);
    EXPECT_EQ(::write(ends[1], bytes.data(), bytes.size()), static_cast<ssize_t>(bytes.size()));
    ::close(ends[1]);
    return ends[0];
}

std::vector<std::string> split(listing::ByteSource source, std::size_t max_line) {
    listing::LineSplitter splitter(source, max_line);
    std::vector<std::string> lines;
    listing::Line line;
    while (splitter.next(line)) {
        EXPECT_EQ(line.number, lines.size() + 1);
        lines.push_back(line.too_large ? "too large" : std::string(line.text));
    }
    return lines;
}

std::vector<std::string> split_naively(std::string_view text, std::size_t max_line) {
    std::vector<std::string> lines;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        std::string line(text.substr(0, end));
        const bool too_large = line.size() > max_line;
        if (line.ends_with('\r')) line.pop_back();
        lines.push_back(too_large ? "too large" : line);
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return lines;
}

TEST(BlockBorders, LinesAreTheSameWithEveryBlockSize) {
    constexpr std::string_view kTexts[] = {
        "",
        "\n",
        "\n\n",
        "a",
        "a\n",
        "a\r\n\r\nbc\r\n",
        "first\nsecond is longer\n\nx\nand a last one without an end",
        "long line at the start that is passed over\nshort\nand another long line in the middle\r\nend\n",
        "\r\r\n\r",
    };
    for (const std::string_view text : kTexts) {
        for (std::size_t max_line = 1; max_line <= 24; ++max_line) {
            const auto want = split_naively(text, max_line);
            EXPECT_EQ(split(listing::ByteSource::from_memory("m", text), max_line), want) << text << max_line;
            for (std::size_t block = 1; block <= text.size() + 1; ++block) {
                EXPECT_EQ(split(listing::ByteSource::from_descriptor(pipe_with(text), true, "p", block), max_line),
                          want)
                    << text << " in blocks of " << block << ", lines up to " << max_line;
            }
        }
    }
}

// Rests longer than the room in front of a block, which make the buffer grow and then be used again.
TEST(BlockBorders, LongLinesAmongShortOnes) {
    std::string text;
    for (std::size_t i = 0; i < 60; ++i) {
        text += std::string(i % 7 == 3 ? 150000 + i * 1000 : i * 37, static_cast<char>('a' + i % 26)) + "\n";
    }
    const auto want = split_naively(text, 1 << 20);
    for (const std::size_t block : {1000UL, 4096UL, 70000UL, 262144UL}) {
        int ends[2];
        ASSERT_EQ(::pipe(ends), 0);
        std::thread writer([&] {
            for (std::size_t sent = 0; sent < text.size();) {
                const ssize_t count = ::write(ends[1], text.data() + sent, text.size() - sent);
                if (count <= 0) break;
                sent += static_cast<std::size_t>(count);
            }
            ::close(ends[1]);
        });
        EXPECT_TRUE(split(listing::ByteSource::from_descriptor(ends[0], true, "p", block), 1 << 20) == want) << block;
        writer.join();
    }
}

std::string read_lines(listing::ByteSource bytes) {
    listing::IssueSink sink("f");
    listing::JsonLinesSource source(bytes, sink);
    std::string out;
    Listing listing;
    for (;;) {
        std::vector<Issue> issues;
        sink.begin(issues);
        const bool found = source.next(listing);
        for (const Issue& issue : issues) out += dump(issue) + "\n";
        if (!found) return out;
        out += dump(listing) + "\n";
    }
}

constexpr std::string_view kCatalog =
    "\xEF\xBB\xBF{\"sku\":\"1\",\"name\":\"Tote\",\"additionalProperty\":[{\"name\":\"L\\u00e9\",\"value\":\"cotton\"}]"
    "}\r\n"
    "\n{\"name\":\"broken}\n{\"name\":\"caf\xE9\",\"offers\":{\"eligibleRegion\":\"DE\"}}\n"
    "{\"@graph\":[{\"name\":\"g1\"},{\"name\":\"g\\n2\"}]}\n{\"name\":\"last\"}";
constexpr std::string_view kWant =
    "1@1 1 name='Tote' additionalProperty.L\xC3\xA9='cotton'\n3:9 error json-syntax\n4:13 warning not-utf8\n"
    "3@4 f:3 [ DE] name='caf '\n4@5 f:4 name='g1'\n5@5 f:5 name='g\\n2'\n6@6 f:6 name='last'\n";

TEST(BlockBorders, CatalogIsTheSameWithEveryBlockSize) {
    EXPECT_EQ(read_lines(listing::ByteSource::from_memory("f", kCatalog)), kWant);
    for (std::size_t block = 1; block <= kCatalog.size() + 1; ++block) {
        EXPECT_EQ(read_lines(listing::ByteSource::from_descriptor(pipe_with(kCatalog), true, "f", block)), kWant)
            << "blocks of " << block;
    }
}

TEST(BlockBorders, PipeThatGivesOneByteAtATime) {
    int ends[2];
    ASSERT_EQ(::pipe(ends), 0);
    // Non-blocking, as a parent may have left it: there is nothing to read most of the time.
    ASSERT_EQ(::fcntl(ends[0], F_SETFL, O_NONBLOCK), 0);
    std::thread writer([&] {
        for (const char byte : kCatalog) {
            if (::write(ends[1], &byte, 1) != 1) break;
            std::this_thread::yield();
        }
        ::close(ends[1]);
    });
    EXPECT_EQ(read_lines(listing::ByteSource::from_descriptor(ends[0], true, "f")), kWant);
    writer.join();
}

TEST(BlockBorders, ReadErrorIsReportedOnce) {
    const int folder = ::open("/", O_RDONLY | O_DIRECTORY);
    ASSERT_GE(folder, 0);
    EXPECT_EQ(read_lines(listing::ByteSource::from_descriptor(folder, true, "f")), "0:0 error read-error\n");
}

}  // namespace
}  // namespace grainside::testing_listing
