// Where the texts of a dossier's own listing stand in its YAML.
#ifndef GRAINSIDE_TOOLS_YAML_PLACES_H
#define GRAINSIDE_TOOLS_YAML_PLACES_H

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "grainside/listing.h"
#include "yaml_scalar_walk.h"

namespace grainside::tools {

// Maps words of the fields to bytes of the file. Scalars of every style are followed character by character; what does
// not agree gives nothing, so a place is never a guess. Each scalar is walked once, whatever the number of its edits.
class YamlPlaces {
public:
    // `yaml` and `fields` outlive the object; `fields` are those of the dossier's listing, in their order.
    YamlPlaces(std::string_view yaml, const std::vector<Field>& fields);

    // The bytes of `fields[field].text[start, end)`; the second offset is behind the last.
    // REQUIRES: within a field, calls come in the order of the text, and their spans are apart.
    std::optional<std::pair<std::size_t, std::size_t>> find(std::size_t field, std::size_t start, std::size_t end);
    // `words` as the scalar of that field has to write them; nothing where it cannot.
    std::optional<std::string> written(std::size_t field, std::string_view words) const;

private:
    std::vector<std::optional<YamlScalarWalk>> walks_;  // by field
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_YAML_PLACES_H
