// SurveyTally: counts listings; survey_lists.cpp has what the counts come to.
#include <algorithm>
#include <span>
#include <string_view>
#include <utility>

#include "document/digest.h"
#include "survey/survey_counts.h"
#include "verdict/asked_markets.h"

namespace grainside {
inline namespace v0 {

using survey::FlaggedWords;
using survey::GroupCounts;
using survey::ListingCounts;

namespace {

void merge_group(GroupCounts& into, GroupCounts&& from) {
    // The smallest spelling, so rather one with capitals.
    if (from.spelling < into.spelling) into.spelling = from.spelling;
    into.merge(from);
}

std::string_view words_of(const Listing& listing, const CheckResult& result, const Finding& finding) {
    const Claim& claim = result.mentions[finding.claim];
    return survey::name_in(listing.fields[claim.field].text.substr(finding.start, finding.end - finding.start));
}

}  // namespace

void SurveyTally::Counts::add(const Listing& listing, const CheckResult& result, const Checker& checker) {
    ++listing_number;
    seller_key = keys.key_of(survey::name_in(listing.seller));
    ListingCounts counts;
    counts.claims = result.claim_count;
    counts.findings = result.findings.size();
    rules_here.clear();
    for (const Finding& finding : result.findings) {
        counts.worst = std::min(counts.worst, finding.grade);
        rules_here.push_back(finding.rule);
    }
    std::sort(rules_here.begin(), rules_here.end());
    rules_here.erase(std::unique(rules_here.begin(), rules_here.end()), rules_here.end());
    counts.rules = rules_here;
    add_wordings(listing, result, checker);
    counts.wordings = wordings_here;

    all.add(counts);
    add_seller(listing, counts);
    add_markets(listing, counts);
    categories[result.category].add(counts);
    add_parts(result);
    add_worst(listing, result, counts);
}

void SurveyTally::Counts::add_seller(const Listing& listing, const ListingCounts& counts) {
    if (seller_key.empty()) {
        no_seller.add(counts);
        return;
    }
    GroupCounts* group = sellers.of(seller_key, [] { return GroupCounts(); });
    if (group == nullptr) return;
    const std::string_view name = survey::name_in(listing.seller);
    if (group->listings == 0 || name < group->spelling) group->spelling = name;
    group->add(counts);
}

void SurveyTally::Counts::add_markets(const Listing& listing, const ListingCounts& counts) {
    static const std::string kNone;
    const std::span<const std::string> named = verdict::markets_of(listing, options.markets, region);
    for (const std::string& market : named.empty() ? std::span(&kNone, 1) : named) {
        GroupCounts* group = markets.of(market, [] { return GroupCounts(); });
        if (group == nullptr) continue;
        group->spelling = market;
        group->add(counts);
    }
}

void SurveyTally::Counts::add_parts(const CheckResult& result) {
    grade_of_mention.assign(result.mentions.size(), Grade::consistent);
    for (const Finding& finding : result.findings) {
        grade_of_mention[finding.claim] = std::min(grade_of_mention[finding.claim], finding.grade);
    }
    for (std::size_t at = 0; at < result.mentions.size(); ++at) {
        const Claim& claim = result.mentions[at];
        if (!is_claim_kind(claim.kind)) continue;
        survey::PartCounts& part = parts[static_cast<std::size_t>(claim.part)];
        ++part.claims;
        ++part.by_worst[static_cast<std::size_t>(grade_of_mention[at])];
    }
}

void SurveyTally::Counts::add_wordings(const Listing& listing, const CheckResult& result, const Checker& checker) {
    const std::uint64_t seller = document::digest_of({seller_key});
    wordings_here.clear();
    for (const Finding& finding : result.findings) {
        const std::string_view words = words_of(listing, result, finding);
        const std::string_view key = keys.key_of(words);
        if (finding.grade <= options.at) wordings_here.push_back(document::digest_of({key}));
        wording_key = std::to_string(finding.rule);
        wording_key.append(" ").append(key);
        FlaggedWords* wording = wordings.of(wording_key, [] { return FlaggedWords(); });
        if (wording == nullptr) continue;
        const bool is_new = wording->listings == 0;
        wording->rule = finding.rule;
        wording->grade = is_new ? finding.grade : std::min(wording->grade, finding.grade);
        if (words > wording->spelling) wording->spelling = words;
        wording->sellers.add(seller);
        if (wording->last_listing != listing_number) {
            wording->last_listing = listing_number;
            ++wording->listings;
        }
        // What to say instead takes a check of its own, so it is asked where the place is the first so far.
        survey::WordingPlace place{
            std::string(survey::name_in(listing.id)),
            std::string(survey::name_in(listing.fields[result.mentions[finding.claim].field].name)),
            {}};
        if (!is_new && wording->place.is_before(place.listing, place.field)) continue;
        place.say_instead = survey::name_in(checker.say_instead(listing, finding));
        if (is_new || place.is_before(wording->place)) wording->place = std::move(place);
    }
}

void SurveyTally::Counts::add_worst(const Listing& listing, const CheckResult& result, const ListingCounts& counts) {
    if (result.findings.empty() || !worst.has_room_for(counts.worst, counts.findings)) return;
    const auto first = std::find_if(result.findings.begin(), result.findings.end(),
                                    [&](const Finding& finding) { return finding.grade == counts.worst; });
    SurveyListing told;
    told.id = survey::name_in(listing.id);
    told.seller = survey::name_in(listing.seller);
    told.worst = counts.worst;
    told.findings = counts.findings;
    for (const Finding& finding : result.findings) ++told.by_grade[static_cast<std::size_t>(finding.grade)];
    told.words = words_of(listing, result, *first);
    told.rule = first->rule;
    worst.add(std::move(told));
}

void SurveyTally::Counts::merge(Counts&& other) {
    listing_number = std::max(listing_number, other.listing_number);
    all.merge(other.all);
    no_seller.merge(other.no_seller);
    sellers.merge(std::move(other.sellers), merge_group);
    markets.merge(std::move(other.markets), merge_group);
    wordings.merge(std::move(other.wordings),
                   [](FlaggedWords& into, FlaggedWords&& from) { into.merge(std::move(from)); });
    for (std::size_t at = 0; at < categories.size(); ++at) categories[at].merge(other.categories[at]);
    for (std::size_t at = 0; at < parts.size(); ++at) {
        parts[at].claims += other.parts[at].claims;
        for (std::size_t grade = 0; grade < parts[at].by_worst.size(); ++grade) {
            parts[at].by_worst[grade] += other.parts[at].by_worst[grade];
        }
    }
    worst.merge(std::move(other.worst));
}

SurveyTally::SurveyTally(const RuleBook& book, SurveyOptions options)
    : counts_(std::make_unique<Counts>(book, std::move(options))) {}
SurveyTally::SurveyTally(SurveyTally&&) noexcept = default;
SurveyTally& SurveyTally::operator=(SurveyTally&&) noexcept = default;
SurveyTally::~SurveyTally() = default;

void SurveyTally::add(const Listing& listing, const CheckResult& result, const Checker& checker) {
    counts_->add(listing, result, checker);
}

void SurveyTally::merge(SurveyTally&& other) {
    counts_->merge(std::move(*other.counts_));
}

std::uint64_t SurveyTally::listings() const noexcept {
    return counts_->all.listings;
}

Survey SurveyTally::survey() const {
    return counts_->survey();
}

}  // namespace v0
}  // namespace grainside
