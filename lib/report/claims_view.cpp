// write_claims_view: a listing's claims as a table for people.
#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/report.h"
#include "report/cell_width.h"
#include "report/grade_colour.h"
#include "report/plain_lines.h"
#include "report/view_text.h"

namespace grainside {
inline namespace v0 {

namespace {

constexpr std::size_t kIndent = 2;
constexpr std::size_t kGap = 2;
constexpr std::size_t kFewestWordCells = 16;

struct Row {
    std::string part, kind, says, words;
};

void append_padded(std::string& out, std::string_view text, std::size_t cells) {
    out += text;
    const std::size_t used = report::cells_of(text);
    out.append(cells > used ? cells - used : 0, ' ');
    out.append(kGap, ' ');
}

std::vector<Row> rows_of(const RuleBook& book, const Listing& listing, const CheckResult& result, std::size_t width) {
    std::vector<const Claim*> claims;
    for (const Claim& claim : result.mentions) {
        if (is_claim_kind(claim.kind)) claims.push_back(&claim);
    }
    std::stable_sort(claims.begin(), claims.end(), [](const Claim* a, const Claim* b) { return a->part < b->part; });
    std::vector<Row> rows;
    for (const Claim* claim : claims) {
        const std::string_view text = listing.fields[claim->field].text;
        rows.push_back({std::string(name_of(claim->part)), std::string(name_of(claim->kind)),
                        report::one_line(report::statement_of(book, *claim), width / 2),
                        report::one_line(text.substr(claim->start, claim->end - claim->start), width)});
    }
    return rows;
}

}  // namespace

void write_claims_view(const RuleBook& book, const Listing& listing, const CheckResult& result,
                       const ViewOptions& options, std::string& out) {
    const report::Colours colours(options.colour);
    const std::size_t width = report::width_of(options);
    const std::vector<Row> rows = rows_of(book, listing, result, width);
    const std::string count = report::counted(rows.size(), "claim", "claims");
    out += rows.empty() ? colours.quiet() : colours.heading();
    out += report::listing_heading(listing, width) + ": " + count;
    out += colours.plain();
    out += '\n';
    report::append_fields_left_out(out, result);
    if (rows.empty()) return;

    const Row head = {"part", "kind", "says", "words"};
    std::size_t part = head.part.size();
    std::size_t kind = head.kind.size();
    std::size_t says = head.says.size();
    for (const Row& row : rows) {
        part = std::max(part, row.part.size());
        kind = std::max(kind, row.kind.size());
        says = std::max(says, report::cells_of(row.says));
    }
    const std::size_t before_words = kIndent + part + kind + says + 3 * kGap;
    const std::size_t words = std::max(kFewestWordCells, width > before_words ? width - before_words : 0);
    const auto append_row = [&](const Row& row) {
        out.append(kIndent, ' ');
        append_padded(out, row.part, part);
        append_padded(out, row.kind, kind);
        append_padded(out, row.says, says);
        out += report::one_line(row.words, words);
    };
    out += colours.quiet();
    append_row(head);
    out += colours.plain();
    out += '\n';
    for (const Row& row : rows) {
        append_row(row);
        out += '\n';
    }
    out += '\n';
}

}  // namespace v0
}  // namespace grainside
