// Judging a dossier, planning its tests and reading it; beside them, in the same run, checking the same listing's words
// alone and parsing the same YAML without meaning. README.md says how to run it.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "document/faults.h"
#include "document/yaml_document.h"
#include "evidence/evidence_data.h"
#include "grainside/checker.h"
#include "grainside/cost.h"
#include "grainside/dossier.h"
#include "grainside/evidence_book.h"
#include "grainside/full_report.h"
#include "grainside/judge.h"
#include "grainside/rule_book.h"

namespace {

// A bag with claims on every part and readings on most.
constexpr const char* kDossier = R"(
sample: {what: "Tote bag, tan", category: bag, seller: Ferrow and Tide, bought: 2026-08-14, price: 189.00 USD, condition: new}
listing:
  captured: 2026-08-12
  region: eu
  name: Lumen tote in full grain leather
  material: leather
  description: |
    A tote in genuine full grain cowhide, vegetable-tanned, 1.8 mm thick. Water-resistant and fade-resistant.
    Solid brass buckles, nickel-free, with a gold-plated zip. Lining: 100% cotton. Handles in calf leather, edges
    painted by hand. Vegan it is not; made in Portugal by people who like their work.
parts:
  body:
    readings:
      - {method: loupe, outcome: repeating-print, date: 2026-08-20}
      - {method: water-drop, outcome: stands, date: 2026-08-20}
      - {method: cut-edge, outcome: fibre-under-film, date: 2026-08-20}
      - {method: coat-microscopy, coat: 0.13 +- 0.02 mm, total: 1.10 +- 0.03 mm, date: 2026-08-20}
      - {method: thickness-gauge, thickness: "1.1, 1.2, 1.1 mm", date: 2026-08-20}
  lining:
    readings:
      - {method: back-side, outcome: woven-back, date: 2026-08-20}
  hardware:
    readings:
      - {method: magnet, outcome: no-pull, date: 2026-08-21}
      - {method: weighing-in-water, in_air: 21.1193 +- 0.0024 g, in_water: 17.9291 +- 0.006 g, water: 21.0 +- 0.6 C, date: 2026-08-21}
      - {method: xrf-filed, composition: {Zn: 95.4 +- 0.6 %, Al: 4.0 +- 0.3 %, Cu: 0.05 +- 0.02 %}, date: 2026-08-21}
)";

// Nothing read and every part claimed: the most that a plan can have to do.
constexpr const char* kBare = R"(
sample: {what: "Tote bag, tan", category: bag, bought: 2026-08-14}
listing:
  region: eu
  name: Tote in full grain leather
  description: |
    Full grain calf leather, vegetable-tanned, aniline finish. Waterproof, scratch-resistant, fade-resistant. Lining in
    silk. Strap in bridle leather. Handles in sheepskin. Trim in suede. Solid brass hardware, gold-plated, nickel-free,
    rust-proof. Edges in leather. Zip in stainless steel. Thread in linen. Vegan.
parts: {}
)";

void demand(bool holds, const char* what) {
    if (holds) return;
    std::fprintf(stderr, "bench_judge: wrong answer before timing: %s\n", what);
    std::exit(1);
}

struct Books {
    Books() : rules(std::move(grainside::RuleBook::built_in()).value()) {
        auto loaded = grainside::EvidenceBook::load(rules);
        demand(static_cast<bool>(loaded), "the evidence book does not load");
        evidence.emplace(std::move(loaded).value());
    }
    grainside::Dossier dossier(const char* text) const {
        auto read = grainside::Dossier::parse("bench.yaml", text, ".", *evidence);
        if (!read) {
            for (const auto& issue : read.issues()) std::fputs(grainside::to_text(issue).c_str(), stderr);
        }
        demand(static_cast<bool>(read), "the dossier is refused");
        return std::move(read).value();
    }
    grainside::RuleBook rules;
    std::optional<grainside::EvidenceBook> evidence;
};

const Books& books() {
    static const Books kBooks;
    return kBooks;
}

void judge_dossier(benchmark::State& state) {
    const grainside::Dossier dossier = books().dossier(kDossier);
    grainside::Judge judge(books().rules, *books().evidence);
    const auto& first = judge.judge(dossier);
    demand(first.worst == grainside::Grade::contradicted, "zinc passes for brass");
    for (auto _ : state) benchmark::DoNotOptimize(judge.judge(dossier).verdicts.size());
}
BENCHMARK(judge_dossier)->Unit(benchmark::kMicrosecond);

void check_listing(benchmark::State& state) {
    const grainside::Dossier dossier = books().dossier(kDossier);
    grainside::Checker checker(books().rules);
    demand(checker.check(*dossier.listing()).claim_count > 10, "the listing claims little");
    for (auto _ : state) benchmark::DoNotOptimize(checker.check(*dossier.listing()).findings.size());
}
BENCHMARK(check_listing)->Unit(benchmark::kMicrosecond);

