// Any bytes as a saved page: nothing crashes, texts are UTF-8 where the page is, what has a place stands there, and two
// readings agree.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/listing_reader.h"
#include "grainside/source_place.h"
#include "listing/utf8_check.h"

namespace {

// Longer inputs reach nothing new; the reader is linear.
constexpr std::size_t kMaxInputBytes = 4096;

void require(bool holds) {
    if (!holds) std::abort();
}

std::string read_all(std::string_view bytes, bool is_utf8) {
    auto reader = grainside::ListingReader::from_memory("fuzz", bytes, {.format = grainside::InputFormat::html});
    grainside::Listing listing;
    std::vector<grainside::Issue> issues;
    std::string seen;
    std::uint64_t last_record = 0;
    while (reader.next(listing, issues)) {
        require(listing.record == last_record + 1);
        last_record = listing.record;
        require(!listing.id.empty() && listing.line > 0 && !listing.fields.empty());
        seen.append(listing.id).append(listing.language).append(listing.region).append(listing.seller);
        grainside::SourcePlaces places;
        for (std::size_t i = 0; i < listing.fields.size(); ++i) {
            const grainside::Field& field = listing.fields[i];
            require(!field.name.empty() && !field.text.empty());
            require(!is_utf8 || grainside::listing::find_invalid_utf8(field.text, 0).length == 0);
            seen.append(field.name).append("=").append(field.text).append(";");
            const auto region = places.find(listing, i, 0, field.text.size());
            require(!region || region->bytes.end <= bytes.size());
            if (region && field.origin.size == field.text.size() && is_utf8) {
                require(bytes.substr(static_cast<std::size_t>(region->bytes.start), field.text.size()) == field.text);
            }
        }
    }
    require(!reader.next(listing, issues));
    for (const auto& issue : issues) {
        require(!issue.code.empty() && !issue.message.empty());
        require(issue.excerpt.find('\n') == std::string::npos);
    }
    return seen;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size > kMaxInputBytes) return 0;
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);
    const bool is_utf8 = grainside::listing::find_invalid_utf8(bytes, 0).length == 0;
    // With other bytes behind it a record of JSON-LD is parsed where it lies.
    std::string roomy(bytes);
    roomy.append(128, '{');
    require(read_all(std::string(bytes), is_utf8) == read_all(std::string_view(roomy).substr(0, size), is_utf8));
    return 0;
}
