#include "listing/place.h"

#include <algorithm>

namespace grainside::listing {
namespace {

constexpr std::size_t kMaxExcerptBytes = 200;
constexpr std::size_t kMaxNearBytes = 24;

std::string printable(std::string_view text) {
    std::string out(text);
    std::replace_if(
        out.begin(), out.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }, ' ');
    return out;
}

bool continues_character(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

}  // namespace

Place place_at(std::string_view text, std::size_t offset, Place origin) {
    const std::string_view before = text.substr(0, offset);
    const auto breaks = std::count(before.begin(), before.end(), '\n');
    if (breaks == 0) return {origin.line, origin.column + before.size()};
    return {origin.line + static_cast<std::uint64_t>(breaks), before.size() - before.rfind('\n')};
}

std::string excerpt_at(const RecordText& text, std::size_t offset) {
    const auto record_start = static_cast<std::size_t>(text.bytes.data() - text.around.data());
    const std::size_t at = record_start + std::min(offset, text.bytes.size());
    const std::size_t window = at > kMaxExcerptBytes ? at - kMaxExcerptBytes : 0;
    const std::size_t last_break = text.around.substr(window, at - window).rfind('\n');
    if (last_break == std::string_view::npos && window != 0) return {};
    const std::size_t begin = last_break == std::string_view::npos ? 0 : window + last_break + 1;
    if (place_at(text.bytes, offset, text.origin).column != at - begin + 1) return {};

    std::string_view line = text.around.substr(begin, kMaxExcerptBytes + 1);
    line = line.substr(0, line.find('\n'));
    if (line.size() > kMaxExcerptBytes) return {};
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    return printable(line);
}

std::string words_at(const RecordText& text, std::size_t offset) {
    if (offset >= text.bytes.size()) return {};
    std::string_view words = text.bytes.substr(offset, kMaxNearBytes);
    const bool cut = offset + words.size() < text.bytes.size();
    while (cut && words.size() > 1 && continues_character(text.bytes[offset + words.size()]) &&
           words.size() + 4 > kMaxNearBytes) {
        words.remove_suffix(1);
    }
    words = words.substr(0, words.find('\n'));
    return printable(words);
}

}  // namespace grainside::listing
