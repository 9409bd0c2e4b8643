// Any bytes as an input: batches give what a reader gives, however small they are and however many threads take them;
// so do the parts into which a file of JSON Lines is cut, one behind the other; packed, the same listings; and a packed
// source that breaks off or is damaged gives a beginning of them and says so.
//
// Input: a letter for the format, a byte for the size of batches, then the bytes.
#include <sys/mman.h>
#include <unistd.h>
#include <zlib.h>
#include <zstd.h>

#include <array>
#include <cstddef>
#include <cstdint>
#include <mutex>
#include <string>
#include <string_view>
#include <thread>
#include <utility>
#include <vector>

#include "grainside/line_partitions.h"
#include "grainside/listing_reader.h"
#include "listing/byte_source.h"
#include "listing/listing_batches.h"
#include "listing/unpacking.h"
#include "require.h"

namespace {

using namespace grainside;
using fuzz::require;

// Longer inputs reach nothing new: batches are made smaller instead.
constexpr std::size_t kMaxInputBytes = 4096;
// What a packed byte unpacks to at most, also a damaged one: a block of zstd that repeats a byte has four bytes and
// makes up to 128 KiB (RFC 8878, 3.1.1.2.2 and 3.1.1.2.4).
constexpr std::size_t kMostFromAByte = std::size_t{32} << 10U;
constexpr std::size_t kThreads = 3;

InputFormat format_of(char letter) {
    switch (letter) {
        case 'a':
            return InputFormat::json;
        case 'c':
            return InputFormat::csv;
        case 't':
            return InputFormat::tsv;
        case 'h':
            return InputFormat::html;
        case 'm':
            return InputFormat::markdown;
        case 'x':
            return InputFormat::text;
        default:
            return InputFormat::json_lines;
    }
}

std::string text_of(const Listing& listing, bool with_places) {
    std::string out;
    for (const std::string_view text : {listing.id, listing.language, listing.region, listing.seller}) {
        out.append(text).append("|");
    }
    out += std::to_string(listing.record) + "@" + std::to_string(listing.line);
    for (const Field& field : listing.fields) {
        out.append(";").append(field.name).append("=").append(field.text);
        if (!with_places) continue;
        out += "#" + std::to_string(field.origin.start) + "+" + std::to_string(field.origin.size) + "/" +
               std::to_string(static_cast<int>(field.origin.writing));
    }
    return out + "\n";
}

std::string text_of(std::vector<Issue>&& issues) {
    std::string out;
    for (const Issue& issue : issues) out += to_text(issue);
    return out;
}

// Listings and issues in their order; without places, listings only.
std::string by_reader(std::string_view bytes, const ReadOptions& options, bool with_places) {
    auto reader = ListingReader::from_memory("fuzz", bytes, options);
    std::string out;
    Listing listing;
    std::vector<Issue> issues;
    while (reader.next(listing, issues)) {
        if (with_places) out += text_of(std::exchange(issues, {}));
        out += text_of(listing, with_places);
    }
    return with_places ? out + text_of(std::move(issues)) : out;
}

// A step as it is kept until those before it have been told.
struct KeptStep {
    BatchStep step;
    std::string listing;
};

std::vector<KeptStep> steps_of(ListingBatch& batch) {
    std::vector<KeptStep> steps;
    do {
        KeptStep kept;
        batch.next(kept.step);
        if (kept.step.kind == BatchStep::a_listing) kept.listing = text_of(kept.step.listing, true);
        kept.step.listing = {};
        steps.push_back(std::move(kept));
    } while (steps.back().step.kind != BatchStep::end_of_batch);
    return steps;
}

std::string joined(std::vector<std::vector<KeptStep>>& batches) {
    std::string out;
    IssueRun run;
    std::vector<Issue> told;
    for (std::vector<KeptStep>& steps : batches) {
        for (KeptStep& kept : steps) {
            run.add(kept.step, told);
            out += text_of(std::exchange(told, {})) + kept.listing;
        }
    }
    run.end(told);
    return out + text_of(std::move(told));
}

std::string by_batches(std::string_view bytes, InputFormat format, std::size_t batch_bytes, std::size_t thread_count) {
    auto batches =
        ListingBatches::from_memory("fuzz", bytes, {.reading = {.format = format}, .batch_bytes = batch_bytes});
    std::mutex mutex;
    std::vector<std::vector<KeptStep>> taken;
    const auto work = [&] {
        ListingBatch batch;
        while (true) {
            std::size_t number = 0;
            {
                // Numbered as they are taken; they are read outside of the lock.
                const std::scoped_lock lock(mutex);
                if (!batches.take(batch)) return;
                number = taken.size();
                taken.emplace_back();
            }
            std::vector<KeptStep> steps = steps_of(batch);
            const std::scoped_lock lock(mutex);
            taken[number] = std::move(steps);
        }
    };
    std::vector<std::thread> others;
    for (std::size_t i = 1; i < thread_count; ++i) others.emplace_back(work);
    work();
    for (std::thread& other : others) other.join();
    return joined(taken);
}

// Parts of about so many bytes, each read by itself. They are whole lines and together the file, so that each listing
// is in one of them.
std::string by_parts(std::string_view bytes, std::size_t part_bytes) {
    // A file that is in memory only, and open as any other.
    const int file = ::memfd_create("fuzz", MFD_CLOEXEC);
    require(file >= 0 && ::write(file, bytes.data(), bytes.size()) == static_cast<ssize_t>(bytes.size()));
    const auto parts = plan_line_partitions("/proc/self/fd/" + std::to_string(file), part_bytes);
    ::close(file);
    require(static_cast<bool>(parts));
    std::string out;
    std::uint64_t covered = 0;
    for (const LinePartition& part : parts.value()) {
        require(part.start.byte == covered && part.end > part.start.byte && part.end <= bytes.size());
        require(covered == 0 || bytes[covered - 1] == '\n');
        covered = part.end;
        const std::string_view own = bytes.substr(part.start.byte, part.end - part.start.byte);
        out += by_reader(own, {.format = InputFormat::json_lines, .start = part.start}, true);
    }
    require(covered == bytes.size());
    return out;
}

std::string gzip(std::string_view text) {
    z_stream stream{};
    require(deflateInit2(&stream, 1, Z_DEFLATED, 15 + 16, 8, Z_DEFAULT_STRATEGY) == Z_OK);
    std::string out(::deflateBound(&stream, static_cast<uLong>(text.size())), '\0');
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(text.data()));
    stream.avail_in = static_cast<uInt>(text.size());
    stream.next_out = reinterpret_cast<Bytef*>(out.data());
    stream.avail_out = static_cast<uInt>(out.size());
    require(::deflate(&stream, Z_FINISH) == Z_STREAM_END);
    out.resize(stream.total_out);
    ::deflateEnd(&stream);
    return out;
}

