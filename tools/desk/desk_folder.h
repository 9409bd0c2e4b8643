// The folder of dossiers that the desk serves, and the only way to its files. Thread-safe.
#ifndef GRAINSIDE_TOOLS_DESK_DESK_FOLDER_H
#define GRAINSIDE_TOOLS_DESK_DESK_FOLDER_H

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "desk/owned_descriptor.h"

namespace grainside::desk {

inline constexpr std::size_t kMostNameBytes = 100;
inline constexpr std::size_t kMostDossiers = 2000;
inline constexpr std::string_view kDossierEnding = ".yaml";

// Letters and digits of any script, '-', '_', '.', ' ' and '(' ')', beginning with a letter or digit and not ending in
// a space: never a path, a hidden file or something that looks like an option.
bool is_dossier_name(std::string_view name);

struct FoundDossier {
    std::string name;     // without ending
    std::string changed;  // "2026-11-26T20:14", in the time zone of this machine
};

struct FolderListing {
    std::vector<FoundDossier> dossiers;  // by name, at most kMostDossiers
    std::size_t others = 0;  // files named .yaml that are not served: by their name, or because there are more
};

class DeskFolder {
public:
    // Opened once: renaming it, or putting a link in its place, changes nothing. Throws std::system_error.
    explicit DeskFolder(const std::string& path);

    int descriptor() const noexcept { return descriptor_.get(); }
    // The folder's own name.
    const std::string& name() const noexcept { return name_; }
    // The path by which this process reaches the folder whatever becomes of its name, for those who take no descriptor.
    std::filesystem::path path() const;

    FolderListing list() const;
    // The whole text. Throws DeskError: 404 "no-such-dossier" for what is not there, is no regular file or a link; 413
    // "too-large"; 500 "unreadable".
    std::string read(std::string_view name) const;

private:
    std::string name_;
    OwnedDescriptor descriptor_;
};

// The file's name of a dossier's. Throws DeskError 400 "bad-name" where it is none.
std::string dossier_file(std::string_view name);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_DESK_FOLDER_H
