#include "evidence/picture_files.h"

#include <optional>
#include <set>
#include <utility>

#include "document/sha256.h"
#include "evidence/beside_file.h"

namespace grainside::evidence {
namespace {

PictureFile read_picture(const DossierData& dossier, const std::string& path) {
    const BesideFile file = find_beside(dossier.folder, path, Where::below, kMaxPictureBytes);
    if (!file.found()) return {path, {}, file.message};
    std::optional<std::string> digest = document::sha256_of_file(file.path);
    if (!digest) return {path, {}, "the file cannot be read"};
    return {path, std::move(*digest), {}};
}

}  // namespace

std::vector<PictureFile> pictures_of(const DossierData& dossier) {
    std::vector<PictureFile> pictures;
    std::set<std::string_view> seen;
    for (const PartRecord& part : dossier.parts) {
        for (const Reading& reading : part.readings) {
            if (reading.photo.empty() || !seen.insert(reading.photo).second) continue;
            pictures.push_back(read_picture(dossier, reading.photo));
        }
    }
    return pictures;
}

}  // namespace grainside::evidence
