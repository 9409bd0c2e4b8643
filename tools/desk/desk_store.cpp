#include "desk/desk_store.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <cstdio>
#include <optional>
#include <system_error>
#include <thread>

#include "desk/desk_error.h"
#include "desk/desk_history.h"
#include "desk/whole_file.h"
#include "document/sha256.h"
#include "document/yaml_document.h"

namespace grainside::desk {
namespace {

constexpr auto kLockTries = 100;
constexpr auto kLockPause = std::chrono::milliseconds(50);
constexpr const char* kNewFile = "new.part";  // in the history: nobody takes it for a dossier
constexpr mode_t kModeBits = 0777;

[[noreturn]] void not_saved(const char* what) {
    throw DeskError{500, "not-saved", std::string(what) + ": " + std::generic_category().message(errno),
                    "the dossier is as it was"};
}

[[noreturn]] void stale() {
    throw DeskError{409, "stale", "the dossier was changed by somebody else",
                    "look at what it says now, and make the change again"};
}

// Of all desks of the folder; goes with the process, however it ends.
class FolderLock {
public:
    explicit FolderLock(int folder) : folder_(folder) {
        for (int tries = 0; ::flock(folder_, LOCK_EX | LOCK_NB) != 0; ++tries) {
            if (errno != EWOULDBLOCK && errno != EINTR) not_saved("the folder cannot be locked");
            if (tries == kLockTries) throw DeskError{503, "busy", "another desk is saving in this folder", "try again"};
            std::this_thread::sleep_for(kLockPause);
        }
    }
    FolderLock(const FolderLock&) = delete;
    FolderLock& operator=(const FolderLock&) = delete;
    ~FolderLock() { ::flock(folder_, LOCK_UN); }

private:
    int folder_;
};

std::optional<std::string> text_of(int folder, const std::string& file) {
    const OwnedDescriptor opened = open_regular(folder, file);
    if (!opened.is_open()) return std::nullopt;
    return read_all(opened.get(), document::kMaxYamlBytes);
}

// `like`: the file whose permissions it gets; empty: those of a new one.
void write_new(int folder, int history, const std::string& like, std::string_view text) {
    ::unlinkat(history, kNewFile, 0);
    OwnedDescriptor made(::openat(history, kNewFile, O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666));
    struct stat old {};
    const bool has_old = !like.empty() && ::fstatat(folder, like.c_str(), &old, AT_SYMLINK_NOFOLLOW) == 0;
    const bool done = made.is_open() && (!has_old || ::fchmod(made.get(), old.st_mode & kModeBits) == 0) &&
                      write_all(made.get(), text) && ::fsync(made.get()) == 0;
    if (!done || made.close() != 0) not_saved("the dossier cannot be written");
}

}  // namespace

DossierText DeskStore::read(std::string_view name) const {
    DossierText dossier;
    dossier.name = name;
    dossier.text = folder_.read(name);
    dossier.digest = document::sha256_of(dossier.text);
    const DeskHistory history(folder_, name);
    dossier.undo = history.undo_count(dossier.digest);
    dossier.redo = history.redo_count(dossier.digest);
    return dossier;
}

// REQUIRES: locked. `keep` gets a text that came out and is not the one that was to be replaced, if nothing else holds
// it.
void DeskStore::replace(const std::string& file, int history, std::string_view was, std::string_view text,
                        const std::function<void(std::string_view)>& keep) {
    const int folder = folder_.descriptor();
    write_new(folder, history, file, text);
    if (::renameat2(history, kNewFile, folder, file.c_str(), RENAME_EXCHANGE) != 0) {
        // Where the file system cannot exchange, the moment between looking and renaming stays.
        const bool cannot = errno == EINVAL || errno == ENOSYS;
        const std::optional<std::string> there = cannot ? text_of(folder, file) : std::nullopt;
        if (cannot && (!there || document::sha256_of(*there) != was)) stale();
        if (!cannot || ::renameat(history, kNewFile, folder, file.c_str()) != 0)
            not_saved("the dossier cannot be replaced");
        ::fsync(folder);
        return;
    }
    std::optional<std::string> out = text_of(history, kNewFile);
    if (out && document::sha256_of(*out) == was) {
        ::unlinkat(history, kNewFile, 0);
        if (::fsync(folder) != 0 && errno != EINVAL) not_saved("the folder cannot be brought to the disk");
        return;
    }
    // Somebody wrote after we looked. Back with it; and if that one wrote over ours once more, that is the newest.
    if (::renameat2(history, kNewFile, folder, file.c_str(), RENAME_EXCHANGE) != 0) {
        if (out) keep(*out);
        not_saved("the dossier cannot be put back");
    }
    const std::optional<std::string> again = text_of(history, kNewFile);
    if (again && *again != text) {
        ::renameat2(history, kNewFile, folder, file.c_str(), RENAME_EXCHANGE);
        if (out) keep(*out);
    }
    ::unlinkat(history, kNewFile, 0);
    ::fsync(folder);
    stale();
}

void DeskStore::save(std::string_view name, std::string_view was, std::string_view text) {
    const FolderLock lock(folder_.descriptor());
    const std::string file = dossier_file(name);
    const std::string old = folder_.read(name);
    if (document::sha256_of(old) != was) stale();
    if (old == text) return;
    DeskHistory history(folder_, name);
    const std::string kept = history.keep_undo(file, old);
    try {
        replace(file, history.folder(), was, text, [&](std::string_view lost) { history.keep_text(lost); });
    } catch (const DeskError&) {
        history.drop(kept);
        throw;
    }
    history.tidy(document::sha256_of(text));
}

void DeskStore::undo(std::string_view name, std::string_view was) {
    const FolderLock lock(folder_.descriptor());
    const std::string file = dossier_file(name);
    const std::string now = folder_.read(name);
    if (document::sha256_of(now) != was) stale();
    DeskHistory history(folder_, name);
    const std::optional<HistoryStep> step = history.undo_step(was);
    if (!step) throw DeskError{400, "nothing-to-undo", "there is nothing to undo"};
    const std::string kept = history.keep_redo(now, document::sha256_of(step->text));
    try {
        replace(file, history.folder(), was, step->text, [&](std::string_view lost) { history.keep_text(lost); });
    } catch (const DeskError&) {
        history.drop(kept);
        throw;
    }
    history.drop_undo_from(step->file);
}

void DeskStore::redo(std::string_view name, std::string_view was) {
    const FolderLock lock(folder_.descriptor());
    const std::string file = dossier_file(name);
    const std::string now = folder_.read(name);
    if (document::sha256_of(now) != was) stale();
    DeskHistory history(folder_, name);
    const std::optional<HistoryStep> step = history.redo_step(was);
    if (!step) throw DeskError{400, "nothing-to-redo", "there is nothing to redo"};
    const std::string kept = history.keep_undo(file, now);
    try {
        replace(file, history.folder(), was, step->text, [&](std::string_view lost) { history.keep_text(lost); });
    } catch (const DeskError&) {
        history.drop(kept);
        throw;
    }
    history.drop(step->file);
}

void DeskStore::create(std::string_view name, std::string_view text) {
    const FolderLock lock(folder_.descriptor());
    const std::string file = dossier_file(name);
    DeskHistory history(folder_, name);
    write_new(folder_.descriptor(), history.folder(), {}, text);
    if (::renameat2(history.folder(), kNewFile, folder_.descriptor(), file.c_str(), RENAME_NOREPLACE) != 0) {
        const int reason = errno;
        ::unlinkat(history.folder(), kNewFile, 0);
        errno = reason;
        if (errno == EEXIST)
            throw DeskError{409, "exists", "the folder has a dossier of this name", "take another name"};
        not_saved("the dossier cannot be made");
    }
    ::fsync(folder_.descriptor());
}

}  // namespace grainside::desk