// With a checksum, so that damage is noticed.
std::string zstd(std::string_view text) {
    ZSTD_CCtx* const context = ::ZSTD_createCCtx();
    ::ZSTD_CCtx_setParameter(context, ZSTD_c_checksumFlag, 1);
    std::string out(::ZSTD_compressBound(text.size()), '\0');
    out.resize(::ZSTD_compress2(context, out.data(), out.size(), text.data(), text.size()));
    ::ZSTD_freeCCtx(context);
    return out;
}

// What a packed source gives until it ends or fails.
std::string unpacked(std::string_view packed, bool& sound) {
    auto source = listing::ByteSource::from_memory("fuzz", packed);
    require(source.unpack());
    std::string out;
    while (source.more()) {
        out += source.pending();
        source.consume(source.pending().size());
        require(out.size() <= packed.size() * kMostFromAByte);
    }
    sound = source.error() == 0;
    require(sound == source.unpacking_fault().empty());
    return out;
}

void check_packed(std::string_view bytes, const std::string& packed, std::size_t first_safe, std::uint8_t where) {
    bool sound = false;
    require(unpacked(packed, sound) == bytes && sound);
    // Broken off behind the mark by which it is known.
    const std::size_t cut = first_safe + where % (packed.size() - first_safe);
    const std::string begun = unpacked(std::string_view(packed).substr(0, cut), sound);
    require(!sound && bytes.starts_with(begun));
    // One bit turned: it is noticed, or it was one that says nothing of the text.
    std::string damaged = packed;
    damaged[cut] = static_cast<char>(static_cast<unsigned char>(damaged[cut]) ^ (1U << where % 8U));
    const std::string text = unpacked(damaged, sound);
    require(!sound || text == bytes);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size < 2 || size > kMaxInputBytes) return 0;
    const std::string_view bytes(reinterpret_cast<const char*>(data) + 2, size - 2);
    const InputFormat format = format_of(static_cast<char>(data[0]));
    const std::size_t batch_bytes = 1 + data[1];
    const std::string read = by_reader(bytes, {.format = format}, true);
    require(by_batches(bytes, format, batch_bytes, 1) == read);
    require(by_batches(bytes, format, batch_bytes, kThreads) == read);

    // What is packed already would have to be unpacked twice, which nobody does.
    if (listing::packing_of(bytes) != listing::Packing::none) return 0;
    // What is left out behind so many issues is counted a part.
    if (format == InputFormat::json_lines && read.find("[too-many-issues]") == std::string::npos) {
        require(by_parts(bytes, batch_bytes) == read);
    }
    const std::string listings = by_reader(bytes, {.format = format}, false);
    // Two bytes of gzip, or four of zstd, say what it is (RFC 1952, 2.3.1; RFC 8878, 3.1.1); ten are a header of gzip.
    constexpr std::size_t kGzipHeader = 10;
    constexpr std::size_t kZstdMark = 4;
    const std::array<std::pair<std::string, std::size_t>, 2> forms = {
        {{gzip(bytes), kGzipHeader}, {zstd(bytes), kZstdMark}}};
    for (const auto& [packed, first_safe] : forms) {
        check_packed(bytes, packed, first_safe, data[1]);
        require(by_reader(packed, {.format = format}, false) == listings);
        require(by_batches(packed, format, batch_bytes, kThreads) == by_reader(packed, {.format = format}, true));
    }
    return 0;
}
