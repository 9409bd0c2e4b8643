// Files that hold no text: pictures, programs, archives, documents of office programs.
#ifndef GRAINSIDE_LISTING_BINARY_FILE_H
#define GRAINSIDE_LISTING_BINARY_FILE_H

#include <cstddef>
#include <string_view>

#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/record_source.h"

namespace grainside::listing {

struct BinaryKind {
    std::string_view what;  // of static storage; empty = text, as far as the first bytes tell
    std::string_view hint;
};

// So many first bytes are looked at.
inline constexpr std::size_t kBinaryLookedAt = 4096;

// What `source` seems to be, by its first bytes, which are read but not consumed: by the marks with which files of a
// kind begin, else by NUL bytes and many control characters among them. Of a source that comes in slowly
// nothing is waited for that a first line of text would not bring.
BinaryKind binary_kind_of(ByteSource& source);

// Gives no listing but one issue, "not-text". Not thread-safe.
class BinarySource final : public RecordSource {
public:
    // `sink` outlives this object.
    BinarySource(const BinaryKind& kind, IssueSink& sink) : kind_(kind), sink_(&sink) {}

    bool next(Listing& listing) override;

private:
    BinaryKind kind_;
    IssueSink* sink_;
    bool told_ = false;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_BINARY_FILE_H
