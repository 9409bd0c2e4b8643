#include "verdict/concession_index.h"

#include <utility>

#include "text/words_key.h"

namespace grainside {
inline namespace v0 {

void Concessions::Index::make_key(std::uint8_t shape, std::string_view listing, std::string_view words,
                                  std::string_view field, std::string& key) {
    key.assign(1, static_cast<char>(shape));
    // A text may hold any byte, so only its length tells where it ends.
    const auto add = [&](std::uint8_t bit, std::string_view text) {
        if ((shape & bit) == 0) return;
        key.append(std::to_string(text.size())).append(":").append(text);
    };
    add(kListing, listing);
    add(kWords, words);
    add(kField, field);
}

std::uint32_t Concessions::Index::add(Concession concession, std::string_view words_key) {
    const auto bit = [](bool named, std::uint8_t value) { return named ? value : std::uint8_t{0}; };
    const auto shape =
        static_cast<std::uint8_t>(bit(!concession.listing.empty(), kListing) | bit(!concession.words.empty(), kWords) |
                                  bit(!concession.field.empty(), kField));
    OfRule& of = of_rule[concession.rule];
    std::string key;
    make_key(shape, concession.listing, words_key, concession.field, key);
    const auto [place, added] = of.by_key.try_emplace(std::move(key), static_cast<std::uint32_t>(all.size()));
    if (!added) return place->second;
    of.has_shape[shape] = true;
    of.needs_words = of.needs_words || (shape & kWords) != 0;
    all.push_back(std::move(concession));
    return kNoConcession;
}

}  // namespace v0

namespace verdict {

std::span<const std::uint32_t> ConcessionSearch::find(std::string_view rule, std::string_view listing,
                                                      std::string_view field, std::string_view words) {
    const auto place = index_.of_rule.find(rule);
    if (place == index_.of_rule.end()) return {};
    const Concessions::Index::OfRule& of = place->second;
    if (of.needs_words) text::make_words_key(words, tokens_, words_key_);
    std::size_t count = 0;
    for (const std::uint8_t shape : Concessions::Index::kShapes) {
        if (!of.has_shape[shape]) continue;
        Concessions::Index::make_key(shape, listing, words_key_, field, key_);
        if (const auto met = of.by_key.find(key_); met != of.by_key.end()) found_[count++] = met->second;
    }
    return std::span(found_).first(count);
}

}  // namespace verdict
}  // namespace grainside
