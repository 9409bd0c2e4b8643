#include "desk/desk_folder.h"

#include <dirent.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <ctime>
#include <memory>
#include <system_error>

#include "desk/desk_error.h"
#include "desk/whole_file.h"
#include "document/inert_text.h"
#include "document/yaml_document.h"

namespace grainside::desk {
namespace {

namespace fs = std::filesystem;

struct CloseFolder {
    void operator()(DIR* folder) const noexcept { ::closedir(folder); }
};

bool is_letter_or_digit(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           static_cast<unsigned char>(c) >= 0x80;
}

std::string local_time(const timespec& when) {
    std::tm parts{};
    std::array<char, 32> text{};
    if (::localtime_r(&when.tv_sec, &parts) == nullptr) return {};
    const std::size_t size = std::strftime(text.data(), text.size(), "%Y-%m-%dT%H:%M", &parts);
    return {text.data(), size};
}

}  // namespace

bool is_dossier_name(std::string_view name) {
    if (name.empty() || name.size() > kMostNameBytes || !is_letter_or_digit(name.front()) || name.back() == ' ') {
        return false;
    }
    const bool plain = std::all_of(name.begin(), name.end(), [](char c) {
        return is_letter_or_digit(c) || std::string_view("-_. ()").find(c) != std::string_view::npos;
    });
    return plain && document::printable_text(name) == name;
}

std::string dossier_file(std::string_view name) {
    if (is_dossier_name(name)) return std::string(name).append(kDossierEnding);
    throw DeskError{400, "bad-name", "a dossier cannot have this name",
                    "letters, digits, spaces and -_.(), a letter or digit first, no space last, at most 100 bytes"};
}

DeskFolder::DeskFolder(const std::string& path)
    : name_(fs::absolute(path).lexically_normal().filename().string()),
      descriptor_(::open(path.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
    if (!descriptor_.is_open()) throw std::system_error(errno, std::generic_category());
    // Of "." and of a path that ends in a slash.
    if (name_.empty()) name_ = fs::absolute(path).lexically_normal().parent_path().filename().string();
    if (name_.empty()) name_ = "/";
}

fs::path DeskFolder::path() const {
    return "/proc/self/fd/" + std::to_string(descriptor());
}

FolderListing DeskFolder::list() const {
    FolderListing listing;
    // A descriptor of its own: the place in the folder that is read next belongs to it.
    const int again = ::openat(descriptor(), ".", O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    const std::unique_ptr<DIR, CloseFolder> folder(again < 0 ? nullptr : ::fdopendir(again));
    if (!folder) {
        throw DeskError{500, "unreadable", "the folder cannot be read: " + std::generic_category().message(errno)};
    }
    while (const dirent* entry = ::readdir(folder.get())) {
        const std::string_view file = entry->d_name;
        if (!file.ends_with(kDossierEnding) || file.starts_with('.')) continue;
        const std::string_view name = file.substr(0, file.size() - kDossierEnding.size());
        struct stat status {};
        const bool regular =
            ::fstatat(descriptor(), entry->d_name, &status, AT_SYMLINK_NOFOLLOW) == 0 && S_ISREG(status.st_mode);
        if (regular && is_dossier_name(name)) {
            listing.dossiers.push_back({std::string(name), local_time(status.st_mtim)});
        } else {
            ++listing.others;
        }
    }
    std::sort(listing.dossiers.begin(), listing.dossiers.end(),
              [](const FoundDossier& a, const FoundDossier& b) { return a.name < b.name; });
    if (listing.dossiers.size() > kMostDossiers) {
        listing.others += listing.dossiers.size() - kMostDossiers;
        listing.dossiers.resize(kMostDossiers);
    }
    return listing;
}

std::string DeskFolder::read(std::string_view name) const {
    const OwnedDescriptor file = open_regular(descriptor(), dossier_file(name));
    if (!file.is_open()) throw DeskError{404, "no-such-dossier", "the folder has no such dossier"};
    std::optional<std::string> text = read_all(file.get(), document::kMaxYamlBytes);
    if (!text) {
        throw DeskError{500, "unreadable", "the dossier cannot be read: " + std::generic_category().message(errno)};
    }
    if (text->size() > document::kMaxYamlBytes) {
        throw DeskError{413, "too-large", "the dossier is larger than 4 MiB"};
    }
    return std::move(*text);
}

}  // namespace grainside::desk
