#include "fields_left_out.h"

#include <fmt/format.h>

#include <cstddef>

#include "report/plain_lines.h"

namespace grainside::tools {
namespace {

constexpr std::size_t kIdCells = 60;  // of a listing's id in a message

}  // namespace

std::optional<Issue> fields_left_out(const Listing& listing, std::uint32_t count) {
    if (count == 0) return std::nullopt;
    Issue issue;
    issue.code = "field-too-long";
    issue.message =
        fmt::format("listing '{}' has {} of more than {} MiB, not read", report::one_line(listing.id, kIdCells),
                    count == 1 ? "a field" : "fields", kMaxFieldBytes >> 20);
    issue.hint = "the other fields were checked";
    return issue;
}

}  // namespace grainside::tools
