// ConcessionLedger: what concessions make of findings and verdicts, and which of them are stale.
#include <fmt/format.h>

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "document/inert_text.h"
#include "grainside/concessions.h"
#include "verdict/concession_index.h"

namespace grainside {
inline namespace v0 {

namespace {

constexpr std::size_t kMostNamedBytes = 60;  // of a listing's id or of words in a message

std::string named(std::string_view text) {
    std::string shown = document::inert_text(text.substr(0, kMostNamedBytes));
    if (text.size() > kMostNamedBytes) shown += "...";
    return shown;
}

// "`vegan-called-leather` (listing 'b-7', words 'vegan leather')"
std::string describe(const Concession& concession) {
    std::string narrowed;
    const auto add = [&](std::string_view what, std::string_view text) {
        if (text.empty()) return;
        narrowed += fmt::format("{}{} '{}'", narrowed.empty() ? "" : ", ", what, named(text));
    };
    add("listing", concession.listing);
    add("words", concession.words);
    add("field", concession.field);
    return fmt::format("`{}` ({})", concession.rule, narrowed);
}

std::string again_text(std::size_t count) {
    if (count == 0) return "what it met stands under another";
    return count == 1 ? "1 finding counts again" : fmt::format("{} findings count again", count);
}

}  // namespace

struct ConcessionLedger::Account {
    Account(const Concessions& concessions, std::string day)
        : search(concessions.index()), today(std::move(day)), uses(concessions.all().size()) {
        conceded.concessions = &concessions;
    }

    void begin() {
        conceded.matches.clear();
        conceded.count = 0;
        conceded.worst = Grade::consistent;
    }

    void add(Grade grade, std::string_view rule, std::string_view listing, const Field& field, std::uint32_t start,
             std::uint32_t end) {
        ConcessionMatch match;
        for (const std::uint32_t at : search.find(rule, listing, field.name, field.text.substr(start, end - start))) {
            uses[at].met = true;
            const bool in_force = today <= conceded.concessions->all()[at].until;
            if (match.concession == kNoConcession || (in_force && !match.in_force)) match = {at, in_force};
        }
        if (match.in_force) {
            ++conceded.count;
        } else {
            if (match.concession != kNoConcession) ++uses[match.concession].count_again;
            if (grade < conceded.worst) conceded.worst = grade;
        }
        conceded.matches.push_back(match);
    }

    verdict::ConcessionSearch search;
    std::string today;
    Conceded conceded;
    struct Use {
        bool met = false;
        std::size_t count_again = 0;  // findings that no other concession lets stand
    };
    std::vector<Use> uses;  // by concession
};

ConcessionLedger::ConcessionLedger(const Concessions& concessions, std::string today)
    : account_(std::make_unique<Account>(concessions, std::move(today))) {}
ConcessionLedger::ConcessionLedger(ConcessionLedger&&) noexcept = default;
ConcessionLedger& ConcessionLedger::operator=(ConcessionLedger&&) noexcept = default;
ConcessionLedger::~ConcessionLedger() = default;

const Conceded& ConcessionLedger::of_findings(const RuleBook& book, const Listing& listing, const CheckResult& result) {
    account_->begin();
    for (const Finding& finding : result.findings) {
        const Field& field = listing.fields[result.mentions[finding.claim].field];
        account_->add(finding.grade, book.rules()[finding.rule].id, listing.id, field, finding.start, finding.end);
    }
    return account_->conceded;
}

const Conceded& ConcessionLedger::of_verdicts(const RuleBook& book, const Listing& listing,
                                              const Judgement& judgement) {
    account_->begin();
    for (const Verdict& verdict : judgement.verdicts) {
        if (verdict.grade == Grade::consistent) {
            account_->conceded.matches.emplace_back();
            continue;
        }
        const Claim& claim = judgement.check->mentions[verdict.claim];
        account_->add(verdict.grade, rule_of(book, *judgement.check, verdict), listing.id, listing.fields[claim.field],
                      claim.start, claim.end);
    }
    return account_->conceded;
}

void ConcessionLedger::add(const ConcessionLedger& other) {
    for (std::size_t at = 0; at < account_->uses.size(); ++at) {
        const Account::Use& use = other.account_->uses[at];
        account_->uses[at].met = account_->uses[at].met || use.met;
        account_->uses[at].count_again += use.count_again;
    }
}

std::vector<Issue> ConcessionLedger::stale(bool only_words) const {
    std::vector<Issue> issues;
    const auto all = account_->conceded.concessions->all();
    for (std::size_t at = 0; at < all.size(); ++at) {
        const Concession& concession = all[at];
        const bool ran_out = concession.until < account_->today;
        const Account::Use& use = account_->uses[at];
        if ((use.met && !ran_out) || (only_words && concession.needs_judge)) continue;
        Issue issue;
        issue.severity = Issue::Severity::warning;
        issue.file = concession.file;
        issue.line = concession.line;
        if (!use.met) {
            issue.code = "concession-unused";
            issue.message = fmt::format("the concession for {} {}met no finding", describe(concession),
                                        ran_out ? "ran out on " + concession.until + " and " : "");
            issue.hint = "take it out if the words are gone; is all of it written as the report has it?";
        } else {
            issue.code = "concession-ran-out";
            issue.message = fmt::format("the concession for {} ran out on {}; {}", describe(concession),
                                        concession.until, again_text(use.count_again));
            issue.hint = use.count_again == 0 ? "take it out" : "mend the listing, or agree on another last day";
        }
        issues.push_back(std::move(issue));
    }
    return issues;
}

}  // namespace v0
}  // namespace grainside
