#include "listing_score.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "matching.h"

namespace grainside::scoring {

namespace {

std::uint32_t key_of(Kind kind, bool negated) {
    return static_cast<std::uint32_t>(kind) * 2 + (negated ? 1 : 0);
}

class Scorer {
public:
    Scorer(const LabelledListing& listing, const CheckResult& result, std::span<const std::string> markets,
           const BookNames& names, Scores& scores, std::vector<Remark>& remarks)
        : listing_(listing), result_(result), markets_(markets), names_(names), scores_(scores), remarks_(remarks) {
        for (const Claim& claim : result.mentions) {
            if (is_claim_kind(claim.kind)) claims_.push_back(&claim);
        }
    }

    void score() {
        ++scores_.listings;
        if (listing_.claims) score_claims(*listing_.claims);
        if (listing_.findings) score_findings(*listing_.findings);
        if (listing_.traps) score_traps(*listing_.traps);
    }

private:
    void remark(const Span& span, std::string what) {
        remarks_.push_back(
            {listing_.id, listing_.fields[span.field].name, std::string(listing_.words(span)), std::move(what)});
    }

    static Span span_of(const Claim& claim) { return {claim.field, claim.start, claim.end}; }
    Span span_of(const Finding& finding) const {
        return {result_.mentions[finding.claim].field, finding.start, finding.end};
    }

    std::string describe(const Claim& claim) const {
        return fmt::format("{}{} {} ({})", claim.negated ? "not " : "", name_of(claim.kind),
                           names_.concept_name(claim.says), name_of(claim.part));
    }
    static std::string describe(const LabelledClaim& label) {
        return fmt::format("{}{} {} ({})", label.negated ? "not " : "", name_of(label.kind),
                           label.says.empty() ? "?" : label.says, name_of(label.part));
    }
    std::string describe(const Finding& finding) const {
        return fmt::format("{} by {}", name_of(finding.grade), names_.rule_name(finding.rule));
    }

    void score_claims(const std::vector<LabelledClaim>& labels) {
        scores_.has_claims = true;
        std::vector<Candidate> wanted;
        std::vector<Candidate> found;
        for (const LabelledClaim& label : labels) {
            ++scores_.claims_of(label.kind).labels;
            wanted.push_back({label.span, key_of(label.kind, label.negated)});
        }
        for (const Claim* claim : claims_) {
            ++scores_.claims_of(claim->kind).found;
            found.push_back({span_of(*claim), key_of(claim->kind, claim->negated)});
        }
        const Matching matching = match(wanted, found);
        for (const Pair& pair : matching.pairs) score_pair(labels[pair.label], *claims_[pair.found]);
        for (const std::size_t at : matching.missed) {
            remark(labels[at].span, "missed claim: " + describe(labels[at]));
        }
        for (const std::size_t at : matching.surplus) {
            remark(span_of(*claims_[at]), "false claim: " + describe(*claims_[at]));
        }
    }

    void score_pair(const LabelledClaim& label, const Claim& claim) {
        ClaimTally& tally = scores_.claims_of(label.kind);
        ++tally.right;
        if (label.span == span_of(claim)) ++tally.exact;
        if (same_part(listing_, label.part, claim.part)) {
            ++tally.part_right;
        } else {
            remark(label.span, fmt::format("part: {}, labelled {}", name_of(claim.part), name_of(label.part)));
        }
        if (label.says.empty()) return;
        ++tally.says_labelled;
        if (names_.concept_name(claim.says) == label.says) {
            ++tally.says_right;
        } else {
            remark(label.span, fmt::format("says: {}, labelled {}", names_.concept_name(claim.says), label.says));
        }
    }

    bool is_asked(const LabelledFinding& label) const {
        return label.markets.empty() ||
               std::any_of(label.markets.begin(), label.markets.end(), [&](const auto& market) {
                   return std::find(markets_.begin(), markets_.end(), market) != markets_.end();
               });
    }

    // Where a market makes the grade of the same words worse, the worse one is meant there.
    bool is_superseded(const LabelledFinding& label) const {
        return std::any_of(listing_.findings->begin(), listing_.findings->end(), [&](const LabelledFinding& other) {
            return other.grade < label.grade && is_asked(other) && overlap(other.span, label.span) > 0;
        });
    }

