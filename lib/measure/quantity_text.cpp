#include "measure/quantity_text.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "document/faults.h"
#include "document/inert_text.h"
#include "measure/full_double.h"
#include "measure/plain_signs.h"
#include "measure/quantity_scanner.h"
#include "measure/repeats.h"

namespace grainside::measure {
namespace {

constexpr double kLeastCoverage = 0.5;
constexpr double kMostCoverage = 20;
constexpr std::size_t kLeastRepeats = 3;

// "a time", "an area".
std::string with_article(Dimension dimension) {
    const std::string_view name = name_of(dimension);
    const bool vowel = std::string_view("aeiou").find(name[0]) != std::string_view::npos;
    return fmt::format("{} {}", vowel ? "an" : "a", name);
}

struct Operand {
    ScannedNumber number;
    std::string unit_text;  // empty where none is written
};

// Reads one text. Every step that can fail returns false with `fault_` set.
class QuantityParser {
public:
    QuantityParser(std::string_view original, std::string plain, Dimension expected, CommaHint comma)
        : original_(original), scanner_(std::move(plain)), expected_(expected), comma_(comma) {
        quantity_.dimension = expected;
    }

    QuantityOrFault parse() {
        if (read_whole() && check_full()) return quantity_;
        return std::move(fault_);
    }

private:
    bool fail(std::string_view code, std::string message, std::string hint = {}) {
        fault_ = {code, std::move(message), std::move(hint)};
        return false;
    }

    std::string quoted() const { return '`' + document::inert_text(original_) + '`'; }

    std::string example(std::string_view number) const {
        const std::string_view unit = working_unit(expected_).name;
        return fmt::format("`{}{}{}`", number, unit.empty() ? "" : " ", unit);
    }

    bool malformed() {
        return fail("malformed", quoted() + " is not a quantity",
                    fmt::format("write it as {}, {} or {}", example("0.21"),
                                example(fmt::format("0.21 {} 0.02", kPlusMinus)), example("0.20-0.22")));
    }

    // --- pieces ---------------------------------------------------------------------------------------------------

    bool read_number(ScannedNumber& number, bool brackets) {
        switch (scanner_.take_number(number, brackets)) {
            case QuantityScanner::Fault::none:
                break;
            case QuantityScanner::Fault::malformed:
                return malformed();
            case QuantityScanner::Fault::decimal_comma:
                return decimal_comma();
            case QuantityScanner::Fault::out_of_range:
                return out_of_range();
        }
        return !number.in_brackets || *number.in_brackets != 0 || zero_uncertainty();
    }

    bool read_operand(Operand& operand) {
        if (!read_number(operand.number, true)) return false;
        operand.unit_text = scanner_.take_unit();
        return true;
    }

    bool decimal_comma() {
        const QuantityScanner::CommaReadings readings = scanner_.around_comma();
        std::vector<std::string> may;
        std::vector<std::string> write;
        const auto offer = [&](bool possible, std::string_view what, std::string how) {
            if (!possible) return;
            may.emplace_back(what);
            write.push_back(std::move(how));
        };
        const bool thousands = !readings.thousands.empty();
        offer(!readings.decimal.empty(), "be a decimal comma",
              fmt::format("`{}` for {}", readings.decimal, thousands ? "a decimal comma" : "one number"));
        offer(thousands, "part thousands", fmt::format("`{}` for thousands", readings.thousands));
        offer(comma_ == CommaHint::one_or_two, "stand between repeats",
              fmt::format("`{}, {}` for two", readings.first, readings.second));
        if (may.empty()) return malformed();
        return fail("decimal-comma", fmt::format("the comma in {} may {}", quoted(), fmt::join(may, " or ")),
                    fmt::format("write {}", fmt::join(write, ", ")));
    }

    bool out_of_range() {
        return fail("out-of-range", "a number in " + quoted() + " is larger or smaller than can be reckoned with");
    }

    // --- units ----------------------------------------------------------------------------------------------------

    std::string unit_hint(std::string_view written) const {
        if (expected_ == Dimension::number) return "a plain number has no unit";
        if (written == "ppt") {
            return "it stands for parts per thousand and per trillion: write `\xE2\x80\xB0` or `ng/kg`";
        }
        return document::suggestion(written, unit_names(expected_));
    }

    const UnitInfo* unit_of(const std::string& written) {
        const UnitInfo* const unit = find_unit(written);
        if (unit == nullptr) {
            fail("unknown-unit", fmt::format("the unit `{}` in {} is not known", written, quoted()),
                 unit_hint(written));
            return nullptr;
        }
        if (unit->dimension == expected_) return unit;
        if (written.empty()) {
            fail("missing-unit", fmt::format("{} has no unit, and {} needs one", quoted(), with_article(expected_)),
                 unit_hint(written));
        } else {
            fail("wrong-unit",
                 fmt::format("`{}` is a unit of {}, where {} is wanted", written, name_of(unit->dimension),
                             with_article(expected_)),
                 unit_hint({}));
        }
        return nullptr;
    }

