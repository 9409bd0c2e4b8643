#include "measure/plain_signs.h"

#include <algorithm>
#include <iterator>

#include "document/utf8.h"

namespace grainside::measure {
namespace {

struct Sign {
    char32_t point;
    std::string_view plain;
};

// A raised digit gets a "^": "5" with a raised 2 must not turn into 52. A degree sign is spelled out for the same
// reason.
constexpr Sign kSigns[] = {
    {0x09, " "},                           // tab
    {0xA0, " "},                           // no-break space
    {0xB0, "deg"},                         // degree sign
    {0xB1, "+-"},                          // plus-minus
    {0xB2, "^2"},                          // raised 2
    {0xB3, "^3"},                          // raised 3
    {0xB5, "u"},                           // micro sign
    {0xB7, "."},                           // raised dot
    {0xBA, "deg"},                         // the ordinal mark that many keyboards have instead
    {0x3BC, "u"},                          // Greek mu
    {0x2009, " "},                         // thin space
    {0x200A, " "},                         // hair space
    {0x202F, " "},                         // narrow no-break space
    {0x2010, "-"},                         // hyphen
    {0x2011, "-"},                         // no-break hyphen
    {0x2012, "-"},                         // figure dash
    {0x2013, "-"},                         // en dash
    {0x201D, "\""},                        // closing quotation mark, typed for inches
    {0x2030, "permille"}, {0x2033, "\""},  // double prime
    {0x2103, "degC"},                      // degree Celsius in one character
    {0x2212, "-"},                         // minus
    {0x2264, "<="},       {0x2265, ">="},
};

}  // namespace

std::optional<std::string> plain_signs(std::string_view text) {
    std::string plain;
    plain.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        const document::DecodedChar decoded = document::decode_utf8(text, at);
        if (!decoded.valid) return std::nullopt;
        at += decoded.length;
        if (decoded.point >= 0x20 && decoded.point < 0x7F) {
            plain += static_cast<char>(decoded.point);
            continue;
        }
        const auto* const sign = std::find_if(std::begin(kSigns), std::end(kSigns),
                                              [&](const Sign& known) { return known.point == decoded.point; });
        if (sign == std::end(kSigns)) return std::nullopt;
        plain += sign->plain;
    }
    return plain;
}

}  // namespace grainside::measure
