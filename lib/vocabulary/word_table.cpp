#include "vocabulary/word_table.h"

#include <algorithm>

namespace grainside::vocabulary {

namespace {

// find_padded reads 16 bytes; words given while loading need not have that many.
struct Padded {
    explicit Padded(std::string_view word) : bytes(word.begin(), word.end()) { bytes.resize(word.size() + 16); }
    std::string bytes;
};

}  // namespace

WordId WordTable::find(std::string_view word) const {
    const Padded padded(word);
    return find_padded(padded.bytes.data(), static_cast<std::uint32_t>(word.size()));
}

WordId WordTable::intern(std::string_view word) {
    if (const WordId known = find(word); known != 0) return known;
    const auto id = static_cast<WordId>(first_.size());
    first_.emplace_back(static_cast<std::uint32_t>(texts_.size()), static_cast<std::uint32_t>(word.size()));
    ++count_;
    insert(word, id);
    return id;
}

bool WordTable::alias(std::string_view spelling, WordId id) {
    if (const WordId known = find(spelling); known != 0) return known == id;
    insert(spelling, id);
    return true;
}

void WordTable::insert(std::string_view word, WordId id) {
    if ((used_ + 1) * 2 > slots_.size()) grow();
    const Padded padded(word);
    Slot slot;
    std::memcpy(&slot.low, padded.bytes.data(), 8);
    std::memcpy(&slot.high, padded.bytes.data() + 8, 8);  // zeros past the word, as find_padded masks them
    slot.length = static_cast<std::uint32_t>(word.size());
    slot.text = static_cast<std::uint32_t>(texts_.size());
    slot.id = id;
    texts_.insert(texts_.end(), word.begin(), word.end());
    const std::uint64_t hash = mix(slot.low, slot.high, slot.length);
    filter_[(hash >> 6) & (filter_.size() - 1)] |= std::uint64_t{1} << (hash & 63);
    std::size_t at = hash >> 32 & mask_;
    while (slots_[at].id != 0) at = (at + 1) & mask_;
    slots_[at] = slot;
    ++used_;
}

void WordTable::grow() {
    std::vector<Slot> old(slots_.size() * 2);
    old.swap(slots_);
    mask_ = slots_.size() - 1;
    for (const Slot& slot : old) {
        if (slot.id == 0) continue;
        std::size_t at = mix(slot.low, slot.high, slot.length) >> 32 & mask_;
        while (slots_[at].id != 0) at = (at + 1) & mask_;
        slots_[at] = slot;
    }
}

}  // namespace grainside::vocabulary
