#include "small_evidence.h"

#include <stdexcept>
#include <utility>
#include <vector>

#include "document/faults.h"
#include "evidence/load_alloys.h"
#include "evidence/load_candidates.h"
#include "evidence/load_costs.h"
#include "evidence/load_judging.h"
#include "evidence/load_limits.h"
#include "evidence/load_methods.h"
#include "support/fault_dump.h"
#include "support/small_rules.h"

namespace grainside::support {

namespace {

constexpr std::string_view kJudging =
    "decided_at: 95\nfrom_even: 80\nguard: 1\nsame_look: 50\nslip: {anyone: 2, practised: 1, laboratory: 0.3}\n"
    "conflict: 10\n"
    "plan: {minute: 0.5, harm: {none: 0, mark: 5, cut: 20, destroy: 60}, least_bits: 0.02}\n";

constexpr std::string_view kAlloys =
    "- {alloy: zinc, name: zinc, density: 6.6-6.7 g/cm3, balance: Zn, window: {Al: 3.7-4.3, Cu: 0-0.1},\n"
    "   tolerance: {Al: 0.2}, sources: law}\n"
    "- {alloy: brass, name: brass, density: 8.4-8.7 g/cm3, balance: Zn, window: {Cu: 60-70}, sources: law}\n";

constexpr std::string_view kCandidates =
    "- frame: sheet\n"
    "  title: what the sheet is\n"
    "  parts: [body, lining]\n"
    "  claims: [leather, textile]\n"
    "  candidates:\n"
    "    - {candidate: full-grain-leather, prior: 3, rules_out: [split-leather]}\n"
    "    - {candidate: suede, prior: 1}\n"
    "    - {candidate: cotton, prior: 4, bears_out: [fabric]}\n"
    "    - {candidate: odd-sheet, name: something else, prior: 2, leaves_open: [vegan-leather]}\n"
    "- frame: metal\n"
    "  title: what the metal is\n"
    "  parts: [hardware]\n"
    "  claims: [metal]\n"
    "  candidates:\n"
    "    - {candidate: zinc-alloy, prior: 1, alloy: zinc}\n"
    "    - {candidate: brass, prior: 1, alloy: brass}\n";

constexpr std::string_view kMethods =
    "- method: edge\n"
    "  title: Cut edge\n"
    "  how: Look.\n"
    "  looks_at: section\n"
    "  harm: cut\n"
    "  minutes: 10\n"
    "  cost: 1\n"
    "  who: practised\n"
    "  cautions: [Mind the blade.]\n"
    "  sources: law\n"
    "  outcomes: {fibre: a weave of fibres, yarns: yarns}\n"
    "  likelihood:\n"
    "    sheet:\n"
    "      leather: {fibre: 90, yarns: 10}\n"
    "      suede: {fibre: 80, yarns: 20}\n"
    "      others: {fibre: 5, yarns: 95}\n"
    "- {method: section, title: Section, how: Measure., looks_at: section, parts: [body], harm: cut, minutes: 9,\n"
    "   cost: 0, who: laboratory, sources: law, reads: {coat: mm, total: mm}, computes: coat-share}\n"
    "- {method: weighing, title: Weighing, how: Weigh., looks_at: density, harm: none, minutes: 9, cost: 0,\n"
    "   who: anyone, sources: law, computes: density, likelihood_by: density, frames: metal}\n"
    "- {method: xrf, title: XRF, how: Measure., looks_at: metal, harm: mark, minutes: 9, cost: 20,\n"
    "   who: laboratory, sources: law, reads: {content: '%'}, likelihood_by: composition, frames: metal}\n"
    "- {method: fibres, title: Fibres, how: Dissolve., looks_at: fibre, parts: [lining], harm: destroy, minutes: 9,\n"
    "   cost: 90, who: laboratory, sources: law, reads: {fibre-share: '%'}}\n"
    "- {method: colour, title: Colour, how: Measure., looks_at: colour, parts: [body], harm: none, minutes: 9,\n"
    "   cost: 0, who: anyone, sources: law, computes: colour-change, worn: spoils, reliability: 80}\n"
    "- {method: rub, title: Rub, how: Rub., looks_at: rub, parts: [body], harm: mark, minutes: 9, cost: 0,\n"
    "   who: anyone, sources: law, reads: {rub-grade: none, heat: degC}}\n"
    "- {method: film, title: Film, how: Measure., looks_at: film, parts: [body], harm: none, minutes: 9, cost: 0,\n"
    "   who: anyone, sources: law, reads: {film: mm}, outcomes: {thin: thin, middling: neither, thick: thick},\n"
    "   implies: {thick: {film: {above: 0.2 mm}}, middling: {film: {above: 0.1 mm}}, thin: {film: {at_most: 0.1 "
    "mm}}},\n"
    "   likelihood: {sheet: {suede: {thin: 80, middling: 15, thick: 5}, others: {thin: 20, middling: 30, thick: "
    "50}}}}\n";

constexpr std::string_view kLimits =
    "- {limit: coat, title: Coat, because: Too thick., claims: leather, quantity: coat,\n"
    "   contradicts: {above: 0.15 mm}, sources: law}\n";

struct Loaded {
    rules::BookData book;
    evidence::EvidenceData data;
    document::Faults faults;
};

void load(const std::map<std::string, std::string>& changed, Loaded& loaded) {
    std::map<std::string, std::string> files = small_evidence();
    for (const auto& [file, text] : changed) files[file] = text;
    load_small_rules(files, loaded.book, loaded.faults);
    evidence::load_judging(loaded.book, loaded.data, loaded.faults);
    evidence::load_alloys(loaded.book, loaded.data, loaded.faults);
    evidence::load_candidates(loaded.book, loaded.data, loaded.faults);
    evidence::load_methods(loaded.book, loaded.data, loaded.faults);
    evidence::load_limits(loaded.book, loaded.data, loaded.faults);
    evidence::load_costs(loaded.book, loaded.data, loaded.faults);
}

}  // namespace

std::map<std::string, std::string> small_evidence() {
    return {{"sources.yaml", "- {source: law, cite: A law, says: It says., how: seen}\n"},
            {"markets.yaml", "- {market: us}\n- {market: eu}\n"},
            {"judging.yaml", std::string(kJudging)},
            {"alloys.yaml", std::string(kAlloys)},
            {"candidates.yaml", std::string(kCandidates)},
            {"methods/a.yaml", std::string(kMethods)},
            {"limits/a.yaml", std::string(kLimits)}};
}

std::string faults_with(const std::string& file, std::string_view text) {
    Loaded loaded;
    load({{file, std::string(text)}}, loaded);
    std::string dump;
    for (const Issue& issue : loaded.faults.take()) {
        if (!dump.empty()) dump += "; ";
        if (issue.file != file) dump += issue.file + ":";
        dump += dump_places({&issue, 1});
    }
    return dump;
}

evidence::EvidenceData loaded_with(const std::string& file, std::string_view text) {
    return loaded_with({{file, std::string(text)}});
}

evidence::EvidenceData loaded_with(const std::map<std::string, std::string>& changed) {
    Loaded loaded;
    load(changed, loaded);
    if (loaded.faults.any_errors()) throw std::runtime_error(to_text(loaded.faults.take().front()));
    return std::move(loaded.data);
}

const EvidenceBook& small_evidence_book() {
    static const RuleBook kBook = [] {
        const RuleFolder folder(small_evidence());
        return std::move(RuleBook::load(folder.path())).value();
    }();
    static const EvidenceBook kEvidence = std::move(EvidenceBook::load(kBook)).value();
    return kEvidence;
}

}  // namespace grainside::support