void plan_bare_sample(benchmark::State& state) {
    const grainside::Dossier dossier = books().dossier(kBare);
    grainside::Judge judge(books().rules, *books().evidence);
    const auto first = judge.plan(dossier);
    demand(first.questions >= 10 && first.tests.size() >= 5, "the plan is empty");
    demand(books().evidence->method_count() >= 25 && books().evidence->candidate_count() >= 30, "the book is small");
    for (auto _ : state) benchmark::DoNotOptimize(judge.plan(dossier).tests.size());
    state.counters["questions"] = static_cast<double>(first.questions);
    state.counters["tests"] = static_cast<double>(first.tests.size());
}
BENCHMARK(plan_bare_sample)->Unit(benchmark::kMillisecond);

// A sheet of twenty lines, most of them ranges of two values or three.
std::string cost_sheet() {
    std::string text =
        "sample: {what: Tote bag, category: bag, price: 189.00 EUR}\ncosts:\n  exchange: {USD: 0.86-0.88}\n"
        "  sales_tax: 22 %\n  materials:\n";
    for (int i = 0; i < 16; ++i) {
        text += "    - {item: m" + std::to_string(i) +
                ", area: 0.4-0.6 sq ft, cutting_yield: 65-75 %, price: 4.50-6.00 USD/sq ft}\n";
    }
    return text +
           "  hardware: 4-6 EUR\n  labour: {time: 80-110 min, rate: 14-18 EUR/h}\n"
           "  overhead: {share: 35-45 %, of: labour}\n  packing: 1.20-1.80 EUR\n";
}

void estimate_its_cost(benchmark::State& state) {
    const std::string sheet = cost_sheet();
    const grainside::Dossier dossier = books().dossier(sheet.c_str());
    const grainside::CostEstimate first = grainside::estimate_cost(*books().evidence, dossier);
    // 16 times half a square foot at 5.25 USD with 70 %, a dollar at 0.87, and the rest by hand: 95/60 h at 16, 40 %.
    const double by_hand = 16 * 0.5 * 5.25 / 0.7 * 0.87 + 5 + 95.0 / 60 * 16 * 1.4 + 1.5;
    demand(std::abs(first.total.value - by_hand) < 1e-9, "the costs do not add up");
    for (auto _ : state) benchmark::DoNotOptimize(grainside::estimate_cost(*books().evidence, dossier).total.u);
    state.counters["trials"] = static_cast<double>(first.trials);
}
BENCHMARK(estimate_its_cost)->Unit(benchmark::kMillisecond);

// The bare loop that drawing stands for: as many draws of as many inputs by the standard library's generator, summed.
void draw_as_many_numbers(benchmark::State& state) {
    constexpr std::size_t kInputs = 16 * 3 + 7;
    constexpr std::size_t kTrials = 200'000;
    std::mt19937_64 generator(1);
    for (auto _ : state) {
        double sum = 0;
        for (std::size_t i = 0; i < kInputs * kTrials; ++i) sum += static_cast<double>(generator() >> 12) * 0x1p-52;
        benchmark::DoNotOptimize(sum);
    }
}
BENCHMARK(draw_as_many_numbers)->Unit(benchmark::kMillisecond);

// The whole report of a dossier without costs: gathered (judged, planned), and written as a page, which should cost
// next to nothing beside it.
void gather_its_report(benchmark::State& state) {
    const grainside::Dossier dossier = books().dossier(kDossier);
    grainside::Judge judge(books().rules, *books().evidence);
    for (auto _ : state) {
        const auto report = grainside::FullReport::gather({books().rules, *books().evidence, dossier}, judge);
        benchmark::DoNotOptimize(report.worst());
    }
}
BENCHMARK(gather_its_report)->Unit(benchmark::kMicrosecond);

void write_its_page(benchmark::State& state) {
    const grainside::Dossier dossier = books().dossier(kDossier);
    grainside::Judge judge(books().rules, *books().evidence);
    std::vector<grainside::FullReport> reports;
    reports.push_back(grainside::FullReport::gather({books().rules, *books().evidence, dossier}, judge));
    std::string page;
    grainside::write_html(reports, page);
    demand(page.find("<mark class=\"contradicted\">") != std::string::npos, "no words are marked");
    for (auto _ : state) {
        page.clear();
        grainside::write_html(reports, page);
        benchmark::DoNotOptimize(page.size());
    }
    state.SetBytesProcessed(static_cast<std::int64_t>(page.size()) * static_cast<std::int64_t>(state.iterations()));
}
BENCHMARK(write_its_page)->Unit(benchmark::kMicrosecond);

void read_dossier(benchmark::State& state) {
    for (auto _ : state) benchmark::DoNotOptimize(books().dossier(kDossier).reading_count());
}
BENCHMARK(read_dossier)->Unit(benchmark::kMicrosecond);

void parse_its_yaml(benchmark::State& state) {
    for (auto _ : state) {
        grainside::document::Faults faults;
        benchmark::DoNotOptimize(grainside::document::parse_yaml("bench.yaml", kDossier, faults).has_value());
    }
}
BENCHMARK(parse_its_yaml)->Unit(benchmark::kMicrosecond);

void load_evidence(benchmark::State& state) {
    for (auto _ : state) benchmark::DoNotOptimize(static_cast<bool>(grainside::EvidenceBook::load(books().rules)));
}
BENCHMARK(load_evidence)->Unit(benchmark::kMicrosecond);

}  // namespace

BENCHMARK_MAIN();
