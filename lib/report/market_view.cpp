// write_market_view: in which markets a listing stands, for people.
#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "report/cell_width.h"
#include "report/evidence_text.h"
#include "report/grade_colour.h"
#include "report/market_facts.h"
#include "report/plain_lines.h"
#include "report/rule_facts.h"
#include "report/view_text.h"
#include "rules/book_data.h"

namespace grainside {
inline namespace v0 {

using report::Colours;
using report::counted;
using report::SharedFinding;
using report::TextOfMarkets;

namespace {

constexpr std::size_t kMarketIndent = 2;
constexpr std::size_t kCellGap = 2;
constexpr std::size_t kNameCells = 24;
constexpr std::size_t kMarketGradeIndent = 4;
constexpr std::size_t kMarketValueIndent = 19;
constexpr std::size_t kWordCells = 120;
constexpr std::size_t kStandsCells = 12;
constexpr std::size_t kWorstCells = 12;
constexpr std::size_t kCountCells = 8;

class MarketView {
public:
    MarketView(const MarketContext& context, const ViewOptions& options, std::string& out)
        : context_(context),
          book_(context.book),
          colours_(options.colour),
          width_(report::width_of(options)),
          lines_(colours_, width_, out),
          out_(out) {}

    void write() {
        out_ += colours_.heading();
        out_ += report::listing_heading(context_.listing, width_);
        out_ += colours_.plain();
        out_ += "\n\n";
        write_table();
        write_summary();
        write_changes_to_make();
        write_coming();
    }

private:
    void cell(std::string_view text, std::size_t cells) {
        out_ += text;
        const std::size_t used = report::cells_of(text);
        out_.append((cells > used ? cells - used : 0) + kCellGap, ' ');
    }

    std::size_t code_cells() const {
        std::size_t cells = 0;
        for (const MarketAnswer& answer : context_.answers) cells = std::max(cells, report::cells_of(answer.market));
        return std::min(cells, kNameCells);
    }

    void write_table() {
        const std::size_t codes = code_cells();
        out_ += colours_.quiet();
        out_.append(kMarketIndent, ' ');
        cell("market", codes + kCellGap + kNameCells);
        cell("as it stands", kStandsCells);
        cell("worst", kWorstCells);
        cell("findings", kCountCells);
        out_ += "rules";
        out_ += colours_.plain();
        out_ += '\n';
        for (const MarketAnswer& answer : context_.answers) {
            out_.append(kMarketIndent, ' ');
            cell(report::one_line(answer.market, kNameCells), codes);
            cell(report::one_line(book_.market_name(answer.market), kNameCells), kNameCells);
            cell(answer.stands ? "yes" : "no", kStandsCells);
            if (answer.worst) out_ += colours_.grade(*answer.worst);
            const std::string_view worst = answer.worst ? name_of(*answer.worst) : std::string_view("-");
            out_ += worst;
            out_ += colours_.plain();
            out_.append(kWorstCells - worst.size() + kCellGap, ' ');
            cell(std::to_string(answer.findings.size()), kCountCells);
            out_ += rules_text(answer);
            out_ += '\n';
        }
        out_ += '\n';
        write_legend();
    }

    std::string rules_text(const MarketAnswer& answer) const {
        if (answer.rules == MarketRules::own) return "own";
        if (answer.rules == MarketRules::general) return "general";
        for (const rules::Market& market : book_.data().markets) {
            if (market.name == answer.market)
                return report::one_line("of " + report::market_list(market.within), kNameCells);
        }
        return {};
    }

    void write_legend() {
        const auto any = [&](MarketRules rules) {
            return std::any_of(context_.answers.begin(), context_.answers.end(),
                               [&](const MarketAnswer& answer) { return answer.rules == rules; });
        };
        if (any(MarketRules::larger)) {
            indented("'of ...': no rules of its own in this book; those of the larger market and general rules");
        }
        if (any(MarketRules::general)) indented("general: no rules of its own in this book; general rules only");
        if (any(MarketRules::larger) || any(MarketRules::general)) out_ += '\n';
    }

    void indented(std::string_view text) {
        out_.append(kMarketIndent, ' ');
        report::append_wrapped(out_, text, kMarketIndent, width_);
    }

    void write_summary() {
        std::vector<std::string> yes;
        std::vector<std::string> no;
        std::size_t left_out = 0;
        for (const MarketAnswer& answer : context_.answers) {
            (answer.stands ? yes : no).push_back(answer.market);
            for (const MarketFinding& finding : answer.findings)
                left_out += finding.grade > context_.asked.fail_at ? 1 : 0;
        }
        const std::string day = context_.asked.on.empty() ? "whatever the day" : "on " + context_.asked.on;
        report::append_wrapped(out_, market_line("Stands", yes, day), 0, width_);
        report::append_wrapped(out_, market_line("Does not stand", no, day), 0, width_);
        if (left_out > 0) {
            report::append_wrapped(out_,
                                   fmt::format("Findings of a lighter grade than {} do not count here; `grainside "
                                               "check` tells them.",
                                               name_of(context_.asked.fail_at)),
                                   0, width_);
        }
        out_ += '\n';
    }

    static std::string market_line(std::string_view verb, const std::vector<std::string>& markets,
                                   const std::string& day) {
        if (markets.empty()) return fmt::format("{} in no market that was asked for, {}.", verb, day);
        return fmt::format("{} in {}, {}: {}.", verb, counted(markets.size(), "market", "markets"), day,
                           report::market_list(markets));
    }

    void write_changes_to_make() {
        const std::vector<SharedFinding> findings = report::shared_findings(context_);
        if (findings.empty()) return;
        out_ += colours_.heading();
        out_ += "What to change";
        out_ += colours_.plain();
        out_ += "\n\n";
        for (const SharedFinding& finding : findings) write_finding(finding);
    }

    void write_finding(const SharedFinding& finding) {
        out_.append(kMarketGradeIndent, ' ');
        out_ += colours_.grade(finding.grade);
        out_ += name_of(finding.grade);
        out_ += colours_.plain();
        out_.append(kMarketValueIndent - kMarketGradeIndent - name_of(finding.grade).size(), ' ');
        report::append_wrapped(
            out_,
            fmt::format("'{}' in {}", report::one_line(finding.words, kWordCells), report::market_list(finding.fields)),
            kMarketValueIndent, width_);
        lines_.write("markets", finding.markets.size() == context_.answers.size()
                                    ? "all that were asked for"
                                    : report::market_list(finding.markets));
        write_texts("because", finding.reasons, finding.markets);
        write_advice(finding.advice);
        write_texts(finding.cites.size() == 1 ? "source" : "sources", finding.cites, finding.markets);
        write_texts(finding.rules.size() == 1 ? "rule" : "rules", finding.rules, finding.markets);
        out_ += '\n';
    }

    void write_advice(const report::MarketAdvice& advice) {
        if (!advice.text.empty()) lines_.write(advice.label, advice.text);
        if (advice.leave_out) lines_.write(advice.text.empty() ? "remedy" : "or", "leave the words out");
        if (advice.text.empty() && !advice.leave_out) {
            lines_.write("say instead", "(this book knows no wording that passes there)");
        }
    }

    // With its markets behind what is not the same in all of them.
    void write_texts(std::string_view label, const std::vector<TextOfMarkets>& texts,
                     const std::vector<std::string>& all) {
        for (const TextOfMarkets& one : texts) {
            const bool everywhere = one.markets.size() == all.size();
            lines_.write(label, everywhere ? one.text : one.text + " (" + report::short_market_list(one.markets) + ')');
            label = {};
        }
    }

    void write_coming() {
        const std::vector<report::SharedChange> changes = report::shared_changes(context_);
        if (!changes.empty()) {
            out_ += colours_.heading();
            out_ += "What is coming";
            out_ += colours_.plain();
            out_ += "\n\n";
        }
        for (const report::SharedChange& change : changes) {
            indented("from " + change.day + " in " + report::market_list(change.markets) + ": " + change.text);
        }
        std::vector<std::string> cut;
        for (const MarketAnswer& answer : context_.answers) {
            if (answer.more_days) cut.push_back(answer.market);
        }
        if (!cut.empty()) {
            indented(fmt::format("Rules change on more than {} days to come in {}; later ones were not looked at.",
                                 kMostLaterDays, report::market_list(cut)));
        }
        if (!changes.empty() || !cut.empty()) out_ += '\n';
    }

    const MarketContext& context_;
    const RuleBook& book_;
    Colours colours_;
    std::size_t width_;
    report::LabelledLines lines_;
    std::string& out_;
};

}  // namespace

void write_market_view(const MarketContext& context, const ViewOptions& options, std::string& out) {
    MarketView(context, options, out).write();
}

}  // namespace v0
}  // namespace grainside
