#include "yaml_edits.h"

#include <algorithm>
#include <cstddef>
#include <filesystem>

#include "calendar.h"
#include "yaml_places.h"

namespace grainside::tools {
namespace {

bool same_texts(const Listing& listing, const Rewording& rewording) {
    return std::equal(listing.fields.begin(), listing.fields.end(), rewording.texts.begin(), rewording.texts.end(),
                      [](const Field& field, const std::string& text) { return field.text == text; });
}

// REQUIRES: `edits` are sorted and apart.
std::string with_edits(std::string_view text, const std::vector<SourceEdit>& edits) {
    std::string out;
    std::size_t from = 0;
    for (const SourceEdit& edit : edits) {
        const auto start = static_cast<std::size_t>(edit.start);
        out.append(text, from, start - from).append(edit.new_bytes);
        from = static_cast<std::size_t>(edit.end);
    }
    return out.append(text, from);
}

// Only a file that reads as intended is written.
bool reads_as_meant(const std::string& path, std::string mended, const Rewording& rewording,
                    const EvidenceBook& evidence, Diagnostics& diagnostics) {
    const auto again = Dossier::parse(path, std::move(mended), std::filesystem::path(path).parent_path(), evidence,
                                      {.today = today()});
    if (!again) {
        diagnostics.report(again.issues());
        diagnostics.error("'" + path + "' would not be read with the edits in it, and is left as it is",
                          "the places above are those of the text with the edits; write them by hand");
        return false;
    }
    if (again.value().listing() != nullptr && same_texts(*again.value().listing(), rewording)) return true;
    diagnostics.error("the edits do not fit into the YAML of '" + path + "'",
                      "write the listing's texts as block scalars, with '|'");
    return false;
}

}  // namespace

std::optional<std::vector<SourceEdit>> yaml_edits(const std::string& path, std::string_view yaml,
                                                  const Dossier& dossier, const Rewording& rewording,
                                                  const EvidenceBook& evidence, Diagnostics& diagnostics) {
    YamlPlaces places(yaml, dossier.listing()->fields);
    std::vector<SourceEdit> edits;
    for (const Edit& edit : rewording.edits) {
        const auto span = places.find(edit.field, edit.start, edit.end);
        const auto written = span ? places.written(edit.field, edit.wording) : std::nullopt;
        if (!written) {
            diagnostics.error("the edit of '" + edit.words + "' finds no place in the YAML of '" + path + "'",
                              "write '" + edit.wording + "' by hand");
            return std::nullopt;
        }
        edits.push_back(
            {span->first, span->second, std::string(yaml.substr(span->first, span->second - span->first)), *written});
    }
    std::sort(edits.begin(), edits.end(), [](const SourceEdit& a, const SourceEdit& b) { return a.start < b.start; });
    if (!reads_as_meant(path, with_edits(yaml, edits), rewording, evidence, diagnostics)) return std::nullopt;
    return edits;
}

}  // namespace grainside::tools
