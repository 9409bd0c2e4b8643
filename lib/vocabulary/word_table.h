// Folded words to small numbers.
#ifndef GRAINSIDE_VOCABULARY_WORD_TABLE_H
#define GRAINSIDE_VOCABULARY_WORD_TABLE_H

#include <array>
#include <bit>
#include <cstdint>
#include <cstring>
#include <string_view>
#include <vector>

#include "vocabulary/bit_filter.h"

namespace grainside::vocabulary {

using WordId = std::uint32_t;  // 0 = a word of no term

// Two open-addressed tables. Most words have up to 8 folded bytes: they are one integer, which the slot itself holds,
// so that looking one up is a comparison in one cache line. The slots of longer words hold half a hash and point to the
// spelling. A bit filter in front turns most unknown words away without touching either (shared/performance: most words
// of a listing belong to no term); it grows with the tables, so that a larger vocabulary costs no more a word.
//
// REQUIRES of every word: no NUL byte, which the fold reads as a gap between words.
class WordTable {
public:
    // Makes room for about `spellings` spellings; more may come.
    void reserve(std::size_t spellings);
    // The number of `word`, made if new.
    WordId intern(std::string_view word);
    // Lets `spelling` stand for `id` unless it is already a word of its own. Returns whether it does now.
    bool alias(std::string_view spelling, WordId id);
    // Slow lookup for loading: `word` needs no padding.
    WordId find(std::string_view word) const;

    // REQUIRES: 16 bytes from `word` on may be read.
    WordId find_padded(const char* word, std::uint32_t length) const noexcept {
        if (length - 1 < kShort) {
            std::uint64_t key = 0;
            std::memcpy(&key, word, kShort);
            return find_short(key & kLettersOf[length]);
        }
        return find_long({word, length}, hash_of(word, length));
    }

    std::size_t size() const noexcept { return first_.size() - 1; }  // distinct numbers given
    std::size_t spellings() const noexcept { return spellings_.size() - 1; }
    // The spelling under which `id` was first made.
    std::string_view text(WordId id) const noexcept {
        const Spelling& spelling = spellings_[first_[id]];
        return {texts_.data() + spelling.text, spelling.length};
    }

private:
    static constexpr std::uint32_t kShort = sizeof(std::uint64_t);
    static constexpr std::size_t kFirstSlots = 1024;
    static constexpr std::array<std::uint64_t, kShort + 1> kLettersOf = {  // a key's bytes, by the word's length
        0,
        0xFF,
        0xFFFF,
        0xFF'FFFF,
        0xFFFF'FFFF,
        0xFF'FFFF'FFFF,
        0xFFFF'FFFF'FFFF,
        0xFF'FFFF'FFFF'FFFF,
        0xFFFF'FFFF'FFFF'FFFF};
    static_assert(std::endian::native == std::endian::little, "a short word's first byte is its key's lowest");

    struct ShortSlot {
        std::uint64_t key = 0;  // the word, the first byte lowest, then zeros; 0 = empty
        WordId id = 0;
    };
    struct LongSlot {
        std::uint32_t half = 0;      // of the hash
        std::uint32_t spelling = 0;  // index into spellings_; 0 = empty
    };
    struct Spelling {
        std::uint32_t text = 0;  // into texts_
        std::uint32_t length = 0;
        WordId id = 0;
    };

    // Only the highest bits of a product depend on every letter.
    static std::uint32_t half_of(std::uint64_t key) noexcept {
        return static_cast<std::uint32_t>(key * 0x9e3779b97f4a7c15ULL >> 32);
    }
    WordId find_short(std::uint64_t key) const noexcept {
        const std::uint32_t half = half_of(key);
        if (!filter_.may_hold(half)) return 0;
        const ShortSlot* const slots = short_.data();
        for (std::size_t at = half >> short_shift_;; at = (at + 1) & short_mask_) {
            if (slots[at].key == key) return slots[at].id;
            if (slots[at].key == 0) return 0;
        }
    }
    WordId find_long(std::string_view word, std::uint64_t hash) const noexcept {
        const auto half = static_cast<std::uint32_t>(hash >> 32);
        if (!filter_.may_hold(half)) return 0;
        for (std::size_t at = half & long_mask_;; at = (at + 1) & long_mask_) {
            const LongSlot& slot = long_[at];
            if (slot.spelling == 0) return 0;
            if (slot.half != half) continue;
            const Spelling& spelling = spellings_[slot.spelling];
            if (std::string_view(texts_.data() + spelling.text, spelling.length) == word) return spelling.id;
        }
    }

    static std::uint64_t mix(std::uint64_t low, std::uint64_t high, std::uint32_t length) noexcept {
        std::uint64_t hash = (low ^ (length * 0x9e3779b97f4a7c15ULL)) * 0xbf58476d1ce4e5b9ULL;
        hash ^= (high + 0x94d049bb133111ebULL) * 0x9e3779b97f4a7c15ULL;
        hash ^= hash >> 29;
        hash *= 0x94d049bb133111ebULL;
        return hash ^ hash >> 32;
    }
    // The first 16 bytes as two integers; what a longer word has beyond them is folded in 8 bytes at a time.
    static std::uint64_t hash_of(const char* word, std::uint32_t length) noexcept {
        std::uint64_t low = 0;
        std::uint64_t high = 0;
        std::memcpy(&low, word, 8);
        std::memcpy(&high, word + 8, 8);
        const std::uint32_t kept = length < 16 ? length : 16;
        low &= kept >= 8 ? ~std::uint64_t{0} : (std::uint64_t{1} << (8 * kept)) - 1;
        high &= kept >= 16 ? ~std::uint64_t{0} : kept <= 8 ? 0 : (std::uint64_t{1} << (8 * (kept - 8))) - 1;
        std::uint64_t hash = mix(low, high, length);
        for (std::uint32_t at = 16; at + 8 <= length; at += 8) {
            std::uint64_t more = 0;
            std::memcpy(&more, word + at, 8);
            hash = mix(hash, more, at);
        }
        return hash;
    }

    class Wanted;
    WordId find(const Wanted& wanted) const noexcept;
    void insert(const Wanted& wanted, WordId id);
    void insert_short(std::uint64_t key, WordId id) noexcept;
    void insert_long(LongSlot slot) noexcept;
    void rehash_short(std::size_t slots);
    void rehash_long(std::size_t slots);
    void rebuild_filter(std::size_t spellings);

    std::vector<ShortSlot> short_ = std::vector<ShortSlot>(kFirstSlots);
    std::size_t short_mask_ = kFirstSlots - 1;
    unsigned short_shift_ = 32 - static_cast<unsigned>(std::countr_zero(kFirstSlots));  // leaves the highest bits
    std::size_t shorts_ = 0;
    std::vector<LongSlot> long_ = std::vector<LongSlot>(kFirstSlots);
    std::size_t long_mask_ = kFirstSlots - 1;
    std::size_t longs_ = 0;
    BitFilter filter_;
    std::size_t filter_room_ = 0;
    std::vector<char> texts_;
    std::vector<Spelling> spellings_{Spelling{}};
    std::vector<std::uint32_t> first_{0};  // by word number: the spelling it was made under
};

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_WORD_TABLE_H
