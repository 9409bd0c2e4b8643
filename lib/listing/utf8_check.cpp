#include "listing/utf8_check.h"

#include <cstdint>
#include <cstring>

namespace grainside::listing {
namespace {

struct Lead {
    std::size_t continuations;
    unsigned char second_from;
    unsigned char second_to;
};

// Table 3-7 of the Unicode Standard 15.0. Zero continuations: no byte that can begin a longer sequence.
Lead lead_of(unsigned char byte) {
    if (byte >= 0xC2 && byte <= 0xDF) return {1, 0x80, 0xBF};
    if (byte == 0xE0) return {2, 0xA0, 0xBF};
    if (byte == 0xED) return {2, 0x80, 0x9F};
    if (byte >= 0xE1 && byte <= 0xEF) return {2, 0x80, 0xBF};
    if (byte == 0xF0) return {3, 0x90, 0xBF};
    if (byte >= 0xF1 && byte <= 0xF3) return {3, 0x80, 0xBF};
    if (byte == 0xF4) return {3, 0x80, 0x8F};
    return {0, 0, 0};
}

}  // namespace

InvalidBytes find_invalid_utf8(std::string_view text, std::size_t from) {
    const auto byte_at = [&](std::size_t at) { return static_cast<unsigned char>(text[at]); };
    std::size_t at = from;
    while (at < text.size()) {
        // Eight ASCII bytes at a time, as most text is.
        if (std::uint64_t word = 0; text.size() - at >= sizeof word) {
            std::memcpy(&word, text.data() + at, sizeof word);
            if ((word & 0x8080808080808080U) == 0) {
                at += sizeof word;
                continue;
            }
        }
        if (byte_at(at) < 0x80) {
            ++at;
            continue;
        }
        const Lead lead = lead_of(byte_at(at));
        if (lead.continuations == 0) return {at, 1};
        std::size_t length = 1;
        while (length <= lead.continuations && at + length < text.size()) {
            const unsigned char byte = byte_at(at + length);
            const unsigned char lowest = length == 1 ? lead.second_from : 0x80;
            const unsigned char highest = length == 1 ? lead.second_to : 0xBF;
            if (byte < lowest || byte > highest) break;
            ++length;
        }
        if (length <= lead.continuations) return {at, length};
        at += length;
    }
    return {};
}

}  // namespace grainside::listing
