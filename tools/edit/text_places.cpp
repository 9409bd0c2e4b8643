#include "edit/text_places.h"

#include <algorithm>
#include <cstdint>
#include <utility>

namespace grainside::tools::edit {
namespace {

bool is_blank(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

bool continues_character(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80;
}

// What an editor marks when somebody clicks on it: up to a blank or a mark of YAML.
bool ends_word(char c) {
    return is_blank(c) || c == ',' || c == ']' || c == '}' || c == ':';
}

}  // namespace

LinePosition TextPlaces::position_at(std::size_t byte) const noexcept {
    if (encoding_ == PositionEncoding::utf16) return places_.position_at(byte);
    const std::size_t line = places_.line_at(byte);
    return {line, std::min(byte, places_.line_end(line)) - places_.line_begin(line)};
}

std::size_t TextPlaces::byte_at(const LinePosition& position) const noexcept {
    if (encoding_ == PositionEncoding::utf16 || position.line >= places_.lines()) return places_.byte_at(position);
    const std::size_t begin = places_.line_begin(position.line);
    const std::size_t end = places_.line_end(position.line);
    if (position.character >= end - begin) return end;
    std::size_t byte = begin + position.character;
    // A character has at most three bytes behind its first.
    for (int i = 0; i < 3 && byte > begin && continues_character(text_[byte]); ++i) --byte;
    return byte;
}

std::optional<std::size_t> TextPlaces::read_position(const std::optional<Json>& position) const {
    const auto line = integer_of(member(position, "line"));
    const auto character = integer_of(member(position, "character"));
    if (!line || !character || *line < 0 || *character < 0) return std::nullopt;
    return byte_at({static_cast<std::size_t>(*line), static_cast<std::size_t>(*character)});
}

std::optional<TextSpan> TextPlaces::read_range(const std::optional<Json>& range) const {
    const auto begin = read_position(member(range, "start"));
    const auto end = read_position(member(range, "end"));
    if (!begin || !end) return std::nullopt;
    return TextSpan{std::min(*begin, *end), std::max(*begin, *end)};
}

void TextPlaces::write_range(report::JsonWriter& json, const TextSpan& span) const {
    json.begin_object();
    for (const auto& [name, byte] : {std::pair("start", span.begin), std::pair("end", span.end)}) {
        const LinePosition position = position_at(byte);
        json.key(name);
        json.begin_object();
        json.member("line", std::uint64_t{position.line});
        json.member("character", std::uint64_t{position.character});
        json.end_object();
    }
    json.end_object();
}

TextSpan TextPlaces::span_of_issue(std::size_t line, std::size_t column) const noexcept {
    if (line == 0) return {0, 0};
    if (column == 0) return span_of_line(line - 1);
    constexpr std::string_view kMark = "\xEF\xBB\xBF";
    std::size_t begin = places_.line_begin(line - 1);
    if (line == 1 && text_.starts_with(kMark)) begin += kMark.size();
    const std::size_t line_end = places_.line_end(line - 1);
    begin = std::min(begin + column - 1, line_end);
    std::size_t end = begin;
    while (end < line_end && !ends_word(text_[end])) ++end;
    if (end == begin && end < line_end) ++end;
    return {begin, end};
}

TextSpan TextPlaces::span_of_line(std::size_t line) const noexcept {
    TextSpan span{places_.line_begin(line), places_.line_end(line)};
    while (span.begin < span.end && is_blank(text_[span.begin])) ++span.begin;
    while (span.begin < span.end && is_blank(text_[span.end - 1])) --span.end;
    return span;
}

}  // namespace grainside::tools::edit
