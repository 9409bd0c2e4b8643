#include "measure/quantity_scanner.h"

#include <charconv>
#include <cmath>
#include <system_error>

#include "measure/full_double.h"

namespace grainside::measure {
namespace {

// A power of ten that no double has, while the arithmetic on it is still safe.
constexpr int kBeyondAnyDouble = 1000;

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool is_inside_unit(char c) {
    return is_letter(c) || is_digit(c) || c == '/' || c == '^' || c == '%' || c == '"' || c == '.';
}

// `digits` times 10^power, rounded once. False: beyond a double at either end.
bool to_double(std::string digits, int power, double& value) {
    digits += 'e' + std::to_string(power);
    const char* const end = digits.data() + digits.size();
    const auto [stop, status] = std::from_chars(digits.data(), end, value);
    return status == std::errc() && stop == end && is_full(value);
}

}  // namespace

QuantityScanner::QuantityScanner(std::string plain) : text_(std::move(plain)) {
    const std::size_t open = text_.find_first_not_of(' ');
    if (open == std::string::npos || text_[open] != '(') return;
    const std::size_t close = text_.find(')', open);
    if (close == std::string::npos) return;
    text_[open] = ' ';
    text_[close] = ' ';
}

void QuantityScanner::skip_spaces() {
    while (at(at_) == ' ') ++at_;
}

bool QuantityScanner::at_end() {
    skip_spaces();
    return at_ == text_.size();
}

char QuantityScanner::next() {
    skip_spaces();
    return at(at_);
}

bool QuantityScanner::take(std::string_view sign) {
    skip_spaces();
    if (!rest().starts_with(sign)) return false;
    at_ += sign.size();
    return true;
}

// Without sign and exponent. Takes nothing where there is no number.
std::string_view QuantityScanner::take_digits() {
    const std::size_t start = at_;
    while (is_digit(at(at_))) ++at_;
    if (at(at_) == '.' && is_digit(at(at_ + 1))) {
        ++at_;
        while (is_digit(at(at_))) ++at_;
    }
    return std::string_view(text_).substr(start, at_ - start);
}

// Leaves `power` alone where a unit or the end follows.
QuantityScanner::Fault QuantityScanner::take_exponent(int& power) {
    if (at(at_) != 'e' && at(at_) != 'E') return Fault::none;
    const std::size_t sign = at_ + 1;
    const std::size_t digits = at(sign) == '-' || at(sign) == '+' ? sign + 1 : sign;
    if (!is_digit(at(digits))) return Fault::none;
    // from_chars takes a minus but no plus.
    const char* const first = text_.data() + (at(sign) == '+' ? digits : sign);
    const auto [stop, status] = std::from_chars(first, text_.data() + text_.size(), power);
    if (status != std::errc() || std::abs(power) > kBeyondAnyDouble) return Fault::out_of_range;
    at_ = static_cast<std::size_t>(stop - text_.data());
    return Fault::none;
}

QuantityScanner::Fault QuantityScanner::take_number(ScannedNumber& number, bool brackets) {
    skip_spaces();
    const bool negative = at(at_) == '-';
    if (negative || at(at_) == '+') ++at_;
    number_start_ = at_;
    const std::string digits(take_digits());
    if (digits.empty()) return Fault::malformed;
    if (at(at_) == ',' && is_digit(at(at_ + 1))) return Fault::decimal_comma;

    std::string uncertainty;
    if (brackets && at(at_) == '(' && (is_digit(at(at_ + 1)) || at(at_ + 1) == '.')) {
        ++at_;
        uncertainty = take_digits();
        if (uncertainty.empty() || at(at_) != ')') return Fault::malformed;
        ++at_;
    }
    int power = 0;
    if (const Fault fault = take_exponent(power); fault != Fault::none) return fault;
    const std::size_t point = digits.find('.');
    number.last_place = power - (point == std::string::npos ? 0 : static_cast<int>(digits.size() - point - 1));
    if (!to_double((negative ? "-" : "") + digits, power, number.value)) return Fault::out_of_range;
    if (uncertainty.empty()) return Fault::none;
    // Digits alone count from the last place of the value; with a point they are a number of their own.
    const bool in_full = uncertainty.find('.') != std::string::npos;
    double u = 0;
    if (!to_double(std::move(uncertainty), in_full ? power : number.last_place, u)) return Fault::out_of_range;
    number.in_brackets = u;
    return Fault::none;
}

QuantityScanner::CommaReadings QuantityScanner::around_comma() const {
    constexpr std::size_t kGroup = 3;
    CommaReadings readings;
    readings.first = text_.substr(number_start_, at_ - number_start_);
    const bool whole = readings.first.find('.') == std::string::npos;
    const auto digits_end = [this](std::size_t from) {
        while (is_digit(at(from))) ++from;
        return from;
    };
    const auto fraction_end = [&](std::size_t from) {
        return at(from) == '.' && is_digit(at(from + 1)) ? digits_end(from + 1) : from;
    };
    const std::size_t behind = digits_end(at_ + 1);
    const std::size_t second_end = fraction_end(behind);
    readings.second = text_.substr(at_ + 1, second_end - at_ - 1);
    const bool more = at(behind) == ',' && is_digit(at(behind + 1));
    if (whole && second_end == behind && !more) readings.decimal = readings.first + '.' + readings.second;
    if (!whole || readings.first.size() > kGroup || readings.first[0] == '0') return readings;
    std::string joined = readings.first;
    std::size_t place = at_;
    while (at(place) == ',' && is_digit(at(place + 1))) {
        const std::size_t end = digits_end(place + 1);
        if (end - place - 1 != kGroup) return readings;
        joined += text_.substr(place + 1, kGroup);
        place = end;
    }
    readings.thousands = joined + text_.substr(place, fraction_end(place) - place);
    return readings;
}

bool QuantityScanner::is_range_word(std::size_t place) const {
    return text_.compare(place, 2, "to") == 0 && !is_letter(at(place + 2));
}

std::string QuantityScanner::take_unit() {
    skip_spaces();
    const std::size_t start = at_;
    for (std::size_t i = at_; i < text_.size(); ++i) {
        if (text_[i] == ' ') continue;
        const bool word_starts = i == start || text_[i - 1] == ' ';
        // What begins with a digit is the next number.
        if (!is_inside_unit(text_[i]) || (word_starts && (is_digit(text_[i]) || is_range_word(i)))) break;
        at_ = i + 1;
    }
    return text_.substr(start, at_ - start);
}

}  // namespace grainside::measure
