// ClaimParser: what kind of product a listing sells, by its shelf, its title and its texts.
#include <algorithm>

#include "claims/claim_parser.h"

namespace grainside::claims {

using vocabulary::Role;
using vocabulary::Sense;

// The listing's name; where it has none, what its texts label as its title.
void ClaimParser::find_titles(const Listing& listing) {
    titles_.clear();
    category_ = 0;  // nothing is known of it yet, and a label for a title does not ask
    for (std::size_t i = 0; i < listing.fields.size(); ++i) {
        if (listing.fields[i].name != "name") continue;
        titles_.push_back({i, 0, static_cast<std::uint32_t>(fields_[i].tokens.list.size())});
    }
    if (!titles_.empty()) return;
    for (std::size_t i = 0; i < listing.fields.size(); ++i) {
        if (region_of_field(listing.fields[i].name).kind == RegionKind::title) {
            titles_.push_back({i, 0, static_cast<std::uint32_t>(fields_[i].tokens.list.size())});
        } else {
            add_labelled_titles(vocabulary_, fields_[i].tokens, fields_[i].hits, i, titles_);
        }
    }
}

std::span<const vocabulary::Hit> ClaimParser::hits_of(const TitleLine& title) const {
    const auto& hits = fields_[title.field].hits;
    const auto starts_before = [](const vocabulary::Hit& hit, std::uint32_t token) { return hit.first < token; };
    const auto first = std::lower_bound(hits.begin(), hits.end(), title.first, starts_before);
    return {first, std::lower_bound(first, hits.end(), title.last, starts_before)};
}

// The category of the first product that a text names; 0 where it names none.
std::uint8_t ClaimParser::first_category(std::span<const vocabulary::Hit> hits) const {
    for (const vocabulary::Hit& hit : hits) {
        if (!vocabulary_.terms.roles(hit.end).has(Role::product)) continue;
        for (const Sense& sense : vocabulary_.terms.senses(hit.end)) {
            if (sense.role == Role::product) return sense.value;
        }
    }
    return 0;
}

// Where no product is named, a part that is the main part of one category tells it: an upper is a shoe's, and a name
// that speaks of hardware alone ('roller buckle, 40 mm, brass') is that of a component.
std::uint8_t ClaimParser::category_by_part(std::span<const vocabulary::Hit> hits, Part part) const {
    for (const vocabulary::Hit& hit : hits) {
        if (!vocabulary_.terms.roles(hit.end).has(Role::part)) continue;
        for (const Sense& sense : vocabulary_.terms.senses(hit.end)) {
            if (sense.role != Role::part || sense.value != static_cast<std::uint8_t>(part)) continue;
            for (std::size_t i = 0; i < vocabulary_.categories.size(); ++i) {
                if (vocabulary_.categories[i].main_part == part) return static_cast<std::uint8_t>(i);
            }
        }
    }
    return 0;
}

std::uint8_t ClaimParser::category_of_title() const {
    for (const TitleLine& title : titles_) {
        std::uint8_t category = first_category(hits_of(title));
        if (category == 0) category = category_by_part(hits_of(title), Part::hardware);
        if (category != 0) return category;
    }
    return 0;
}

// By the category field, else by the first product that a title, then any other field, speaks of.
void ClaimParser::find_category(const Listing& listing) {
    category_ = 0;
    for (std::size_t i = 0; i < listing.fields.size() && category_ == 0; ++i) {
        if (listing.fields[i].name == "category") category_ = first_category(fields_[i].hits);
    }
    if (category_ == 0) category_ = category_of_title();
    for (std::size_t i = 0; i < listing.fields.size() && category_ == 0; ++i) {
        category_ = first_category(fields_[i].hits);
        if (category_ == 0) category_ = category_by_part(fields_[i].hits, Part::upper);
    }
}

template <typename Category>
void ClaimParser::for_each_product(std::span<const vocabulary::Hit> hits, Category category) const {
    for (const vocabulary::Hit& hit : hits) {
        if (!vocabulary_.terms.roles(hit.end).has(Role::product)) continue;
        for (const Sense& sense : vocabulary_.terms.senses(hit.end)) {
            if (sense.role == Role::product) category(sense.value);
        }
    }
}

// What a title and the shelf name is what is sold, and so are their kin: 'bag and belt set'.
void ClaimParser::collect_own_categories(const Listing& listing) {
    own_ = {};
    own_.add(vocabulary_, category_);
    for (const TitleLine& title : titles_) {
        for_each_product(hits_of(title), [this](std::uint8_t category) { own_.add(vocabulary_, category); });
    }
    for (std::size_t i = 0; i < listing.fields.size(); ++i) {
        if (listing.fields[i].name != "category") continue;
        for_each_product(fields_[i].hits, [this](std::uint8_t category) { own_.add(vocabulary_, category); });
    }
    if (!titles_.empty() || listing.fields.empty()) return;
    // A text without a title tells what is sold before it says what comes along.
    const std::vector<vocabulary::Hit>& hits = fields_.front().hits;
    const auto cue = std::find_if(hits.begin(), hits.end(), [this](const vocabulary::Hit& hit) {
        return vocabulary_.terms.roles(hit.end).has(Role::comes_along);
    });
    for_each_product({hits.begin(), cue}, [this](std::uint8_t category) { own_.named.set(category); });
}

}  // namespace grainside::claims
