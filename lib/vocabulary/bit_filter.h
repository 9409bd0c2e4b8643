// A filter in front of a table: turns away most of what the table does not hold.
#ifndef GRAINSIDE_VOCABULARY_BIT_FILTER_H
#define GRAINSIDE_VOCABULARY_BIT_FILTER_H

#include <algorithm>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace grainside::vocabulary {

// Eight bits an entry, so that about one stranger in eight passes however large the table is, and the filter stays in
// a nearer cache than the table does. Hashes are told apart by their highest bits.
class BitFilter {
public:
    BitFilter() { make_room(1); }

    // Forgets everything and makes room for `entries`.
    void make_room(std::size_t entries) {
        const std::size_t bits = std::bit_ceil(std::max(kFewest, entries) * kBitsPerEntry);
        shift_ = kHashBits - std::min(kHashBits - 1, static_cast<unsigned>(std::countr_zero(bits)));
        words_.assign((std::size_t{1} << (kHashBits - shift_)) / 64, 0);
    }
    void insert(std::uint32_t hash) noexcept {
        words_[hash >> shift_ >> 6] |= std::uint64_t{1} << (hash >> shift_ & 63);
    }
    bool may_hold(std::uint32_t hash) const noexcept {
        return (words_[hash >> shift_ >> 6] >> (hash >> shift_ & 63) & 1) != 0;
    }

private:
    static constexpr unsigned kHashBits = 32;
    static constexpr std::size_t kBitsPerEntry = 8;
    static constexpr std::size_t kFewest = 512;

    unsigned shift_ = 0;
    std::vector<std::uint64_t> words_;
};

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_BIT_FILTER_H
