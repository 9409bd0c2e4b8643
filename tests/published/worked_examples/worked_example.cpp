#include "worked_example.h"

#include <fmt/format.h>
#include <simdjson.h>

#include <algorithm>
#include <memory>
#include <optional>
#include <ostream>
#include <utility>

#include "grainside/checker.h"
#include "grainside/filed_proofs.h"
#include "json_rows.h"

namespace grainside::published {

namespace {

namespace dom = simdjson::dom;

// The day of those rows that name none: all rules that had been published were in force.
constexpr const char* kDay = "2026-11-26";

std::string string_of(const dom::object& object, std::string_view member) {
    std::string_view value;
    return object[member].get(value) == simdjson::SUCCESS ? std::string(value) : std::string();
}

bool flag_of(const dom::object& object, std::string_view member, bool otherwise) {
    bool value = otherwise;
    return object[member].get(value) == simdjson::SUCCESS ? value : otherwise;
}

// "" where the row is right.
std::string read_row(const dom::object& object, WorkedExample& example) {
    const std::pair<std::string_view, std::string WorkedExample::*> texts[] = {
        {"name", &WorkedExample::name},
        {"id", &WorkedExample::fact},
        {"cite", &WorkedExample::cite},
        {"verdict", &WorkedExample::verdict},
        {"why", &WorkedExample::why},
        {"market", &WorkedExample::market},
        {"on", &WorkedExample::on},
        {"title", &WorkedExample::title},
        {"category", &WorkedExample::category},
        {"material", &WorkedExample::material},
        {"text", &WorkedExample::text},
        {"quote", &WorkedExample::quote},
        {"on_file", &WorkedExample::on_file},
    };
    for (const auto& [key, member] : texts) example.*member = string_of(object, key);
    example.or_worse = flag_of(object, "or_worse", false);
    example.applicable = flag_of(object, "applicable", true);
    if (example.on.empty()) example.on = kDay;
    for (const std::string* must : {&example.name, &example.fact, &example.cite, &example.verdict, &example.why}) {
        if (must->empty()) return fmt::format("'{}' lacks name, id, cite, verdict or why", example.name);
    }
    const std::string basis = string_of(object, "basis");
    if (basis != "seen" && basis != "from memory")
        return fmt::format("'{}': basis is seen or from memory", example.name);
    if (basis == "from memory") example.cite += " (from memory)";
    if (!example.applicable) return {};
    if (example.quote.empty() || example.text.find(example.quote) == std::string::npos) {
        return fmt::format("'{}': the text does not hold the quote", example.name);
    }
    const std::optional<Grade> grade = grade_named(string_of(object, "grade"));
    if (!grade) return fmt::format("'{}': no grade is named '{}'", example.name, string_of(object, "grade"));
    example.grade = *grade;
    return {};
}

Listing listing_of(const WorkedExample& example) {
    Listing listing;
    if (!example.title.empty()) listing.fields.push_back({"name", example.title});
    listing.fields.push_back({"description", example.text});
    if (!example.material.empty()) listing.fields.push_back({"material", example.material});
    if (!example.category.empty()) listing.fields.push_back({"category", example.category});
    return listing;
}

bool on_quote(const WorkedExample& example, const Listing& listing, const Claim& claim, std::uint32_t start,
              std::uint32_t end) {
    const std::size_t at = example.text.find(example.quote);
    return listing.fields[claim.field].name == "description" && start < at + example.quote.size() && at < end;
}

// A document on whatever the quote says, of the kind that a seller keeps. No rule book asks for a standard here: it is
// the verdict of the source that such proof would do.
std::shared_ptr<const FiledProofs> proofs_of(const RuleBook& book, const WorkedExample& example) {
    Checker checker(book, {.on = example.on});
    const Listing listing = listing_of(example);
    std::string says;
    for (const Claim& claim : checker.check(listing).mentions) {
        if (!on_quote(example, listing, claim, claim.start, claim.end)) continue;
        says += fmt::format("{}{}", says.empty() ? "" : ", ", book.concept_name(claim.says));
    }
    if (says.empty()) return nullptr;
    Result<FiledProofs> filed = FiledProofs::parse(
        "proofs.yaml",
        fmt::format(
            "- document: Report 1\n  laboratory: A test house\n  date: 2000-01-01\n  result: as the example says\n"
            "  scope: {{says: [{}]}}\n",
            says),
        ".", book);
    if (!filed) return nullptr;
    return std::make_shared<const FiledProofs>(std::move(filed).value());
}

}  // namespace

void PrintTo(const WorkedExample& example, std::ostream* out) {
    *out << example.text;
}

Result<std::vector<WorkedExample>> read_worked_examples() {
    return read_json_rows<WorkedExample>(GRAINSIDE_PUBLISHED_CORPUS "/worked_examples.jsonl", read_row);
}

Agreement compare(const RuleBook& book, const WorkedExample& example) {
    CheckOptions options;
    if (!example.market.empty()) options.markets = {example.market};
    options.on = example.on;
    if (!example.on_file.empty()) options.proofs = proofs_of(book, example);
    Checker checker(book, std::move(options));
    const Listing listing = listing_of(example);
    const CheckResult& result = checker.check(listing);
    std::optional<Grade> worst;
    Agreement agreement;
    for (const Finding& finding : result.findings) {
        const bool is_on_quote = on_quote(example, listing, result.mentions[finding.claim], finding.start, finding.end);
        agreement.ours += fmt::format("{}{} ({}){}", agreement.ours.empty() ? "" : ", ", name_of(finding.grade),
                                      book.rules()[finding.rule].id, is_on_quote ? "" : " on other words");
        if (is_on_quote && (!worst || finding.grade < *worst)) worst = finding.grade;
    }
    if (agreement.ours.empty()) agreement.ours = "nothing";
    if (example.grade == Grade::consistent) {
        agreement.agreed = result.findings.empty();
    } else {
        agreement.agreed = worst && (*worst == example.grade || (example.or_worse && *worst < example.grade));
    }
    return agreement;
}

}  // namespace grainside::published
