// Folded words to small numbers.
#ifndef GRAINSIDE_VOCABULARY_WORD_TABLE_H
#define GRAINSIDE_VOCABULARY_WORD_TABLE_H

#include <array>
#include <cstdint>
#include <cstring>
#include <string>
#include <string_view>
#include <vector>

namespace grainside::vocabulary {

using WordId = std::uint32_t;  // 0 = a word of no term

// An open-addressed table. Words of up to 16 bytes are compared as two integers; an 8 KiB bit filter in front turns most
// unknown words away without touching the table (shared/performance: most words of a listing belong to no term).
class WordTable {
public:
    // The number of `word`, made if new.
    WordId intern(std::string_view word);
    // Lets `spelling` stand for `id` unless it is already a word of its own. Returns whether it does now.
    bool alias(std::string_view spelling, WordId id);
    // Slow lookup for loading: `word` needs no padding.
    WordId find(std::string_view word) const;

    // REQUIRES: 16 bytes from `word` on may be read.
    WordId find_padded(const char* word, std::uint32_t length) const noexcept {
        std::uint64_t low = 0;
        std::uint64_t high = 0;
        std::memcpy(&low, word, 8);
        std::memcpy(&high, word + 8, 8);
        const std::uint32_t kept = length < 16 ? length : 16;
        low &= kept >= 8 ? ~std::uint64_t{0} : (std::uint64_t{1} << (8 * kept)) - 1;
        high &= kept >= 16 ? ~std::uint64_t{0} : kept <= 8 ? 0 : (std::uint64_t{1} << (8 * (kept - 8))) - 1;
        const std::uint64_t hash = mix(low, high, length);
        if ((filter_[(hash >> 6) & (filter_.size() - 1)] >> (hash & 63) & 1) == 0) return 0;
        for (std::size_t at = hash >> 32 & mask_;; at = (at + 1) & mask_) {
            const Slot& slot = slots_[at];
            if (slot.id == 0) return 0;
            if (slot.low == low && slot.high == high && slot.length == length &&
                (length <= 16 || std::memcmp(texts_.data() + slot.text, word, length) == 0)) {
                return slot.id;
            }
        }
    }

    std::size_t size() const noexcept { return count_; }  // distinct numbers given
    std::size_t spellings() const noexcept { return used_; }
    // The spelling under which `id` was first made.
    std::string_view text(WordId id) const noexcept { return {texts_.data() + first_[id].first, first_[id].second}; }

private:
    struct Slot {
        std::uint64_t low = 0;
        std::uint64_t high = 0;
        std::uint32_t length = 0;
        std::uint32_t text = 0;
        WordId id = 0;
        std::uint32_t unused = 0;
    };
    static std::uint64_t mix(std::uint64_t low, std::uint64_t high, std::uint32_t length) noexcept {
        std::uint64_t hash = (low ^ (length * 0x9e3779b97f4a7c15ULL)) * 0xbf58476d1ce4e5b9ULL;
        hash ^= (high + 0x94d049bb133111ebULL) * 0x9e3779b97f4a7c15ULL;
        hash ^= hash >> 29;
        hash *= 0x94d049bb133111ebULL;
        return hash ^ hash >> 32;
    }
    void insert(std::string_view word, WordId id);
    void grow();

    std::vector<Slot> slots_ = std::vector<Slot>(1024);
    std::size_t mask_ = 1023;
    std::size_t used_ = 0;
    std::size_t count_ = 0;
    std::array<std::uint64_t, 1024> filter_{};
    std::vector<char> texts_;
    std::vector<std::pair<std::uint32_t, std::uint32_t>> first_{{0, 0}};
};

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_WORD_TABLE_H
