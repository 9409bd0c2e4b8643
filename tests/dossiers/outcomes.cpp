#include "outcomes.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>
#include <vector>

#include "identify/claim_bearing.h"
#include "rules/book_data.h"

namespace grainside::tests {
namespace {

// Six decimals; nothing that rounds to zero has a sign.
std::string fixed(double value, int decimals = 6) {
    std::string text = fmt::format("{:.{}f}", value, decimals);
    return text.find_first_not_of("-0.") == std::string::npos ? fmt::format("{:.{}f}", 0.0, decimals) : text;
}

// Six significant digits.
std::string significant(double value) {
    return fmt::format("{:.6g}", value);
}

// Largest first as printed, else in the order that `named` gives: what is equal but for rounding must not change
// places.
template <typename One, typename Size, typename Named>
std::vector<One> by_printed_size(std::vector<One> all, Size size, Named named) {
    const auto printed = [&](const One& one) { return std::stod(significant(size(one))); };
    std::sort(all.begin(), all.end(), [&](const One& a, const One& b) {
        return printed(a) != printed(b) ? printed(a) > printed(b) : named(a) < named(b);
    });
    return all;
}

std::string text_of(const CostAmount& amount) {
    return fmt::format("{} u {} from {} to {}", significant(amount.value), significant(amount.u),
                       significant(amount.low), significant(amount.high));
}

std::string text_of(const FrameBelief& belief, Part part) {
    std::string text = fmt::format("{} {}: conflict {}{}", name_of(part), belief.frame, fixed(belief.conflict, 4),
                                   belief.contradictory ? ", contradictory" : "");
    for (const std::uint32_t reading : belief.odd_ones) text += fmt::format(", odd one {}", reading);
    text += "\n   ";
    const auto candidates = by_printed_size(
        belief.candidates, [](const CandidateBelief& one) { return one.posterior; },
        [](const CandidateBelief& one) { return one.id; });
    for (const CandidateBelief& candidate : candidates) {
        text += fmt::format(" {} {}", candidate.id, significant(candidate.posterior));
    }
    text += "\n    readings";
    for (std::size_t i = 0; i < belief.readings.size(); ++i) {
        text += fmt::format(" {}: {}", belief.readings[i], fixed(belief.decibans[i], 4));
    }
    return text + '\n';
}

std::string text_of(const LimitResult& limit) {
    std::string text = fmt::format("    limit {} {}: {}, {}", limit.limit, name_of(limit.part), name_of(limit.says),
                                   fixed(limit.probability));
    if (!limit.value.empty()) text += ", value " + limit.value;
    text += ", bound " + limit.bound;
    if (limit.repeats) text += fmt::format(", readings in all {}", *limit.repeats);
    return text + '\n';
}

std::string text_of(const CalibrationTable& table, std::string_view name) {
    std::string text = fmt::format("{}: {} cases, Brier {}\n", name, table.cases, fixed(table.brier));
    for (const ReliabilityLine& line : table.lines) {
        text += fmt::format("    {} to {}: {} predictions, {} predicted, {} came true\n", fixed(line.from, 1),
                            fixed(line.to, 1), line.predictions, fixed(line.mean_predicted), fixed(line.came_true));
    }
    return text;
}

}  // namespace

std::string text_of_beliefs(const Judgement& identified) {
    std::string text;
    for (const PartJudgement& part : identified.parts) {
        for (const FrameBelief& belief : part.frames) text += text_of(belief, part.part);
    }
    return text;
}

std::string text_of_verdicts(const Listing& listing, const Judgement& judged) {
    std::string text;
    for (const Verdict& verdict : judged.verdicts) {
        const Claim& claim = judged.check->mentions[verdict.claim];
        const Field& field = listing.fields[claim.field];
        text += fmt::format("{} '{}' {}: {}, holds {} fails {} open {}{}", field.name,
                            field.text.substr(claim.start, claim.end - claim.start), name_of(claim.part),
                            name_of(verdict.grade), fixed(verdict.holds), fixed(verdict.fails), fixed(verdict.open),
                            verdict.contradictory ? ", contradictory" : "");
        const auto weighed = by_printed_size(
            verdict.readings, [](const WeighedEvidence& one) { return std::fabs(one.decibans); },
            [](const WeighedEvidence& one) { return std::pair(one.part, one.reading); });
        for (const WeighedEvidence& one : weighed) {
            text += fmt::format(", {} {}: {}", name_of(one.part), one.reading, fixed(one.decibans, 4));
        }
        if (!verdict.next_test.empty()) text += ", next " + verdict.next_test;
        text += '\n';
        for (const LimitResult& limit : verdict.limits) text += text_of(limit);
    }
    return text;
}

std::string text_of_plan(const TestPlan& plan) {
    std::string text = fmt::format("plan: {} questions, decided {} to {}, {} min, {} EUR, first {}\n", plan.questions,
                                   fixed(plan.decided_now), fixed(plan.decided_after), fixed(plan.minutes, 1),
                                   fixed(plan.cost, 1), plan.tests.empty() ? "none" : plan.tests[plan.next].method);
    for (const PlannedTest& test : plan.tests) {
        text += fmt::format("    {} {}: {} bits about {}\n", test.method, name_of(test.part), fixed(test.bits),
                            fmt::join(test.about, "; "));
    }
    return text;
}

std::string text_of_costs(const CostEstimate& cost) {
    std::string text = "costs in " + cost.currency + '\n';
    for (const CostLine& line : cost.lines) {
        text += fmt::format("    {} {}: {}\n", name_of(line.group), line.item, text_of(line.amount));
    }
    text +=
        fmt::format("    sum of materials: {}\n    sum of making: {}\n    sum at maker's price: {}\n    total: {}\n",
                    text_of(cost.materials), text_of(cost.making), text_of(cost.maker_price), text_of(cost.total));
    text += fmt::format("    by propagation: {}, {}\n", text_of(cost.by_propagation),
                        cost.methods_agree ? "as by drawing" : "not as by drawing");
    if (cost.multiple) text += fmt::format("    multiple: {}\n", text_of(cost.multiple->multiple));
    for (const CostDriver& driver : cost.drivers) {
        text += fmt::format("    driver {} {}: {}\n", driver.item, driver.input, fixed(driver.share));
    }
    return text;
}

std::string text_of_learning(const Learning& learning) {
    std::string text = fmt::format("{} dossiers\n", learning.dossiers);
    for (const LearntLikelihood& row : learning.likelihoods) {
        text += fmt::format("{} {} {}, seen {}:", row.method, row.frame, row.candidate, row.seen);
        for (const LearntOutcome& outcome : row.outcomes) {
            text += fmt::format(" {} {} {}", outcome.outcome, outcome.seen, fixed(outcome.after));
        }
        text += '\n';
    }
    return text + text_of(learning.without_readings, "without readings") +
           text_of(learning.by_the_book, "by the book") + text_of(learning.as_learnt, "as learnt");
}

std::string text_of_bearings(const RuleBook& rules, const EvidenceBook& evidence) {
    const vocabulary::ConceptTree& tree = rules.data().vocabulary.concepts;
    std::string text;
    for (const evidence::Frame& frame : evidence.data().frames) {
        text += frame.id + ':';
        for (const evidence::Candidate& candidate : frame.candidates) text += ' ' + candidate.id;
        text += '\n';
        std::vector<std::string> lines;
        for (std::size_t id = 1; id < tree.size(); ++id) {
            const auto says = static_cast<ConceptId>(id);
            if (!identify::any_above(tree, frame.claims, says)) continue;
            std::string& line = lines.emplace_back("    " + std::string(tree[says].name) + ' ');
            for (const identify::Bearing bearing : identify::bearings_of(tree, frame, says)) {
                line += "tfo"[static_cast<std::size_t>(bearing)];
            }
        }
        std::sort(lines.begin(), lines.end());
        text += fmt::format("{}\n", fmt::join(lines, "\n"));
    }
    return text;
}

}  // namespace grainside::tests
