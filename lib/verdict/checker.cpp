#include "grainside/checker.h"

#include <algorithm>
#include <memory>
#include <optional>
#include <string>
#include <unordered_map>

#include "claims/claim_parser.h"
#include "rules/book_data.h"
#include "rules/rule_matcher.h"
#include "text/character_reader.h"
#include "verdict/asked_markets.h"
#include "verdict/one_cause.h"
#include "verdict/proof_search.h"
#include "verdict/said_again.h"
#include "verdict/wording.h"

namespace grainside {
inline namespace v0 {

namespace {

// What follows the first white space or hyphen, however it is written; empty where there is none.
std::string_view behind_first_word(std::string_view words) {
    using text::CharacterKind;
    text::CharacterReader reader(words);
    bool is_behind = false;
    for (std::uint32_t at = 0; at < reader.size();) {
        const text::Character character = reader.read(at);
        const bool parts = character.kind == CharacterKind::space || character.kind == CharacterKind::newline ||
                           character.kind == CharacterKind::hyphen || character.kind == CharacterKind::inline_tag;
        if (is_behind && !parts) return words.substr(at);
        is_behind = is_behind || parts;
        at = character.end;
    }
    return {};
}

}  // namespace

struct Checker::Workspace {
    Workspace(const RuleBook& rule_book, CheckOptions check_options)
        : book(rule_book),
          options(std::move(check_options)),
          parser(rule_book.data().vocabulary),
          matcher(rule_book.data()) {
        take_proofs();
    }

    // Those of the options, for the day that they ask for; nothing of others stays in the result.
    void take_proofs() {
        filed.reset();
        result.proofs = nullptr;
        result.on_file.clear();
        result.proofs_met.clear();
        if (options.proofs)
            filed.emplace(book, options.proofs, options.proofs_on.empty() ? options.on : options.proofs_on);
    }

    std::span<const std::string> markets_of(const Listing& listing) {
        return verdict::markets_of(listing, options.markets, region);
    }

    const CheckResult& check(const Listing& listing) {
        parser.parse(listing, result.mentions);
        result.fields_too_long = parser.fields_too_long();
        result.claim_count =
            static_cast<std::uint32_t>(std::count_if(result.mentions.begin(), result.mentions.end(),
                                                     [](const Claim& claim) { return is_claim_kind(claim.kind); }));
        result.category = parser.category();
        result.main_part = book.data().vocabulary.categories[result.category].main_part;
        return grade(listing);
    }

    // What was read, by the rules that the options ask for.
    const CheckResult& grade(const Listing& listing) {
        result.findings.clear();
        matcher.select(markets_of(listing), options.on);
        matcher.match(result.mentions, {result.category, result.main_part}, result.findings);
        // What a document answers is no cause, so it silences nothing beside it.
        if (filed) filed->lift(listing, result);
        verdict::flag_said_again(result.mentions, result.findings);
        verdict::keep_one_per_cause(listing.fields, result.mentions, result.findings);
        if (filed) verdict::ProofSearch::mark_flagged(result);
        return result;
    }

    void make_echo() {
        if (!echo) echo = std::make_unique<Workspace>(book, CheckOptions{{}, options.on});
    }

    std::string wording(const Listing& listing, const Finding& finding) {
        if (book.rules()[finding.rule].say_instead.empty()) return {};
        const std::string_view bare =
            verdict::asks_for_bare(book, finding) ? bare_words(listing, finding) : std::string_view();
        return verdict::wording_of(book, listing, result, finding, bare);
    }

    // The longest tail of the flagged words that says what the claim says without 'solid', 'genuine' and the like.
    std::string_view bare_words(const Listing& listing, const Finding& finding) {
        constexpr int kMostWords = 8;
        constexpr std::uint32_t kPraising =
            static_cast<std::uint32_t>(Mark::genuine) | static_cast<std::uint32_t>(Mark::solid) |
            static_cast<std::uint32_t>(Mark::pure) | static_cast<std::uint32_t>(Mark::all) |
            static_cast<std::uint32_t>(Mark::praised);
        const Claim& claim = result.mentions[finding.claim];
        std::string_view tail = listing.fields[claim.field].text.substr(finding.start, finding.end - finding.start);
        make_echo();
        for (int n = 0; n < kMostWords; ++n) {
            tail = behind_first_word(tail);
            if (tail.empty()) return {};
            Listing alone;
            alone.fields.push_back({"description", tail});
            for (const Claim& read : echo->check(alone).mentions) {
                const bool whole = read.start == 0 && read.end == tail.size();
                if (whole && read.says == claim.says && (read.marks & kPraising) == 0) return tail;
            }
        }
        return {};
    }

    const RuleBook& book;
    CheckOptions options;
    claims::ClaimParser parser;
    rules::RuleMatcher matcher;
    std::vector<std::string> region;
    CheckResult result;
    std::optional<verdict::ProofSearch> filed;
    std::unique_ptr<Workspace> echo;                      // reads suggestions; made for the first of them
    std::unordered_map<std::string, bool> passes_itself;  // suggestions seen so far, with their day and markets
};

Checker::Checker(const RuleBook& book, CheckOptions options)
    : work_(std::make_unique<Workspace>(book, std::move(options))) {}
Checker::Checker(Checker&&) noexcept = default;
Checker& Checker::operator=(Checker&&) noexcept = default;
Checker::~Checker() = default;

const CheckResult& Checker::check(const Listing& listing) {
    return work_->check(listing);
}

const CheckResult& Checker::check_again(const Listing& listing, CheckOptions options) {
    work_->options = std::move(options);
    work_->take_proofs();
    return work_->grade(listing);
}

std::string Checker::filled_template(const Listing& listing, const Finding& finding) const {
    return work_->wording(listing, finding);
}

std::string Checker::say_instead(const Listing& listing, const Finding& finding) const {
    std::string wording = work_->wording(listing, finding);
    // What is wrong may stand beside the words, as in 'Tote in "genuine" bonded leather': they are no help then.
    const Claim& claim = work_->result.mentions[finding.claim];
    if (wording == listing.fields[claim.field].text.substr(finding.start, finding.end - finding.start)) return {};
    return wording.empty() || passes_itself(listing, wording) ? wording : std::string();
}

// A wording that is fine in one market may be reserved in the next: none is offered that the same check would flag.
bool Checker::passes_itself(const Listing& listing, const std::string& wording) const {
    Workspace& work = *work_;
    const auto markets = work.markets_of(listing);
    std::string key = work.options.on + '\n';
    for (const std::string& market : markets) key += market + '\n';
    key += wording;
    constexpr std::size_t kMostRemembered = 4096;
    if (const auto seen = work.passes_itself.find(key); seen != work.passes_itself.end()) return seen->second;
    work.make_echo();
    work.echo->options.markets.assign(markets.begin(), markets.end());
    work.echo->options.on = work.options.on;
    Listing reworded;
    reworded.fields.push_back({"description", wording});
    const bool passes = work.echo->check(reworded).findings.empty();
    if (work.passes_itself.size() < kMostRemembered) work.passes_itself.emplace(std::move(key), passes);
    return passes;
}

}  // namespace v0
}  // namespace grainside