    void score_findings(const std::vector<LabelledFinding>& labels) {
        scores_.has_findings = true;
        const auto key = [](Grade grade) { return static_cast<std::uint32_t>(grade); };
        std::vector<Candidate> wanted;
        std::vector<Candidate> open;  // neither required nor a false alarm
        for (const LabelledFinding& label : labels) {
            const bool is_wanted = is_asked(label) && !is_superseded(label);
            (is_wanted ? wanted : open).push_back({label.span, key(label.grade)});
            if (is_wanted) ++scores_.findings_of(label.grade).labels;
        }
        std::vector<Candidate> found;
        for (const Finding& finding : result_.findings) found.push_back({span_of(finding), key(finding.grade)});
        const Matching matching = match(wanted, found);
        for (const Pair& pair : matching.pairs) {
            Tally& tally = scores_.findings_of(result_.findings[pair.found].grade);
            ++tally.found;
            ++tally.right;
        }
        for (const std::size_t at : matching.missed) {
            const auto grade = static_cast<Grade>(wanted[at].key);
            remark(wanted[at].span, fmt::format("missed finding: {}", name_of(grade)));
        }
        for (const std::size_t at : matching.surplus) {
            const bool is_open = std::any_of(open.begin(), open.end(), [&](const Candidate& label) {
                return label.key == found[at].key && overlap(label.span, found[at].span) > 0;
            });
            if (is_open) continue;
            const Finding& finding = result_.findings[at];
            ++scores_.findings_of(finding.grade).found;
            remark(span_of(finding), "false finding: " + describe(finding));
        }
        // A listing may be honest everywhere but in a market that is asked.
        const bool is_faulty_here = std::any_of(labels.begin(), labels.end(), [&](const LabelledFinding& label) {
            return !label.markets.empty() && is_asked(label);
        });
        if (listing_.honest && !is_faulty_here) {
            ++scores_.honest;
            if (result_.findings.empty()) ++scores_.honest_silent;
        }
    }

    void score_traps(const std::vector<LabelledTrap>& traps) {
        scores_.has_traps = true;
        for (const LabelledTrap& trap : traps) {
            ++scores_.traps;
            std::string touched;
            for (const Claim* claim : claims_) {
                if (overlap(trap.span, span_of(*claim)) > 0) touched += " claim: " + describe(*claim);
            }
            for (const Finding& finding : result_.findings) {
                if (overlap(trap.span, span_of(finding)) > 0) touched += " finding: " + describe(finding);
            }
            if (touched.empty()) {
                ++scores_.traps_passed;
            } else {
                remark(trap.span, fmt::format("trap ({}):{}", trap.because, touched));
            }
        }
    }

    const LabelledListing& listing_;
    const CheckResult& result_;
    std::span<const std::string> markets_;
    const BookNames& names_;
    Scores& scores_;
    std::vector<Remark>& remarks_;
    std::vector<const Claim*> claims_;
};

}  // namespace

std::vector<std::string> markets_of(const LabelledListing& listing, std::span<const std::string> asked) {
    if (!asked.empty()) return {asked.begin(), asked.end()};
    if (listing.region.size() != 2) return {};
    std::string code = listing.region;
    for (char& c : code) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    return {code == "gb" ? std::string("uk") : code};
}

bool same_part(const LabelledListing& listing, Part labelled, Part found) {
    if (labelled == found) return true;
    if (labelled != Part::whole && found != Part::whole) return false;
    constexpr std::array<Part, 3> kOutside = {Part::upper, Part::body, Part::strap};
    const Part other = labelled == Part::whole ? found : labelled;
    for (const Part outside : kOutside) {
        const bool labelled_here =
            listing.claims && std::any_of(listing.claims->begin(), listing.claims->end(),
                                          [&](const LabelledClaim& claim) { return claim.part == outside; });
        if (labelled_here) return other == outside;
    }
    return std::find(kOutside.begin(), kOutside.end(), other) != kOutside.end();
}

void score_listing(const LabelledListing& listing, const CheckResult& result, std::span<const std::string> markets,
                   const BookNames& names, Scores& scores, std::vector<Remark>& remarks) {
    Scorer(listing, result, markets, names, scores, remarks).score();
}

}  // namespace grainside::scoring
