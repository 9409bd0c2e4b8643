#include "edit/dossier_places.h"

#include "document/faults.h"
#include "document/yaml_document.h"
#include "evidence/dossier_data.h"

namespace grainside::tools::edit {

DossierPlaces::DossierPlaces(const TextPlaces& places, const Dossier& dossier) : places_(places), dossier_(dossier) {
    document::Faults unused;
    const auto parsed = document::parse_yaml("", std::string(places.text()), unused);
    if (!parsed) return;
    const document::Node listing = parsed->root().find("listing");
    const document::Node file = listing.find("file");
    const document::Place place =
        file.exists() ? document::Place{file.line(), file.column()} : parsed->key_place(listing);
    otherwise_ = places_.span_of_issue(place.line, place.column);
}

TextSpan DossierPlaces::find(std::uint32_t field, std::uint32_t start, std::uint32_t end) {
    return find_exact(field, start, end).value_or(otherwise_);
}

std::optional<TextSpan> DossierPlaces::find_exact(std::uint32_t field, std::uint32_t start, std::uint32_t end) {
    if (!dossier_.data().listing_file.empty()) return std::nullopt;
    // A walk goes forward only.
    if (!walk_ || (field == last_field_ && start < last_end_)) {
        walk_.emplace(places_.text(), dossier_.listing()->fields);
    }
    last_field_ = field;
    last_end_ = end;
    const auto found = walk_->find(field, start, end);
    if (!found) return std::nullopt;
    return TextSpan{found->first, found->second};
}

std::optional<std::string> DossierPlaces::written(std::uint32_t field, const std::string& wording) const {
    return walk_ ? walk_->written(field, wording) : std::nullopt;
}

}  // namespace grainside::tools::edit
