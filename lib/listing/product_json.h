// One JSON object of the schema.org vocabulary as a listing.
#ifndef GRAINSIDE_LISTING_PRODUCT_JSON_H
#define GRAINSIDE_LISTING_PRODUCT_JSON_H

#include <cstdint>
#include <memory>
#include <string>

#include "grainside/listing.h"
#include "listing/issue_sink.h"
#include "listing/place.h"

namespace grainside::listing {

// More fields than this are not read ("record-too-large"): a field costs more memory than the bytes that it takes to
// ask for one.
inline constexpr std::size_t kMaxFields = 65536;

// Which members are read and how: `product_members.cpp`. Others are checked for being JSON and otherwise
// ignored. Of members of one name the first counts.
// Nothing is allocated for a record once the buffers have grown to its size. Not thread-safe.
class ProductJson {
public:
    enum class Outcome {
        listing,  // `listing` is filled
        skipped,  // reported, or a node of a graph that is no product
        graph,    // no product itself, but `graph` holds an array of them
    };
    // A node of a graph is a product only if its @type says so or is not stated.
    enum class Role { record, graph_node };

    // `source_name` begins the id of a record that has none of its own.
    explicit ProductJson(std::string source_name);
    ProductJson(ProductJson&&) noexcept;
    ProductJson& operator=(ProductJson&&) noexcept;
    ~ProductJson();

    // Views in `listing` point into `text` and into this object, until the next call. Does not set its `record`.
    Outcome read(const RecordText& text, Role role, std::uint64_t record, Listing& listing, IssueSink& sink);

    // After Outcome::graph: the array, from [ to ]. Its elements may be given to `read` one after the other.
    const RecordText& graph() const noexcept;

private:
    class Walk;
    std::unique_ptr<Walk> walk_;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_PRODUCT_JSON_H
