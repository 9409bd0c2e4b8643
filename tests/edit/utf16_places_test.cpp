// Bytes and UTF-16 units of the same text. Both forms of each text come from the compiler, which converts literals by
// itself (C++20, [lex.string]); lines end as the Language Server Protocol 3.17 has it, 'Text Documents'.
#include "utf16_places.h"

#include <gtest/gtest.h>

#include <cstddef>
#include <cstdint>
#include <limits>
#include <ostream>
#include <string>
#include <string_view>
#include <vector>

namespace grainside::tools {

std::ostream& operator<<(std::ostream& out, const LinePosition& position) {
    return out << position.line << ':' << position.character;
}

namespace {

struct Row {
    std::string_view name;
    std::u8string_view bytes;
    std::u16string_view units;
};

#define GRAINSIDE_BOTH(name, text) \
    { name, u8##text, u##text }

const Row kTexts[] = {
    GRAINSIDE_BOTH("empty", ""),
    GRAINSIDE_BOTH("ascii", "Full grain tote.\nLining: cotton"),
    GRAINSIDE_BOTH("two_bytes", "caf\u00E9, \u00B1 0.02 mm"),
    GRAINSIDE_BOTH("three_bytes", "\u672C\u9769 \u2013 5 \u20AC"),
    GRAINSIDE_BOTH("pairs", "a\U0001F45Cb\U0001F45C\U0001F45C\nc\U0010FFFF"),
    GRAINSIDE_BOTH("byte_order_mark", "\uFEFFname: x"),
    GRAINSIDE_BOTH("combining", "e\u0301\r\n\u0301"),
    GRAINSIDE_BOTH("all_line_ends", "a\nb\r\nc\rd\n\r\ne\n\r\r\n"),
    GRAINSIDE_BOTH("no_line_ends", "a\u2028b\u0085c\vd\fe"),
};

std::string as_bytes(std::u8string_view text) {
    return {text.begin(), text.end()};
}
bool is_continuation(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80;
}
bool is_second_half(char16_t c) {
    return c >= 0xDC00 && c <= 0xDFFF;
}

// The slow way: a character of one form for each of the other, and lines by looking at units.
struct Slow {
    std::vector<std::size_t> units_of_byte;
    std::vector<std::size_t> byte_of_unit;
    std::vector<LinePosition> position_of_unit;
};

Slow slow_places(std::string_view bytes, std::u16string_view units) {
    Slow slow;
    std::size_t byte = 0;
    LinePosition position;
    for (std::size_t unit = 0; unit < units.size();) {
        const std::size_t wide = unit + 1 < units.size() && is_second_half(units[unit + 1]) ? 2 : 1;
        std::size_t length = 1;
        while (byte + length < bytes.size() && is_continuation(bytes[byte + length])) ++length;
        slow.units_of_byte.insert(slow.units_of_byte.end(), length, unit);
        slow.byte_of_unit.insert(slow.byte_of_unit.end(), wide, byte);
        const bool within_end = units[unit] == u'\n' && unit > 0 && units[unit - 1] == u'\r';
        slow.position_of_unit.insert(slow.position_of_unit.end(), wide, position);
        if (within_end) slow.position_of_unit.back().character -= 1;
        position.character += wide;
        const bool pair = units[unit] == u'\r' && unit + 1 < units.size() && units[unit + 1] == u'\n';
        if (units[unit] == u'\n' || (units[unit] == u'\r' && !pair)) position = {position.line + 1, 0};
        byte += length;
        unit += wide;
    }
    slow.units_of_byte.push_back(units.size());
    slow.byte_of_unit.push_back(bytes.size());
    slow.position_of_unit.push_back(position);
    return slow;
}

void expect_as_slow(std::string_view bytes, std::u16string_view units) {
    const Slow slow = slow_places(bytes, units);
    const Utf16Places places(bytes);
    EXPECT_EQ(places.units(), units.size());
    EXPECT_EQ(places.lines(), slow.position_of_unit.back().line + 1);
    for (std::size_t byte = 0; byte <= bytes.size(); ++byte) {
        ASSERT_EQ(places.units_at(byte), slow.units_of_byte[byte]) << "byte " << byte;
        ASSERT_EQ(places.position_at(byte), slow.position_of_unit[slow.units_of_byte[byte]]) << "byte " << byte;
    }
    for (std::size_t unit = 0; unit <= units.size(); ++unit) {
        ASSERT_EQ(places.byte_at(unit), slow.byte_of_unit[unit]) << "unit " << unit;
        const bool inside_end = unit > 0 && unit < units.size() && units[unit - 1] == u'\r' && units[unit] == u'\n';
        const std::size_t byte = slow.byte_of_unit[unit] - (inside_end ? 1 : 0);
        ASSERT_EQ(places.byte_at(slow.position_of_unit[unit]), byte) << "unit " << unit;
    }
}

TEST(Utf16PlacesTest, AgreesWithTheLiteralsOfTheCompiler) {
    for (const Row& row : kTexts) {
        SCOPED_TRACE(row.name);
        expect_as_slow(as_bytes(row.bytes), row.units);
    }
}

TEST(Utf16PlacesTest, AgreesOnLongTextsAtEveryDistanceFromItsMarks) {
    for (std::size_t shift = 0; shift < 5; ++shift) {
        std::string bytes(shift, 'x');
        std::u16string units(shift, u'x');
        while (bytes.size() < 8 * Utf16Places::kStep) {
            for (const Row& row : kTexts) {
                bytes += as_bytes(row.bytes);
                units += row.units;
            }
        }
        SCOPED_TRACE(shift);
        expect_as_slow(bytes, units);
    }
}

TEST(Utf16PlacesTest, CountsEachByteThatIsNoCharacterAsOneUnit) {
    // Table 3-7 of the Unicode Standard: a lone continuation, an overlong form, half a surrogate pair (3 bytes), what
    // is above U+10FFFF, and a character that the end cuts off.
    const std::string_view text =
        "a\x80"
        "b\xC0\xAF"
        "\xED\xA0\x80"
        "\xF4\x90\x80\x80"
        "\xF0\x9F\x91";
    const Utf16Places places(text);
    EXPECT_EQ(places.units(), text.size());
    for (std::size_t i = 0; i <= text.size(); ++i) {
        EXPECT_EQ(places.units_at(i), i);
        EXPECT_EQ(places.byte_at(i), i);
    }
}

TEST(Utf16PlacesTest, ClampsWhatIsOutsideTheText) {
    constexpr std::size_t kMost = std::numeric_limits<std::size_t>::max();
    const Utf16Places places("ab\r\nc");
    EXPECT_EQ(places.units_at(kMost), 5U);
    EXPECT_EQ(places.byte_at(kMost), 5U);
    // 'If the character value is greater than the line length it defaults back to the line length.'
    EXPECT_EQ(places.byte_at(LinePosition{0, 3}), 2U);
    EXPECT_EQ(places.byte_at(LinePosition{0, kMost}), 2U);
    EXPECT_EQ(places.byte_at(LinePosition{1, kMost}), 5U);
    EXPECT_EQ(places.byte_at(LinePosition{2, 0}), 5U);
    EXPECT_EQ(places.byte_at(LinePosition{kMost, kMost}), 5U);
    EXPECT_EQ(places.position_at(kMost), (LinePosition{1, 1}));
    EXPECT_EQ(places.line_begin(1), 4U);
    EXPECT_EQ(places.line_end(0), 2U);
    EXPECT_EQ(places.line_begin(9), 5U);
}

}  // namespace
}  // namespace grainside::tools
