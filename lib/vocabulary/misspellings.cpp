#include "vocabulary/misspellings.h"

#include <algorithm>

namespace grainside::vocabulary {

namespace {

constexpr std::uint64_t kBase = 0x9e3779b97f4a7c15ULL;

std::uint64_t step(std::uint64_t hash, char c) {
    return (hash + static_cast<unsigned char>(c) + 1) * kBase;
}

std::uint64_t finish(std::uint64_t hash) {
    return hash ^ hash >> 31;
}

std::uint32_t half_of(std::uint64_t hash) {
    return static_cast<std::uint32_t>(finish(hash));
}

std::uint64_t hash_of(std::string_view word) {
    std::uint64_t hash = 0;
    for (char c : word) hash = step(hash, c);
    return finish(hash);
}

// Calls `visit` with half the hash of `word` and of every form with one letter after the first removed. The hash is a
// polynomial, so each form costs a multiplication: prefix and suffix are joined.
template <typename Visit>
void for_each_deletion(std::string_view word, Visit visit) {
    std::array<std::uint64_t, kLongestMisspelt + 1> prefix;  // filled as far as the word goes
    prefix[0] = 0;
    for (std::size_t i = 0; i < word.size(); ++i) prefix[i + 1] = step(prefix[i], word[i]);
    visit(half_of(prefix[word.size()]));
    std::uint64_t suffix = 0;
    std::uint64_t power = 1;
    for (std::size_t i = word.size(); i-- > 1;) {
        // Without letter i: prefix up to i, then the letters after it.
        visit(half_of(prefix[i] * power + suffix));
        power *= kBase;
        suffix += (static_cast<unsigned char>(word[i]) + std::uint64_t{1}) * power;
    }
}

// At most one letter dropped, added, changed, or two neighbours swapped.
bool within_one_edit(std::string_view a, std::string_view b) {
    if (a.size() > b.size()) std::swap(a, b);
    if (b.size() - a.size() > 1) return false;
    std::size_t i = 0;
    while (i < a.size() && a[i] == b[i]) ++i;
    if (a.size() < b.size()) return a.substr(i) == b.substr(i + 1);
    if (i == a.size()) return true;
    if (a.substr(i + 1) == b.substr(i + 1)) return true;
    return i + 1 < a.size() && a[i] == b[i + 1] && a[i + 1] == b[i] && a.substr(i + 2) == b.substr(i + 2);
}

bool has_fitting_length(std::string_view word) {
    return word.size() >= kShortestMisspelt && word.size() <= kLongestMisspelt;
}

}  // namespace

void Misspellings::add(std::string_view word, WordId id) {
    if (!has_fitting_length(word)) return;
    const auto index = static_cast<std::uint32_t>(words_.size());
    lengths_[static_cast<unsigned char>(word.front())] |= std::uint64_t{1} << word.size();
    words_.push_back({static_cast<std::uint32_t>(texts_.size()), static_cast<std::uint32_t>(word.size()), id});
    texts_.insert(texts_.end(), word.begin(), word.end());
    for_each_deletion(word, [&](std::uint32_t half) { entries_.push_back({half, index}); });
}

void Misspellings::protect(std::string_view word) {
    protected_.push_back(hash_of(word));
}

void Misspellings::freeze() {
    std::sort(protected_.begin(), protected_.end());
    std::sort(entries_.begin(), entries_.end(),
              [](const Entry& a, const Entry& b) { return a.hash != b.hash ? a.hash < b.hash : a.word < b.word; });
    filter_.make_room(entries_.size());
    for (const Entry& entry : entries_) filter_.insert(entry.hash);
}

bool Misspellings::is_protected(std::string_view word) const noexcept {
    return std::binary_search(protected_.begin(), protected_.end(), hash_of(word));
}

WordId Misspellings::find_likely(std::string_view word) const noexcept {
    WordId found = 0;
    bool checked = false;
    for_each_deletion(word, [&](std::uint32_t hash) {
        if (found != 0 || !filter_.may_hold(hash)) return;
        auto at = std::lower_bound(entries_.begin(), entries_.end(), hash,
                                   [](const Entry& entry, std::uint32_t value) { return entry.hash < value; });
        for (; at != entries_.end() && at->hash == hash && found == 0; ++at) {
            const Known& known = words_[at->word];
            if (text(known).front() != word.front() || !within_one_edit(word, text(known))) continue;
            if (!checked && is_protected(word)) return;
            checked = true;
            found = known.id;
        }
    });
    return found;
}

}  // namespace grainside::vocabulary
