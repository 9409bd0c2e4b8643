#include "utf16_places.h"

#include <algorithm>
#include <iterator>

#include "document/utf8.h"

namespace grainside::tools {
namespace {

struct CharacterSize {
    std::size_t bytes = 1;
    std::size_t units = 1;
};

CharacterSize character_size(std::string_view text, std::size_t byte) noexcept {
    if (static_cast<unsigned char>(text[byte]) < 0x80) return {};
    const document::DecodedChar decoded = document::decode_utf8(text, byte);
    if (!decoded.valid) return {};
    return {decoded.length, decoded.length == 4 ? 2U : 1U};
}

}  // namespace

Utf16Places::Utf16Places(std::string_view text) : text_(text), begins_{0} {
    marks_.reserve(text.size() / kStep + 1);
    marks_.push_back({});
    std::size_t byte = 0;
    while (byte < text.size()) {
        if (byte - marks_.back().byte >= kStep) marks_.push_back({byte, units_});
        const char c = text[byte];
        const CharacterSize size = character_size(text, byte);
        byte += size.bytes;
        units_ += size.units;
        const bool splits_pair = c == '\r' && byte < text.size() && text[byte] == '\n';
        if (c == '\n' || (c == '\r' && !splits_pair)) begins_.push_back(byte);
    }
}

std::size_t Utf16Places::units_at(std::size_t byte) const noexcept {
    if (byte >= text_.size()) return units_;
    const auto after = std::upper_bound(marks_.begin(), marks_.end(), byte,
                                        [](std::size_t wanted, const Mark& mark) { return wanted < mark.byte; });
    Mark at = *std::prev(after);
    for (;;) {
        const CharacterSize size = character_size(text_, at.byte);
        if (at.byte + size.bytes > byte) return at.units;
        at.byte += size.bytes;
        at.units += size.units;
    }
}

std::size_t Utf16Places::byte_at(std::size_t units) const noexcept {
    if (units >= units_) return text_.size();
    const auto after = std::upper_bound(marks_.begin(), marks_.end(), units,
                                        [](std::size_t wanted, const Mark& mark) { return wanted < mark.units; });
    Mark at = *std::prev(after);
    for (;;) {
        const CharacterSize size = character_size(text_, at.byte);
        if (at.units + size.units > units) return at.byte;
        at.byte += size.bytes;
        at.units += size.units;
    }
}

LinePosition Utf16Places::position_at(std::size_t byte) const noexcept {
    const std::size_t line = line_at(byte);
    return {line, units_at(std::min(byte, line_end(line))) - units_at(begins_[line])};
}

std::size_t Utf16Places::byte_at(const LinePosition& position) const noexcept {
    if (position.line >= begins_.size()) return text_.size();
    const std::size_t begin = units_at(begins_[position.line]);
    const std::size_t end = line_end(position.line);
    // Not added before it was compared: a client may send the largest number there is.
    if (position.character >= units_at(end) - begin) return end;
    return byte_at(begin + position.character);
}

std::size_t Utf16Places::line_at(std::size_t byte) const noexcept {
    const auto after = std::upper_bound(begins_.begin(), begins_.end(), byte);
    return static_cast<std::size_t>(after - begins_.begin()) - 1;
}

std::size_t Utf16Places::line_begin(std::size_t line) const noexcept {
    return line < begins_.size() ? begins_[line] : text_.size();
}

std::size_t Utf16Places::line_end(std::size_t line) const noexcept {
    if (line + 1 >= begins_.size()) return text_.size();
    std::size_t end = begins_[line + 1];
    if (text_[end - 1] == '\n') --end;
    if (end > begins_[line] && text_[end - 1] == '\r') --end;
    return end;
}

}  // namespace grainside::tools