    // One unit for every operand: its own, or the only one that any of them names.
    bool units_of(const std::vector<Operand>& operands, std::vector<const UnitInfo*>& units) {
        std::string only;
        std::size_t named = 0;
        for (const Operand& operand : operands) {
            if (operand.unit_text.empty()) continue;
            ++named;
            only = operand.unit_text;
        }
        if (named > 1 && named < operands.size()) {
            return fail("mixed-units", "some of the values in " + quoted() + " have a unit and others have none",
                        "write the unit once at the end, or behind each value");
        }
        for (const Operand& operand : operands) {
            units.push_back(unit_of(operand.unit_text.empty() ? only : operand.unit_text));
            if (units.back() == nullptr) return false;
        }
        quantity_.unit = units.front();
        return true;
    }

    bool unit_of_only(const Operand& operand) {
        quantity_.unit = unit_of(operand.unit_text);
        if (quantity_.unit == nullptr) return false;
        quantity_.measured.value = to_working(operand.number.value, *quantity_.unit);
        return true;
    }

    // --- forms ----------------------------------------------------------------------------------------------------

    bool read_whole() {
        if (scanner_.at_end()) return fail("empty", fmt::format("{} is missing", with_article(expected_)));
        if (scanner_.take(">=") || scanner_.take(">")) {
            return fail("open-ended", quoted() + " has no upper end, so it has neither a value nor an uncertainty",
                        "write the range it lies in, such as " + example("5-8"));
        }
        if (scanner_.take("<=") || scanner_.take("<")) return read_below_detection();
        if (scanner_.take("=") || scanner_.take("exactly")) return read_exact();
        Operand first;
        if (!read_operand(first)) return false;
        if (first.number.in_brackets) return read_concise(first);
        if (scanner_.at_end()) return unit_of_only(first);
        if (scanner_.take_plus_minus()) return read_plus_minus(first);
        if (scanner_.take("-") || scanner_.take("to")) return read_range(std::move(first));
        if (scanner_.next() == ',' || scanner_.next() == ';') return read_repeats(std::move(first));
        return malformed();
    }

    bool read_exact() {
        Operand operand;
        if (!read_operand(operand)) return false;
        if (operand.number.in_brackets || !scanner_.at_end()) return malformed();
        quantity_.states_uncertainty = true;
        quantity_.exact = true;
        return unit_of_only(operand);
    }

    bool read_below_detection() {
        Operand operand;
        if (!read_operand(operand)) return false;
        if (operand.number.in_brackets || !scanner_.at_end()) return malformed();
        if (!unit_of_only(operand)) return false;
        const double bound = quantity_.measured.value;
        if (expected_ == Dimension::temperature || bound <= 0) {
            return fail("not-positive", quoted() + " does not lie between zero and something above it",
                        "write the range it lies in, such as " + example("5-8"));
        }
        set_rectangular(0, bound);
        quantity_.below_detection = true;
        return true;
    }

    bool read_concise(const Operand& operand) {
        if (!scanner_.at_end()) return malformed();
        if (!unit_of_only(operand)) return false;
        set_uncertainty(*operand.number.in_brackets * quantity_.unit->factor);
        return true;
    }

    bool read_range(Operand first) {
        std::vector<Operand> ends = {std::move(first), {}};
        if (!read_operand(ends[1])) return false;
        if (ends[1].number.in_brackets || !scanner_.at_end()) return malformed();
        std::vector<const UnitInfo*> units;
        if (!units_of(ends, units)) return false;
        const double low = to_working(ends[0].number.value, *units[0]);
        const double high = to_working(ends[1].number.value, *units[1]);
        if (low >= high) {
            return fail("range-reversed", "the range " + quoted() + " does not rise", "write the lower end first");
        }
        set_rectangular(low, high);
        return true;
    }

    bool read_repeats(Operand first) {
        std::vector<Operand> operands = {std::move(first)};
        while (scanner_.take(",") || scanner_.take(";")) {
            operands.emplace_back();
            if (!read_operand(operands.back())) return false;
            if (operands.back().number.in_brackets) return malformed();
        }
        if (!scanner_.at_end()) return malformed();
        std::vector<const UnitInfo*> units;
        if (!units_of(operands, units)) return false;
        if (operands.size() < kLeastRepeats) {
            return fail("too-few-repeats", fmt::format("{} has two readings, too few to tell their spread", quoted()),
                        fmt::format("at least {} readings, or the range {}", kLeastRepeats, example("0.20-0.22")));
        }
        std::vector<double> readings;
        double step = 0;
        for (std::size_t i = 0; i < operands.size(); ++i) {
            readings.push_back(to_working(operands[i].number.value, *units[i]));
            step = std::max(step, std::pow(10.0, operands[i].number.last_place) * units[i]->factor);
        }
        quantity_.measured = mean_of(readings, step);
        quantity_.distribution = std::isinf(quantity_.measured.dof) ? Distribution::normal : Distribution::student_t;
        quantity_.states_uncertainty = true;
        return true;
    }

