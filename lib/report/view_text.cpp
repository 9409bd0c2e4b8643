#include "report/view_text.h"

#include <algorithm>

#include "report/plain_lines.h"

namespace grainside::report {
namespace {

constexpr std::size_t kNarrowest = 40;
constexpr std::size_t kFewestIdCells = 8;

}  // namespace

std::size_t width_of(const ViewOptions& options) {
    return std::max(options.width, kNarrowest);
}

std::string listing_heading(const Listing& listing, std::size_t width) {
    // The id that a reader makes often ends with the line already.
    const std::string line = std::to_string(listing.line);
    const bool says_line = listing.line == 0 || listing.id.ends_with(':' + line);
    const std::string place = says_line ? std::string() : ", line " + line;
    const std::size_t room = width > place.size() + kFewestIdCells ? width - place.size() : kFewestIdCells;
    const std::string id = one_line(listing.id, room);
    return (id.empty() ? "listing" : id) + place;
}

std::string counted(std::uint64_t count, std::string_view one, std::string_view several) {
    std::string text = count == 0 ? "no" : std::to_string(count);
    text += ' ';
    text += count == 1 ? one : several;
    return text;
}

std::string statement_of(const RuleBook& book, const Claim& claim) {
    std::string text = claim.negated ? "not " : "";
    text += book.concept_name(claim.says);
    if (claim.place != 0) text.append(" ").append(book.concept_name(claim.place));
    if (claim.called != 0) text.append(", called ").append(book.concept_name(claim.called));
    if (claim.hedged) text += ", hedged";
    return text;
}

void append_fields_left_out(std::string& out, const CheckResult& result) {
    if (result.fields_too_long == 0) return;
    out += counted(result.fields_too_long, "field is", "fields are") + " longer than " +
           std::to_string(kMaxFieldBytes >> 20) + " MiB and not read\n";
}

}  // namespace grainside::report
