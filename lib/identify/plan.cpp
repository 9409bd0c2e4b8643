#include "identify/plan.h"

#include <algorithm>
#include <numeric>
#include <optional>
#include <tuple>

#include "identify/effort.h"
#include "identify/sampled_part.h"

namespace grainside::identify {
namespace {

constexpr std::size_t kMostSteps = 24;
constexpr std::uint64_t kSeed = 0x6772'6169'6e73'6964;

struct Choice {
    std::size_t method = 0;
    double bits = 0;
    double worth = 0;
    std::vector<std::size_t> questions;
};

// A part in the plan, with the questions about it.
struct Bench {
    Part part;
    std::vector<std::size_t> questions;
    SampledPart samples;
    std::optional<Choice> best = std::nullopt;  // its most worthy test as the samples stand
    bool has_step = false;                      // in the plan
};

std::optional<Choice> best_of(const evidence::EvidenceData& data, const Bench& bench) {
    std::optional<Choice> best;
    for (std::size_t method = 0; method < data.methods.size(); ++method) {
        if (!bench.samples.can_make(method)) continue;
        const std::vector<double> bits = bench.samples.bits_of(method);
        const double sum = std::accumulate(bits.begin(), bits.end(), 0.0);
        if (sum < data.judging.least_bits) continue;
        const double worth = sum / effort_of(data.judging, data.methods[method]);
        if (best && worth <= best->worth) continue;
        best = Choice{method, sum, worth, {}};
        constexpr double kLeastShare = 0.2;  // of what the test tells in all
        for (std::size_t i = 0; i < bits.size(); ++i) {
            if (bits[i] >= kLeastShare * sum) best->questions.push_back(bench.questions[i]);
        }
    }
    return best;
}

double decided_share(const std::vector<Bench>& benches, std::size_t questions) {
    double sum = 0;
    for (const Bench& bench : benches) sum += bench.samples.decided();
    return questions == 0 ? 1 : sum / static_cast<double>(questions);
}

}  // namespace

Plan make_plan(const evidence::EvidenceData& data, const std::vector<PartEvidence>& parts,
               const std::vector<Question>& questions) {
    std::vector<Bench> benches;
    for (const PartEvidence& part : parts) {
        std::vector<std::size_t> here;
        std::vector<const Question*> asked;
        for (std::size_t i = 0; i < questions.size(); ++i) {
            if (questions[i].part != part.record.part) continue;
            here.push_back(i);
            asked.push_back(&questions[i]);
        }
        if (here.empty()) continue;
        const std::uint64_t seed = kSeed + static_cast<std::uint64_t>(part.record.part);
        benches.push_back({part.record.part, std::move(here), SampledPart(data, part, std::move(asked), seed)});
    }

    Plan plan;
    plan.decided_now = decided_share(benches, questions.size());
    for (Bench& bench : benches) bench.best = best_of(data, bench);
    for (;;) {
        // Beyond a long plan only parts that have no test yet: a part without one says that none would tell more.
        const bool is_long = plan.steps.size() >= kMostSteps;
        const auto worth_of = [is_long](const Bench& bench) {
            return bench.best && !(is_long && bench.has_step) ? bench.best->worth : 0;
        };
        const auto most = std::max_element(benches.begin(), benches.end(),
                                           [&](const Bench& a, const Bench& b) { return worth_of(a) < worth_of(b); });
        if (most == benches.end() || worth_of(*most) <= 0) break;
        most->has_step = true;
        Choice choice = std::move(*most->best);
        most->samples.make(choice.method);
        most->best = best_of(data, *most);
        plan.steps.push_back({choice.method, most->part, choice.bits, std::move(choice.questions)});
        plan.minutes += data.methods[choice.method].minutes;
        plan.cost += data.methods[choice.method].cost;
    }
    plan.decided_after = std::max(plan.decided_now, decided_share(benches, questions.size()));
    if (plan.steps.empty()) return plan;

    const PlanStep first = plan.steps.front();
    std::stable_sort(plan.steps.begin(), plan.steps.end(), [&](const PlanStep& a, const PlanStep& b) {
        return data.methods[a.method].harm < data.methods[b.method].harm;
    });
    plan.next = static_cast<std::size_t>(std::find_if(plan.steps.begin(), plan.steps.end(),
                                                      [&](const PlanStep& step) {
                                                          return std::tie(step.method, step.part) ==
                                                                 std::tie(first.method, first.part);
                                                      }) -
                                         plan.steps.begin());
    return plan;
}

}  // namespace grainside::identify
