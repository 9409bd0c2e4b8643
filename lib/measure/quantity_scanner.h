// The pieces that a written quantity is made of: numbers, units, signs and words, one after another.
//
// Works on a text in plain signs (plain_signs.h). Knows nothing of what the pieces mean together; that is
// quantity_text.cpp. Not thread-safe; one per text.
#ifndef GRAINSIDE_MEASURE_QUANTITY_SCANNER_H
#define GRAINSIDE_MEASURE_QUANTITY_SCANNER_H

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace grainside::measure {

struct ScannedNumber {
    double value = 0;                   // finite
    int last_place = 0;                 // the power of ten of its last digit
    std::optional<double> in_brackets;  // "0.21(2)": 0.02; "0.21(0.02)" too
};

class QuantityScanner {
public:
    enum class Fault : std::uint8_t { none, malformed, decimal_comma, out_of_range };

    // "(0.21 +- 0.02) mm" says the same as "0.21 +- 0.02 mm": the first brackets go where the text begins with them.
    explicit QuantityScanner(std::string plain);

    // Each of these skips spaces first.
    bool at_end();
    char next();  // 0 at the end
    bool take(std::string_view sign);
    bool take_plus_minus() { return take("+-") || take("+/-"); }

    // Digits with an optional sign, fraction, uncertainty in brackets (only where `brackets`) and exponent.
    Fault take_number(ScannedNumber& number, bool brackets);
    // After Fault::decimal_comma: what the number with the comma may have been meant as. Empty where it cannot be.
    struct CommaReadings {
        std::string decimal;        // "349.00" of "349,00"
        std::string thousands;      // "1349.00" of "1,349.00": groups of three digits behind one to three
        std::string first, second;  // the numbers before and behind the comma
    };
    CommaReadings around_comma() const;

    // Up to the next number, sign or "to"; empty where there is no unit. A unit may hold spaces ("N / cm").
    std::string take_unit();

private:
    std::string_view rest() const { return std::string_view(text_).substr(at_); }
    char at(std::size_t place) const { return place < text_.size() ? text_[place] : '\0'; }
    void skip_spaces();
    bool is_range_word(std::size_t place) const;
    std::string_view take_digits();
    Fault take_exponent(int& power);

    std::string text_;
    std::size_t at_ = 0;
    std::size_t number_start_ = 0;
};

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_QUANTITY_SCANNER_H
