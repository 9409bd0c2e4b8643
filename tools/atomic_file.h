// A file that is written whole or not at all.
#ifndef GRAINSIDE_TOOLS_ATOMIC_FILE_H
#define GRAINSIDE_TOOLS_ATOMIC_FILE_H

#include <string>
#include <string_view>

namespace grainside::tools {

//     AtomicFile file("report.html");
//     if (!file.write(bytes) || !file.commit()) diagnostics.error(file.failure(), file.hint());
//
// What is written goes into a temporary file of the target's folder, which `commit` brings to the disk and puts in the
// target's place in one step (rename(2)). Whoever opens the target, also after the process or the power failed, finds
// the old file or the whole new one. Without `commit` the temporary is removed; a process that is killed leaves it, as
// `.grainside-PID-N.part`. A new file gets its permissions by the umask; a target that exists keeps its own, and its
// owner where the system lets us. A link is followed: what it points to is replaced and the link stays. Nothing but a
// regular file is ever replaced. Not thread-safe.
class AtomicFile {
public:
    // Opens the temporary; where that fails, so does every `write` and `commit`.
    explicit AtomicFile(const std::string& path);
    ~AtomicFile();
    // A copy would remove the temporary of the other.
    AtomicFile(const AtomicFile&) = delete;
    AtomicFile& operator=(const AtomicFile&) = delete;

    // Not buffered: give large pieces. False after any failure.
    bool write(std::string_view bytes);
    // REQUIRES: not called before.
    bool commit();

    bool failed() const noexcept { return !failure_.empty(); }
    // "'report.html' cannot be written: No space left on device", and what to do, which may be empty.
    const std::string& failure() const noexcept { return failure_; }
    const std::string& hint() const noexcept { return hint_; }

private:
    bool find_target();
    bool open_temporary();
    void keep_permissions();
    bool fail(int reason, std::string hint = {});
    bool refuse(std::string_view what, std::string hint);
    void remove_temporary();

    std::string path_;       // as the caller named it
    std::string target_;     // links followed
    std::string folder_;     // of the target
    std::string temporary_;  // empty = there is none
    std::string failure_;
    std::string hint_;
    int descriptor_ = -1;
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_ATOMIC_FILE_H
