// dossier_outcomes: what the built-in books make of every dossier of corpus/dossiers, and what they would learn of them
// together, on standard output. outcomes.txt is its output; a test compares the two.
#include <fmt/format.h>

#include <cstdio>
#include <exception>
#include <string>
#include <utility>
#include <vector>

#include "grainside/evidence_book.h"
#include "grainside/rule_book.h"
#include "labels.h"
#include "outcomes.h"

namespace grainside::tests {
namespace {

constexpr const char* kToday = "2026-11-26";
constexpr double kWeight = 20;  // in readings, of the book's own figures; as `grainside learn` has it

int run() {
    const auto rules = RuleBook::built_in();
    if (!rules) return 2;
    const auto evidence = EvidenceBook::load(rules.value());
    if (!evidence) return 2;
    JudgeOptions options;
    options.today = kToday;
    Judge judge(rules.value(), evidence.value(), options);
    std::vector<Dossier> dossiers;
    for (const std::string& name : dossier_names()) {
        auto read = Dossier::read(std::string(GRAINSIDE_DOSSIERS) + '/' + name + ".yaml", evidence.value(), {kToday});
        if (!read) return 2;
        const Dossier& dossier = dossiers.emplace_back(std::move(read).value());
        fmt::print("== {}\n\n{}", name, text_of_beliefs(judge.identify(dossier)));
        if (const Listing* listing = dossier.listing()) {
            fmt::print("{}", text_of_verdicts(*listing, judge.judge(dossier)));
        }
        fmt::print("{}", text_of_plan(judge.plan(dossier)));
        const CostEstimate cost = estimate_cost(evidence.value(), dossier);
        if (cost.on_record) fmt::print("{}", text_of_costs(cost));
        fmt::print("\n");
    }
    fmt::print("== learnt of all of them\n\n{}", text_of_learning(learn(evidence.value(), dossiers, kWeight)));
    fmt::print("\n== what each claim is to each candidate\n\n{}", text_of_bearings(rules.value(), evidence.value()));
    return 0;
}

}  // namespace
}  // namespace grainside::tests

int main() {
    try {
        return grainside::tests::run();
    } catch (const std::exception& error) {
        fmt::print(stderr, "dossier_outcomes: {}\n", error.what());
        return 2;
    }
}
