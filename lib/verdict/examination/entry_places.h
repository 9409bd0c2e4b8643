// Where the entries of a book stand, for data that does not keep its place.
#ifndef GRAINSIDE_VERDICT_EXAMINATION_ENTRY_PLACES_H
#define GRAINSIDE_VERDICT_EXAMINATION_ENTRY_PLACES_H

#include <cstdint>
#include <functional>
#include <map>
#include <span>
#include <string>
#include <string_view>

#include "document/document.h"

namespace grainside::verdict {

struct EntryPlace {
    std::string file;
    std::uint32_t line = 0;  // 0: not found
};

// Of all entries that begin with `key`: "concept", "source", "limit".
class EntryPlaces {
public:
    EntryPlaces(std::span<const document::Document> documents, std::string_view key);
    EntryPlace of(std::string_view id) const;

private:
    std::map<std::string, EntryPlace, std::less<>> places_;
};

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_EXAMINATION_ENTRY_PLACES_H
