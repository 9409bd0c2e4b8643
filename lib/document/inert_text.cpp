#include "document/inert_text.h"

#include "document/utf8.h"

namespace grainside::document {
namespace {

bool is_noncharacter(char32_t point) {
    return (point >= 0xFDD0 && point <= 0xFDEF) || (point & 0xFFFEU) == 0xFFFEU;
}

}  // namespace

bool is_obeyed(char32_t point) noexcept {
    return point < 0x20 || (point >= 0x7F && point <= 0x9F)          // C0, DEL, C1
           || point == 0x2028 || point == 0x2029                     // line and paragraph separator
           || point == 0x061C || point == 0x200E || point == 0x200F  // direction marks
           || (point >= 0x202A && point <= 0x202E)                   // embeddings and overrides
           || (point >= 0x2066 && point <= 0x2069)                   // isolates
           || point == 0xFEFF;
}

std::string inert_text(std::string_view text) {
    std::string out(text);
    for (std::size_t at = 0; at < out.size();) {
        const char c = out[at];
        if (c == '\t' || c == '\n' || c == '\r') {
            out[at++] = ' ';
            continue;
        }
        const DecodedChar decoded = decode_utf8(out, at);
        if (!decoded.valid || is_obeyed(decoded.point)) out.replace(at, decoded.length, decoded.length, '?');
        at += decoded.length;
    }
    return out;
}

std::string printable_text(std::string_view text) {
    constexpr std::string_view kReplacement = "\xEF\xBF\xBD";  // U+FFFD
    std::string out;
    out.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        const char c = text[at];
        const DecodedChar decoded = decode_utf8(text, at);
        if (c == '\r') {
            if (at + 1 == text.size() || text[at + 1] != '\n') out += '\n';
        } else if (c == '\n') {
            out += c;
        } else if (c == '\t') {
            out += ' ';
        } else if (!decoded.valid || is_obeyed(decoded.point) || is_noncharacter(decoded.point)) {
            out += kReplacement;
        } else {
            out += text.substr(at, decoded.length);
        }
        at += decoded.length;
    }
    return out;
}

std::string make_excerpt(std::string_view line, std::uint32_t column) {
    if (column > kMaxExcerptBytes) return {};
    std::size_t length = line.size();
    if (length > kMaxExcerptBytes) {
        length = kMaxExcerptBytes;
        while (length > 0 && (static_cast<unsigned char>(line[length]) & 0xC0u) == 0x80) --length;
    }
    return inert_text(line.substr(0, length));
}

}  // namespace grainside::document
