#include "verdict/proof_search.h"

#include <algorithm>
#include <cstdint>
#include <tuple>

#include "evidence/proof_index.h"
#include "rules/book_data.h"

namespace grainside {

namespace verdict {
namespace {

bool covers_part(const FiledProof& proof, Part part) {
    if (proof.parts.empty()) return true;
    return std::any_of(proof.parts.begin(), proof.parts.end(),
                       [part](Part one) { return one == Part::whole || one == part; });
}

bool is_word_byte(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

// "ISO 5403-1:2011" is iso, 5403, 1, 2011. Standards are named in ASCII; other bytes part words.
std::vector<std::string> ascii_words(std::string_view text) {
    std::vector<std::string> words;
    bool in_word = false;
    for (const char c : text) {
        if (is_word_byte(c)) {
            if (!in_word) words.emplace_back();
            words.back() += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        }
        in_word = is_word_byte(c);
    }
    return words;
}

// The alternatives of a demand's standard, in words.
std::vector<std::vector<std::string>> alternatives_of(std::string_view asked) {
    constexpr std::string_view kBetween[] = {",", ";", " / ", " or "};
    std::string plain;
    int depth = 0;
    for (const char c : asked) {
        if (c == '(') ++depth;
        if (depth == 0) plain += c;
        if (c == ')' && depth > 0) --depth;
    }
    std::vector<std::vector<std::string>> alternatives;
    std::string_view rest = plain;
    while (!rest.empty()) {
        std::size_t end = rest.size();
        std::size_t next = rest.size();
        for (const std::string_view mark : kBetween) {
            const std::size_t at = rest.find(mark);
            if (at < end) std::tie(end, next) = std::pair(at, at + mark.size());
        }
        if (auto words = ascii_words(rest.substr(0, end)); !words.empty()) alternatives.push_back(std::move(words));
        rest.remove_prefix(next);
    }
    return alternatives;
}

// Whether a rule itself is silent where a document stands beside the words: then one on file does as well, whatever the
// grade. 'Recyclable' is misleading in the us unless the seller can show that most buyers have a place that takes it.
bool yields_to_document(const rules::CompiledRule& rule) {
    constexpr auto kDocument = static_cast<std::uint32_t>(Mark::document);
    return std::any_of(rule.unless.begin(), rule.unless.end(), [](const rules::ClaimCondition& condition) {
        return (condition.marked & kDocument) != 0 && (condition.marked_all & ~kDocument) == 0;
    });
}

// Worse for telling: what supports first, then what a new issue of the document would mend.
bool tells_more(ProofOutcome one, ProofOutcome other) {
    return one < other;
}

}  // namespace

bool follows_standard(std::string_view standard, std::string_view asked) {
    const std::vector<std::string> named = ascii_words(standard);
    const auto alternatives = alternatives_of(asked);
    return std::any_of(alternatives.begin(), alternatives.end(), [&](const std::vector<std::string>& words) {
        return std::search(named.begin(), named.end(), words.begin(), words.end()) != named.end();
    });
}

std::vector<std::string_view> names_of(const Listing& listing) {
    std::vector<std::string_view> names = {listing.id};
    const std::string record = ':' + std::to_string(listing.record);
    if (listing.record == 0 || !listing.id.ends_with(record)) return names;
    std::string_view base = listing.id.substr(0, listing.id.size() - record.size());
    base.remove_prefix(base.find_last_of('/') + 1);
    if (base.empty()) return names;
    names.push_back(base);
    const std::size_t point = base.find_last_of('.');
    if (point != std::string_view::npos && point != 0) names.push_back(base.substr(0, point));
    return names;
}

ProofSearch::ProofSearch(const RuleBook& book, std::shared_ptr<const FiledProofs> proofs, std::string day)
    : book_(book), proofs_(std::move(proofs)), day_(std::move(day)) {}

ProofOutcome ProofSearch::outcome_of(const FiledProof& proof, ConceptId says) const {
    const auto demands = book_.demands_for(says);
    if (!demands.empty() && !proof.standard.empty()) {
        const auto names_one = [](const Demand& demand) { return !demand.standard.empty(); };
        const auto is_asked = [&](const Demand& demand) { return follows_standard(proof.standard, demand.standard); };
        if (std::any_of(demands.begin(), demands.end(), names_one) &&
            std::none_of(demands.begin(), demands.end(), is_asked)) {
            return ProofOutcome::other_standard;
        }
    }
    if (!demands.empty() && proof.result.empty()) return ProofOutcome::no_result;
    if (!day_.empty() && day_ < proof.date) return ProofOutcome::not_yet;
    if (!day_.empty() && !proof.expires.empty() && proof.expires < day_) return ProofOutcome::ran_out;
    return ProofOutcome::supports;
}

ProofSearch::Answer ProofSearch::best_for(const Claim& claim, const std::vector<std::string_view>& names,
                                          CheckResult& result) const {
    const FiledProofs::Index& index = proofs_->index();
    Answer best;
    const auto consider = [&](const std::vector<std::uint32_t>& numbers) {
        for (const std::uint32_t number : numbers) {
            const FiledProof& proof = index.all[number];
            if (!covers_part(proof, claim.part)) continue;
            result.proofs_met.push_back(number);
            const ProofOutcome outcome = outcome_of(proof, claim.says);
            const bool better = best.proof == kNoProof || tells_more(outcome, best.outcome) ||
                                (outcome == best.outcome && number < best.proof);
            if (better) best = {number, outcome};
        }
    };
    book_.data().vocabulary.concepts[claim.says].ancestors.for_each([&](ConceptId ancestor) {
        const auto of = index.of_concept.find(ancestor);
        if (of == index.of_concept.end()) return;
        consider(of->second.of_any_listing);
        for (const std::string_view name : names) {
            const auto named = of->second.of_listing.find(name);
            if (named != of->second.of_listing.end()) consider(named->second);
        }
    });
    return best;
}

void ProofSearch::lift(const Listing& listing, CheckResult& result) {
    result.proofs = proofs_.get();
    result.on_file.clear();
    result.proofs_met.clear();
    answers_.clear();
    const std::vector<std::string_view> names = names_of(listing);
    for (std::uint32_t i = 0; i < result.mentions.size(); ++i) {
        const Claim& claim = result.mentions[i];
        if (claim.negated) continue;
        const auto [known, first] = answers_.try_emplace({claim.says, claim.part});
        if (first) known->second = best_for(claim, names, result);
        if (known->second.proof == kNoProof) continue;
        ClaimOnFile on_claim;
        on_claim.claim = i;
        on_claim.proof = known->second.proof;
        on_claim.outcome = known->second.outcome;
        result.on_file.push_back(on_claim);
    }
    std::sort(result.proofs_met.begin(), result.proofs_met.end());
    result.proofs_met.erase(std::unique(result.proofs_met.begin(), result.proofs_met.end()), result.proofs_met.end());

    std::erase_if(result.findings, [&](const Finding& finding) {
        if (finding.grade != Grade::unsupported && !yields_to_document(book_.data().compiled[finding.rule]))
            return false;
        const ClaimOnFile* known = on_file(result, finding.claim);
        if (known == nullptr || known->outcome != ProofOutcome::supports) return false;
        ClaimOnFile* at = result.on_file.data() + (known - result.on_file.data());
        // Of several rules that one document answers, the first of the book is told.
        if (!at->lifted || finding.rule < at->rule) {
            at->rule = finding.rule;
            at->start = finding.start;
            at->end = finding.end;
        }
        at->lifted = true;
        return true;
    });
}

void ProofSearch::mark_flagged(CheckResult& result) {
    // Findings are sorted by field and start and do not overlap, so one may look for the first that ends behind.
    const auto place = [&](const Finding& finding) {
        return std::pair(result.mentions[finding.claim].field, finding.end);
    };
    for (ClaimOnFile& one : result.on_file) {
        if (!one.lifted) continue;
        const std::uint32_t field = result.mentions[one.claim].field;
        const auto behind =
            std::upper_bound(result.findings.begin(), result.findings.end(), std::pair(field, one.start),
                             [&](const auto& at, const Finding& finding) { return at < place(finding); });
        const bool flagged =
            behind != result.findings.end() && result.mentions[behind->claim].field == field && behind->start < one.end;
        if (flagged) one.lifted = false;
    }
}

}  // namespace verdict

inline namespace v0 {

const ClaimOnFile* on_file(const CheckResult& result, std::uint32_t claim) noexcept {
    const auto at = std::lower_bound(result.on_file.begin(), result.on_file.end(), claim,
                                     [](const ClaimOnFile& one, std::uint32_t number) { return one.claim < number; });
    return at == result.on_file.end() || at->claim != claim ? nullptr : &*at;
}

}  // namespace v0
}  // namespace grainside
