#include "atomic_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <system_error>
#include <utility>

namespace grainside::tools {
namespace {

constexpr int kMostNames = 1000;
constexpr mode_t kPermissionBits = 07777;

// Some file systems cannot do it for a folder, and then there is nothing to wait for.
bool sync_folder(const std::string& folder) {
    const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor < 0) return errno == EACCES;
    const bool done = ::fsync(descriptor) == 0 || errno == EINVAL || errno == ENOTSUP;
    const int reason = errno;
    ::close(descriptor);
    errno = reason;
    return done;
}

}  // namespace

AtomicFile::AtomicFile(const std::string& path) : path_(path) {
    if (find_target()) open_temporary();
}

AtomicFile::~AtomicFile() {
    remove_temporary();
}

bool AtomicFile::find_target() {
    namespace fs = std::filesystem;
    if (path_.empty()) return refuse("has no name", "name a file");
    std::error_code error;
    fs::path target = path_;
    if (fs::is_symlink(target, error)) {
        // A link to a file that is not there yet makes that file, as any other writing through it would.
        target = fs::weakly_canonical(target, error);
        if (error) return fail(error.value());
    }
    const fs::file_status status = fs::status(target, error);
    if (fs::is_directory(status)) return refuse("is a folder", "name a file in it");
    if (fs::exists(status) && !fs::is_regular_file(status)) {
        return refuse("is a device or pipe and not a file", "name a file, or redirect standard output");
    }
    if (!target.has_filename()) return refuse("is a folder", "name a file in it");
    target_ = target.string();
    folder_ = target.has_parent_path() ? target.parent_path().string() : ".";
    return true;
}

bool AtomicFile::open_temporary() {
    for (int n = 0; n < kMostNames; ++n) {
        temporary_ = folder_ + "/.grainside-" + std::to_string(::getpid()) + "-" + std::to_string(n) + ".part";
        descriptor_ = ::open(temporary_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, 0666);
        if (descriptor_ >= 0) {
            keep_permissions();
            return !failed();
        }
        if (errno == EEXIST) continue;
        const int reason = errno;
        temporary_.clear();
        return fail(reason, reason == ENOENT ? "make its folder first"
                            : reason == EACCES || reason == EROFS || reason == EPERM
                                ? "a file is written beside its old self first, so the folder must be writable"
                                : "");
    }
    temporary_.clear();
    return fail(EEXIST, "remove files named .grainside-*.part from its folder");
}

// Before the first byte, so that what nobody else could read is never readable by others.
void AtomicFile::keep_permissions() {
    struct stat old {};
    if (::stat(target_.c_str(), &old) != 0) return;
    // Only root may give a file away; for all others it stays theirs, as with any other way of replacing a file.
    const bool given = ::fchown(descriptor_, old.st_uid, old.st_gid) == 0;
    const mode_t mode = old.st_mode & kPermissionBits;
    if (::fchmod(descriptor_, given ? mode : mode & 0777U) != 0) fail(errno);
}

bool AtomicFile::write(std::string_view bytes) {
    while (!failed() && !bytes.empty()) {
        const ssize_t count = ::write(descriptor_, bytes.data(), bytes.size());
        if (count >= 0) {
            bytes.remove_prefix(static_cast<std::size_t>(count));
        } else if (errno != EINTR) {
            return fail(errno);
        }
    }
    return !failed();
}

bool AtomicFile::commit() {
    if (failed()) return false;
    if (::fsync(descriptor_) != 0) return fail(errno);
    if (::close(std::exchange(descriptor_, -1)) != 0) return fail(errno);
    if (std::rename(temporary_.c_str(), target_.c_str()) != 0) return fail(errno);
    temporary_.clear();
    return sync_folder(folder_) || fail(errno);
}

bool AtomicFile::fail(int reason, std::string hint) {
    failure_ = "'" + path_ + "' cannot be written: " + std::generic_category().message(reason);
    hint_ = std::move(hint);
    remove_temporary();
    return false;
}

bool AtomicFile::refuse(std::string_view what, std::string hint) {
    failure_ = "'" + path_ + "' cannot be written: it ";
    failure_ += what;
    hint_ = std::move(hint);
    return false;
}

void AtomicFile::remove_temporary() {
    if (descriptor_ >= 0) ::close(std::exchange(descriptor_, -1));
    if (!temporary_.empty()) ::unlink(temporary_.c_str());
    temporary_.clear();
}

}  // namespace grainside::tools
