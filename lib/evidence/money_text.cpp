#include "evidence/money_text.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "document/faults.h"
#include "document/inert_text.h"
#include "measure/unit.h"

namespace grainside::evidence {

using measure::Dimension;
using measure::QuantityFault;

namespace {

constexpr std::string_view kHowToWrite = "write it as in `64.00 EUR`, `4.50-6.00 EUR/sq ft` or `14-18 EUR/h`";
constexpr std::size_t kCodeLetters = 3;

bool is_capital(char c) {
    return c >= 'A' && c <= 'Z';
}
bool is_letter(char c) {
    return is_capital(c) || (c >= 'a' && c <= 'z');
}

std::string quoted(std::string_view text) {
    return '`' + document::inert_text(text) + '`';
}

// What the codes and symbols leave, as messages show it.
std::string single_spaced(std::string_view text) {
    std::string kept;
    for (const char c : text) {
        if (c != ' ' || (!kept.empty() && kept.back() != ' ')) kept += c;
    }
    if (kept.ends_with(' ')) kept.pop_back();
    return kept;
}

std::string in_capitals(std::string_view word) {
    std::string capitals(word);
    for (char& c : capitals) c = is_letter(c) && !is_capital(c) ? static_cast<char>(c - 'a' + 'A') : c;
    return capitals;
}

// Where the unit begins that the money is paid for: behind '/' or a word "per", or "each" at the end; npos where there
// is none.
struct Cut {
    std::size_t amount_end = std::string_view::npos;
    std::size_t unit_start = std::string_view::npos;
};

Cut find_per(std::string_view text) {
    // "+/-" is no division.
    for (std::size_t at = text.find('/'); at != std::string_view::npos; at = text.find('/', at + 1)) {
        if (at == 0 || text[at - 1] != '+') return {at, at + 1};
    }
    constexpr std::string_view kEach = " each";
    if (text.ends_with(kEach)) return {text.size() - kEach.size(), text.size() - kEach.size() + 1};
    constexpr std::string_view kPer = " per ";
    if (const std::size_t at = text.find(kPer); at != std::string_view::npos) return {at, at + kPer.size()};
    return {};
}

class MoneyParser {
public:
    MoneyParser(std::string_view text, std::span<const Currency> currencies) : text_(text), currencies_(currencies) {}

    std::variant<ParsedMoney, QuantityFault> parse() {
        if (text_.size() > measure::kMaxQuantityBytes) {
            return QuantityFault{"too-long", fmt::format("an amount of {} bytes is too long", text_.size()),
                                 fmt::format("at most {} bytes", measure::kMaxQuantityBytes)};
        }
        const Cut cut = find_per(text_);
        std::string amount(text_.substr(0, cut.amount_end));
        if (!take_symbols(amount) || !take_codes(amount) || !read_amount(single_spaced(amount)))
            return std::move(fault_);
        if (cut.unit_start != std::string_view::npos && !read_per(text_.substr(cut.unit_start))) {
            return std::move(fault_);
        }
        return std::move(money_);
    }

private:
    bool fail(std::string_view code, std::string message, std::string hint = {}) {
        fault_ = {code, std::move(message), std::move(hint)};
        return false;
    }

    bool take_currency(const std::string& code) {
        if (!money_.currency.empty() && money_.currency != code) {
            return fail("mixed-currencies", quoted(text_) + " names two currencies", "write one amount in one of them");
        }
        money_.currency = code;
        return true;
    }

    // Symbols go, the longest first, so that "A$" is not read as "$".
    bool take_symbols(std::string& amount) {
        std::vector<std::string_view> symbols;
        for (const Currency& currency : currencies_) {
            const bool known = std::find(symbols.begin(), symbols.end(), currency.symbol) != symbols.end();
            if (!currency.symbol.empty() && !known) symbols.push_back(currency.symbol);
        }
        std::sort(symbols.begin(), symbols.end(), [](std::string_view a, std::string_view b) {
            return a.size() != b.size() ? a.size() > b.size() : a < b;
        });
        for (const std::string_view symbol : symbols) {
            const std::size_t at = amount.find(symbol);
            if (at == std::string::npos) continue;
            std::vector<std::string_view> codes;
            for (const Currency& currency : currencies_) {
                if (currency.symbol == symbol) codes.push_back(currency.id);
            }
            if (codes.size() > 1) {
                return fail("which-currency",
                            fmt::format("'{}' in {} stands for several currencies", symbol, quoted(text_)),
                            fmt::format("write the code that is meant: {}", fmt::join(codes, ", ")));
            }
            if (!take_currency(std::string(codes.front()))) return false;
            amount.replace(at, symbol.size(), " ");
        }
        return true;
    }

