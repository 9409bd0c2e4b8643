#include "reading.h"

#include <array>
#include <cstdio>
#include <stdexcept>

namespace grainside::testing_listing {
namespace {

std::string visible(std::string_view text) {
    std::string out;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '\n') {
            out += "\\n";
        } else if (byte < 0x20 || byte == 0x7F) {
            std::array<char, 8> code{};
            std::snprintf(code.data(), code.size(), "\\x%02X", static_cast<unsigned>(byte));
            out += code.data();
        } else {
            out += c;
        }
    }
    return out;
}

}  // namespace

std::string dump(const Listing& listing) {
    std::string out = std::to_string(listing.record) + "@" + std::to_string(listing.line) + " " + visible(listing.id);
    if (!listing.language.empty() || !listing.region.empty()) {
        out.append(" [").append(visible(listing.language)).append(" ").append(visible(listing.region)).append("]");
    }
    for (const Field& field : listing.fields) {
        out.append(" ").append(visible(field.name)).append("='").append(visible(field.text)).append("'");
    }
    return out;
}

std::string dump(const Issue& issue) {
    std::string out = std::to_string(issue.line) + ":" + std::to_string(issue.column);
    out += issue.severity == Issue::Severity::error ? " error " : " warning ";
    return out + issue.code;
}

std::string read_all(ListingReader& reader) {
    std::string out;
    Listing listing;
    for (;;) {
        std::vector<Issue> issues;
        const bool found = reader.next(listing, issues);
        for (const Issue& issue : issues) out += dump(issue) + "\n";
        if (!found) break;
        out += dump(listing) + "\n";
    }
    if (!out.empty()) out.pop_back();
    return out;
}

std::string read_memory(std::string_view bytes, InputFormat format) {
    auto reader = ListingReader::from_memory("f", bytes, {.format = format});
    return read_all(reader);
}

ListingReader open_descriptor(int descriptor, InputFormat format) {
    auto reader = ListingReader::open("/dev/fd/" + std::to_string(descriptor), {.format = format});
    if (!reader) throw std::runtime_error("the descriptor cannot be opened");
    return std::move(reader).value();
}

}  // namespace grainside::testing_listing
