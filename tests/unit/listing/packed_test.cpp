// gzip and zstd sources, made by the two libraries themselves; tests/cli reads what the system's gzip and zstd wrote.
#include <sys/resource.h>
#include <unistd.h>
#include <zlib.h>
#include <zstd.h>

#include <string>
#include <string_view>
#include <vector>

#include "listing/byte_source.h"
#include "reading.h"

namespace grainside::testing_listing {
namespace {

std::string gzip(std::string_view text) {
    z_stream stream{};
    EXPECT_EQ(deflateInit2(&stream, 6, Z_DEFLATED, 15 + 16, 8, Z_DEFAULT_STRATEGY), Z_OK);
    std::string out(::deflateBound(&stream, text.size()), '\0');
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(text.data()));
    stream.avail_in = static_cast<uInt>(text.size());
    stream.next_out = reinterpret_cast<Bytef*>(out.data());
    stream.avail_out = static_cast<uInt>(out.size());
    EXPECT_EQ(::deflate(&stream, Z_FINISH), Z_STREAM_END);
    out.resize(stream.total_out);
    ::deflateEnd(&stream);
    return out;
}

std::string zstd(std::string_view text, int window_log = 0) {
    ZSTD_CCtx* const context = ::ZSTD_createCCtx();
    if (window_log != 0) ::ZSTD_CCtx_setParameter(context, ZSTD_c_windowLog, window_log);
    std::string out(::ZSTD_compressBound(text.size()) + 64, '\0');
    ZSTD_inBuffer in{text.data(), text.size(), 0};
    ZSTD_outBuffer to{out.data(), out.size(), 0};
    // In two steps, so that the frame does not shrink its window to a size that it knows.
    ::ZSTD_compressStream2(context, &to, &in, ZSTD_e_flush);
    EXPECT_EQ(::ZSTD_compressStream2(context, &to, &in, ZSTD_e_end), 0U);
    ::ZSTD_freeCCtx(context);
    out.resize(to.pos);
    return out;
}

constexpr std::string_view kRecords = "{\"name\":\"a\"}\n{\"name\":\"b\"}\n";
constexpr std::string_view kRead = "1@1 f:1 name='a'\n2@2 f:2 name='b'";

struct PackedRow {
    std::string_view name;
    std::string bytes;
    std::string want;
};
void PrintTo(const PackedRow& row, std::ostream* out) {
    *out << row.name;
}

std::vector<PackedRow> packed_rows() {
    const std::string g = gzip(kRecords);
    const std::string z = zstd(kRecords);
    const std::string skippable("\x50\x2A\x4D\x18\x03\0\0\0abc", 11);
    const std::string many = [] {
        std::string out;
        for (int i = 0; i < 30000; ++i) out += "{\"name\":\"" + std::to_string(i * 7919 % 100003) + "\"}\n";
        return out;
    }();
    std::string wrong_sum = g;
    wrong_sum[wrong_sum.size() - 8] = static_cast<char>(wrong_sum[wrong_sum.size() - 8] ^ 1);
    const std::string read(kRead);
    return {
        {"gzip", g, read},
        {"zstd", z, read},
        // RFC 1952, section 2.2: members follow one another.
        {"gzip_members", gzip(kRecords.substr(0, 13)) + gzip(kRecords.substr(13)), read},
        {"gzip_line_across_members", gzip(kRecords.substr(0, 5)) + gzip(kRecords.substr(5)), read},
        {"gzip_padded_with_zeros", g + std::string(600, '\0'), read},
        // RFC 8878, section 3: frames follow one another, skippable ones among them.
        {"zstd_frames", zstd(kRecords.substr(0, 5)) + zstd(kRecords.substr(5)), read},
        {"zstd_skippable_first", skippable + z, read},
        {"gzip_empty", gzip(""), ""},
        {"gzip_cut", g.substr(0, g.size() - 9), read + "\n0:0 error broken-packing"},
        {"gzip_only_mark", g.substr(0, 4), "0:0 error broken-packing"},
        {"gzip_without_trailer", g.substr(0, g.size() - 3), read + "\n0:0 error broken-packing"},
        {"gzip_wrong_checksum", wrong_sum, read + "\n0:0 error broken-packing"},
        {"gzip_text_behind", g + "text", read + "\n0:0 error broken-packing"},
        {"zstd_cut", z.substr(0, z.size() - 1), read + "\n0:0 error broken-packing"},
        {"zstd_text_behind", z + "text", read + "\n0:0 error broken-packing"},
        {"zstd_window_too_large", zstd(many, 28), "0:0 error broken-packing"},
    };
}

class Packed : public testing::TestWithParam<PackedRow> {};

// From memory and through a pipe in blocks of odd sizes.
TEST_P(Packed, IsReadAsWhatItHolds) {
    const PackedRow& row = GetParam();
    EXPECT_EQ(read_memory(row.bytes, InputFormat::json_lines), row.want);
    for (const std::size_t block : {1U, 3U, 64U}) {
        int ends[2];
        ASSERT_EQ(::pipe(ends), 0);
        const std::string_view some = std::string_view(row.bytes).substr(0, 60000);
        ASSERT_EQ(::write(ends[1], some.data(), some.size()), static_cast<ssize_t>(some.size()));
        ::close(ends[1]);
        auto piped = listing::ByteSource::from_descriptor(ends[0], true, "f", block);
        auto whole = listing::ByteSource::from_memory("f", some);
        std::string one;
        std::string other;
        for (auto* source : {&piped, &whole}) {
            ASSERT_TRUE(source->unpack());
            std::string& to = source == &piped ? one : other;
            while (source->more()) {
                to += source->pending();
                source->consume(source->pending().size());
            }
            EXPECT_TRUE(source->is_unpacked());
        }
        EXPECT_EQ(one, other) << block;
        EXPECT_EQ(piped.unpacking_fault(), whole.unpacking_fault());
        EXPECT_EQ(piped.bytes_read(), one.size());
        if (piped.error() == 0) {
            EXPECT_EQ(piped.source_bytes(), some.size());
        }
    }
}
INSTANTIATE_TEST_SUITE_P(Rows, Packed, testing::ValuesIn(packed_rows()),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(Packed, PlacesAreNone) {
    const std::string bytes = gzip(kRecords);
    auto reader = ListingReader::from_memory("f", bytes, {.format = InputFormat::json_lines});
    Listing listing;
    std::vector<Issue> issues;
    ASSERT_TRUE(reader.next(listing, issues));
    EXPECT_EQ(listing.fields[0].origin.writing, Writing::packed);
    EXPECT_TRUE(listing.source.bytes.empty());
    EXPECT_EQ(listing.line, 1U);
    EXPECT_EQ(reader.stated_size(), bytes.size());
}

TEST(Packed, FaultTellsTheLastRecord) {
    const std::string bytes = gzip(kRecords) + "text";
    auto reader = ListingReader::from_memory("f", bytes, {.format = InputFormat::json_lines});
    Listing listing;
    std::vector<Issue> issues;
    while (reader.next(listing, issues)) {
    }
    ASSERT_EQ(issues.size(), 1U);
    EXPECT_EQ(issues[0].message,
              "what stands behind the gzip data is not gzip; record 2 is the last that was read before it");
    EXPECT_FALSE(reader.next(listing, issues));
    EXPECT_EQ(issues.size(), 1U);
}

// A gigabyte of spaces in a line of its own, packed to about a megabyte: no more memory than a record may take.
TEST(Packed, BombTakesBoundedMemory) {
    const std::string bytes = [] {
        const std::string part = gzip(std::string(std::size_t{1} << 24, ' '));
        std::string out;
        for (int i = 0; i < 64; ++i) out += part;
        return out + gzip("\n{\"name\":\"behind\"}\n");
    }();
    ASSERT_LT(bytes.size(), std::size_t{2} << 20);
    rusage usage{};
    ::getrusage(RUSAGE_SELF, &usage);
    const long before = usage.ru_maxrss;
    auto reader = ListingReader::from_memory("f", bytes, {.format = InputFormat::json_lines});
    EXPECT_EQ(read_all(reader), "1:1 error record-too-large\n2@2 f:2 name='behind'");
    ::getrusage(RUSAGE_SELF, &usage);
    // As in memory_test.cpp: 64 MiB, copied once while the buffer grows; a sanitizer keeps freed memory for a while.
    EXPECT_LT(usage.ru_maxrss - before, 600 * 1024);
    EXPECT_GT(reader.bytes_read(), std::uint64_t{1} << 30);
}

}  // namespace
}  // namespace grainside::testing_listing
