// write_price_view, write_price_comparison and write_price_end: what a sample costs, for people.
#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "evidence/evidence_data.h"
#include "grainside/cost_report.h"
#include "report/cost_facts.h"
#include "report/evidence_text.h"
#include "report/money_text.h"
#include "report/plain_lines.h"
#include "report/price_table.h"
#include "report/verdict_facts.h"
#include "report/view_text.h"

namespace grainside {
inline namespace v0 {

using report::Colours;

namespace {

constexpr std::size_t kColumns[] = {11, 22};  // the middle value; where 95 % lies
constexpr std::size_t kGroupIndent = 2;
constexpr std::size_t kItemIndent = 4;
constexpr std::size_t kBasisIndent = 6;

class PriceView {
public:
    PriceView(const DossierContext& context, const CostEstimate& cost, const ViewOptions& options, std::string& out)
        : context_(context),
          cost_(cost),
          style_(report::style_of(cost.currency, context.evidence.data().costs)),
          colours_(options.colour),
          width_(report::width_of(options)),
          out_(out) {}

    void write(const WhatIf* what_if) {
        report::append_sample_heading(context_, colours_, width_, out_);
        if (!cost_.on_record) {
            out_ += "No costs on record.\n\n";
            return;
        }
        write_lines();
        write_price();
        if (what_if != nullptr) write_what_if(*what_if);
        write_drivers();
        write_gaps();
        write_unusual();
        write_remarks();
        write_sources();
    }

private:
    void heading(std::string_view text) {
        out_ += colours_.heading();
        out_ += text;
        out_ += colours_.plain();
        out_ += '\n';
    }

    void item(std::string_view text, std::size_t indent = kGroupIndent) {
        out_.append(indent, ' ');
        out_ += "- ";
        report::append_wrapped(out_, text, indent + 2, width_);
    }

    std::string money(double value) const { return report::money_text(style_, value); }

    std::vector<std::string> cells_of(const CostAmount& amount) const {
        std::vector<std::string> cells = {money(amount.value)};
        if (amount.u > 0) cells.push_back(report::range_text(style_, amount));
        return cells;
    }

    void row(std::size_t indent, std::string_view text, const CostAmount& amount) {
        report::append_row(out_, indent, text, cells_of(amount), kColumns, width_);
    }

    void sum(std::string_view text, const CostAmount& amount) {
        out_ += colours_.heading();
        row(kGroupIndent, text, amount);
        out_ += colours_.plain();
    }

    void write_line(const report::CostStep& step, bool begins_group) {
        const bool alone = step.line->item == name_of(step.line->group);
        if (begins_group && !alone) {
            out_.append(kGroupIndent, ' ');
            out_ += name_of(step.line->group);
            out_ += '\n';
        }
        row(alone ? kGroupIndent : kItemIndent, step.text, step.amount);
        out_.append(kBasisIndent, ' ');
        out_ += colours_.quiet();
        report::append_wrapped(out_, step.line->basis, kBasisIndent, width_);
        out_ += colours_.plain();
    }

    void write_lines() {
        out_ += colours_.heading();
        report::append_row(out_, 0, fmt::format("What it costs, in {}", cost_.currency),
                           std::vector<std::string>{"middle", "95 % within"}, kColumns, width_);
        out_ += colours_.plain();
        const CostLine* last = nullptr;
        for (const report::CostStep& step : report::steps_of(cost_)) {
            if (step.line == nullptr) {
                sum("= " + step.text, step.amount);
                continue;
            }
            write_line(step, last == nullptr || last->group != step.line->group);
            last = step.line;
        }
        if (!cost_.duty_base.empty()) {
            out_.append(kGroupIndent, ' ');
            report::append_wrapped(out_, "duty is taken of: " + cost_.duty_base, kGroupIndent, width_);
        }
        out_ += '\n';
    }

    void write_price() {
        if (!cost_.multiple) return;
        const PriceMultiple& price = *cost_.multiple;
        heading("What was paid for it");
        const std::string net = fmt::format("{} {}", money(price.net), cost_.currency);
        std::string tax = " without sales tax of " + price.sales_tax;
        if (price.sales_tax.empty()) tax = ", sales tax not on record";
        if (price.paid == net && !price.sales_tax.empty()) tax = " without sales tax, for there is none in it";
        out_ += "  ";
        report::append_wrapped(out_, fmt::format("{}; {}{}", price.paid, net, tax), kGroupIndent, width_);
        out_ += "  ";
        report::append_wrapped(out_, report::multiple_text(price) + " times the total", kGroupIndent, width_);
        if (!cost_.usual_multiples.empty()) out_ += "  usual, of the landed cost:\n";
        for (const UsualRange& usual : cost_.usual_multiples) item(usual.range + "  " + usual.title, kItemIndent);
        out_ += '\n';
    }

    void write_what_if(const WhatIf& what_if) {
        constexpr std::size_t kBeforeAfter[] = {28, 28};
        heading("What if");
        for (const CostChange& change : what_if.changes) {
            item(fmt::format("{}: {} {}", change.item, change.key, change.value));
        }
        report::append_row(out_, kGroupIndent, "", std::vector<std::string>{"before", "after"}, kBeforeAfter, width_);
        const CostEstimate& before = what_if.before;
        for (const CostLine& line : cost_.lines) {
            const auto old = std::find_if(before.lines.begin(), before.lines.end(),
                                          [&](const CostLine& one) { return one.item == line.item; });
            const bool same = old != before.lines.end() && same_amount(old->amount, line.amount);
            if (same) continue;
            compare(line.item, old == before.lines.end() ? nullptr : &old->amount, &line.amount, kBeforeAfter);
        }
        compare("to make", &before.making, &cost_.making, kBeforeAfter);
        compare("total", &before.total, &cost_.total, kBeforeAfter);
        report::append_row(out_, kGroupIndent, "multiple",
                           std::vector<std::string>{before.multiple ? report::multiple_text(*before.multiple) : "-",
                                                    cost_.multiple ? report::multiple_text(*cost_.multiple) : "-"},
                           kBeforeAfter, width_);
        out_ += '\n';
    }

    static bool same_amount(const CostAmount& a, const CostAmount& b) {
        return a.value == b.value && a.low == b.low && a.high == b.high;
    }

    void compare(std::string_view text, const CostAmount* before, const CostAmount* after,
                 std::span<const std::size_t> columns) {
        std::vector<std::string> cells;
        for (const CostAmount* amount : {before, after}) {
            if (amount == nullptr) {
                cells.emplace_back("-");
                continue;
            }
            std::string cell = money(amount->value);
            if (amount->u > 0) cell += " (" + report::range_text(style_, *amount) + ')';
            cells.push_back(std::move(cell));
        }
        report::append_row(out_, kGroupIndent, text, cells, columns, width_);
    }

    void write_drivers() {
        if (cost_.drivers.empty()) return;
        heading("What makes the total uncertain");
        for (const CostDriver& driver : cost_.drivers) {
            out_ += fmt::format("  {:>4.0f} %  ", 100 * driver.share);
            report::append_wrapped(out_, fmt::format("{}: {}", driver.item, driver.input), 10, width_);
        }
        out_ += '\n';
    }

    void write_usual(const std::vector<UsualRange>& usual) {
        for (const UsualRange& range : usual) {
            item(fmt::format("usual: {}  {} (`usual {}`)", range.range, range.title, range.id), kItemIndent);
        }
    }

    void write_gaps() {
        if (cost_.gaps.empty()) return;
        heading("What is missing");
        for (const CostGap& gap : cost_.gaps) {
            item(gap.what);
            write_usual(gap.usual);
        }
        out_ += '\n';
    }

    void write_unusual() {
        if (cost_.unusual.empty()) return;
        heading("What is unusual");
        for (const UnusualCost& one : cost_.unusual) {
            item(fmt::format("{}: {} {}, where {} would be usual ({})", one.item, one.input, one.value, one.usual.range,
                             one.usual.title));
        }
        out_ += '\n';
    }

    void write_remarks() {
        if (cost_.remarks.empty()) return;
        heading("Remarks");
        for (const std::string& remark : cost_.remarks) item(remark);
        out_ += '\n';
    }

    // Each source once, in the order in which the view names what stands on it.
    void write_sources() {
        const std::vector<std::uint32_t> sources = report::cost_sources(cost_);
        if (sources.empty()) return;
        heading("What the book's ranges and rates stand on");
        for (const std::uint32_t index : sources) {
            item(report::cited(context_.book.sources()[index]));
        }
        out_ += '\n';
    }

    DossierContext context_;
    const CostEstimate& cost_;
    report::MoneyStyle style_;
    Colours colours_;
    std::size_t width_;
    std::string& out_;
};

}  // namespace

void write_price_view(const DossierContext& context, const CostEstimate& cost, const WhatIf* what_if,
                      const ViewOptions& options, std::string& out) {
    PriceView(context, cost, options, out).write(what_if);
}

void write_price_comparison(const EvidenceBook& evidence, std::span<const PricedSample> samples,
                            const ViewOptions& options, std::string& out) {
    constexpr std::size_t kWide[] = {13, 13, 29};
    if (samples.size() < 2) return;
    const Colours colours(options.colour);
    const std::size_t width = report::width_of(options);
    out += colours.heading();
    report::append_row(out, 0, "Compared", std::vector<std::string>{"total", "net price", "multiple"}, kWide, width);
    out += colours.plain();
    for (const report::SellerSamples& seller : report::by_seller(samples)) {
        out += "  ";
        out += report::one_line(seller.seller.empty() ? "seller not on record" : seller.seller, width - 2);
        out += '\n';
        for (const PricedSample* const sample : seller.samples) {
            const CostEstimate& cost = sample->cost;
            const report::MoneyStyle style = report::style_of(cost.currency, evidence.data().costs);
            std::vector<std::string> cells;
            if (cost.on_record) {
                cells.push_back(report::money_text(style, cost.total.value) + ' ' + cost.currency);
            } else {
                cells.emplace_back("no costs");
            }
            if (cost.multiple) {
                cells.push_back(report::money_text(style, cost.multiple->net) + ' ' + cost.currency);
                cells.push_back(report::multiple_text(*cost.multiple));
            }
            report::append_row(out, kItemIndent, sample->id, cells, kWide, width);
        }
    }
    report::append_wrapped(out,
                           "Each row stands in its own currency. 'At most': costs are missing. Samples differ in what "
                           "is on record, and two of a seller are no average of all that it sells.",
                           0, width);
    out += '\n';
}

void write_price_end(const RuleBook& book, std::string& out) {
    out +=
        "A price raises a question and contradicts nothing: costs are estimates from what is\n"
        "on record, and a multiple also pays for shops, returns, advice and risk. Usual\n"
        "ranges count only where a dossier asks for them by name.\n";
    write_view_end(book, out);
}

}  // namespace v0
}  // namespace grainside
