#include "verdict/test_plan.h"

#include <algorithm>
#include <optional>
#include <set>
#include <string_view>
#include <utility>

#include "identify/plan.h"
#include "verdict/claim_verdicts.h"

namespace grainside::verdict {
namespace {

using identify::FrameView;
using identify::PartEvidence;
using identify::Question;

// The frame asks what a part is, and not what lies on it or how it behaves.
bool asks_for_material(const Bench& bench, const evidence::Frame& frame, Part part) {
    if ((frame.parts & evidence::part_bit(part)) == 0 || frame.of != evidence::kNone) return false;
    const ConceptId first = frame.candidates.front().is;
    return first != 0 && bench.tree[first].kind != Kind::plating;
}

// A part that may be sheet or metal is what its readings say; without any, the frame that stands first in the book.
std::optional<Question> what_it_is(const Bench& bench, const PartEvidence& part) {
    Question question;
    question.part = part.record.part;
    for (std::size_t i = 0; i < bench.data.frames.size(); ++i) {
        if (!asks_for_material(bench, bench.data.frames[i], part.record.part)) continue;
        FrameView view;
        view.frame = i;
        const bool read = !part.beliefs[i].readings.empty();
        if (read || question.views.empty()) question.views = {std::move(view)};
        if (read) break;
    }
    if (question.views.empty()) return std::nullopt;
    return question;
}

struct OpenClaims {
    std::vector<Question> questions;
    std::size_t statements = 0;
};

// Words that mislead or mean nothing do so whatever a test shows, so that no test is asked about them.
OpenClaims open_claims(const Bench& bench, const CheckResult& check) {
    OpenClaims result;
    std::vector<Question>& questions = result.questions;
    const auto considered = consider(bench, check);
    const std::vector<Grade> grades = grades_of(check, considered);
    std::set<std::pair<Saying, Grade>> statements;  // as reports tell them apart
    for (std::size_t i = 0; i < check.mentions.size(); ++i) {
        const Claim& claim = check.mentions[i];
        const bool testable = grades[i] == Grade::unsupported || grades[i] == Grade::inconclusive;
        if (!testable && grades[i] != Grade::vague) continue;
        statements.emplace(saying_of(claim), grades[i]);
        if (!testable || !is_claim_kind(claim.kind)) continue;
        const ClaimEvidence& evidence = considered.at(statement_of(claim));
        if (!evidence.asked) continue;
        Question question = question_of(bench, claim, evidence);
        // The same stated twice, or once with a number, is one question to a test.
        const bool known = std::any_of(questions.begin(), questions.end(), [&](const Question& one) {
            return one.part == question.part && one.says == question.says &&
                   one.limits.size() == question.limits.size();
        });
        if (!known && (!question.views.empty() || !question.limits.empty())) questions.push_back(std::move(question));
    }
    result.statements = statements.size();
    return result;
}

PlannedTest told(const Bench& bench, const RuleBook& book, const std::vector<Question>& questions,
                 const identify::PlanStep& step) {
    const evidence::Method& method = bench.data.methods[step.method];
    PlannedTest test;
    test.method = method.id;
    test.title = method.title;
    test.part = step.part;
    test.harm = evidence::name_of(method.harm);
    test.who = evidence::name_of(method.who);
    test.bits = step.bits;
    test.minutes = method.minutes;
    test.cost = method.cost;
    test.cautions = method.cautions;
    for (const std::size_t question : step.questions) {
        const ConceptId says = questions[question].says;
        test.about.emplace_back(says == 0 ? std::string_view("what it is") : book.concept_wording(says));
    }
    return test;
}

}  // namespace

TestPlan plan_tests(const Bench& bench, const RuleBook& book, const CheckResult* check) {
    TestPlan result;
    std::vector<Question> questions;
    if (check != nullptr) {
        OpenClaims open = open_claims(bench, *check);
        questions = std::move(open.questions);
        result.statements = open.statements;
    } else {
        for (const PartEvidence& part : bench.parts) {
            if (auto question = what_it_is(bench, part)) questions.push_back(std::move(*question));
        }
    }
    const identify::Plan plan = identify::make_plan(bench.data, bench.parts, questions);
    for (const identify::PlanStep& step : plan.steps) result.tests.push_back(told(bench, book, questions, step));
    result.next = plan.next;
    result.questions = questions.size();
    result.decided_now = plan.decided_now;
    result.decided_after = plan.decided_after;
    result.minutes = plan.minutes;
    result.cost = plan.cost;
    return result;
}

}  // namespace grainside::verdict
