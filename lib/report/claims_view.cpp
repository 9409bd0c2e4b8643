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
// Of what a claim says and of its words, however narrow the terminal is.
constexpr std::size_t kFewestCells = 8;
constexpr std::size_t kSummaryCells = 14;  // for ": 12345 claims" behind the listing's id

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
                        report::statement_of(book, *claim),
                        report::one_line(text.substr(claim->start, claim->end - claim->start), width)});
    }
    return rows;
}

struct Widths {
    std::size_t part = 0, kind = 0, says = 0, words = 0;
};

// Part and kind have the cells that they need; the rest is shared, and what one column does not need the other gets.
Widths widths_of(const std::vector<Row>& rows, std::size_t width) {
    Widths widths;
    for (const Row& row : rows) {
        widths.part = std::max(widths.part, row.part.size());
        widths.kind = std::max(widths.kind, row.kind.size());
        widths.says = std::max(widths.says, report::cells_of(row.says));
        widths.words = std::max(widths.words, report::cells_of(row.words));
    }
    const std::size_t taken = kIndent + widths.part + widths.kind + 3 * kGap;
    const std::size_t room = std::max(width, taken + 2 * kFewestCells) - taken;
    if (widths.says + widths.words > room) {
        if (widths.says > room / 2) widths.says = std::max(room / 2, room - std::min(room, widths.words));
        widths.words = room - widths.says;
    }
    return widths;
}

}  // namespace

void write_claims_view(const RuleBook& book, const Listing& listing, const CheckResult& result,
                       const ViewOptions& options, std::string& out) {
    const report::Colours colours(options.colour);
    const std::size_t width = report::width_of(options);
    std::vector<Row> rows = rows_of(book, listing, result, width);
    const std::string count = report::counted(rows.size(), "claim", "claims");
    out += rows.empty() ? colours.quiet() : colours.heading();
    out += report::listing_heading(listing, width - kSummaryCells) + ": " + count;
    out += colours.plain();
    out += '\n';
    report::append_fields_left_out(out, result);
    if (rows.empty()) return;

    rows.insert(rows.begin(), Row{"part", "kind", "says", "words"});
    const Widths widths = widths_of(rows, width);
    for (const Row& row : rows) {
        const bool is_head = &row == &rows.front();
        if (is_head) out += colours.quiet();
        out.append(kIndent, ' ');
        append_padded(out, row.part, widths.part);
        append_padded(out, row.kind, widths.kind);
        append_padded(out, report::one_line(row.says, widths.says), widths.says);
        out += report::one_line(row.words, widths.words);
        if (is_head) out += colours.plain();
        out += '\n';
    }
    out += '\n';
}

}  // namespace v0
}  // namespace grainside
