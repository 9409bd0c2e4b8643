// Any texts as a file of concessions and a file of documents on file, beside a listing: both load or are refused,
// twice the same, faults with their place. Concessions change no finding, only which count, and on a later day never
// more of them stand. Documents take findings away: what is gone is answered by one of them, what none answers stays,
// and the worst grade never gets worse. Applied twice, or by two ledgers that are put together, it is the same. Told as
// records, view and SARIF, all of it is inert (inert_forms.h).
//
// Input: the concessions, and behind marks (input_parts.h) proofs, description, name, attribute, value, id, seller.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "grainside/checker.h"
#include "grainside/concessions.h"
#include "grainside/evidence_book.h"
#include "grainside/filed_proofs.h"
#include "grainside/report.h"
#include "grainside/sarif.h"
#include "inert_forms.h"
#include "input_parts.h"
#include "told_faults.h"

namespace {

using namespace grainside;
using fuzz::require;

// A longer text only says more of the same.
constexpr std::size_t kMaxInputBytes = 4096;
constexpr const char* kDay = "2026-11-26";
constexpr const char* kLaterDay = "2027-06-01";

const EvidenceBook& book() {
    static const RuleBook rules = std::move(RuleBook::built_in()).value();
    static const EvidenceBook evidence = std::move(EvidenceBook::load(rules)).value();
    return evidence;
}

// Read twice; nothing where it is refused.
template <typename Read>
auto read_twice(std::string_view text, const Read& read) {
    auto first = read();
    const auto second = read();
    require(static_cast<bool>(first) == static_cast<bool>(second));
    require(fuzz::told_faults(first.issues(), text) == fuzz::told_faults(second.issues(), text));
    using Value = std::decay_t<decltype(std::move(first).value())>;
    return first ? std::make_shared<Value>(std::move(first).value()) : nullptr;
}

std::shared_ptr<Concessions> concessions_of(const std::string& text) {
    auto agreed = read_twice(text, [&] { return Concessions::parse("c.yaml", text, book()); });
    if (!agreed) return agreed;
    for (const Concession& one : agreed->all()) {
        require(!one.rule.empty() && !one.reason.empty() && !one.owner.empty() && one.until.size() == 10);
        require((!one.listing.empty() || !one.words.empty()) && one.line >= 1);
    }
    return agreed;
}

std::shared_ptr<FiledProofs> proofs_of(const std::string& text) {
    // No file beside the list, so that the input alone decides.
    auto filed = read_twice(
        text, [&] { return FiledProofs::parse("p.yaml", text, std::filesystem::path("none"), book().rule_book()); });
    if (!filed) return filed;
    for (const FiledProof& one : filed->all()) {
        require(!one.document.empty() && one.date.size() == 10 && !one.says.empty() && one.line >= 1);
        require(one.expires.empty() || one.date <= one.expires);
    }
    return filed;
}

struct Texts {
    std::map<std::string, std::string_view> parts;
    std::string attribute;
    Listing listing;
};

void take_texts(std::string_view input, Texts& texts) {
    texts.parts = fuzz::parts_of(input, "concessions");
    texts.attribute = "additionalProperty." + std::string(texts.parts["attribute"]);
    texts.listing.id = texts.parts["id"];
    texts.listing.seller = texts.parts["seller"];
    texts.listing.fields = {{"name", texts.parts["name"]},
                            {"description", texts.parts["description"]},
                            {texts.attribute, texts.parts["value"]}};
}

bool same(const Finding& one, const Finding& other) {
    return one.rule == other.rule && one.claim == other.claim && one.start == other.start && one.end == other.end &&
           one.grade == other.grade;
}

bool holds(const std::vector<Finding>& findings, const Finding& wanted) {
    return std::any_of(findings.begin(), findings.end(), [&](const Finding& one) { return same(one, wanted); });
}

Grade worst_of(const std::vector<Finding>& findings) {
    Grade worst = Grade::consistent;
    for (const Finding& finding : findings) worst = std::min(worst, finding.grade);
    return worst;
}

bool supported(const CheckResult& result, std::uint32_t claim) {
    const ClaimOnFile* const known = on_file(result, claim);
    return known != nullptr && known->outcome == ProofOutcome::supports;
}

void check_documents(const CheckResult& plain, const CheckResult& filed, std::size_t entries) {
    require(plain.mentions.size() == filed.mentions.size() && plain.claim_count == filed.claim_count);
    require(worst_of(plain.findings) <= worst_of(filed.findings));
    bool any_supported = false;
    for (const ClaimOnFile& one : filed.on_file) {
        require(one.claim < filed.mentions.size() && one.proof < entries);
        require(std::binary_search(filed.proofs_met.begin(), filed.proofs_met.end(), one.proof));
        any_supported = any_supported || one.outcome == ProofOutcome::supports;
        // What is told as lifted stands on no words that are flagged.
        if (one.lifted) require(one.outcome == ProofOutcome::supports && one.start < one.end);
    }
    for (const Finding& finding : plain.findings) {
        require(supported(filed, finding.claim) || holds(filed.findings, finding));
    }
    // What comes up instead was silenced by what is gone.
    for (const Finding& finding : filed.findings) require(any_supported || holds(plain.findings, finding));
}

void check_conceded(const CheckResult& result, const Conceded& conceded, std::size_t entries) {
    require(conceded.matches.size() == result.findings.size());
    std::size_t standing = 0;
    Grade worst = Grade::consistent;
    for (std::size_t at = 0; at < conceded.matches.size(); ++at) {
        const ConcessionMatch& match = conceded.matches[at];
        require(match.concession == kNoConcession ? !match.in_force : match.concession < entries);
        if (match.in_force) {
            ++standing;
        } else {
            worst = std::min(worst, result.findings[at].grade);
        }
    }
    require(standing == conceded.count && worst == conceded.worst);
}

std::string told(const Listing& listing, const CheckResult& result, const Checker& checker, const Conceded* conceded) {
    static const RecordWriter writer(book().rule_book());
    std::string records;
    writer.write_findings(listing, result, checker, records, conceded);
    fuzz::check_json_lines(records);
    // One a finding and a lifted one, and the closing line.
    const auto lifted =
        std::count_if(result.on_file.begin(), result.on_file.end(), [](const ClaimOnFile& one) { return one.lifted; });
    require(std::count(records.begin(), records.end(), '\n') ==
            static_cast<std::ptrdiff_t>(result.findings.size()) + lifted + 1);
    std::string view;
    write_view(book().rule_book(), listing, result, checker, {.width = 40}, view, conceded);
    fuzz::check_characters(view);
    // One writer, for it tells every rule when it is made; of its log a part, as of a thread's writer.
    static SarifWriter log(book().rule_book(), {.command = "check", .markets = {}, .day = kDay});
    static std::once_flag named;
    std::call_once(named, [&] { log.name_inputs(std::vector<std::string>{"l.jsonl"}); });
    log.begin_part();
    std::string results = R"({"runs":[{"results":[)";
    log.write_findings("l.jsonl", listing, result, checker, results, conceded);
    results += "]}]}";
    fuzz::check_json(results);
    return records + view + results;
}

std::string stale_of(const ConcessionLedger& ledger, std::string_view text) {
    return fuzz::told_faults(ledger.stale(false), text);
}

void check_concessions(const Concessions& agreed, const std::string& text, const Listing& listing,
                       const CheckResult& result, const Checker& checker) {
    const std::vector<Finding> findings = result.findings;
    ConcessionLedger ledger(agreed, kDay);
    const Conceded conceded = ledger.of_findings(book().rule_book(), listing, result);
    check_conceded(result, conceded, agreed.all().size());
    require(std::equal(findings.begin(), findings.end(), result.findings.begin(), result.findings.end(), same));
    const std::string once = told(listing, result, checker, &conceded);

    ConcessionLedger again(agreed, kDay);
    require(told(listing, result, checker, &again.of_findings(book().rule_book(), listing, result)) == once);
    require(stale_of(again, text) == stale_of(ledger, text));
    // What two saw counts as if one had seen it.
    ConcessionLedger both(agreed, kDay);
    both.add(ledger);
    both.add(again);
    ledger.of_findings(book().rule_book(), listing, result);
    require(stale_of(both, text) == stale_of(ledger, text));

    ConcessionLedger later(agreed, kLaterDay);
    const Conceded& then = later.of_findings(book().rule_book(), listing, result);
    check_conceded(result, then, agreed.all().size());
    for (std::size_t at = 0; at < findings.size(); ++at) require(conceded.stands(at) || !then.stands(at));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size > kMaxInputBytes) return 0;
    Texts texts;
    take_texts({reinterpret_cast<const char*>(data), size}, texts);
    const std::string concessions(texts.parts["concessions"]);
    const std::string proofs(texts.parts["proofs"]);
    const auto agreed = concessions_of(concessions);
    const auto filed = proofs_of(proofs);

