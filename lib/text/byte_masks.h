// What 64 bytes are, as bit masks (bit i = byte i), and their copy in lower case.
#ifndef GRAINSIDE_TEXT_BYTE_MASKS_H
#define GRAINSIDE_TEXT_BYTE_MASKS_H

#include <bit>
#include <cstddef>
#include <cstdint>

#if defined(__SSE2__)
#include <emmintrin.h>
#endif

namespace grainside::text {

inline constexpr std::size_t kBlock = 64;

struct ByteMasks {
    std::uint64_t word = 0;       // ASCII letters and digits
    std::uint64_t digit = 0;      // ASCII digits
    std::uint64_t capital = 0;    // ASCII capital letters
    std::uint64_t space = 0;      // ' ' only
    std::uint64_t continues = 0;  // may carry on the word before it: non-ASCII bytes, apostrophes, character references

    // What is left when the first `count` bytes are passed over. REQUIRES: count < kBlock.
    ByteMasks shifted_down(std::size_t count) const {
        return {word >> count, digit >> count, capital >> count, space >> count, continues >> count};
    }
};

// Reads kBlock bytes from `bytes` and writes as many to `lower`.
inline ByteMasks classify_plainly(const char* bytes, char* lower) {
    ByteMasks masks;
    for (std::size_t i = 0; i < kBlock; ++i) {
        const std::uint64_t bit = std::uint64_t{1} << i;
        const char c = bytes[i];
        const bool capital = c >= 'A' && c <= 'Z';
        const bool digit = c >= '0' && c <= '9';
        lower[i] = capital ? static_cast<char>(c | 0x20) : c;
        if (capital) masks.capital |= bit;
        if (digit) masks.digit |= bit;
        if (capital || digit || (c >= 'a' && c <= 'z')) masks.word |= bit;
        if (c == ' ') masks.space |= bit;
        if (static_cast<std::uint8_t>(c) >= 0x80 || c == '\'' || c == '&') masks.continues |= bit;
    }
    return masks;
}

#if defined(__SSE2__)

inline ByteMasks classify(const char* bytes, char* lower) {
    // Comparisons are signed, so that non-ASCII bytes are below every bound and need no test of their own.
    const auto between = [](__m128i v, char before_first, char past_last) {
        return _mm_and_si128(_mm_cmpgt_epi8(v, _mm_set1_epi8(before_first)),
                             _mm_cmpgt_epi8(_mm_set1_epi8(past_last), v));
    };
    const auto is = [](__m128i v, char c) { return _mm_cmpeq_epi8(v, _mm_set1_epi8(c)); };
    ByteMasks masks;
    for (std::size_t i = 0; i < kBlock; i += sizeof(__m128i)) {
        const auto bits = [i](__m128i v) {
            return static_cast<std::uint64_t>(static_cast<std::uint32_t>(_mm_movemask_epi8(v))) << i;
        };
        const __m128i v = _mm_loadu_si128(reinterpret_cast<const __m128i*>(bytes + i));
        const __m128i capital = between(v, 'A' - 1, 'Z' + 1);
        const __m128i low = _mm_or_si128(v, _mm_and_si128(capital, _mm_set1_epi8(0x20)));
        const __m128i digit = between(v, '0' - 1, '9' + 1);
        _mm_storeu_si128(reinterpret_cast<__m128i*>(lower + i), low);
        masks.capital |= bits(capital);
        masks.digit |= bits(digit);
        masks.word |= bits(_mm_or_si128(digit, between(low, 'a' - 1, 'z' + 1)));
        masks.space |= bits(is(v, ' '));
        masks.continues |= bits(_mm_or_si128(v, _mm_or_si128(is(v, '\''), is(v, '&'))));
    }
    return masks;
}

#else

inline ByteMasks classify(const char* bytes, char* lower) {
    return classify_plainly(bytes, lower);
}

#endif

}  // namespace grainside::text

#endif  // GRAINSIDE_TEXT_BYTE_MASKS_H
