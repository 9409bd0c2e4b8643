#include "changed_listing.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace grainside::metamorphic {

#ifdef GRAINSIDE_UNDER_SANITIZER
namespace {
// Beyond ASCII: what some changes are about, and few listings have.
bool has_rare_letter(const scoring::LabelledListing& listing) {
    return std::any_of(listing.fields.begin(), listing.fields.end(), [](const scoring::OwnedField& field) {
        return std::any_of(field.text.begin(), field.text.end(),
                           [](char c) { return static_cast<unsigned char>(c) >= 0x80; });
    });
}
}  // namespace
#endif

const std::vector<scoring::LabelledListing>& corpus() {
    static const std::vector<scoring::LabelledListing> kCorpus = [] {
        std::vector<scoring::LabelledListing> all;
        for (const char set : std::string_view("abcdefghijklmnopqrs")) {
            const std::string file = fmt::format("{}/open_{}.jsonl", GRAINSIDE_CORPUS_FOLDER, set);
            auto listings = std::move(scoring::read_labelled_file(file)).value();
            std::move(listings.begin(), listings.end(), std::back_inserter(all));
        }
#ifdef GRAINSIDE_UNDER_SANITIZER
        std::size_t number = 0;
        std::erase_if(all, [&](const auto& listing) { return ++number % 8 != 0 && !has_rare_letter(listing); });
#endif
        return all;
    }();
    return kCorpus;
}

const RuleBook& book() {
    static const RuleBook kBook = std::move(RuleBook::built_in()).value();
    return kBook;
}

Checker make_checker() {
    return Checker(book(), {.markets = {"us", "eu", "uk"}, .on = "2026-11-26"});
}

Listing ChangedListing::view() const {
    Listing listing;
    listing.id = id;
    listing.language = language;
    listing.region = region;
    for (const ChangedField& field : fields) listing.fields.push_back({field.name, field.changed.text});
    return listing;
}

ChangedListing transformed(const scoring::LabelledListing& listing, support::Transform transform) {
    ChangedListing changed{listing.id, listing.language, listing.region, {}};
    for (const scoring::OwnedField& field : listing.fields) {
        changed.fields.push_back({field.name, support::change(transform, field.text)});
    }
    return changed;
}

ChangedListing unchanged(const scoring::LabelledListing& listing) {
    return transformed(listing, support::Transform::none);
}

bool has_other_text(const ChangedListing& changed, const scoring::LabelledListing& listing) {
    return !std::equal(changed.fields.begin(), changed.fields.end(), listing.fields.begin(), listing.fields.end(),
                       [](const ChangedField& field, const scoring::OwnedField& original) {
                           return field.name == original.name && field.changed.text == original.text;
                       });
}

void insert(ChangedField& field, std::size_t at, std::string_view added) {
    field.changed.text.insert(at, added);
    field.changed.origin.insert(field.changed.origin.begin() + static_cast<std::ptrdiff_t>(at), added.size(), kAdded);
}

Origin origin_of(const ChangedField& field, std::uint32_t start, std::uint32_t end) {
    const std::vector<std::uint32_t>& origin = field.changed.origin;
    const auto first = origin.begin() + start;
    const auto last = origin.begin() + end;
    if (std::find(first, last, kAdded) != last) return {kAdded, kAdded};
    // The end is where the next character of the original begins. What was added behind the words tells nothing of
    // that.
    const auto next =
        std::find_if(last, origin.end(), [&](std::uint32_t at) { return at != kAdded && at != last[-1]; });
    return {*first, next == origin.end() ? origin.back() : *next};
}

namespace {

// "field@start 'words'" as the original listing has them.
std::string place_of(const ChangedListing& changed, const scoring::LabelledListing& original, std::uint32_t field,
                     std::uint32_t start, std::uint32_t end) {
    const ChangedField& from = changed.fields[field];
    const Origin origin = origin_of(from, start, end);
    const auto same = std::find_if(original.fields.begin(), original.fields.end(),
                                   [&](const scoring::OwnedField& one) { return one.name == from.name; });
    if (origin.start == kAdded || same == original.fields.end()) return from.name + " (added)";
    return fmt::format("{}@{} '{}'", from.name, origin.start,
                       std::string_view(same->text).substr(origin.start, origin.end - origin.start));
}

}  // namespace

std::vector<std::string> statements_of(Checker& checker, const ChangedListing& changed,
                                       const scoring::LabelledListing& original) {
    std::vector<std::string> lines;
    const Listing listing = changed.view();
    const CheckResult& result = checker.check(listing);
    for (const Finding& finding : result.findings) {
        const Claim& claim = result.mentions[finding.claim];
        const bool is_mended = !checker.say_instead(listing, finding).empty();
        lines.push_back(fmt::format(
            "{} {} {} {}{}", book().rules()[finding.rule].id, name_of(finding.grade), name_of(claim.part),
            place_of(changed, original, claim.field, finding.start, finding.end), is_mended ? " mended" : ""));
    }
    for (const Claim& claim : result.mentions) {
        if (!is_claim_kind(claim.kind)) continue;
        const Quantity quantity = claim.quantity.value_or(Quantity{});
        lines.push_back(fmt::format(
            "{} {} {}{}{}{} {}", name_of(claim.kind), book().concept_name(claim.says), name_of(claim.part),
            claim.negated ? " denied" : "", claim.hedged ? " hedged" : "",
            claim.quantity ? fmt::format(" {:g}-{:g} {}", quantity.low, quantity.high, name_of(quantity.unit))
                           : std::string(),
            place_of(changed, original, claim.field, claim.start, claim.end)));
    }
    std::sort(lines.begin(), lines.end());
    return lines;
}

}  // namespace grainside::metamorphic
