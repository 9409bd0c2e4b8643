// Going through the listings of all inputs with several threads: what comes of it is the same, byte for byte and in the
// same order, as with one.
#ifndef GRAINSIDE_TOOLS_ORDERED_LISTINGS_H
#define GRAINSIDE_TOOLS_ORDERED_LISTINGS_H

#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "call_options.h"
#include "diagnostics.h"
#include "grainside/listing.h"
#include "output.h"
#include "run_options.h"

namespace grainside::tools {

// What some listings that follow each other come to. It ends with a whole line.
struct OutputPart {
    std::string text;
    bool any_listing = false;
    // For a view for people: what stands before the first listing depends on the one before, which may be in another
    // part.
    bool begins_with_findings = false;
    bool ends_with_quiet_line = false;
};

// What one thread needs and finds: made and used by that thread alone. What it counted is merged when the run is over.
class ListingWorker {
public:
    ListingWorker() = default;
    ListingWorker(const ListingWorker&) = delete;
    ListingWorker& operator=(const ListingWorker&) = delete;
    virtual ~ListingWorker() = default;

    // What is handled from now on is another part.
    virtual void begin_part() {}
    // Appends to `part.text`, and to `issues` what is to be reported; both come in order.
    virtual void handle(const Listing& listing, const std::string& input, OutputPart& part,
                        std::vector<Issue>& issues) = 0;
};

struct ListingWork {
    // Called by several threads at the same time.
    std::function<std::unique_ptr<ListingWorker>()> make_worker;
    // What stands before a part; called in order, one at a time. Empty: nothing does.
    std::function<std::string_view(const OutputPart& part)> before_part = {};
    // Called for each worker when all is done, by the caller's thread, in no order that means anything.
    std::function<void(ListingWorker& worker)> merge = {};
};

enum class RunEnd {
    done,         // all inputs were read
    output_gone,  // nothing more can be written
    interrupted   // a signal came; what was begun is written, and how to go on has been said
};

// Inputs and records that cannot be read are reported and the rest goes on. REQUIRES: an `Interrupt` lives; the inputs
// are files (inputs_of), not patterns.
class Interrupt;
RunEnd run_listings(const SharedOptions& inputs, const RunOptions& options, const ListingWork& work,
                    Interrupt& interrupt, Diagnostics& diagnostics, Output& output);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_ORDERED_LISTINGS_H
