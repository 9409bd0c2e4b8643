// The costs of a dossier as a formula over its inputs.
//
// Every uncertain value is one input, an exchange rate one for all amounts that it converts, so that what many lines
// share is drawn once (JCGM 101:2008, 6.4.1) and counts once in the law of propagation (JCGM 100:2008, 5.1.2). What is
// exact is part of the formula. Shares (yields, waste) that a draw puts outside of what a share can be count as its
// end; nothing costs less than nothing. Values of the formula cost no allocation.
//
// A duty whose rate depends on the value has a step; `frozen` keeps the rate that holds at the best estimates, for the
// law of propagation, which knows slopes only. Immutable once made; the costs and the book must outlive it.
#ifndef GRAINSIDE_COST_BUILD_UP_H
#define GRAINSIDE_COST_BUILD_UP_H

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "evidence/cost_data.h"
#include "measure/monte_carlo.h"
#include "measure/propagation.h"

namespace grainside::cost {

struct BuildInput {
    std::string item;   // of the line; the currency of an exchange rate
    std::string input;  // "price"
    measure::Draw draw;
    std::size_t entry = evidence::kNoCostIndex;  // whose value it is; none for exchange rates and the price paid
    evidence::CostInput of{};
};

// What can be asked of the formula. Sums take in all groups up to the last that is named.
struct Output {
    enum class Kind : std::uint8_t { line, sum, multiple } kind{};
    std::size_t line = 0;
    CostGroup last{};  // of a sum
};

class BuildUp {
public:
    BuildUp(const evidence::CostBook& book, const evidence::DossierCosts& costs,
            const std::optional<evidence::CostValue>& paid);

    std::span<const BuildInput> inputs() const noexcept { return inputs_; }
    // The amount is known: no price, quantity or time is missing.
    bool has_amount(std::size_t line) const noexcept { return lines_[line].complete; }
    // A price is on record in a currency that the costs can be compared with.
    bool has_price() const noexcept { return net_.complete; }

    // The output as a function of the inputs, for lib/measure. One at a time: the function keeps its working memory.
    measure::Model model(const Output& output, bool frozen) const;
    // The same of `used` inputs alone, the others at their best estimates.
    measure::Model model_of(const Output& output, std::vector<std::size_t> used) const;
    double at_best(const Output& output) const;
    double net_at_best() const;
    // Which inputs the output hangs on, in their order.
    std::vector<std::size_t> inputs_of(const Output& output) const;
    // How many lines a sum takes in; two sums of the same lines are the same.
    std::size_t lines_of_sum(CostGroup last) const noexcept { return up_to(last).last; }
    // An output that is one uncertain input times a number: which input, and the number. Nothing for any other.
    struct Scaled {
        std::size_t input = 0;
        double factor = 0;
    };
    std::optional<Scaled> scaled_input(std::size_t line) const;

private:
    enum class Op : std::uint8_t { times, divide, share, per_yield, per_kept, with_allowance, without_tax };
    struct Factor {
        Op op{};
        std::uint32_t input = 0;
    };
    // Lines first to last, the end left out.
    struct Range {
        std::size_t first = 0, last = 0;
    };
    struct Line {
        bool complete = false;
        double constant = 1;
        std::vector<Factor> factors;
        std::vector<Range> bases;  // empty: the line is no share
        const evidence::Duty* duty = nullptr;
        std::optional<std::uint32_t> duty_exchange;  // input that one of the duty's currency is worth
        double duty_unit = 1;                        // the same, where it is exact
        double frozen_rate = 0;                      // percent
    };

    static double applied(Op op, double factor, double value) noexcept;
    void multiply(Line& line, Op op, const evidence::CostValue& value, const std::string& item, std::size_t entry);
    void convert(Line& line, const std::string& currency);
    std::uint32_t exchange_input(const evidence::ExchangeRate& rate);
    void add_line(const evidence::CostEntry& entry);
    void add_quantity(const evidence::CostEntry& entry, Line& line);
    void add_net(const evidence::CostValue& paid);
    Range up_to(CostGroup last) const noexcept;

    double product(const Line& line, std::span<const double> at) const noexcept;
    double amount(const Line& line, std::span<const double> at, std::span<const double> amounts,
                  bool frozen) const noexcept;
    double evaluate(const Output& output, std::span<const double> at, std::span<double> amounts,
                    bool frozen) const noexcept;
    std::vector<double> best() const;

    const evidence::CostBook& book_;
    const evidence::DossierCosts& costs_;
    std::vector<BuildInput> inputs_;
    std::vector<std::optional<std::uint32_t>> exchange_inputs_;  // by DossierCosts::exchange
    std::vector<Line> lines_;                                    // by DossierCosts::entries
    std::array<std::size_t, evidence::kCostGroupCount> group_end_{};
    Line net_;
};

}  // namespace grainside::cost

#endif  // GRAINSIDE_COST_BUILD_UP_H
