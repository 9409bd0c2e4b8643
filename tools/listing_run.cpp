#include "listing_run.h"

#include <cstdint>
#include <string>
#include <vector>

#include "fields_left_out.h"
#include "grainside/listing_reader.h"

namespace grainside::tools {

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
    if (const auto issue = fields_left_out(listing, fields_too_long)) diagnostics.report(*issue);
}

}  // namespace grainside::tools
