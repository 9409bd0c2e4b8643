// Where the words of a dossier's listing and its readings stand in its YAML.
#ifndef GRAINSIDE_TOOLS_EDIT_DOSSIER_PLACES_H
#define GRAINSIDE_TOOLS_EDIT_DOSSIER_PLACES_H

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>

#include "edit/text_places.h"
#include "grainside/dossier.h"
#include "yaml_places.h"

namespace grainside::tools::edit {

// REQUIRES: the dossier was read from the text of `places`, and has a listing. Both outlive the object.
class DossierPlaces {
public:
    DossierPlaces(const TextPlaces& places, const Dossier& dossier);

    // Of a listing in a file of its own: where the dossier names that. Cheap where calls come in the order of the text.
    TextSpan find(std::uint32_t field, std::uint32_t start, std::uint32_t end);
    // The bytes of the words themselves; nothing where they are not in the dossier.
    std::optional<TextSpan> find_exact(std::uint32_t field, std::uint32_t start, std::uint32_t end);
    // What stands there instead, as that scalar has to write it.
    std::optional<std::string> written(std::uint32_t field, const std::string& wording) const;

private:
    const TextPlaces& places_;
    const Dossier& dossier_;
    TextSpan otherwise_;  // the value of `file`, or the key `listing`
    std::optional<YamlPlaces> walk_;
    std::uint32_t last_field_ = 0;
    std::uint32_t last_end_ = 0;
};

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_DOSSIER_PLACES_H
