// estimate_cost: the build-up of one dossier, its spread by two methods, and what stands beside it.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "cost/build_up.h"
#include "cost/changes.h"
#include "cost/line_text.h"
#include "cost/usual_costs.h"
#include "evidence/cost_value.h"
#include "evidence/dossier_data.h"
#include "evidence/evidence_data.h"
#include "grainside/cost.h"
#include "measure/distribution.h"
#include "measure/significant_place.h"

namespace grainside {
inline namespace v0 {

namespace {

using cost::BuildUp;
using cost::Output;
using evidence::CostEntry;
using evidence::CostInput;
using evidence::CostValue;

constexpr double kProbability = 0.95;
constexpr double kLeastDriver = 0.01;
// The total's interval to two digits of u as far as this many trials bring it; lines and sums beside it to one.
constexpr std::size_t kMostTrials = 200'000;
constexpr std::size_t kTrialsBeside = 50'000;

class Estimator {
public:
    Estimator(const EvidenceBook& book, const evidence::DossierData& dossier, const evidence::DossierCosts& costs,
              const std::optional<CostValue>& paid, std::vector<std::string> changed = {})
        : book_(book),
          data_(book.data().costs),
          dossier_(dossier),
          costs_(costs),
          paid_(paid),
          build_(data_, costs, paid) {
        for (const cost::BuildInput& input : build_.inputs()) {
            draws_.push_back(input.draw);
            measured_.push_back(input.draw.measured);
        }
        estimate_.remarks = std::move(changed);
    }

    CostEstimate take() {
        estimate_.on_record = true;
        estimate_.currency = costs_.currency;
        for (std::size_t i = 0; i < costs_.entries.size(); ++i) {
            if (build_.has_amount(i)) add_line(i);
        }
        add_total();
        estimate_.maker_price = sum_of(CostGroup::margin, CostGroup::other, estimate_.total);
        estimate_.making = sum_of(CostGroup::packing, CostGroup::margin, estimate_.maker_price);
        estimate_.materials = sum_of(CostGroup::hardware, CostGroup::packing, estimate_.making);
        add_duty_base();
        estimate_.gaps = cost::gaps_of(book_, dossier_, costs_);
        cost::UnusualCosts unusual = cost::unusual_costs(book_, dossier_, costs_);
        estimate_.unusual = std::move(unusual.found);
        estimate_.usual_multiples = cost::usual_multiples(book_);
        add_multiple();
        add_remarks();
        for (std::string& one : unusual.remarks) remark(std::move(one));
        return std::move(estimate_);
    }

private:
    static CostAmount exact(double value) { return {value, 0, value, value}; }

    CostAmount drawn(const Output& output, int digits, std::size_t most, std::size_t* trials = nullptr) {
        CostAmount amount = exact(build_.at_best(output));
        // Only the inputs that it hangs on are drawn.
        std::vector<std::size_t> used = build_.inputs_of(output);
        if (used.empty()) return amount;
        std::vector<measure::Draw> draws;
        draws.reserve(used.size());
        for (const std::size_t input : used) draws.push_back(draws_[input]);
        measure::MonteCarloOptions options;
        options.probability = kProbability;
        options.digits = digits;
        options.max_trials = most;
        const auto result = measure::monte_carlo(build_.model_of(output, std::move(used)), draws, options);
        if (!result) {
            not_drawn_ = true;
            return propagated(output, sensitivities(output));
        }
        amount.u = result->u;
        amount.low = result->symmetric.low;
        amount.high = result->symmetric.high;
        if (trials != nullptr) *trials = result->trials;
        return amount;
    }

    std::vector<double> sensitivities(const Output& output) const {
        return measure::sensitivities_of(build_.model(output, true), measured_);
    }

    CostAmount propagated(const Output& output, const std::vector<double>& slopes) const {
        const measure::Measured combined = measure::propagate(build_.at_best(output), measured_, slopes);
        const double half = measure::expanded_uncertainty(combined, kProbability);
        return {combined.value, combined.u, combined.value - half, combined.value + half};
    }

    // One input times a number needs no drawing.
    std::optional<CostAmount> scaled(std::size_t line) const {
        const auto one = build_.scaled_input(line);
        if (!one) return std::nullopt;
        const measure::Draw& draw = draws_[one->input];
        const double u = draw.measured.u;
        double half = 0;
        switch (draw.distribution) {
            case measure::Distribution::rectangular:
                half = kProbability * std::sqrt(3.0) * u;
                break;
            case measure::Distribution::normal:
                half = measure::two_sided_quantile(kProbability, draw.measured.dof) * u;
                break;
            case measure::Distribution::student_t:
                return std::nullopt;
        }
        if (half > draw.measured.value) return std::nullopt;  // nothing costs less than nothing
        const double middle = one->factor * draw.measured.value;
        return CostAmount{middle, one->factor * u, middle - one->factor * half, middle + one->factor * half};
    }

    void add_line(std::size_t i) {
        const CostEntry& entry = costs_.entries[i];
        CostLine line;
        line.group = entry.group;
        line.item = entry.item;
        if (entry.part) line.part = name_of(*entry.part);
        const auto simple = scaled(i);
        line.amount = simple ? *simple : drawn({Output::Kind::line, i, {}}, 1, kTrialsBeside);
        line.basis = cost::basis_of(entry, data_);
        line.line = entry.line;
        for (const CostValue& value : entry.values) {
            if (value.usual != evidence::kNoCostIndex) {
                line.usual.push_back(cost::usual_range(data_.usual[value.usual]));
            } else if (value.duty != evidence::kNoCostIndex) {
                line.usual.push_back(cost::usual_range(data_.duties[value.duty]));
            }
        }
        estimate_.lines.push_back(std::move(line));
    }

    // The same as the sum behind it, where that takes in the same lines.
    CostAmount sum_of(CostGroup last, CostGroup next, const CostAmount& same) {
        if (build_.lines_of_sum(last) == build_.lines_of_sum(next)) return same;
        return drawn({Output::Kind::sum, 0, last}, 1, kTrialsBeside);
    }

    void add_total() {
        const Output total{Output::Kind::sum, 0, CostGroup::other};
        estimate_.total = drawn(total, 2, kMostTrials, &estimate_.trials);
        const std::vector<double> slopes = sensitivities(total);
        estimate_.by_propagation = propagated(total, slopes);
        if (estimate_.by_propagation.u > 0) {
            // JCGM 101:2008, 7.9.2 with one digit, and 8.1.
            estimate_.tolerance = std::pow(10.0, measure::significant_place(estimate_.total.u, 1)) / 2;
            estimate_.methods_agree =
                std::abs(estimate_.by_propagation.low - estimate_.total.low) <= estimate_.tolerance &&
                std::abs(estimate_.by_propagation.high - estimate_.total.high) <= estimate_.tolerance;
        }
        add_drivers(slopes, estimate_.by_propagation.u);
    }

    void add_drivers(const std::vector<double>& slopes, double u) {
        if (u == 0) return;
        for (std::size_t i = 0; i < slopes.size(); ++i) {
            const double part = slopes[i] * draws_[i].measured.u / u;
            if (part * part < kLeastDriver) continue;
            const cost::BuildInput& input = build_.inputs()[i];
            estimate_.drivers.push_back({input.item, input.input, part * part});
        }
        std::stable_sort(estimate_.drivers.begin(), estimate_.drivers.end(),
                         [](const CostDriver& a, const CostDriver& b) { return a.share > b.share; });
    }

    // Each that differs.
    void add_duty_base() {
        std::vector<std::string> bases;
        for (const CostEntry& entry : costs_.entries) {
            if (evidence::find_value(entry, CostInput::duty_rate) == nullptr) continue;
            std::string base = fmt::format("{} ({})", cost::words_of(entry.duty_base), entry.duty_because);
            if (std::find(bases.begin(), bases.end(), base) != bases.end()) continue;
            bases.push_back(std::move(base));
            for (const std::uint32_t source : entry.duty_sources) {
                auto& all = estimate_.duty_sources;
                if (std::find(all.begin(), all.end(), source) == all.end()) all.push_back(source);
            }
        }
        estimate_.duty_base = fmt::format("{}", fmt::join(bases, "; "));
    }

    void add_multiple() {
        if (!paid_ || !build_.has_price() || estimate_.total.value <= 0) return;
        PriceMultiple multiple;
        multiple.paid = paid_->written;
        multiple.net = build_.net_at_best();
        if (costs_.sales_tax) multiple.sales_tax = costs_.sales_tax->written;
        multiple.multiple = drawn({Output::Kind::multiple, 0, {}}, 1, kTrialsBeside);
        multiple.floor_only = !estimate_.gaps.empty();
        estimate_.multiple = std::move(multiple);
    }

    bool stated(CostGroup group) const { return (costs_.stated & evidence::group_bit(group)) != 0; }

    void remark(std::string text) { estimate_.remarks.push_back(std::move(text)); }

    void add_remarks() {
        for (const evidence::ExchangeRate& rate : costs_.exchange) {
            remark(fmt::format("One {} counts as {} {}.", rate.currency, rate.worth.written, costs_.currency));
        }
        if (!estimate_.gaps.empty()) {
            remark("Costs are missing, so that the total is a floor, and the true multiple is smaller.");
        }
        if (!stated(CostGroup::freight) && !stated(CostGroup::duty)) {
            remark("Neither freight nor duty is on record: the total is what the product costs to make, not to land.");
        }
        if (paid_ && !build_.has_price()) {
            remark(
                fmt::format("The price is in {} and the costs are in {}: without a rate under `exchange` they are "
                            "not compared.",
                            paid_->currency, costs_.currency));
        } else if (paid_ && !costs_.sales_tax) {
            remark(
                "No sales tax is on record, so that the price counts as it stands; `sales_tax: 0 %` says that it "
                "holds none.");
        } else if (!paid_) {
            remark("No price is on record, so that there is no multiple.");
        }
        if (estimate_.multiple && estimate_.multiple->multiple.high < 1) {
            remark("The price without tax is below the total: a value on record is wrong, or it was sold at a loss.");
        }
        add_step_remarks();
        if (not_drawn_) {
            remark(
                "Drawing gave no finite number for every trial: intervals of those amounts are by the law of "
                "propagation.");
        } else if (!estimate_.methods_agree) {
            remark(
                "The law of propagation and drawing differ by more than the tolerance; the interval by drawing "
                "counts.");
        }
    }

    // A duty that changes its rate within what the value may be.
    void add_step_remarks() {
        for (const CostEntry& entry : costs_.entries) {
            const CostValue* const rate = evidence::find_value(entry, CostInput::duty_rate);
            if (rate == nullptr || rate->duty == evidence::kNoCostIndex) continue;
            const evidence::Duty& duty = data_.duties[rate->duty];
            const evidence::ExchangeRate* const worth = evidence::find_exchange(costs_, duty.currency);
            const double unit = worth == nullptr ? 1 : worth->worth.measured.value;
            const CostAmount base = entry.duty_base == evidence::DutyBase::maker_price
                                        ? estimate_.maker_price
                                        : sum_of(CostGroup::insurance, CostGroup::other, estimate_.total);
            for (const evidence::DutyBracket& bracket : duty.brackets) {
                if (!bracket.up_to || base.low / unit > *bracket.up_to || base.high / unit <= *bracket.up_to) continue;
                remark(
                    fmt::format("The rate of duty changes at {:g} {}, and the value may lie on either side: each "
                                "draw takes its own rate.",
                                *bracket.up_to, duty.currency));
            }
        }
    }

    const EvidenceBook& book_;
    const evidence::CostBook& data_;
    const evidence::DossierData& dossier_;
    const evidence::DossierCosts& costs_;
    const std::optional<CostValue>& paid_;
    BuildUp build_;
    std::vector<measure::Draw> draws_;
    std::vector<measure::Measured> measured_;  // the same, without their distributions
    bool not_drawn_ = false;                   // of any amount
    CostEstimate estimate_;
};

}  // namespace

CostEstimate estimate_cost(const EvidenceBook& book, const Dossier& dossier) {
    const evidence::DossierData& data = dossier.data();
    if (data.costs.on_record) return Estimator(book, data, data.costs, data.paid).take();
    CostEstimate nothing;
    if (data.paid) nothing.currency = data.paid->currency;
    return nothing;
}

Result<CostEstimate> estimate_cost(const EvidenceBook& book, const Dossier& dossier,
                                   const std::vector<CostChange>& changes) {
    if (changes.empty()) return estimate_cost(book, dossier);
    evidence::DossierCosts costs = dossier.data().costs;
    std::optional<CostValue> paid = dossier.data().paid;
    if (!costs.on_record) {
        Issue issue;
        issue.code = "unknown-item";
        issue.message = "the dossier has no costs that could be changed";
        issue.hint = "write its `costs` (rules/EVIDENCE.md)";
        return issue;
    }
    std::vector<std::string> remarks;
    std::vector<Issue> issues = cost::apply_changes(changes, book.data().costs, costs, paid, remarks);
    if (!issues.empty()) return issues;
    return Estimator(book, dossier.data(), costs, paid, std::move(remarks)).take();
}

}  // namespace v0
}  // namespace grainside
