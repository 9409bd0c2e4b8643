#include "verdict/reword_problem.h"

#include <algorithm>
#include <cstddef>
#include <string_view>

#include "rules/book_data.h"
#include "verdict/quotation.h"

namespace grainside::verdict {
namespace {

constexpr std::uint32_t kHangsOnNoun =
    static_cast<std::uint32_t>(Mark::on_product) | static_cast<std::uint32_t>(Mark::on_part) |
    static_cast<std::uint32_t>(Mark::on_material) | static_cast<std::uint32_t>(Mark::before_material);

bool is_identity(Kind kind) {
    return kind == Kind::material || kind == Kind::species || kind == Kind::grain;
}

class Collector {
public:
    Collector(const RuleBook& book, const Listing& listing, const CheckResult& result, const RewordOptions& options)
        : book_(book), listing_(listing), result_(result), options_(options) {}

    Problem problem(std::uint32_t claim, std::uint32_t start, std::uint32_t end, Grade grade,
                    const std::string& say_instead) const {
        const Claim& mention = result_.mentions[claim];
        Problem problem;
        problem.at = {mention.field, start, end};
        problem.grade = grade;
        const Claim* behind = right_behind(mention, end);
        problem.before_noun = (mention.marks & kHangsOnNoun) != 0 || behind != nullptr;
        problem.before_stuff = before_stuff(mention, end);
        problem.is_name = mention.place != 0;
        problem.behind = behind;
        if (!say_instead.empty()) add_wordings(say_instead, problem.before_noun, behind, problem);
        switch (listing_.fields[mention.field].origin.writing) {
            case Writing::json_value:
            case Writing::number_with_unit:
                problem.fixed = "it is no text but a number, true or false";
                break;
            case Writing::packed:
                problem.fixed = "its file is packed: unpack it and reword that";
                break;
            case Writing::nowhere:
            case Writing::plain:
            case Writing::json_string:
            case Writing::table_bare:
            case Writing::table_quoted:
                break;
        }
        if (problem.fixed.empty() && stands_in_quotation(listing_.fields[mention.field].text, start, end)) {
            problem.fixed = "it stands in a quotation, and what others said is theirs";
        }
        return problem;
    }

    void add_finding(const Finding& finding, Problem& problem) const {
        const RuleInfo& rule = book_.rules()[finding.rule];
        problem.rule = finding.rule;
        problem.remedy = rule.remedy;
        if (problem.wordings.empty() && may_go(rule, finding, problem.grade)) problem.wordings.emplace_back();
        if (finding.against != kNoClaim) {
            const Claim& other = result_.mentions[finding.against];
            problem.against = WordSpan{other.field, other.start, other.end};
            // 'full grain PU leather': what is true follows already.
            if (&other == problem.behind && !problem.wordings.empty()) {
                problem.wordings.insert(problem.wordings.begin(), std::string());
            }
        }
    }

private:
    bool may_go(const RuleInfo& rule, const Finding& finding, Grade grade) const {
        const bool vague = grade == Grade::vague;
        const bool unproven = grade == Grade::unsupported;
        if (options_.leave_out_all) return rule.leave_out || vague || unproven || finding.against != kNoClaim;
        return rule.leave_out && (vague || (unproven && options_.leave_out_unproven));
    }

    // What the same phrase names right behind: [full grain] buffalo hide.
    const Claim* right_behind(const Claim& claim, std::uint32_t end) const {
        const Claim* first = result_.mentions.data() + result_.mentions.size();
        for (const Claim* other = &claim + 1; other < first; ++other) {
            if (other->field != claim.field || other->start > end + 1) break;
            if (other->start == end + 1 && other->phrase == claim.phrase) return other;
        }
        return nullptr;
    }

    // Made of the [finest] leather: whether right behind stands a material that hangs on no other noun. Its claim may
    // begin with the words themselves.
    bool before_stuff(const Claim& claim, std::uint32_t end) const {
        constexpr std::ptrdiff_t kReach = 4;
        const Claim* const begin = result_.mentions.data();
        const Claim* const behind = begin + result_.mentions.size();
        for (const Claim* other = &claim - std::min(kReach, &claim - begin); other < behind; ++other) {
            if (other->field > claim.field || (other->field == claim.field && other->start > end + 1)) break;
            if (other->field != claim.field || !is_identity(other->kind)) continue;
            const bool around = other->start <= claim.start && other->end > end;
            if (around || other->start == end + 1) return (other->marks & kHangsOnNoun) == 0;
        }
        return false;
    }

    void add_wordings(const std::string& wording, bool before_noun, const Claim* behind, Problem& problem) const {
        if (before_noun) {
            if (const std::string form = form_before_noun(wording); !form.empty()) problem.wordings.push_back(form);
        }
        const vocabulary::Vocabulary& vocabulary = book_.data().vocabulary;
        const std::string noun = ' ' + vocabulary.concepts[vocabulary.known.leather].wording;
        // 'grain leather cowhide' names the stuff twice.
        if (behind != nullptr && is_identity(behind->kind) && wording.ends_with(noun)) {
            problem.wordings.push_back(wording.substr(0, wording.size() - noun.size()));
        }
        problem.wordings.push_back(wording);
    }

    // 'gold-plated' for 'gold plating'; "" where it is the same.
    std::string form_before_noun(std::string_view wording) const {
        const auto& concepts = book_.data().vocabulary.concepts;
        // 'nickel plating (contains nickel)'
        const std::string_view name = wording.substr(0, wording.find(" ("));
        for (std::size_t id = 1; id < concepts.size(); ++id) {
            const auto& entry = concepts[static_cast<ConceptId>(id)];
            if (entry.before_noun.empty() || entry.wording != name) continue;
            return entry.before_noun + std::string(wording.substr(name.size()));
        }
        return {};
    }

    const RuleBook& book_;
    const Listing& listing_;
    const CheckResult& result_;
    const RewordOptions& options_;
};

}  // namespace

std::vector<Problem> problems_of(const RuleBook& book, const Checker& checker, const Listing& listing,
                                 const CheckResult& result, const RewordOptions& options) {
    const Collector collector(book, listing, result, options);
    std::vector<Problem> problems;
    problems.reserve(result.findings.size());
    for (const Finding& finding : result.findings) {
        problems.push_back(collector.problem(finding.claim, finding.start, finding.end, finding.grade,
                                             checker.say_instead(listing, finding)));
        problems.back().because = book.rules()[finding.rule].because;
        collector.add_finding(finding, problems.back());
    }
    return problems;
}

std::vector<Problem> problems_of(const RuleBook& book, const Judgement& judgement, const Listing& listing,
                                 const RewordOptions& options) {
    const CheckResult& result = *judgement.check;
    const Collector collector(book, listing, result, options);
    std::vector<Problem> problems;
    for (const Verdict& verdict : judgement.verdicts) {
        if (verdict.grade == Grade::consistent || verdict.grade == Grade::inconclusive) continue;
        const Finding* finding = verdict.finding == kNoClaim ? nullptr : &result.findings[verdict.finding];
        // Words that only want a reading are fine as they are.
        if (finding == nullptr && verdict.grade == Grade::unsupported) continue;
        const Claim& claim = result.mentions[verdict.claim];
        problems.push_back(collector.problem(verdict.claim, finding != nullptr ? finding->start : claim.start,
                                             finding != nullptr ? finding->end : claim.end, verdict.grade,
                                             verdict.say_instead));
        problems.back().because = verdict.because;
        if (finding != nullptr) collector.add_finding(*finding, problems.back());
    }
    return problems;
}

}  // namespace grainside::verdict
