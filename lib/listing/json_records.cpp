#include "listing/json_records.h"

namespace grainside::listing {

bool JsonRecords::read(const RecordText& text, Listing& listing, ProductJson::Role role) {
    ++record_;
    switch (product_.read(text, role, record_, listing, *sink_)) {
        case ProductJson::Outcome::listing:
            listing.record = record_;
            listing.line = text.origin.line;
            listing.source = text.lines();
            return true;
        case ProductJson::Outcome::graph:
            // Its nodes are the records.
            --record_;
            graph_.start(product_.graph());
            graph_lines_ = text.lines();
            return false;
        case ProductJson::Outcome::skipped:
            break;
    }
    return false;
}

bool JsonRecords::next_in_graph(Listing& listing) {
    // The graph was parsed as a part of its record, so it cannot have a fault between its nodes.
    while (graph_.next() == ElementCursor::Step::element) {
        ++record_;
        const RecordText& node = graph_.element();
        if (product_.read(node, ProductJson::Role::graph_node, record_, listing, *sink_) ==
            ProductJson::Outcome::listing) {
            listing.record = record_;
            listing.line = node.origin.line;
            listing.source = graph_lines_;
            return true;
        }
    }
    return false;
}

}  // namespace grainside::listing
