// Any bytes as a table: nothing crashes, every view can be read, records ascend, texts stand where they say they do,
// and reading twice gives the same. The same bytes as a packed source end.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/listing_reader.h"
#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/table_source.h"

namespace {

// Longer inputs reach nothing new.
constexpr std::size_t kMaxInputBytes = 4096;
constexpr std::size_t kMaxRecord = 256;

void require(bool holds) {
    if (!holds) std::abort();
}

std::string read_all(std::string_view bytes, std::size_t max_record, grainside::InputFormat format) {
    auto source = grainside::listing::ByteSource::from_memory("fuzz", bytes);
    grainside::listing::IssueSink sink("fuzz");
    const grainside::ReadOptions options{.format = format, .columns = {{"*", "property"}}};
    grainside::listing::TableSource table(source, sink, options, max_record);
    grainside::Listing listing;
    std::string seen;
    std::uint64_t last_record = 0;
    for (;;) {
        std::vector<grainside::Issue> issues;
        sink.begin(issues);
        const bool found = table.next(listing);
        for (const auto& issue : issues) {
            require(!issue.code.empty() && !issue.message.empty());
            require(issue.excerpt.find('\n') == std::string::npos);
        }
        if (!found) return seen;
        require(listing.record > last_record && !listing.id.empty() && listing.line > 0);
        last_record = listing.record;
        for (const auto& field : listing.fields) {
            require(!field.name.empty() && !field.text.empty());
            // What has a place there is written there, quotes doubled or not.
            require(field.origin.start + field.origin.size <= bytes.size());
            const auto written = bytes.substr(static_cast<std::size_t>(field.origin.start), field.origin.size);
            require(written.size() != field.text.size() || written == field.text);
            seen.append(field.name).append("=").append(field.text).append(";");
        }
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size > kMaxInputBytes) return 0;
    const std::string bytes(reinterpret_cast<const char*>(data), size);
    for (const auto format : {grainside::InputFormat::csv, grainside::InputFormat::tsv}) {
        require(read_all(bytes, kMaxRecord, format) == read_all(bytes, kMaxRecord, format));
        read_all(bytes, std::size_t{1} << 20, format);
    }
    // The same bytes as a packed source, which they may happen to be.
    auto packed = grainside::listing::ByteSource::from_memory("fuzz", bytes);
    packed.unpack();
    while (packed.more() && packed.bytes_read() < (std::size_t{1} << 20)) packed.consume(packed.pending().size());
    return 0;
}
