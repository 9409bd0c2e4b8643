#include "claims/claim_parser.h"

#include <algorithm>
#include <string_view>
#include <tuple>

#include "claims/answers.h"
#include "claims/coats.h"
#include "claims/scopes.h"
#include "claims/single_quotes.h"
#include "text/addresses.h"
#include "text/tokenizer.h"
#include "text/wrapped_lines.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;

namespace {

constexpr std::string_view kAttributePrefix = "additionalProperty.";

// A claim needs a word of one of these classes, or a number.
constexpr vocabulary::RoleSet kClaiming = {Role::meaning, Role::place_name, Role::place_adjective};

// Marks behind which a label may have ended.
bool may_have_label(const text::Segment& segment) {
    return segment.kind == text::SegmentKind::heading || segment.has(TokenKind::colon) ||
           segment.has(TokenKind::dash) || segment.has(TokenKind::close);
}

bool is_specification(std::string_view field) {
    return field == "material" || field.starts_with(kAttributePrefix);
}

}  // namespace

void ClaimParser::read_field(std::string_view text, FieldText& field) const {
    text::tokenize(text, field.tokens);
    text::join_wrapped_lines(field.tokens);
    text::pass_over_addresses(text, field.tokens);
    vocabulary::match_terms(vocabulary_, field.tokens, field.words, field.hits);
    text::cut_segments(field.tokens, field.segments);
}

Region ClaimParser::region_of_field(std::string_view name) {
    Region region;
    if (name == "material") {
        region.kind = RegionKind::main;
        region.labelled = true;
    } else if (name == "category") {
        region.kind = RegionKind::silent;  // a shelf of the shop, not a statement about the product
    } else if (name.starts_with(kAttributePrefix)) {
        region = region_of_attribute(name.substr(kAttributePrefix.size()));
    }
    return region;
}

Region ClaimParser::region_of_attribute(std::string_view name) {
    if (const Region* const known = attributes_.find(name, category_)) return *known;
    read_field(name, label_);
    std::size_t hit = 0;
    text::Segment whole;
    whole.last = static_cast<std::uint32_t>(label_.tokens.list.size());
    const Part main_part = vocabulary_.categories[category_].main_part;
    cut_pieces({vocabulary_, label_.tokens, label_.hits, false, Part::whole, main_part, false, true}, whole, hit,
               pieces_);
    Region region = region_of_label(vocabulary_, pieces_);
    region.asks = asked_by_label(vocabulary_, pieces_);
    region.labelled = region.kind != RegionKind::title;
    attributes_.remember(name, category_, region);
    return region;
}

// A product's name in quotes says nothing: The "Silk Road" tote.
void ClaimParser::silence_quoted_names(std::string_view text, const text::Tokens& tokens, bool title) {
    constexpr std::size_t kLongestName = 5;
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
        if (!opens_single_quote(text, tokens, pieces_[i].first)) continue;
        for (std::size_t k = i; k < pieces_.size() && k < i + kLongestName; ++k) {
            if (!closes_single_quote(text, tokens, pieces_[k].last - std::size_t{1})) continue;
            for (std::size_t n = i; n <= k; ++n) pieces_[n].silent = true;
            break;
        }
    }
    if (!title) return;
    std::size_t open = pieces_.size();
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
        if (!pieces_[i].is_mark(TokenKind::quote)) continue;
        if (open < pieces_.size() && i - open <= kLongestName + 1) {
            for (std::size_t k = open; k < i; ++k) pieces_[k].silent = true;
            open = pieces_.size();
        } else {
            open = i;
        }
    }
}

void ClaimParser::silence_reviews() {
    if (pieces_.empty()) return;
    auto review = std::partition_point(reviews_.begin(), reviews_.end(), [&](const TokenRange& one) {
        return one.last <= pieces_.front().first;  // it stands before this segment
    });
    for (Piece& piece : pieces_) {
        while (review != reviews_.end() && review->last <= piece.first) ++review;
        if (review == reviews_.end()) return;
        piece.silent = piece.silent || (piece.first >= review->first && piece.last <= review->last);
    }
}

