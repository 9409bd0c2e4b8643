#include "desk/desk_history.h"

#include <dirent.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <charconv>
#include <cstdio>
#include <memory>
#include <system_error>

#include "desk/desk_error.h"
#include "desk/whole_file.h"
#include "document/sha256.h"
#include "document/yaml_document.h"

namespace grainside::desk {
namespace {

constexpr const char* kHistoryFolder = ".grainside-desk";
constexpr std::string_view kUndo = "undo-";
constexpr std::string_view kRedo = "redo-";
constexpr const char* kNewStep = "step.part";  // no name of a step
constexpr int kFolderFlags = O_RDONLY | O_DIRECTORY | O_NOFOLLOW | O_CLOEXEC;

struct CloseHistory {
    void operator()(DIR* folder) const noexcept { ::closedir(folder); }
};

[[noreturn]] void no_history(const std::string& what) {
    throw DeskError{500, "no-history", what + ": " + std::generic_category().message(errno),
                    "the desk keeps what it replaces in `.grainside-desk` beside the dossiers, a folder of its own"};
}

OwnedDescriptor made_folder(int parent, const std::string& name) {
    if (::mkdirat(parent, name.c_str(), 0777) != 0 && errno != EEXIST) no_history("the history cannot be made");
    OwnedDescriptor folder(::openat(parent, name.c_str(), kFolderFlags));
    if (!folder.is_open()) no_history("the history cannot be opened");
    return folder;
}

}  // namespace

DeskHistory::DeskHistory(const DeskFolder& folder, std::string_view name) : desk_(folder), name_(name) {
    const OwnedDescriptor all(::openat(desk_.descriptor(), kHistoryFolder, kFolderFlags));
    if (all.is_open()) folder_ = OwnedDescriptor(::openat(all.get(), name_.c_str(), kFolderFlags));
}

int DeskHistory::folder() {
    if (!folder_.is_open()) {
        folder_ = made_folder(made_folder(desk_.descriptor(), kHistoryFolder).get(), name_);
    }
    return folder_.get();
}

std::vector<DeskHistory::Entry> DeskHistory::entries(std::string_view kind) const {
    std::vector<Entry> found;
    if (!folder_.is_open()) return found;
    const int again = ::openat(folder_.get(), ".", kFolderFlags);
    const std::unique_ptr<DIR, CloseHistory> folder(again < 0 ? nullptr : ::fdopendir(again));
    if (!folder) return found;
    while (const dirent* const listed = ::readdir(folder.get())) {
        const std::string_view file = listed->d_name;
        if (!file.starts_with(kind) || !file.ends_with(kDossierEnding)) continue;
        std::string_view middle = file.substr(kind.size(), file.size() - kind.size() - kDossierEnding.size());
        Entry entry{std::string(file), 0, {}, 0};
        const auto [end, fault] = std::from_chars(middle.data(), middle.data() + middle.size(), entry.number);
        if (fault != std::errc()) continue;
        middle.remove_prefix(static_cast<std::size_t>(end - middle.data()));
        if (middle.starts_with('-')) entry.from = middle.substr(1);
        struct stat status {};
        if (::fstatat(folder_.get(), listed->d_name, &status, AT_SYMLINK_NOFOLLOW) != 0 || !S_ISREG(status.st_mode))
            continue;
        entry.size = static_cast<std::size_t>(status.st_size);
        found.push_back(std::move(entry));
    }
    std::sort(found.begin(), found.end(), [](const Entry& a, const Entry& b) { return a.number < b.number; });
    return found;
}

std::optional<HistoryStep> DeskHistory::read(const Entry& entry) const {
    const OwnedDescriptor file = open_regular(folder_.get(), entry.file);
    if (!file.is_open()) return std::nullopt;
    std::optional<std::string> text = read_all(file.get(), document::kMaxYamlBytes);
    if (!text || text->size() > document::kMaxYamlBytes) return std::nullopt;
    return HistoryStep{entry.file, std::move(*text)};
}

std::optional<HistoryStep> DeskHistory::undo_step(std::string_view digest) const {
    const std::vector<Entry> steps = entries(kUndo);
    for (auto entry = steps.rbegin(); entry != steps.rend(); ++entry) {
        std::optional<HistoryStep> step = read(*entry);
        if (step && document::sha256_of(step->text) != digest) return step;
    }
    return std::nullopt;
}

std::optional<HistoryStep> DeskHistory::redo_step(std::string_view digest) const {
    const std::vector<Entry> steps = entries(kRedo);
    for (auto entry = steps.rbegin(); entry != steps.rend(); ++entry) {
        if (entry->from == digest) return read(*entry);
    }
    return std::nullopt;
}

std::size_t DeskHistory::undo_count(std::string_view digest) const {
    const std::vector<Entry> steps = entries(kUndo);
    std::size_t count = steps.size();
    // Those that are passed over.
    for (auto entry = steps.rbegin(); entry != steps.rend(); ++entry, --count) {
        const std::optional<HistoryStep> step = read(*entry);
        if (step && document::sha256_of(step->text) != digest) break;
    }
    return count;
}

std::size_t DeskHistory::redo_count(std::string_view digest) const {
    std::size_t count = 0;
    std::string from(digest);
    const std::vector<Entry> steps = entries(kRedo);
    for (auto entry = steps.rbegin(); entry != steps.rend(); ++entry) {
        if (entry->from != from) continue;
        const std::optional<HistoryStep> step = read(*entry);
        if (!step) break;
        from = document::sha256_of(step->text);
        ++count;
    }
    return count;
}

std::string DeskHistory::new_file(std::string_view kind, std::string_view from) {
    folder();
    const std::vector<Entry> steps = entries(kind);
    std::array<char, 32> number{};
    std::snprintf(number.data(), number.size(), "%08llu",
                  static_cast<unsigned long long>(steps.empty() ? 1 : steps.back().number + 1));
    std::string file = std::string(kind) + number.data();
    if (!from.empty()) file.append("-").append(from);
    return file.append(kDossierEnding);
}

void DeskHistory::write(const std::string& file, std::string_view text) {
    drop(kNewStep);  // of a desk that was killed here
    OwnedDescriptor made(::openat(folder(), kNewStep, O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0600));
    if (!made.is_open()) no_history("the history cannot be written");
    // A step has its name once it is whole.
    if (!write_all(made.get(), text) || ::fsync(made.get()) != 0 || made.close() != 0 ||
        ::renameat(folder(), kNewStep, folder(), file.c_str()) != 0) {
        const int reason = errno;
        drop(kNewStep);
        errno = reason;
        no_history("the history cannot be written");
    }
}

std::string DeskHistory::keep_undo(const std::string& dossier_file, std::string_view text) {
    std::string file = new_file(kUndo, {});
    if (::linkat(desk_.descriptor(), dossier_file.c_str(), folder(), file.c_str(), 0) != 0) write(file, text);
    return file;
}

std::string DeskHistory::keep_redo(std::string_view text, std::string_view digest) {
    std::string file = new_file(kRedo, digest);
    write(file, text);
    return file;
}

void DeskHistory::keep_text(std::string_view text) {
    write(new_file(kUndo, {}), text);
}

void DeskHistory::drop(const std::string& file) {
    ::unlinkat(folder(), file.c_str(), 0);
}

void DeskHistory::drop_undo_from(const std::string& file) {
    const std::vector<Entry> steps = entries(kUndo);
    for (auto entry = steps.rbegin(); entry != steps.rend(); ++entry) {
        drop(entry->file);
        if (entry->file == file) return;
    }
}

void DeskHistory::tidy(std::string_view digest) {
    if (redo_count(digest) == 0) {
        for (const Entry& entry : entries(kRedo)) drop(entry.file);
    }
    const std::vector<Entry> steps = entries(kUndo);
    std::size_t kept = 0;
    std::size_t bytes = 0;
    for (auto entry = steps.rbegin(); entry != steps.rend(); ++entry) {
        bytes += entry->size;
        if (++kept > kMostSteps || bytes > kMostStepBytes) drop(entry->file);
    }
}

}  // namespace grainside::desk
