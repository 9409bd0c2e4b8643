// Finding the concessions that meet a finding, in time that does not grow with their number.
#ifndef GRAINSIDE_VERDICT_CONCESSION_INDEX_H
#define GRAINSIDE_VERDICT_CONCESSION_INDEX_H

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "document/faults.h"
#include "grainside/concessions.h"
#include "text/token.h"

namespace grainside {
inline namespace v0 {

struct Concessions::Index {
    // Which of listing, words and field a concession names, as bits.
    static constexpr std::uint8_t kListing = 1;
    static constexpr std::uint8_t kWords = 2;
    static constexpr std::uint8_t kField = 4;
    // Narrowest first. What names neither listing nor words is refused when it is read.
    static constexpr std::array<std::uint8_t, 6> kShapes = {
        kListing | kWords | kField, kListing | kWords, kWords | kField, kListing | kField, kWords, kListing};

    // Lets text be looked up that is no std::string.
    struct TextHash {
        using is_transparent = void;  // NOLINT(readability-identifier-naming): the standard library asks for it
        std::size_t operator()(std::string_view text) const noexcept { return std::hash<std::string_view>()(text); }
    };

    struct OfRule {
        std::array<bool, 8> has_shape{};
        bool needs_words = false;
        std::unordered_map<std::string, std::uint32_t, TextHash, std::equal_to<>> by_key;
    };

    // The key of a concession or a finding under one shape: what the shape leaves out stays empty.
    static void make_key(std::uint8_t shape, std::string_view listing, std::string_view words, std::string_view field,
                         std::string& key);

    // kNoConcession where it was new; else the one that stands for the same already, and nothing was added.
    // REQUIRES: it names a listing or words; `words_key` is that of its words.
    std::uint32_t add(Concession concession, std::string_view words_key);

    std::vector<Concession> all;
    std::unordered_map<std::string, OfRule, TextHash, std::equal_to<>> of_rule;
};

}  // namespace v0

namespace verdict {

// The concessions of one text, added to those of `index`.
void read_concessions(std::string file, std::string text, const EvidenceBook& book, document::Faults& faults,
                      Concessions::Index& index);

// Looks up findings. Keeps working memory; not thread-safe.
class ConcessionSearch {
public:
    explicit ConcessionSearch(const Concessions::Index& index) : index_(index) {}

    // Those that meet a finding of `rule`, narrowest first, at most six; valid until the next call.
    // REQUIRES: words.size() <= kMaxFieldBytes.
    std::span<const std::uint32_t> find(std::string_view rule, std::string_view listing, std::string_view field,
                                        std::string_view words);

private:
    const Concessions::Index& index_;
    text::Tokens tokens_;
    std::string words_key_, key_;
    std::array<std::uint32_t, Concessions::Index::kShapes.size()> found_{};
};

}  // namespace verdict
}  // namespace grainside

#endif  // GRAINSIDE_VERDICT_CONCESSION_INDEX_H
