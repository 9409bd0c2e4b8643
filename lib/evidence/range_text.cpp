#include "evidence/range_text.h"

#include <charconv>
#include <cmath>
#include <system_error>

#include "measure/plain_signs.h"

namespace grainside::evidence {

namespace {

constexpr std::string_view kDigits = "0123456789";

void skip_spaces(std::string_view& text) {
    while (text.starts_with(' ')) text.remove_prefix(1);
}

// Digits, and where there is a point, digits on both sides of it.
std::optional<double> take_number(std::string_view& text) {
    std::size_t end = std::min(text.find_first_not_of(kDigits), text.size());
    if (end == 0) return std::nullopt;
    if (end < text.size() && text[end] == '.') {
        const std::size_t after = std::min(text.find_first_not_of(kDigits, end + 1), text.size());
        if (after == end + 1) return std::nullopt;
        end = after;
    }
    double number = 0;
    const auto [stop, status] = std::from_chars(text.data(), text.data() + end, number, std::chars_format::fixed);
    if (status != std::errc() || stop != text.data() + end || !std::isfinite(number)) return std::nullopt;
    text.remove_prefix(end);
    return number;
}

}  // namespace

std::optional<RangeText> parse_range(std::string_view text) {
    const std::optional<std::string> plain = measure::plain_signs(text);
    if (!plain) return std::nullopt;
    std::string_view rest = *plain;
    RangeText read;
    skip_spaces(rest);
    const std::optional<double> low = take_number(rest);
    skip_spaces(rest);
    if (!low || !rest.starts_with('-')) return std::nullopt;
    rest.remove_prefix(1);
    skip_spaces(rest);
    const std::optional<double> high = take_number(rest);
    if (!high) return std::nullopt;
    skip_spaces(rest);
    read.range = {*low, *high};
    read.unit = rest;
    return read;
}

}  // namespace grainside::evidence
