// The pictures that a dossier names, with what tells whether a file is the one that was meant. Thread-safe.
#ifndef GRAINSIDE_EVIDENCE_PICTURE_FILES_H
#define GRAINSIDE_EVIDENCE_PICTURE_FILES_H

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "evidence/beside_file.h"
#include "evidence/dossier_data.h"

namespace grainside::evidence {

// A larger one is named without a digest.
inline constexpr std::uintmax_t kMaxPictureBytes = std::uintmax_t{256} << 20;
// All of a dossier together; what goes beyond is named without a digest.
inline constexpr std::uintmax_t kMaxPicturesBytes = std::uintmax_t{1} << 30;

struct PictureFile {
    std::string path;     // as the dossier has it, from its folder
    std::string sha256;   // empty where the file could not be read
    std::string missing;  // why it could not; empty where it could
};

// Where `photo`, a path as the dossier has it, lies. Looks at no file outside of the dossier's folder.
BesideFile find_picture(const DossierData& dossier, std::string_view photo);

// Each path once, in the order of the readings. Reads the files to their end.
std::vector<PictureFile> pictures_of(const DossierData& dossier);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_PICTURE_FILES_H
