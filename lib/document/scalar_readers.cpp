// The strict readers of faults.h.
#include <charconv>
#include <system_error>
#include <utility>

#include "document/day.h"
#include "document/faults.h"

namespace grainside::document {
namespace {

constexpr std::size_t kMaxQuoted = 40;

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool all_digits(std::string_view text) {
    for (const char c : text) {
        if (!is_digit(c)) return false;
    }
    return !text.empty();
}

bool is_plain_integer(std::string_view text) {
    if (text.starts_with('-')) text.remove_prefix(1);
    return all_digits(text) && (text.size() == 1 || text[0] != '0');
}

bool is_plain_number(std::string_view text) {
    const std::size_t point = text.find('.');
    if (point == std::string_view::npos) return is_plain_integer(text);
    return is_plain_integer(text.substr(0, point)) && all_digits(text.substr(point + 1));
}

std::string found(Node node) {
    switch (node.kind()) {
        case NodeKind::null:
            return node.exists() ? "found nothing" : "it is missing";
        case NodeKind::sequence:
            return "found a list";
        case NodeKind::mapping:
            return "found a mapping";
        case NodeKind::scalar:
            break;
    }
    const std::string_view text = node.text();
    if (text.size() <= kMaxQuoted) return "found `" + std::string(text) + '`';
    std::size_t cut = kMaxQuoted;
    while (cut > 0 && (static_cast<unsigned char>(text[cut]) & 0xC0u) == 0x80) --cut;
    return "found `" + std::string(text.substr(0, cut)) + "...`";
}

void report(const Document& document, Node node, std::string_view wanted, Faults& faults, std::string hint = {}) {
    faults.error(document, node, "wrong-type", "expected " + std::string(wanted) + ", " + found(node), std::move(hint));
}

// Reports a scalar in quotes too: quotes say that it is meant as text.
bool is_unquoted_scalar(const Document& document, Node node, std::string_view wanted, Faults& faults) {
    if (node.is_scalar() && !node.quoted()) return true;
    report(document, node, wanted, faults, node.is_scalar() ? "write it without quotes" : "");
    return false;
}

template <typename Number>
std::optional<Number> read(const Document& document, Node node, std::string_view wanted, std::string_view hint,
                           bool (*well_formed)(std::string_view), Faults& faults) {
    if (!is_unquoted_scalar(document, node, wanted, faults)) return std::nullopt;
    const std::string_view text = node.text();
    Number number{};
    if (well_formed(text)) {
        const auto [end, status] = std::from_chars(text.data(), text.data() + text.size(), number);
        if (status == std::errc() && end == text.data() + text.size()) return number;
        hint = "the number is out of range";
    }
    report(document, node, wanted, faults, std::string(hint));
    return std::nullopt;
}

}  // namespace

std::optional<std::int64_t> read_integer(const Document& document, Node node, Faults& faults) {
    return read<std::int64_t>(document, node, "a whole number", "digits only, as in `12`", is_plain_integer, faults);
}

std::optional<double> read_number(const Document& document, Node node, Faults& faults) {
    return read<double>(document, node, "a number", "plain decimal, as in `12` or `0.5`", is_plain_number, faults);
}

std::optional<bool> read_yes_no(const Document& document, Node node, Faults& faults) {
    constexpr std::string_view kWanted = "`yes` or `no`";
    if (!is_unquoted_scalar(document, node, kWanted, faults)) return std::nullopt;
    if (node.text() == "yes") return true;
    if (node.text() == "no") return false;
    constexpr std::string_view kWords[] = {"yes", "no"};
    faults.met(node.text(), kWords);
    report(document, node, kWanted, faults);
    return std::nullopt;
}

std::optional<std::string_view> read_date(const Document& document, Node node, Faults& faults) {
    constexpr std::string_view kWanted = "a day as YYYY-MM-DD";
    const std::string_view text = node.text();
    if (!is_written_as_day(text)) {
        report(document, node, kWanted, faults, "year, month and day with hyphens, YYYY-MM-DD, as in `2026-12-31`");
        return std::nullopt;
    }
    if (!is_day(text)) {
        report(document, node, kWanted, faults, "the calendar has no such day");
        return std::nullopt;
    }
    return text;
}

std::vector<std::string_view> read_words(const Document& document, Node node, Faults& faults) {
    constexpr std::string_view kWanted = "text or a list of texts";
    std::vector<std::string_view> words;
    if (node.is_scalar()) {
        words.push_back(node.text());
    } else if (node.is_sequence()) {
        for (const Node member : node) {
            if (member.is_scalar()) {
                words.push_back(member.text());
            } else {
                report(document, member, "text", faults);
            }
        }
    } else {
        report(document, node, kWanted, faults);
    }
    return words;
}

}  // namespace grainside::document
