#include "evidence/picture_files.h"

#include <set>

#include "evidence/beside_digests.h"

namespace grainside::evidence {

BesideFile find_picture(const DossierData& dossier, std::string_view photo) {
    return find_beside(dossier.folder, photo, Where::below, kMaxPictureBytes);
}

namespace {

PictureFile read_picture(const DossierData& dossier, const std::string& path, BesideDigests& digests) {
    const BesideFile file = find_picture(dossier, path);
    if (!file.found()) return {path, {}, file.message};
    const BesideDigests::Answer answer = digests.of(file.path);
    switch (answer.trouble) {
        case BesideDigests::Trouble::none:
            return {path, std::string(answer.sha256), {}};
        case BesideDigests::Trouble::too_large_together:
            return {path, {}, "the pictures of this dossier are too large together"};
        case BesideDigests::Trouble::unreadable:
            break;
    }
    return {path, {}, "the file cannot be read"};
}

}  // namespace

std::vector<PictureFile> pictures_of(const DossierData& dossier) {
    std::vector<PictureFile> pictures;
    std::set<std::string_view> seen;
    BesideDigests digests(kMaxPicturesBytes);
    for (const PartRecord& part : dossier.parts) {
        for (const Reading& reading : part.readings) {
            if (reading.photo.empty() || !seen.insert(reading.photo).second) continue;
            pictures.push_back(read_picture(dossier, reading.photo, digests));
        }
    }
    return pictures;
}

}  // namespace grainside::evidence
