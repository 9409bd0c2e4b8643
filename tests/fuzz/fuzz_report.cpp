// Any bytes as a dossier: what loads is written in every form, the same each time, and every form is well-formed and
// inert (inert_forms.h): the whole report as page, Markdown, JSON and table; judgement, identity and plan as views and
// records; the verdicts as SARIF; the price as view and records, all sums finite.
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "grainside/cost_report.h"
#include "grainside/dossier_report.h"
#include "grainside/full_report.h"
#include "grainside/sarif.h"
#include "inert_forms.h"

namespace {

using namespace grainside;
using fuzz::require;

// A longer text only says more of the same, and a plan takes 20 ms.
constexpr std::size_t kMaxInputBytes = 2048;
// With costs, a report draws some hundred thousand numbers: of these inputs only the price is told.
constexpr std::string_view kSlow = "costs:";

const EvidenceBook& book() {
    static const RuleBook rules = std::move(RuleBook::built_in()).value();
    static const EvidenceBook evidence = std::move(EvidenceBook::load(rules)).value();
    return evidence;
}

std::array<std::string, 4> forms_of(const DossierContext& context, Judge& judge) {
    std::vector<FullReport> reports;
    reports.push_back(FullReport::gather(context, judge));
    std::array<std::string, 4> forms;
    write_html(reports, forms[0]);
    write_markdown(reports, forms[1]);
    write_json(reports, forms[2]);
    write_csv(reports, forms[3]);
    return forms;
}

void check_views(const DossierContext& context, Judge& judge) {
    const TestPlan plan = judge.plan(context.dossier);
    const bool has_listing = context.dossier.listing() != nullptr;
    const Judgement& judgement = has_listing ? judge.judge(context.dossier) : judge.identify(context.dossier);
    std::string views;
    std::string records;
    if (has_listing) {
        write_judgement_view(context, judgement, judge.options(), {.width = 40}, views);
        write_judgement_records(context, judgement, judge.options(), records);
        SarifWriter log(context.evidence, {.command = "judge", .markets = {}, .day = {}});
        // Without the head, every rule and limit, which is the same for every input: a part, as of a thread's writer.
        log.begin_part();
        std::string rest = R"({"runs":[{"results":[)";
        log.write_verdicts(context, judgement, rest);
        log.end(context.dossier.warnings(), true, rest);
        fuzz::check_json(rest);
    }
    write_identity_view(context, judgement, {.width = 40}, views);
    write_plan_view(context, plan, {.width = 40}, views);
    fuzz::check_characters(views);
    write_identity_records(context, judgement, records);
    write_plan_records(context, plan, records);
    fuzz::check_json_lines(records);
}

void check_amount(const CostAmount& amount) {
    require(std::isfinite(amount.value) && std::isfinite(amount.u) && amount.u >= 0);
    require(amount.low <= amount.high && std::isfinite(amount.low) && std::isfinite(amount.high));
}

void check_price(const DossierContext& context) {
    const CostEstimate cost = estimate_cost(context.evidence, context.dossier);
    for (const CostLine& line : cost.lines) check_amount(line.amount);
    for (const CostAmount& sum : {cost.materials, cost.making, cost.maker_price, cost.total}) check_amount(sum);
    for (const CostDriver& driver : cost.drivers) require(driver.share >= 0 && driver.share <= 1);
    std::string out;
    write_price_view(context, cost, nullptr, {.width = 40}, out);
    fuzz::check_characters(out);
    out.clear();
    write_price_records(context, cost, nullptr, out);
    fuzz::check_json_lines(out);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    if (size > kMaxInputBytes) return 0;
    const auto dossier = Dossier::parse("d.yaml", std::string(text), std::filesystem::path("no-such-folder"), book(),
                                        {.today = "2026-11-26"});
    if (!dossier) return 0;
    const DossierContext context{book().rule_book(), book(), dossier.value()};
    if (text.find(kSlow) != std::string_view::npos) {
        check_price(context);
        return 0;
    }
    Judge judge(book().rule_book(), book(), {.check = {}, .today = "2026-11-26"});
    const auto forms = forms_of(context, judge);
    // A plan takes most of the time: half of the inputs are reported twice, the others shown in the other forms.
    if (size % 2 == 0) {
        require(forms == forms_of(context, judge));
    } else {
        check_views(context, judge);
    }
    fuzz::check_page(forms[0]);
    fuzz::check_markdown(forms[1]);
    fuzz::check_json(forms[2]);
    fuzz::check_table(forms[3]);
    return 0;
}
