#include "published_rows.h"

#include <fmt/format.h>
#include <simdjson.h>

#include <algorithm>
#include <ostream>

#include "grainside/checker.h"
#include "json_rows.h"

namespace grainside::published {

namespace {

namespace dom = simdjson::dom;

std::string string_of(const dom::object& object, std::string_view member) {
    std::string_view value;
    return object[member].get(value) == simdjson::SUCCESS ? std::string(value) : std::string();
}

bool names_a_test(std::string_view name) {
    return !name.empty() && std::all_of(name.begin(), name.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_';
    });
}

// "" where the verdict is right.
std::string read_verdict(const dom::object& object, Verdict& verdict) {
    verdict.market = string_of(object, "market");
    verdict.on = string_of(object, "on");
    const std::optional<Grade> grade = grade_named(string_of(object, "grade"));
    if (!grade) return fmt::format("no grade is named '{}'", string_of(object, "grade"));
    verdict.grade = *grade;
    return {};
}

std::string read_row(const dom::object& object, Row& row) {
    row.name = string_of(object, "name");
    row.text = string_of(object, "text");
    row.quote = string_of(object, "quote");
    row.language = string_of(object, "language");
    row.category = string_of(object, "category");
    row.cite = string_of(object, "cite");
    if (!row.cite.empty()) row.cite += fmt::format(" ({})", string_of(object, "basis"));
    if (!names_a_test(row.name)) return fmt::format("'{}' cannot name a test", row.name);
    if (row.quote.empty() || row.text.find(row.quote) == std::string::npos) return "the text does not hold the quote";
    if (const std::string part = string_of(object, "part"); !part.empty()) {
        row.part = part_named(part);
        if (!row.part) return fmt::format("no part is named '{}'", part);
    }
    row.verdicts.resize(1);
    if (std::string fault = read_verdict(object, row.verdicts[0]); !fault.empty()) return fault;
    dom::array elsewhere;
    if (object["elsewhere"].get(elsewhere) != simdjson::SUCCESS) return {};
    for (const dom::element element : elsewhere) {
        dom::object other;
        if (element.get(other) != simdjson::SUCCESS) return "a verdict is an object";
        row.verdicts.emplace_back();
        if (std::string fault = read_verdict(other, row.verdicts.back()); !fault.empty()) return fault;
    }
    return {};
}

// A statement of the product as a whole and one of its main outside part are the same to a reader (corpus/README.md).
bool same_place(Part a, Part b) {
    const auto outside = [](Part part) {
        return part == Part::whole || part == Part::body || part == Part::strap || part == Part::upper;
    };
    return a == b || ((a == Part::whole || b == Part::whole) && outside(a) && outside(b));
}

bool overlaps_quote(const Finding& finding, const Row& row) {
    for (std::size_t at = row.text.find(row.quote); at != std::string::npos; at = row.text.find(row.quote, at + 1)) {
        if (finding.start < at + row.quote.size() && at < finding.end) return true;
    }
    return false;
}

std::string told(const RuleBook& book, const Row& row, const CheckResult& result) {
    std::string text;
    for (const Finding& finding : result.findings) {
        text += fmt::format("{}{} '{}' of the {} [{}]", text.empty() ? "" : "; ", name_of(finding.grade),
                            row.text.substr(finding.start, finding.end - finding.start),
                            name_of(result.mentions[finding.claim].part), book.rules()[finding.rule].id);
    }
    return text.empty() ? "nothing" : text;
}

bool agrees(const Row& row, const Verdict& verdict, const CheckResult& result) {
    if (verdict.grade == Grade::consistent) return result.findings.empty();
    const auto cause = std::find_if(result.findings.begin(), result.findings.end(), [&](const Finding& finding) {
        return finding.grade == verdict.grade && overlaps_quote(finding, row) &&
               (!row.part || same_place(*row.part, result.mentions[finding.claim].part));
    });
    return cause != result.findings.end() &&
           std::all_of(result.findings.begin(), result.findings.end(),
                       [&](const Finding& finding) { return finding.rule == cause->rule; });
}

}  // namespace

void PrintTo(const Row& row, std::ostream* out) {
    *out << row.text;
}

Result<std::vector<Row>> read_rows(const std::string& path) {
    return read_json_rows<Row>(path, read_row);
}

std::string disagreement(const RuleBook& book, const Row& row) {
    std::string text;
    for (const Verdict& verdict : row.verdicts) {
        CheckOptions options;
        if (!verdict.market.empty()) options.markets = {verdict.market};
        options.on = verdict.on;
        Checker checker(book, std::move(options));
        Listing listing;
        listing.language = row.language;
        listing.fields.push_back({"description", row.text});
        if (!row.category.empty()) listing.fields.push_back({"category", row.category});
        const CheckResult& result = checker.check(listing);
        if (agrees(row, verdict, result)) continue;
        text += fmt::format("market '{}', day '{}': wanted {} '{}'{}, found {}\n", verdict.market, verdict.on,
                            name_of(verdict.grade), row.quote,
                            row.part ? fmt::format(" of the {}", name_of(*row.part)) : "", told(book, row, result));
    }
    return text;
}

}  // namespace grainside::published
