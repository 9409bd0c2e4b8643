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

// An open-addressed table of 8-byte slots (half a hash and a number), so that tens of thousands of spellings stay in
// the second-level cache; a bit filter in front turns most unknown words away without touching it (shared/performance:
// most words of a listing belong to no term).
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
        return find_hashed(word, length, hash_of(word, length));
    }

    std::size_t size() const noexcept { return first_.size() - 1; }  // distinct numbers given
    std::size_t spellings() const noexcept { return spellings_.size() - 1; }
    // The spelling under which `id` was first made.
    std::string_view text(WordId id) const noexcept {
        const Spelling& spelling = spellings_[first_[id]];
        return {texts_.data() + spelling.text, spelling.length};
    }

private:
    WordId find_hashed(const char* word, std::uint32_t length, std::uint64_t hash) const noexcept {
        if ((filter_[(hash >> 6) & (filter_.size() - 1)] >> (hash & 63) & 1) == 0) return 0;
        const auto half = static_cast<std::uint32_t>(hash >> 32);
        for (std::size_t at = half & mask_;; at = (at + 1) & mask_) {
            const Slot& slot = slots_[at];
            if (slot.spelling == 0) return 0;
            if (slot.half != half) continue;
            const Spelling& spelling = spellings_[slot.spelling];
            if (spelling.length == length && std::memcmp(texts_.data() + spelling.text, word, length) == 0)
                return spelling.id;
        }
    }

    struct Slot {
        std::uint32_t half = 0;      // of the hash
        std::uint32_t spelling = 0;  // index into spellings_; 0 = empty
    };
    struct Spelling {
        std::uint32_t text = 0;  // into texts_
        std::uint32_t length = 0;
        WordId id = 0;
    };
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
    void insert(std::string_view word, std::uint64_t hash, WordId id);
    void rehash(std::size_t slots);

    std::vector<Slot> slots_ = std::vector<Slot>(1024);
    std::size_t mask_ = 1023;
    std::array<std::uint64_t, 4096> filter_{};  // 32 KiB
    std::vector<char> texts_;
    std::vector<Spelling> spellings_{Spelling{}};
    std::vector<std::uint32_t> first_{0};  // by word number: the spelling it was made under
};

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_WORD_TABLE_H
