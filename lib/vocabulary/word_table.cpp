#include "vocabulary/word_table.h"

#include <algorithm>
#include <array>
#include <bit>
#include <string>

namespace grainside::vocabulary {

namespace {

// find_padded reads 16 bytes; words given while loading need not have that many.
class Padded {
public:
    explicit Padded(std::string_view word) : length_(static_cast<std::uint32_t>(word.size())) {
        constexpr std::size_t kPadding = 16;
        if (word.size() + kPadding > few_.size()) {
            many_.assign(word.begin(), word.end());
            many_.resize(word.size() + kPadding);
        } else {
            std::copy(word.begin(), word.end(), few_.begin());
        }
    }
    std::uint32_t length() const { return length_; }
    const char* data() const { return many_.empty() ? few_.data() : many_.data(); }

private:
    std::uint32_t length_;
    std::array<char, 64> few_{};  // nearly every word: loading looks tens of thousands of them up
    std::string many_;
};

}  // namespace

WordId WordTable::find(std::string_view word) const {
    const Padded padded(word);
    return find_padded(padded.data(), padded.length());
}

WordId WordTable::intern(std::string_view word) {
    const Padded padded(word);
    const std::uint64_t hash = hash_of(padded.data(), padded.length());
    if (const WordId known = find_hashed(padded.data(), padded.length(), hash); known != 0) return known;
    const auto id = static_cast<WordId>(first_.size());
    first_.push_back(static_cast<std::uint32_t>(spellings_.size()));
    insert(word, hash, id);
    return id;
}

bool WordTable::alias(std::string_view spelling, WordId id) {
    const Padded padded(spelling);
    const std::uint64_t hash = hash_of(padded.data(), padded.length());
    if (const WordId known = find_hashed(padded.data(), padded.length(), hash); known != 0) return known == id;
    insert(spelling, hash, id);
    return true;
}

void WordTable::insert(std::string_view word, std::uint64_t hash, WordId id) {
    if (spellings_.size() * 2 > slots_.size()) rehash(slots_.size() * 2);
    filter_[(hash >> 6) & (filter_.size() - 1)] |= std::uint64_t{1} << (hash & 63);
    const auto half = static_cast<std::uint32_t>(hash >> 32);
    std::size_t at = half & mask_;
    while (slots_[at].spelling != 0) at = (at + 1) & mask_;
    slots_[at] = {half, static_cast<std::uint32_t>(spellings_.size())};
    spellings_.push_back({static_cast<std::uint32_t>(texts_.size()), static_cast<std::uint32_t>(word.size()), id});
    texts_.insert(texts_.end(), word.begin(), word.end());
}

void WordTable::reserve(std::size_t spellings) {
    constexpr std::size_t kUsualLength = 8;
    texts_.reserve(spellings * kUsualLength);
    spellings_.reserve(spellings);
    if (const std::size_t slots = std::bit_ceil(2 * spellings); slots > slots_.size()) rehash(slots);
}

void WordTable::rehash(std::size_t slots) {
    std::vector<Slot> old(slots);
    old.swap(slots_);
    mask_ = slots_.size() - 1;
    for (const Slot& slot : old) {
        if (slot.spelling == 0) continue;
        std::size_t at = slot.half & mask_;
        while (slots_[at].spelling != 0) at = (at + 1) & mask_;
        slots_[at] = slot;
    }
}

}  // namespace grainside::vocabulary
