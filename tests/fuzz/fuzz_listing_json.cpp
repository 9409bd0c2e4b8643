// Any bytes as each of the formats: nothing crashes, every view can be read, and what is a record does not depend on
// the way in which the bytes arrive.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/listing_reader.h"
#include "listing/json_scanner.h"
#include "listing/utf8_check.h"

namespace {

// Longer inputs reach nothing new and cost time in the scanner and in simdjson's buffers.
constexpr std::size_t kMaxInputBytes = 4096;

void require(bool holds) {
    if (!holds) std::abort();
}

std::size_t sum_of(std::string_view text) {
    std::size_t sum = 0;
    for (const char c : text) sum += static_cast<unsigned char>(c);
    return sum;
}

// Touches every byte that the reader gives, so that the address sanitizer sees them.
std::string read_all(std::string_view bytes, grainside::InputFormat format, std::size_t& syntax_faults) {
    auto reader = grainside::ListingReader::from_memory("fuzz", bytes, {.format = format});
    grainside::Listing listing;
    std::vector<grainside::Issue> issues;
    std::string seen;
    std::uint64_t last_record = 0;
    while (reader.next(listing, issues)) {
        require(listing.record > last_record);
        last_record = listing.record;
        require(!listing.id.empty() && listing.line > 0);
        seen += std::to_string(sum_of(listing.id) + sum_of(listing.language) + sum_of(listing.region)) + ";";
        for (const auto& field : listing.fields) {
            require(!field.name.empty() && !field.text.empty());
            seen += std::string(field.name) + "=" + std::to_string(sum_of(field.text)) + ";";
        }
    }
    require(!reader.next(listing, issues));
    for (const auto& issue : issues) {
        require(!issue.code.empty() && !issue.message.empty() && issue.file == "fuzz");
        require(issue.excerpt.find('\n') == std::string::npos);
        // What begins as no text does is no JSON either.
        if (issue.code == "json-syntax" || issue.code == "not-text") ++syntax_faults;
    }
    require(issues.size() <= grainside::kMaxIssuesPerCall * (1 + bytes.size()));
    return seen;
}

// simdjson with our checks and the scanner are two readers of one grammar. They must agree about every record.
void check_grammar(std::string_view bytes) {
    if (bytes.find('\n') != std::string_view::npos) return;
    if (bytes.find_first_not_of(" \t\r") == std::string_view::npos) return;
    if (grainside::listing::find_invalid_utf8(bytes, 0).length != 0) return;
    if (bytes.size() >= 2 && static_cast<unsigned char>(bytes[0]) >= 0x80) return;
    if (bytes.starts_with(std::string_view("\0\0\xFE", 3))) return;
    // Bytes that begin as packed ones do are no text: a skippable frame of zstd (RFC 8878, 3.1.2) may begin with '['.
    if (bytes.size() >= 4 && bytes.substr(1, 3) == "\x2A\x4D\x18") return;
    grainside::listing::JsonScanner scanner;
    std::string_view line = bytes;
    if (line.ends_with('\r')) line.remove_suffix(1);
    const bool is_json = scanner.is_document(line);
    std::size_t syntax_faults = 0;
    read_all(bytes, grainside::InputFormat::json_lines, syntax_faults);
    require((syntax_faults == 0) == is_json);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size > kMaxInputBytes) return 0;
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);
    // What lies behind the bytes in memory is none of theirs.
    std::string roomy(bytes);
    roomy.append(128, ',');
    for (const auto format : {grainside::InputFormat::json, grainside::InputFormat::json_lines,
                              grainside::InputFormat::text, grainside::InputFormat::markdown}) {
        std::size_t faults = 0;
        std::size_t faults_again = 0;
        const std::string exact = read_all(std::string(bytes), format, faults);
        const std::string again = read_all(std::string_view(roomy).substr(0, size), format, faults_again);
        require(exact == again && faults == faults_again);
    }
    // With an empty line behind it a last line takes another way: nothing has to be copied for simdjson. Not where
    // control characters are weighed against the length of what they stand in.
    const auto is_control = [](char c) {
        return c == 0x7F || (c >= 0 && c < 0x20 && c != '\t' && c != '\n' && c != '\r');
    };
    if (bytes.starts_with('{') && std::none_of(bytes.begin(), bytes.end(), is_control)) {
        std::size_t faults = 0;
        std::size_t faults_again = 0;
        const std::string exact = read_all(bytes, grainside::InputFormat::json_lines, faults);
        const std::string uncopied = read_all(std::string(bytes) + '\n' + std::string(128, ' '),
                                              grainside::InputFormat::json_lines, faults_again);
        require(exact == uncopied && faults == faults_again);
    }
    check_grammar(bytes);
    return 0;
}
