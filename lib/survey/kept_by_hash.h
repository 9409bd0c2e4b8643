// Something for each of many texts, in bounded memory: of more than fit, those with the smallest hashes are kept.
//
// What is kept in the end was kept from the first time that its text came, because the bound on the hashes only falls:
// so whatever was gathered for it is complete. The outcome does not depend on the order, nor on how parts are merged.
// Texts of one hash are told apart. Not thread-safe.
#ifndef GRAINSIDE_SURVEY_KEPT_BY_HASH_H
#define GRAINSIDE_SURVEY_KEPT_BY_HASH_H

#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <utility>

#include "document/digest.h"
#include "survey/distinct_count.h"

namespace grainside::survey {

template <typename Value>
class KeptByHash {
public:
    using Key = std::pair<std::uint64_t, std::string>;
    struct Order {
        using is_transparent = void;
        template <typename A, typename B>
        bool operator()(const A& a, const B& b) const {
            return a.first != b.first ? a.first < b.first : std::string_view(a.second) < std::string_view(b.second);
        }
    };
    using Entries = std::map<Key, Value, Order>;

    // REQUIRES: most > 1.
    explicit KeptByHash(std::size_t most) : most_(most) {}

    // That of `text`, which is made by `make` where it is new; nullptr where it is not kept. Lives until a later call
    // finds no room for it.
    template <typename Make>
    Value* of(std::string_view text, Make make) {
        const std::pair<std::uint64_t, std::string_view> sought{document::digest_of({text}), text};
        if (const auto found = entries_.find(sought); found != entries_.end()) return &found->second;
        if (is_full() && Order()(entries_.rbegin()->first, sought)) {
            more_ = true;
            return nullptr;
        }
        const auto added = entries_.emplace(Key(sought.first, text), make()).first;
        make_room();
        return &added->second;
    }

    // `merge_values(kept, other)` for a text that both have.
    template <typename MergeValues>
    void merge(KeptByHash&& other, MergeValues merge_values) {
        more_ = more_ || other.more_;
        // Takes over what is not here yet; what is left in `other` is here too.
        entries_.merge(other.entries_);
        for (auto& [key, value] : other.entries_) merge_values(entries_.find(key)->second, std::move(value));
        make_room();
    }

    const Entries& entries() const noexcept { return entries_; }
    SurveyDistinct different() const {
        if (!more_) return {entries_.size(), false};
        return {estimated_number(entries_.size(), entries_.rbegin()->first.first), true};
    }

private:
    bool is_full() const noexcept { return entries_.size() >= most_; }
    void make_room() {
        while (entries_.size() > most_) {
            entries_.erase(std::prev(entries_.end()));
            more_ = true;
        }
    }

    std::size_t most_;
    Entries entries_;
    bool more_ = false;
};

}  // namespace grainside::survey

#endif  // GRAINSIDE_SURVEY_KEPT_BY_HASH_H
