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

namespace grainside::tools {

// Maps words of the fields to bytes of the file. Scalars of every style are followed character by character
// (YAML 1.2.2, chapter 7 and 8): white space of the text stands for any white space of the source, which is how lines
// fold and are indented. What does not agree gives nothing, so a place is never a guess.
class YamlPlaces {
public:
    // `yaml` outlives the object. `fields` are those of the dossier's listing, in their order.
    YamlPlaces(std::string_view yaml, const std::vector<Field>& fields);

    // The bytes of `fields[field].text[start, end)`; the second offset is behind the last.
    std::optional<std::pair<std::size_t, std::size_t>> find(std::size_t field, std::size_t start,
                                                            std::size_t end) const;
    // `words` as the scalar of that field has to write them; nothing where it cannot.
    std::optional<std::string> written(std::size_t field, std::string_view words) const;

private:
    struct Scalar {
        std::size_t begin = 0;  // of its first character, quote or block mark
        std::string_view text;
    };
    std::string_view yaml_;
    std::vector<std::optional<Scalar>> scalars_;  // by field
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_YAML_PLACES_H
