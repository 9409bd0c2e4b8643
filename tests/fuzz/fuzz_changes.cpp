// Any texts as dossiers and as changes of their costs: without a change an estimate is the same bytes, changes are
// refused with a reason or make the same estimate twice, made twice over they change nothing more, and every sum stays
// finite. What the dossiers teach, where something in them is confirmed: chances are chances and add up, every reading
// is counted once, and neither the order of the dossiers nor one that confirms nothing counts. Views and records of
// both are inert (inert_forms.h).
//
// Input: a dossier, and behind marks (input_parts.h) changes, one a line as ITEM|KEY|VALUE, and a second dossier.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "evidence/dossier_data.h"
#include "grainside/cost.h"
#include "grainside/cost_report.h"
#include "grainside/dossier_report.h"
#include "grainside/learn.h"
#include "inert_forms.h"
#include "input_parts.h"
#include "told_faults.h"

namespace {

using namespace grainside;
using fuzz::require;

// An estimate draws some hundred thousand numbers, whatever the text.
constexpr std::size_t kMaxInputBytes = 2048;
constexpr std::size_t kMaxChanges = 4;
constexpr double kWeight = 20;
// Sums of numbers between 0 and 1, a few hundred at most.
constexpr double kRounding = 1e-9;

const EvidenceBook& book() {
    static const RuleBook rules = std::move(RuleBook::built_in()).value();
    static const EvidenceBook evidence = std::move(EvidenceBook::load(rules)).value();
    return evidence;
}

std::optional<Dossier> dossier_of(const char* name, std::string_view text) {
    auto read = Dossier::parse(name, std::string(text), std::filesystem::path("no-such-folder"), book(),
                               {.today = "2026-11-26"});
    fuzz::told_faults(read.issues(), text);
    if (!read) return std::nullopt;
    return std::move(read).value();
}

std::vector<CostChange> changes_of(std::string_view text) {
    std::vector<CostChange> changes;
    while (!text.empty() && changes.size() < kMaxChanges) {
        const std::string_view line = text.substr(0, text.find('\n'));
        text.remove_prefix(std::min(line.size() + 1, text.size()));
        const std::size_t key = line.find('|');
        const std::size_t value = key == std::string_view::npos ? key : line.find('|', key + 1);
        if (value == std::string_view::npos) continue;
        changes.push_back({std::string(line.substr(0, key)), std::string(line.substr(key + 1, value - key - 1)),
                           std::string(line.substr(value + 1))});
    }
    return changes;
}

void check_amount(const CostAmount& amount) {
    require(std::isfinite(amount.value) && std::isfinite(amount.u) && amount.u >= 0);
    require(amount.low <= amount.high && std::isfinite(amount.low) && std::isfinite(amount.high));
}

std::string told(const Dossier& dossier, const CostEstimate& cost, const WhatIf* what_if) {
    for (const CostLine& line : cost.lines) check_amount(line.amount);
    for (const CostAmount& sum : {cost.materials, cost.making, cost.maker_price, cost.total}) check_amount(sum);
    if (cost.multiple) check_amount(cost.multiple->multiple);
    const DossierContext context{book().rule_book(), book(), dossier};
    std::string view;
    write_price_view(context, cost, what_if, {.width = 40}, view);
    fuzz::check_characters(view);
    std::string records;
    write_price_records(context, cost, what_if, records);
    fuzz::check_json_lines(records);
    return view + records;
}

// An estimate takes most of the time: what has no change is made twice, what has some is made with them and with them
// twice over.
void check_costs(const Dossier& dossier, const std::vector<CostChange>& changes) {
    if (changes.empty()) {
        const auto same = estimate_cost(book(), dossier, changes);
        require(static_cast<bool>(same));
        require(told(dossier, same.value(), nullptr) == told(dossier, estimate_cost(book(), dossier), nullptr));
        return;
    }
    const auto changed = estimate_cost(book(), dossier, changes);
    std::vector<CostChange> twice = changes;
    twice.insert(twice.end(), changes.begin(), changes.end());
    const auto again = estimate_cost(book(), dossier, twice);
    require(static_cast<bool>(changed) == static_cast<bool>(again));
    fuzz::told_faults(changed.issues(), "");
    if (!changed) return;
    const WhatIf what_if{changes, estimate_cost(book(), dossier)};
    require(told(dossier, changed.value(), &what_if) == told(dossier, again.value(), &what_if));
}

std::string told(const Learning& learning) {
    std::string view;
    write_learning_view(learning, {.width = 40}, view);
    fuzz::check_characters(view);
    std::string records;
    write_learning_records(book().rule_book(), learning, records);
    fuzz::check_json_lines(records);
    return view + records;
}

void check_table(const CalibrationTable& table) {
    // Of several categories (Brier 1950): 0 to 2 a case.
    require(table.brier >= 0 && table.brier <= 2 + kRounding);
    for (const ReliabilityLine& line : table.lines) {
        require(line.predictions > 0 && line.from < line.to);
        require(line.mean_predicted >= line.from - kRounding && line.mean_predicted <= line.to + kRounding);
        require(line.came_true >= 0 && line.came_true <= 1 + kRounding);
    }
}

std::size_t readings_of(const Learning& learning) {
    std::size_t all = 0;
    for (const LearntLikelihood& learnt : learning.likelihoods) all += learnt.seen;
    return all;
}

void check_learning(const Learning& learning, double weight) {
    for (const LearntLikelihood& learnt : learning.likelihoods) {
        std::size_t seen = 0;
        double before = 0;
        double after = 0;
        for (const LearntOutcome& outcome : learnt.outcomes) {
            require(outcome.before >= 0 && outcome.before <= 1 && outcome.after >= 0 && outcome.after <= 1);
            // Dirichlet counts: the mean lies between the book's figure and the share that was seen.
            const double share = static_cast<double>(outcome.seen) / static_cast<double>(learnt.seen);
            require(outcome.after >= std::min(outcome.before, share) - kRounding);
            require(outcome.after <= std::max(outcome.before, share) + kRounding);
            if (weight >= 1e9) require(std::fabs(outcome.after - outcome.before) < 1e-6);
            seen += outcome.seen;
            before += outcome.before;
            after += outcome.after;
        }
        require(learnt.seen > 0 && learnt.seen == seen);
        require(std::fabs(before - 1) < kRounding && std::fabs(after - 1) < kRounding);
    }
    for (const CalibrationTable* table : {&learning.without_readings, &learning.by_the_book, &learning.as_learnt}) {
        check_table(*table);
    }
    require(learning.without_readings.cases == learning.by_the_book.cases &&
            learning.by_the_book.cases == learning.as_learnt.cases);
}

bool confirms(const Dossier& dossier) {
    return !dossier.data().confirmed.empty();
}

// `dossiers` are one or two.
void check_lessons(std::vector<Dossier>& dossiers) {
    const Learning learning = learn(book(), dossiers, kWeight);
    check_learning(learning, kWeight);
    check_learning(learn(book(), dossiers, 1e12), 1e9);
    const std::string once = told(learning);
    if (dossiers.size() < 2) return;
    const bool all_confirm = confirms(dossiers[0]) && confirms(dossiers[1]);
    std::swap(dossiers[0], dossiers[1]);
    const Learning other_way = learn(book(), dossiers, kWeight);
    require(readings_of(other_way) == readings_of(learning) && other_way.dossiers == learning.dossiers);
    require(std::fabs(other_way.as_learnt.brier - learning.as_learnt.brier) < kRounding);
    if (all_confirm) return;
    require(told(other_way) == once);
    std::erase_if(dossiers, [](const Dossier& dossier) { return !confirms(dossier); });
    require(told(learn(book(), dossiers, kWeight)) == once);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size > kMaxInputBytes) return 0;
    auto parts = fuzz::parts_of({reinterpret_cast<const char*>(data), size}, "dossier");
    std::vector<Dossier> dossiers;
    if (auto dossier = dossier_of("d.yaml", parts["dossier"])) {
        check_costs(*dossier, changes_of(parts["changes"]));
        dossiers.push_back(std::move(*dossier));
    }
    if (auto second = dossier_of("e.yaml", parts["second"])) dossiers.push_back(std::move(*second));
    if (std::any_of(dossiers.begin(), dossiers.end(), confirms)) check_lessons(dossiers);
    return 0;
}
