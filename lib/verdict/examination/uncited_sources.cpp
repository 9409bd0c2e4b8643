#include <fmt/format.h>

#include <set>
#include <string_view>

#include "verdict/examination/entry_places.h"
#include "verdict/examination/findings.h"

namespace grainside::verdict {

namespace {

// Rules, methods, limits, alloys, costs: whatever cites does it under this key.
void collect(document::Node node, std::set<std::string_view>& cited) {
    if (node.key() == "sources") {
        if (node.is_scalar()) cited.insert(node.text());
        for (const document::Node one : node) cited.insert(one.text());
        return;
    }
    for (const document::Node child : node) collect(child, cited);
}

}  // namespace

void find_uncited_sources(const rules::BookData& book, Remarks& remarks) {
    std::set<std::string_view> cited;
    for (const document::Document& document : book.documents) collect(document.root(), cited);
    const EntryPlaces places(book.documents, "source");
    for (const SourceInfo& source : book.sources) {
        if (cited.contains(source.id)) continue;
        const EntryPlace place = places.of(source.id);
        remarks.add(Issue::Severity::note, "uncited-source", place.file, place.line,
                    fmt::format("nothing in the book cites source '{}'", source.id),
                    "cite it where it decides, or take it out");
    }
}

}  // namespace grainside::verdict
