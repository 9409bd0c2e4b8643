#include "score_table.h"

#include <fmt/format.h>

#include <iterator>
#include <string_view>

namespace grainside::scoring {

namespace {

std::optional<double> share(std::size_t part, std::size_t whole) noexcept {
    if (whole == 0) return std::nullopt;
    return static_cast<double>(part) / static_cast<double>(whole);
}

std::string percent(std::optional<double> value) {
    return value ? fmt::format("{:.1f}", *value * 100) : "-";
}

std::string common_columns(std::string_view name, const Tally& tally) {
    return fmt::format("{:<14}{:>7}{:>7}{:>7}{:>11}{:>8}{:>7}", name, tally.labels, tally.found, tally.right,
                       percent(tally.precision()), percent(tally.recall()), percent(tally.f1()));
}

std::string heading(std::string_view name) {
    return fmt::format("{:<14}{:>7}{:>7}{:>7}{:>11}{:>8}{:>7}", name, "labels", "found", "right", "precision", "recall",
                       "F1");
}

std::string claim_row(std::string_view name, const ClaimTally& tally) {
    return fmt::format("{}{:>7}{:>7}{:>7}\n", common_columns(name, tally),
                       percent(share(tally.part_right, tally.right)),
                       percent(share(tally.says_right, tally.says_labelled)), percent(share(tally.exact, tally.right)));
}

void add(Tally& sum, const Tally& tally) {
    sum.labels += tally.labels;
    sum.found += tally.found;
    sum.right += tally.right;
}

}  // namespace

std::optional<double> Tally::precision() const noexcept {
    return share(right, found);
}
std::optional<double> Tally::recall() const noexcept {
    return share(right, labels);
}
std::optional<double> Tally::f1() const noexcept {
    return share(2 * right, labels + found);
}

ClaimTally Scores::all_claims() const noexcept {
    ClaimTally sum;
    for (const ClaimTally& tally : claims) {
        add(sum, tally);
        sum.exact += tally.exact;
        sum.part_right += tally.part_right;
        sum.says_labelled += tally.says_labelled;
        sum.says_right += tally.says_right;
    }
    return sum;
}

Tally Scores::all_findings() const noexcept {
    Tally sum;
    for (const Tally& tally : findings) add(sum, tally);
    return sum;
}

std::string to_tables(const Scores& scores) {
    std::string out = fmt::format("{} listings\n", scores.listings);
    const auto is_empty = [](const Tally& tally) { return tally.labels == 0 && tally.found == 0; };
    if (scores.has_claims) {
        out += fmt::format("\n{}{:>7}{:>7}{:>7}\n", heading("claims"), "part", "says", "exact");
        for (std::size_t i = 0; i < scores.claims.size(); ++i) {
            if (!is_empty(scores.claims[i])) out += claim_row(name_of(static_cast<Kind>(i)), scores.claims[i]);
        }
        out += claim_row("all", scores.all_claims());
    }
    if (scores.has_findings) {
        out += "\n" + heading("findings") + "\n";
        for (std::size_t i = 0; i < scores.findings.size(); ++i) {
            if (is_empty(scores.findings[i])) continue;
            out += common_columns(name_of(static_cast<Grade>(i)), scores.findings[i]) + "\n";
        }
        out += common_columns("all", scores.all_findings()) + "\n";
        out += fmt::format("\nhonest listings without any finding: {} of {} ({})\n", scores.honest_silent,
                           scores.honest, percent(share(scores.honest_silent, scores.honest)));
    }
    if (scores.has_traps) {
        out += fmt::format("{}traps passed: {} of {} ({})\n", scores.has_findings ? "" : "\n", scores.traps_passed,
                           scores.traps, percent(share(scores.traps_passed, scores.traps)));
    }
    return out;
}

std::string shortfalls(const Scores& scores, const Limits& limits) {
    std::string out;
    const auto require = [&](std::string_view what, std::optional<double> value, std::optional<double> limit) {
        if (!limit || (value && *value >= *limit)) return;
        fmt::format_to(std::back_inserter(out), "{}: {}, asked for at least {}\n", what,
                       value ? percent(value) : "nothing to score", percent(limit));
    };
    require("F1 of claims", scores.all_claims().f1(), limits.claims_f1);
    require("precision of findings", scores.all_findings().precision(), limits.findings_precision);
    require("recall of findings", scores.all_findings().recall(), limits.findings_recall);
    require("traps passed", share(scores.traps_passed, scores.traps), limits.traps);
    return out;
}

}  // namespace grainside::scoring
