#include "survey/natural_order.h"

#include <algorithm>
#include <cstddef>

namespace grainside::survey {
namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// Takes the number off the front, without its leading zeros.
std::string_view take_number(std::string_view& rest) {
    std::size_t end = 0;
    while (end < rest.size() && is_digit(rest[end])) ++end;
    std::string_view number = rest.substr(0, end);
    rest.remove_prefix(end);
    number.remove_prefix(std::min(number.find_first_not_of('0'), number.size()));
    return number;
}

}  // namespace

std::strong_ordering natural_order(std::string_view a, std::string_view b) {
    std::string_view left = a;
    std::string_view right = b;
    while (!left.empty() && !right.empty()) {
        if (is_digit(left.front()) && is_digit(right.front())) {
            const std::string_view one = take_number(left);
            const std::string_view other = take_number(right);
            if (one.size() != other.size()) return one.size() <=> other.size();
            if (one != other) return one <=> other;
            continue;
        }
        if (left.front() != right.front()) {
            return static_cast<unsigned char>(left.front()) <=> static_cast<unsigned char>(right.front());
        }
        left.remove_prefix(1);
        right.remove_prefix(1);
    }
    if (left.size() != right.size()) return left.size() <=> right.size();
    return a <=> b;
}

}  // namespace grainside::survey