    // Each word of three capitals is a code; what else has letters is left to the number's own reader.
    bool take_codes(std::string& amount) {
        for (std::size_t at = 0; at < amount.size();) {
            if (!is_letter(amount[at])) {
                ++at;
                continue;
            }
            std::size_t end = at;
            while (end < amount.size() && is_letter(amount[end])) ++end;
            const std::string word = amount.substr(at, end - at);
            if (word.size() == kCodeLetters && std::all_of(word.begin(), word.end(), is_capital)) {
                if (!is_known(word)) return unknown(word);
                if (!take_currency(word)) return false;
                amount.replace(at, word.size(), kCodeLetters, ' ');
            } else if (const std::string near = nearest_code(word); !near.empty()) {
                return fail("unknown-currency", fmt::format("'{}' in {} is no code of a currency", word, quoted(text_)),
                            fmt::format("did you mean `{}`?", near));
            }
            at = end;
        }
        if (!money_.currency.empty()) return true;
        return fail("missing-currency", quoted(text_) + " names no currency", std::string(kHowToWrite));
    }

    bool is_known(std::string_view code) const {
        return currencies_.empty() || std::any_of(currencies_.begin(), currencies_.end(),
                                                  [&](const Currency& currency) { return currency.id == code; });
    }

    bool unknown(const std::string& code) {
        std::vector<std::string_view> codes;
        for (const Currency& currency : currencies_) codes.push_back(currency.id);
        const std::string near = document::suggestion(code, codes);
        return fail("unknown-currency", fmt::format("the book has no currency '{}'", code),
                    near.empty() ? fmt::format("one of {}", fmt::join(codes, ", ")) : near);
    }

    // A code in the wrong case or with a letter too many, "Eur" and "EUROS", or a currency by its name; words such as
    // "to" and "exactly" are none.
    std::string nearest_code(std::string_view word) const {
        if (currencies_.empty() || word.size() < kCodeLetters) return {};
        const std::string capitals = in_capitals(word);
        if (word.size() == kCodeLetters) return is_known(capitals) ? capitals : std::string();
        std::vector<std::string_view> codes;
        for (const Currency& currency : currencies_) {
            const std::string name = in_capitals(currency.name);
            if (capitals == name || capitals == name + 'S') return currency.id;
            codes.push_back(currency.id);
        }
        return capitals == word ? std::string(document::nearest(word, codes)) : std::string();
    }

    bool read_amount(const std::string& amount) {
        const measure::QuantityOrFault read =
            measure::parse_quantity(amount, Dimension::number, measure::CommaHint::one);
        if (const auto* fault = std::get_if<QuantityFault>(&read)) {
            const bool shape = fault->code == "empty" || fault->code == "malformed" || fault->code == "wrong-unit" ||
                               fault->code == "unknown-unit";
            return fail(shape ? std::string_view("malformed") : fault->code,
                        shape ? quoted(text_) + " is no amount of money" : fault->message,
                        shape ? std::string(kHowToWrite) : fault->hint);
        }
        money_.amount = std::get<measure::ParsedQuantity>(read);
        if (money_.amount.measured.value < 0) {
            return fail("negative", quoted(text_) + " is less than nothing", "is there a sign too much?");
        }
        return true;
    }

    bool read_per(std::string_view unit_text) {
        while (unit_text.starts_with(' ')) unit_text.remove_prefix(1);
        while (unit_text.ends_with(' ')) unit_text.remove_suffix(1);
        constexpr std::string_view kPieces[] = {"piece", "pieces", "pc", "pcs", "each", "item"};
        if (std::find(std::begin(kPieces), std::end(kPieces), unit_text) != std::end(kPieces)) {
            money_.per = Dimension::number;
            return true;
        }
        const measure::UnitInfo* const unit = unit_text.empty() ? nullptr : measure::find_unit(unit_text);
        constexpr Dimension kPaidFor[] = {Dimension::area, Dimension::length, Dimension::mass, Dimension::time,
                                          Dimension::hides};
        if (unit == nullptr ||
            std::find(std::begin(kPaidFor), std::end(kPaidFor), unit->dimension) == std::end(kPaidFor)) {
            return fail("unknown-unit",
                        fmt::format("nothing is paid for by {} in {}", quoted(unit_text), quoted(text_)),
                        "write an area, a length, a mass, a time, `hide` or `piece`, as in `EUR/sq ft` or `EUR/h`");
        }
        money_.per = unit->dimension;
        money_.per_factor = unit->factor;
        money_.amount.measured.value /= unit->factor;
        money_.amount.measured.u /= unit->factor;
        if (std::isfinite(money_.amount.measured.value) && std::isfinite(money_.amount.measured.u)) return true;
        return fail("out-of-range", "a number in " + quoted(text_) + " is larger than can be reckoned with");
    }

    std::string_view text_;
    std::span<const Currency> currencies_;
    ParsedMoney money_;
    QuantityFault fault_;
};

}  // namespace

std::variant<ParsedMoney, QuantityFault> parse_money(std::string_view text, std::span<const Currency> currencies) {
    return MoneyParser(text, currencies).parse();
}

}  // namespace grainside::evidence