void ClaimParser::parse_field(std::string_view text, const FieldText& field, std::uint32_t index,
                              const Region& field_region, std::uint32_t marks, std::vector<Claim>& claims) {
    std::size_t next_hit = 0;
    const bool has_quotes = may_hold_single_quotes(text);
    find_quoted_reviews(vocabulary_, field.tokens, field.hits, reviews_);
    Region section = field_region;  // what a heading or a label on a line of its own says of the lines below it
    Region carried = field_region;
    bool carries = false;
    Region asked_about;  // the part that the question right before speaks of: 'What is the lining? A: Wool.'
    for (const text::Segment& segment : field.segments) {
        const Region& outer = carries ? carried : section;
        const Region asked = asked_about;
        asked_about = Region{};
        if (asked.asks == 0 && field_region.asks == 0 && passes_over(field, segment, next_hit)) {
            carries = false;
            ++sentence_number_;
            continue;
        }
        const Inventory inventory = cut_pieces(
            {vocabulary_, field.tokens, field.hits, outer.labelled,
             outer.kind == RegionKind::part ? outer.part : Part::whole, vocabulary_.categories[category_].main_part,
             outer.tannage, segment.kind == text::SegmentKind::heading},
            segment, next_hit, pieces_);
        if (pieces_.empty()) continue;
        const bool title =
            (marks & bit(Mark::title)) != 0 || outer.kind == RegionKind::title || inventory.any({Role::title_label});
        Region below;  // what a heading says of the one line below it
        if (segment.kind == text::SegmentKind::heading) {
            section = region_of_label(vocabulary_, pieces_);
            if (section.deed != 0) section = Region{};  // below 'Our tannery' a place may be any
            if (section.kind == RegionKind::title) below = section;
            if (section.kind == RegionKind::open || section.kind == RegionKind::title) section = field_region;
            section.labelled = section.labelled || field_region.labelled;
        }
        if (asked.teaching || (asked.kind != RegionKind::open && pieces_.front().is(Role::answer_label))) {
            carried = asked;
            carries = true;
        }
        Region opened = label_regions(vocabulary_, inventory, pieces_, carries ? carried : section, regions_);
        carries = false;
        if (below.kind != RegionKind::open) {
            carried = below;
            carries = true;
        } else if (opened.kind != RegionKind::open) {
            // A title is one line, other labels speak of all lines up to the next.
            if (segment.starts_line != 0 && opened.kind != RegionKind::title) {
                section = opened;
            } else {
                carried = opened;
                carries = true;
            }
        } else if (followed_by_cell(field.tokens, segment)) {
            const Region cell = region_of_label(vocabulary_, pieces_);
            if (cell.kind != RegionKind::open) {
                carried = cell;
                carried.labelled = cell.kind != RegionKind::title;
                carries = true;
            }
        }
        if (segment.kind == text::SegmentKind::question) asked_about = region_of_question(pieces_);
        if (!inventory.any(kClaiming) && !inventory.numbers && field_region.asks == 0 && asked.asks == 0) {
            ++sentence_number_;
            continue;
        }
        mark_scopes(vocabulary_, segment.kind, title, inventory, pieces_);
        if (!title && inventory.any({Role::product, Role::thing})) silence_other_goods(own_, pieces_);
        silence_reviews();
        if (has_quotes || inventory.has(TokenKind::quote)) silence_quoted_names(text, field.tokens, title);
        cut_phrases(pieces_, phrase_number_, phrases_);
        const Evidence evidence = inventory.any({Role::standard, Role::document, Role::result}) || inventory.numbers
                                      ? find_evidence(field.tokens, pieces_)
                                      : Evidence{};
        const SegmentContext context{
            vocabulary_, field.tokens,       pieces_, regions_, phrases_, vocabulary_.categories[category_].main_part,
            index,       sentence_number_++, marks,   evidence};
        PartFinder parts(context);
        const std::size_t first = claims.size();
        for (std::size_t p = 0; p < phrases_.size(); ++p) {
            parts.enter(p);
            if (phrases_[p].roles.any(kClaiming)) {
                parse_materials(context, phrases_[p], parts, claims);
                parse_statements(context, phrases_[p], parts, claims);
            }
            if (inventory.numbers) parse_measures(context, phrases_[p], parts, claims);
        }
        if (inventory.numbers) check_shares(context, first, claims);
        const std::size_t answered = claims.size();
        if (field_region.asks != 0 && segment.first == 0) parse_answer(context, field_region.asks, claims);
        if (asked.asks != 0 && claims.size() == first) parse_yes(context, asked, claims);
        // An answer is a phrase of its own, and not of what stands in the listing's first one.
        for (std::size_t claim = answered; claim < claims.size(); ++claim) claims[claim].phrase = phrase_number_++;
    }
}