    bool read_plus_minus(const Operand& value) {
        if (scanner_.next() == '-') return fail("bad-uncertainty", "the uncertainty in " + quoted() + " is negative");
        Operand spread;
        if (!read_number(spread.number, false)) return false;
        // "0.21 +- 0.02 (k=2) mm" and "0.21 +- 0.02 mm (k=2)" are both met.
        double coverage = kCustomaryCoverage;
        bool has_coverage = false;
        if (!read_coverage(coverage, has_coverage)) return false;
        spread.unit_text = scanner_.take_unit();
        if (!has_coverage && !read_coverage(coverage, has_coverage)) return false;
        if (!scanner_.at_end()) return malformed();
        if (spread.number.value == 0) return zero_uncertainty();

        double half_width = 0;
        if (!half_width_of(value, spread, half_width)) return false;
        set_uncertainty(half_width / coverage);
        return true;
    }

    // In the working unit; sets value and unit of the quantity too.
    bool half_width_of(const Operand& value, const Operand& spread, double& half_width) {
        const UnitInfo* const spread_unit = find_unit(spread.unit_text);
        const bool in_percent = spread_unit == &working_unit(Dimension::share);
        if (in_percent && is_relative(value)) {
            if (!unit_of_only(value)) return false;
            half_width = std::abs(quantity_.measured.value) * spread.number.value / 100;
            if (half_width == 0) return zero_uncertainty();
            return true;
        }
        const std::vector<Operand> operands = {value, spread};
        std::vector<const UnitInfo*> units;
        if (!units_of(operands, units)) return false;
        quantity_.measured.value = to_working(value.number.value, *units[0]);
        half_width = spread.number.value * units[1]->factor;
        return true;
    }

    // Whether a spread in % is one of the value, not one in percentage points.
    bool is_relative(const Operand& value) const {
        if (expected_ == Dimension::temperature) return false;
        if (expected_ != Dimension::share) return true;
        return !value.unit_text.empty() && find_unit(value.unit_text) != &working_unit(Dimension::share);
    }

    // "(k=2)", ", k = 2", "(s)" or "(u)"; nothing is right too.
    bool read_coverage(double& coverage, bool& found) {
        const bool bracket = scanner_.take("(");
        if (!bracket && !scanner_.take(",")) return true;
        found = true;
        if (bracket && (scanner_.take("s") || scanner_.take("u"))) {
            coverage = 1;
            return scanner_.take(")") || malformed();
        }
        ScannedNumber factor;
        if (!scanner_.take("k") || !scanner_.take("=")) return malformed();
        if (!read_number(factor, false)) return false;
        if (bracket && !scanner_.take(")")) return malformed();
        coverage = factor.value;
        if (coverage >= kLeastCoverage && coverage <= kMostCoverage) return true;
        return fail("bad-uncertainty", fmt::format("the coverage factor in {} is not between {} and {}", quoted(),
                                                   kLeastCoverage, kMostCoverage));
    }

    bool zero_uncertainty() {
        return fail("bad-uncertainty", "the uncertainty in " + quoted() + " is zero",
                    "write `exactly` before a value that has none");
    }

    void set_uncertainty(double u) {
        quantity_.measured.u = u;
        quantity_.states_uncertainty = true;
    }

    void set_rectangular(double low, double high) {
        // Halves first: the sum of two large ends may be more than a double holds.
        quantity_.measured.value = low / 2 + high / 2;
        quantity_.distribution = Distribution::rectangular;
        set_uncertainty((high / 2 - low / 2) / std::sqrt(3.0));
    }

    // Conversions and means can leave what a double holds, at either end.
    bool check_full() {
        const Measured& measured = quantity_.measured;
        const bool lost = quantity_.states_uncertainty && !quantity_.exact && measured.u == 0;
        if (is_full(measured.value) && is_full(measured.u) && !lost) return true;
        return out_of_range();
    }

    std::string_view original_;
    QuantityScanner scanner_;
    Dimension expected_;
    CommaHint comma_;
    ParsedQuantity quantity_;
    QuantityFault fault_;
};

}  // namespace

QuantityOrFault parse_quantity(std::string_view text, Dimension expected, CommaHint comma) {
    if (text.size() > kMaxQuantityBytes) {
        return QuantityFault{"too-long", fmt::format("a quantity of {} bytes is too long", text.size()),
                             fmt::format("at most {} bytes", kMaxQuantityBytes)};
    }
    std::optional<std::string> plain = plain_signs(text);
    if (!plain) {
        return QuantityFault{"malformed", '`' + document::inert_text(text) + "` holds a sign that no quantity has", {}};
    }
    return QuantityParser(text, std::move(*plain), expected, comma).parse();
}

}  // namespace grainside::measure
