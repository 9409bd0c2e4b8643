#include "verdict/examination/entry_places.h"

namespace grainside::verdict {

EntryPlaces::EntryPlaces(std::span<const document::Document> documents, std::string_view key) {
    for (const document::Document& document : documents) {
        if (!document.root().is_sequence()) continue;
        for (const document::Node entry : document.root()) {
            const document::Node id = entry.find(key);
            if (id.is_scalar()) places_.emplace(id.text(), EntryPlace{document.file(), entry.line()});
        }
    }
}

EntryPlace EntryPlaces::of(std::string_view id) const {
    const auto found = places_.find(id);
    return found == places_.end() ? EntryPlace{} : found->second;
}

}  // namespace grainside::verdict