    // Made once: a checker has tables of its own.
    static Checker plain(book().rule_book(), {.markets = {"us", "eu"}, .on = kDay});
    static Checker by_file(book().rule_book(), {.markets = {"us", "eu"}, .on = kDay});
    const CheckResult& words = plain.check(texts.listing);
    if (agreed) check_concessions(*agreed, concessions, texts.listing, words, plain);
    if (!filed) return 0;
    const CheckOptions with_proofs{.markets = {"us", "eu"}, .on = kDay, .proofs = filed};
    by_file.check(texts.listing);
    const CheckResult& answered = by_file.check_again(texts.listing, with_proofs);
    check_documents(words, answered, filed->all().size());
    ProofLedger met(*filed);
    met.add(answered.proofs_met);
    fuzz::told_faults(met.unused(), proofs);
    const std::string once = told(texts.listing, answered, by_file, nullptr);
    if (agreed) check_concessions(*agreed, concessions, texts.listing, answered, by_file);
    // The same when it is asked again, and with all documents twice over.
    const CheckResult& again = by_file.check_again(texts.listing, with_proofs);
    require(told(texts.listing, again, by_file, nullptr) == once);
    const auto twice = std::make_shared<const FiledProofs>(filed->joined_by(*filed));
    const CheckResult& doubled =
        by_file.check_again(texts.listing, {.markets = {"us", "eu"}, .on = kDay, .proofs = twice});
    require(told(texts.listing, doubled, by_file, nullptr) == once);
    return 0;
}
