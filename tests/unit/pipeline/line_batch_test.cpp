// Lines that are too large, with a bound small enough to write them down.
#include "listing/line_batch.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "listing/line_splitter.h"

namespace grainside::listing {
namespace {

int pipe_with(std::string_view bytes) {
    int ends[2];
    EXPECT_EQ(::pipe(ends), 0);
    EXPECT_EQ(::write(ends[1], bytes.data(), bytes.size()), static_cast<ssize_t>(bytes.size()));
    ::close(ends[1]);
    return ends[0];
}

// "NUMBER@START LINE"
std::string describe(const Line& line) {
    return std::to_string(line.number) + "@" + std::to_string(line.start) + " " +
           (line.too_large ? "too large" : std::string(line.text));
}

std::vector<std::string> split(ByteSource source, std::size_t max_line) {
    std::vector<std::string> lines;
    LineSplitter splitter(source, max_line);
    Line line;
    while (splitter.next(line)) lines.push_back(describe(line));
    return lines;
}

// `at_once`: what the source may bring with one read.
std::vector<std::string> batched(ByteSource source, std::size_t batch_bytes, std::size_t max_line,
                                 std::size_t at_once) {
    std::vector<std::string> lines;
    LineBatcher batcher(source, batch_bytes, 0, max_line);
    LineBatch batch;
    std::uint64_t records = 0;
    while (batcher.take(batch)) {
        EXPECT_EQ(batch.before.records, records);
        EXPECT_EQ(batch.before.lines, lines.size());
        records += batch.records;
        ByteSource memory = ByteSource::from_memory("m", batch.lines);
        LineSplitter splitter(memory, max_line);
        splitter.restart(batch.before.lines, batch.before.bytes);
        Line line;
        while (splitter.next(line)) lines.push_back(describe(line));
        if (batch.too_large != 0) {
            line = {};
            line.number = batch.too_large;
            line.start = batch.before.bytes + batch.lines.size();
            line.too_large = true;
            lines.push_back(describe(line));
        }
        EXPECT_LE(batch.lines.size(), batch_bytes + batch_bytes / 4 + max_line + at_once);
    }
    return lines;
}

TEST(LineBatch, LinesAreTheSameWithEveryBlockAndBatchSize) {
    constexpr std::string_view kTexts[] = {
        "",
        "\n",
        "a",
        "a\r\n\r\nbc\r\n",
        "first\nsecond is longer\n\nx\nand a last one without an end",
        "long line at the start that is passed over\nshort\nand another long line in the middle\r\nend\n",
        "only one long line without an end, passed over",
        "a\nlong line one that is passed over\nlong line two that is passed over\nb\n",
    };
    for (const std::string_view text : kTexts) {
        for (const std::size_t max_line : {1U, 5U, 12U, 24U, 100U}) {
            const auto want = split(ByteSource::from_memory("m", text), max_line);
            for (std::size_t batch = 1; batch <= text.size() + 1; ++batch) {
                ASSERT_EQ(batched(ByteSource::from_memory("m", text), batch, max_line, text.size()), want)
                    << text << " in batches of " << batch << ", lines up to " << max_line;
                for (const std::size_t block : {1U, 3U, 16U, 64U}) {
                    ASSERT_EQ(
                        batched(ByteSource::from_descriptor(pipe_with(text), true, "p", block), batch, max_line, block),
                        want)
                        << text << " in blocks of " << block << " and batches of " << batch << ", lines up to "
                        << max_line;
                }
            }
        }
    }
}

}  // namespace
}  // namespace grainside::listing
