#include "report/verdict_facts.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <string_view>

#include "report/evidence_text.h"
#include "verdict/asked_markets.h"
#include "verdict/percent_text.h"
#include "verdict/quantity_words.h"

namespace grainside::report {
namespace {

constexpr double kLeastOpenShown = 1e-3;

// "; by Coat thickness on a section, 2026-09-11"
std::string methods_of(const DossierContext& context, const LimitResult& limit) {
    std::string text;
    if (limit.quantity.empty()) return text;
    for (const std::uint32_t reading : limit.readings) {
        text += (text.empty() ? "; by " : ", ") + method_and_date(context, limit.part, reading);
    }
    return text;
}

}  // namespace

std::string belief_text(const Verdict& verdict) {
    std::string text;
    if (verdict.holds <= 0 && verdict.fails <= 0) return text;
    const auto add = [&](std::string_view what, double share) {
        if (share <= 0) return;
        if (!text.empty()) text += ", ";
        text += fmt::format("{} {}", what, verdict::percent_text(share));
    };
    add("true", verdict.holds);
    add("false", verdict.fails);
    if (verdict.open > kLeastOpenShown) add("not told apart", verdict.open);
    return text;
}

std::string limit_text(const DossierContext& context, const LimitResult& limit) {
    std::string text = limit.title;
    if (!limit.markets.empty()) text += fmt::format(" ({})", fmt::join(limit.markets, ", "));
    text += fmt::format(": {} {}{}{}; {}", name_of(limit.part), verdict::quantity_words(limit.quantity),
                        limit.quantity.empty() ? "" : " ", limit.value, name_of(limit.says));
    if (!limit.bound.empty()) text += fmt::format(" ({})", limit.bound);
    return text + methods_of(context, limit);
}

std::vector<std::uint32_t> sources_of(const DossierContext& context, const Judgement& judgement,
                                      const Verdict& verdict) {
    std::vector<std::uint32_t> sources;
    const auto add = [&](std::uint32_t index) {
        // Two entries of the list of sources may cite one text.
        const auto same = [&](std::uint32_t known) {
            return cited(context.book.sources()[known]) == cited(context.book.sources()[index]);
        };
        if (std::none_of(sources.begin(), sources.end(), same)) sources.push_back(index);
    };
    if (verdict.finding != kNoClaim) {
        const Finding& finding = judgement.check->findings[verdict.finding];
        for (const std::uint32_t index : context.book.rules()[finding.rule].sources) add(index);
    }
    for (const LimitResult& limit : verdict.limits) {
        if (limit.says == LimitVerdict::unread) continue;
        for (const std::uint32_t index : limit.sources) add(index);
    }
    return sources;
}

std::string cited(const SourceInfo& source) {
    return source.cite + (source.from_memory ? " (from memory)" : "");
}

std::string markets_judged_for(const DossierContext& context, const JudgeOptions& judged) {
    const Listing* listing = context.dossier.listing();
    if (listing == nullptr) return {};
    std::vector<std::string> region;
    const auto asked = verdict::markets_of(*listing, judged.check.markets, region);
    const std::vector<std::string> known = context.book.markets();
    std::string text;
    for (const std::string& market : asked) {
        if (std::find(known.begin(), known.end(), market) == known.end()) continue;
        text += (text.empty() ? "" : ", ") + market;
    }
    return text;
}

}  // namespace grainside::report
