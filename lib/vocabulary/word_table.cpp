#include "vocabulary/word_table.h"

#include <algorithm>
#include <array>
#include <bit>
#include <string>

namespace grainside::vocabulary {

// A word given while loading, with its key or hash. Hashing reads 16 bytes, and such a word need not have that many.
class WordTable::Wanted {
public:
    explicit Wanted(std::string_view word) : word_(word) {
        if (is_short()) {
            std::copy(word.begin(), word.end(), few_.begin());
            std::memcpy(&number_, few_.data(), kShort);
            return;
        }
        constexpr std::size_t kPadding = 16;
        const auto length = static_cast<std::uint32_t>(word.size());
        if (word.size() + kPadding > few_.size()) {
            std::string padded(word);
            padded.resize(word.size() + kPadding);
            number_ = hash_of(padded.data(), length);
        } else {
            std::copy(word.begin(), word.end(), few_.begin());
            number_ = hash_of(few_.data(), length);
        }
    }
    bool is_short() const noexcept { return word_.size() - 1 < kShort; }
    std::string_view word() const noexcept { return word_; }
    std::uint64_t key() const noexcept { return number_; }   // REQUIRES: is_short()
    std::uint64_t hash() const noexcept { return number_; }  // REQUIRES: !is_short()
    std::uint32_t half() const noexcept {
        return is_short() ? half_of(number_) : static_cast<std::uint32_t>(number_ >> 32);
    }

private:
    std::string_view word_;
    std::uint64_t number_ = 0;
    std::array<char, 64> few_{};  // enough for nearly every word: loading looks tens of thousands of them up
};

WordId WordTable::find(const Wanted& wanted) const noexcept {
    return wanted.is_short() ? find_short(wanted.key()) : find_long(wanted.word(), wanted.hash());
}

WordId WordTable::find(std::string_view word) const {
    return find(Wanted(word));
}

WordId WordTable::intern(std::string_view word) {
    const Wanted wanted(word);
    if (const WordId known = find(wanted); known != 0) return known;
    const auto id = static_cast<WordId>(first_.size());
    first_.push_back(static_cast<std::uint32_t>(spellings_.size()));
    insert(wanted, id);
    return id;
}

bool WordTable::alias(std::string_view spelling, WordId id) {
    const Wanted wanted(spelling);
    if (const WordId known = find(wanted); known != 0) return known == id;
    insert(wanted, id);
    return true;
}

void WordTable::insert(const Wanted& wanted, WordId id) {
    const std::string_view word = wanted.word();
    if (wanted.is_short()) {
        if (++shorts_ * 2 > short_.size()) rehash_short(short_.size() * 2);
        insert_short(wanted.key(), id);
    } else {
        if (++longs_ * 2 > long_.size()) rehash_long(long_.size() * 2);
        insert_long({wanted.half(), static_cast<std::uint32_t>(spellings_.size())});
    }
    spellings_.push_back({static_cast<std::uint32_t>(texts_.size()), static_cast<std::uint32_t>(word.size()), id});
    texts_.insert(texts_.end(), word.begin(), word.end());
    if (spellings_.size() > filter_room_) {
        rebuild_filter(2 * spellings_.size());
    } else {
        filter_.insert(wanted.half());
    }
}

void WordTable::insert_short(std::uint64_t key, WordId id) noexcept {
    std::size_t at = half_of(key) >> short_shift_;
    while (short_[at].key != 0) at = (at + 1) & short_mask_;
    short_[at] = {key, id};
}

void WordTable::insert_long(LongSlot slot) noexcept {
    std::size_t at = slot.half & long_mask_;
    while (long_[at].spelling != 0) at = (at + 1) & long_mask_;
    long_[at] = slot;
}

void WordTable::reserve(std::size_t spellings) {
    constexpr std::size_t kUsualLength = 8;
    texts_.reserve(spellings * kUsualLength);
    spellings_.reserve(spellings);
    // About half of the spellings of a vocabulary are short.
    if (const std::size_t slots = std::bit_ceil(spellings); slots > short_.size()) rehash_short(slots);
    if (const std::size_t slots = std::bit_ceil(spellings); slots > long_.size()) rehash_long(slots);
    if (spellings > filter_room_) rebuild_filter(spellings);
}

void WordTable::rehash_short(std::size_t slots) {
    std::vector<ShortSlot> old(slots);
    old.swap(short_);
    short_mask_ = slots - 1;
    short_shift_ = 32 - static_cast<unsigned>(std::countr_zero(slots));
    for (const ShortSlot& slot : old) {
        if (slot.key != 0) insert_short(slot.key, slot.id);
    }
}

void WordTable::rehash_long(std::size_t slots) {
    std::vector<LongSlot> old(slots);
    old.swap(long_);
    long_mask_ = slots - 1;
    for (const LongSlot& slot : old) {
        if (slot.spelling != 0) insert_long(slot);
    }
}

void WordTable::rebuild_filter(std::size_t spellings) {
    filter_room_ = spellings;
    filter_.make_room(spellings);
    for (const ShortSlot& slot : short_) {
        if (slot.key != 0) filter_.insert(half_of(slot.key));
    }
    for (const LongSlot& slot : long_) {
        if (slot.spelling != 0) filter_.insert(slot.half);
    }
}

}  // namespace grainside::vocabulary
