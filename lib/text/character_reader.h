// Reads a text character by character: UTF-8, character references and tags.
#ifndef GRAINSIDE_TEXT_CHARACTER_READER_H
#define GRAINSIDE_TEXT_CHARACTER_READER_H

#include <algorithm>
#include <cstdint>
#include <string_view>

#include "text/character.h"
#include "text/fold_table.h"
#include "text/tag_scanner.h"
#include "text/utf8.h"

namespace grainside::text {

class CharacterReader {
public:
    explicit CharacterReader(std::string_view text) : text_(text), tags_(text) {}

    std::string_view text() const { return text_; }
    std::uint32_t size() const { return static_cast<std::uint32_t>(text_.size()); }

    // The character that begins at `at`. Places with a '<' are to be read once and in ascending order (TagScanner).
    // REQUIRES: at < size().
    Character read(std::uint32_t at) {
        const auto byte = static_cast<std::uint8_t>(text_[at]);
        if (byte >= 0x80) {
            const Decoded decoded = decode_utf8(text_, at);
            // What is no UTF-8 is read as NUL, a gap.
            return make(decoded.code, at, at + std::max(decoded.length, std::uint32_t{1}));
        }
        if (byte == '<' || byte == '&') return read_markup(at);
        return make(byte, at, at + 1);
    }

private:
    static Character make(char32_t code, std::uint32_t start, std::uint32_t end) {
        const FoldEntry& entry = fold_entry(code);
        return {entry.kind, code, &entry, start, end};
    }

    Character read_markup(std::uint32_t at);

    std::string_view text_;
    TagScanner tags_;
};

}  // namespace grainside::text

#endif  // GRAINSIDE_TEXT_CHARACTER_READER_H
