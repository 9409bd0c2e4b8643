#include "listing_run.h"

#include <fmt/format.h>

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "grainside/listing_reader.h"
#include "report/plain_lines.h"

namespace grainside::tools {
namespace {

constexpr std::size_t kIdCells = 60;  // of a listing's id in a message

}  // namespace

void for_each_listing(const SharedOptions& options, Diagnostics& diagnostics,
                      const std::function<bool(const Listing&, const std::string& input)>& handle) {
    const std::vector<std::string> inputs = inputs_of(options, diagnostics);
    const ReadOptions read_options = read_options_of(options);

    Listing listing;
    std::vector<Issue> issues;
    std::uint64_t listings = 0;
    std::uint64_t bytes_before = 0;
    for (const std::string& input : inputs) {
        auto reader = ListingReader::open(input, read_options);
        if (!reader) {
            diagnostics.report(reader.issues());
            continue;
        }
        for (bool more = true; more;) {
            issues.clear();
            more = reader.value().next(listing, issues);
            diagnostics.report(issues);
            if (!more) break;
            if (!handle(listing, input)) return;
            diagnostics.progress().show(++listings, bytes_before + reader.value().bytes_read());
        }
        bytes_before += reader.value().bytes_read();
    }
    diagnostics.progress().clear();
}

void report_fields_left_out(const Listing& listing, std::uint32_t fields_too_long, Diagnostics& diagnostics) {
    if (fields_too_long == 0) return;
    Issue issue;
    issue.code = "field-too-long";
    issue.message =
        fmt::format("listing '{}' has {} of more than {} MiB, not read", report::one_line(listing.id, kIdCells),
                    fields_too_long == 1 ? "a field" : "fields", kMaxFieldBytes >> 20);
    issue.hint = "the other fields were checked";
    diagnostics.report(issue);
}

}  // namespace grainside::tools
