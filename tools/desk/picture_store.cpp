#include "desk/picture_store.h"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <optional>
#include <system_error>

#include "calendar.h"
#include "desk/desk_error.h"
#include "desk/desk_guard.h"
#include "desk/desk_history.h"
#include "desk/whole_file.h"
#include "document/faults.h"
#include "document/yaml_document.h"
#include "evidence/beside_file.h"

namespace grainside::desk {
namespace {

constexpr const char* kNewPicture = "picture.part";
constexpr int kMostOfADay = 10'000;
constexpr std::string_view kPlainLetters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_";

struct PictureKind {
    std::string_view type;
    std::string_view ending;
};

// By the first bytes: ISO/IEC 10918-1 (SOI marker), PNG 5.2, and the RIFF container of WebP.
std::optional<PictureKind> kind_of_picture(std::string_view bytes) {
    if (bytes.starts_with("\xFF\xD8\xFF")) return PictureKind{"image/jpeg", ".jpg"};
    if (bytes.starts_with("\x89PNG\r\n\x1A\n")) return PictureKind{"image/png", ".png"};
    if (bytes.starts_with("RIFF") && bytes.substr(0, 12).ends_with("WEBP")) return PictureKind{"image/webp", ".webp"};
    return std::nullopt;
}

[[noreturn]] void no_picture() {
    throw DeskError{415, "no-picture", "this is no JPEG, PNG or WebP picture", "choose one of these kinds"};
}

bool names_photo(document::Node root, std::string_view photo) {
    for (const document::Node part : root.find("parts")) {
        for (const document::Node reading : part.find("readings")) {
            if (reading.find("photo").text() == photo) return true;
        }
    }
    return false;
}

}  // namespace

std::string keep_picture(const DeskFolder& folder, std::string_view dossier, std::string_view bytes) {
    folder.read(dossier);
    const std::optional<PictureKind> kind = kind_of_picture(bytes);
    if (!kind) no_picture();
    std::string stem(dossier);
    std::replace_if(
        stem.begin(), stem.end(), [](char c) { return kPlainLetters.find(c) == std::string_view::npos; }, '-');
    stem += '-' + tools::today() + '-';

    DeskHistory history(folder, dossier);
    const int aside = history.folder();
    const auto failed = [&] {
        const int reason = errno;
        ::unlinkat(aside, kNewPicture, 0);
        throw DeskError{500, "not-saved", "the picture cannot be written: " + std::generic_category().message(reason)};
    };
    ::unlinkat(aside, kNewPicture, 0);
    OwnedDescriptor made(::openat(aside, kNewPicture, O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666));
    if (!made.is_open() || !write_all(made.get(), bytes) || ::fsync(made.get()) != 0 || made.close() != 0) failed();
    for (int n = 1; n < kMostOfADay; ++n) {
        std::string file = stem + std::to_string(n) + std::string(kind->ending);
        if (::renameat2(aside, kNewPicture, folder.descriptor(), file.c_str(), RENAME_NOREPLACE) == 0) {
            ::fsync(folder.descriptor());
            return file;
        }
        if (errno != EEXIST) break;
    }
    failed();
    return {};
}

HttpAnswer picture_answer(const DeskFolder& folder, std::string_view dossier, std::string_view photo) {
    const DeskError missing{404, "no-such-picture", "the dossier names no such picture, or it is not there"};
    document::Faults ignored;
    const auto document = document::parse_yaml("", folder.read(dossier), ignored);
    if (photo.empty() || !document || !names_photo(document->root(), photo)) throw missing;
    const evidence::BesideFile found =
        evidence::find_beside(folder.path(), photo, evidence::Where::below, kMostPictureBytes);
    if (!found.found()) throw missing;
    const OwnedDescriptor file = open_regular(AT_FDCWD, found.path.string());
    std::optional<std::string> bytes = file.is_open() ? read_all(file.get(), kMostPictureBytes) : std::nullopt;
    if (!bytes) throw missing;
    const std::optional<PictureKind> kind = kind_of_picture(*bytes);
    if (!kind) no_picture();
    return {
        200, std::string(kind->type), std::move(*bytes), {{"Content-Security-Policy", "default-src 'none'; sandbox"}}};
}

}  // namespace grainside::desk
