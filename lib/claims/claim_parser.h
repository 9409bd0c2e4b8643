// From a listing's fields to its claims and mentions.
#ifndef GRAINSIDE_CLAIMS_CLAIM_PARSER_H
#define GRAINSIDE_CLAIMS_CLAIM_PARSER_H

#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

#include "claims/known_attributes.h"
#include "claims/other_goods.h"
#include "claims/piece.h"
#include "claims/quoted_reviews.h"
#include "claims/regions.h"
#include "claims/segment.h"
#include "claims/title_lines.h"
#include "grainside/claim.h"
#include "grainside/listing.h"
#include "text/segments.h"
#include "text/token.h"
#include "vocabulary/matcher.h"
#include "vocabulary/vocabulary.h"

namespace grainside::claims {

// Keeps its working memory between listings. Not thread-safe; one a thread.
class ClaimParser {
public:
    explicit ClaimParser(const vocabulary::Vocabulary& vocabulary) : vocabulary_(vocabulary) {}

    // Fills `claims` with the claims and mentions of `listing`, sorted by field, start, end and kind. Fields over
    // kMaxFieldBytes are left out and counted in fields_too_long().
    void parse(const Listing& listing, std::vector<Claim>& claims);

    // Of the last parse: index into Vocabulary::categories.
    std::uint8_t category() const noexcept { return category_; }
    std::uint32_t fields_too_long() const noexcept { return fields_too_long_; }

private:
    struct FieldText {
        text::Tokens tokens;
        std::vector<vocabulary::WordId> words;
        std::vector<vocabulary::Hit> hits;
        std::vector<text::Segment> segments;
    };
    void read_field(std::string_view text, FieldText& field) const;
    void find_titles(const Listing& listing);
    std::uint8_t first_category(std::span<const vocabulary::Hit> hits) const;
    std::uint8_t category_of_title() const;
    template <typename Category>
    void for_each_product(std::span<const vocabulary::Hit> hits, Category category) const;
    void collect_own_categories(const Listing& listing);
    std::uint8_t category_by_part(std::span<const vocabulary::Hit> hits, Part part) const;
    std::span<const vocabulary::Hit> hits_of(const TitleLine& title) const;
    void find_category(const Listing& listing);
    Region region_of_field(std::string_view name);
    Region region_of_attribute(std::string_view name);
    void parse_field(std::string_view text, const FieldText& field, std::uint32_t index, const Region& region,
                     std::uint32_t marks, std::vector<Claim>& claims);
    void silence_quoted_names(std::string_view text, const text::Tokens& tokens, bool title);
    void silence_reviews();
    bool passes_over(const FieldText& field, const text::Segment& segment, std::size_t& next_hit) const;
    static bool followed_by_cell(const text::Tokens& tokens, const text::Segment& segment);

    const vocabulary::Vocabulary& vocabulary_;
    std::vector<FieldText> fields_;
    FieldText label_;
    KnownAttributes attributes_;
    OwnCategories own_;
    std::vector<TitleLine> titles_;
    std::vector<Piece> pieces_;
    std::vector<Region> regions_;
    std::vector<Phrase> phrases_;
    std::vector<TokenRange> reviews_;  // of the field that is being read
    std::uint32_t phrase_number_ = 0;
    std::uint32_t sentence_number_ = 0;
    std::uint32_t fields_too_long_ = 0;
    std::uint8_t category_ = 0;
};

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_CLAIM_PARSER_H