// Most sentences of a listing chat. One in which no word could claim anything, and that is no label for the next,
// leaves no trace; so it is not cut into pieces. `next_hit` is moved behind it.
bool ClaimParser::passes_over(const FieldText& field, const text::Segment& segment, std::size_t& next_hit) const {
    if (segment.kind == text::SegmentKind::question || may_have_label(segment) || segment.has(TokenKind::number) ||
        followed_by_cell(field.tokens, segment)) {
        return false;
    }
    constexpr vocabulary::RoleSet kLabelling = {Role::main_label, Role::origin_label, Role::leather_origin_label};
    std::size_t hit = next_hit;
    for (; hit < field.hits.size() && field.hits[hit].first < segment.last; ++hit) {
        const vocabulary::RoleSet roles = vocabulary_.terms.roles(field.hits[hit].end);
        if (field.hits[hit].first >= segment.first && (roles.any(kClaiming) || roles.any(kLabelling))) return false;
    }
    next_hit = hit;
    return true;
}

bool ClaimParser::followed_by_cell(const text::Tokens& tokens, const text::Segment& segment) {
    return segment.last < tokens.list.size() && tokens.list[segment.last].kind == TokenKind::pipe;
}

void ClaimParser::parse(const Listing& listing, std::vector<Claim>& claims) {
    claims.clear();
    phrase_number_ = 0;
    sentence_number_ = 0;
    fields_too_long_ = 0;
    if (fields_.size() < listing.fields.size()) fields_.resize(listing.fields.size());
    for (std::size_t i = 0; i < listing.fields.size(); ++i) {
        std::string_view text = listing.fields[i].text;
        if (text.size() > kMaxFieldBytes) {
            ++fields_too_long_;
            text = {};
        }
        read_field(text, fields_[i]);
    }
    find_titles(listing);
    find_category(listing);
    collect_own_categories(listing);
    for (std::size_t i = 0; i < listing.fields.size(); ++i) {
        const std::string_view name = listing.fields[i].name;
        const Region region = region_of_field(name);
        if (region.kind == RegionKind::silent && name == "category") continue;
        std::uint32_t marks = 0;
        if (name == "name" || region.kind == RegionKind::title) {
            marks = bit(Mark::title);
        } else if (is_specification(name)) {
            marks = bit(Mark::specification);
        }
        parse_field(listing.fields[i].text, fields_[i], static_cast<std::uint32_t>(i), region, marks, claims);
    }
    set_coats_against_totals(vocabulary_, claims);
    std::sort(claims.begin(), claims.end(), [](const Claim& a, const Claim& b) {
        return std::tie(a.field, a.start, a.end, a.kind, a.says) < std::tie(b.field, b.start, b.end, b.kind, b.says);
    });
}

}  // namespace grainside::claims
