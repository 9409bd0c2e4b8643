#include "evidence/picture_files.h"

#include <filesystem>
#include <map>
#include <set>
#include <string_view>
#include <system_error>

#include "document/sha256.h"
#include "evidence/beside_file.h"

namespace grainside::evidence {
namespace {

class PictureReader {
public:
    explicit PictureReader(const DossierData& dossier) : dossier_(dossier) {}

    // A file is read once, however many spellings of its path there are.
    PictureFile read(const std::string& path) {
        const BesideFile file = find_beside(dossier_.folder, path, Where::below, kMaxPictureBytes);
        if (!file.found()) return {path, {}, file.message};
        const auto [known, is_new] = digests_.try_emplace(file.path.string());
        if (is_new) {
            std::error_code unknown;
            const std::uintmax_t size = std::filesystem::file_size(file.path, unknown);
            if (unknown || size > left_) return {path, {}, "the pictures of this dossier are too large together"};
            left_ -= size;
            known->second = document::sha256_of_file(file.path).value_or(std::string());
        }
        if (known->second.empty()) return {path, {}, "the file cannot be read"};
        return {path, known->second, {}};
    }

private:
    const DossierData& dossier_;
    std::map<std::string, std::string> digests_;
    std::uintmax_t left_ = kMaxPicturesBytes;
};

}  // namespace

std::vector<PictureFile> pictures_of(const DossierData& dossier) {
    std::vector<PictureFile> pictures;
    std::set<std::string_view> seen;
    PictureReader reader(dossier);
    for (const PartRecord& part : dossier.parts) {
        for (const Reading& reading : part.readings) {
            if (reading.photo.empty() || !seen.insert(reading.photo).second) continue;
            pictures.push_back(reader.read(reading.photo));
        }
    }
    return pictures;
}

}  // namespace grainside::evidence
