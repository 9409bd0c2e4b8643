// Files that are written whole or not at all, also by a process that is killed.
#include "atomic_file.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <cstddef>
#include <filesystem>
#include <functional>
#include <random>
#include <string>
#include <string_view>

#include "cli_test.h"
#include "same_file.h"
#include "support/temporary_folder.h"

namespace grainside::tools {
namespace {

namespace fs = std::filesystem;

class AtomicFileTest : public testing::Test {
protected:
    std::string path(std::string_view name) const { return (folder_.path() / name).string(); }
    std::string text(std::string_view name) const { return tests::read_file(folder_.path() / name); }
    std::size_t files() const {
        return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder_.path()), {}));
    }
    mode_t mode(std::string_view name) const {
        struct stat status {};
        EXPECT_EQ(::stat(path(name).c_str(), &status), 0);
        return status.st_mode & 07777U;
    }
    support::TemporaryFolder folder_;
};

bool write_whole(const std::string& path, std::string_view bytes) {
    AtomicFile file(path);
    return file.write(bytes) && file.commit();
}

// What `work` gives, in a process of its own.
int in_child(const std::function<int()>& work) {
    const pid_t child = ::fork();
    if (child == 0) ::_exit(work());
    int status = 0;
    EXPECT_EQ(::waitpid(child, &status, 0), child);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

TEST_F(AtomicFileTest, IsThereAfterCommitAndNotBefore) {
    {
        AtomicFile file(path("new.txt"));
        EXPECT_TRUE(file.write("one ") && file.write("two"));
        EXPECT_FALSE(fs::exists(path("new.txt")));
        EXPECT_TRUE(file.commit()) << file.failure();
    }
    EXPECT_EQ(text("new.txt"), "one two");
    EXPECT_EQ(files(), 1U);
}

TEST_F(AtomicFileTest, LeavesTheOldFileWithoutCommit) {
    folder_.write("old.txt", "old");
    { EXPECT_TRUE(AtomicFile(path("old.txt")).write("new")); }
    EXPECT_EQ(text("old.txt"), "old");
    EXPECT_EQ(files(), 1U);
}

TEST_F(AtomicFileTest, TakesPermissionsFromTheUmaskOrTheOldFile) {
    folder_.write("old.txt", "old");
    ASSERT_EQ(::chmod(path("old.txt").c_str(), 0640), 0);
    const mode_t before = ::umask(027);
    EXPECT_TRUE(write_whole(path("new.txt"), "x"));
    ::umask(0);
    EXPECT_TRUE(write_whole(path("old.txt"), "x"));
    ::umask(before);
    EXPECT_EQ(mode("new.txt"), 0640U);
    EXPECT_EQ(mode("old.txt"), 0640U);
}

TEST_F(AtomicFileTest, FollowsLinks) {
    folder_.write("deep/old.txt", "old");
    fs::create_symlink("deep/old.txt", path("link"));
    EXPECT_TRUE(write_whole(path("link"), "new"));
    EXPECT_TRUE(fs::is_symlink(path("link")));
    EXPECT_EQ(text("deep/old.txt"), "new");
}

TEST_F(AtomicFileTest, RefusesWhatIsNoFile) {
    EXPECT_EQ(AtomicFile(folder_.path().string()).failure(),
              "'" + folder_.path().string() + "' cannot be written: it is a folder");
    EXPECT_EQ(AtomicFile("/dev/null").failure(),
              "'/dev/null' cannot be written: it is a device or pipe and not a file");
    EXPECT_EQ(AtomicFile(path("no/such.txt")).failure(),
              "'" + path("no/such.txt") + "' cannot be written: No such file or directory");
    EXPECT_EQ(AtomicFile("").failure(), "'' cannot be written: it has no name");
}

// A limit on the size of files stands in for the disk: both fail in the middle of a write.
TEST_F(AtomicFileTest, TellsOfAFullDiskAndLeavesNothing) {
    folder_.write("old.txt", "old");
    EXPECT_EQ(in_child([&] {
                  const rlimit limit{1U << 20U, 1U << 20U};
                  ::setrlimit(RLIMIT_FSIZE, &limit);
                  std::signal(SIGXFSZ, SIG_IGN);
                  AtomicFile file(path("old.txt"));
                  const bool written = file.write(std::string(std::size_t{3} << 20U, 'x'));
                  return !written && !file.commit() &&
                                 file.failure().ends_with("old.txt' cannot be written: File too large")
                             ? 7
                             : 1;
              }),
              7);
    EXPECT_EQ(text("old.txt"), "old");
    EXPECT_EQ(files(), 1U);
}

TEST_F(AtomicFileTest, TellsOfAFolderThatCannotBeWritten) {
    ASSERT_EQ(::chmod(folder_.path().c_str(), 0555), 0);
    EXPECT_EQ(in_child([&] {
                  // Root may write everywhere.
                  if (::geteuid() == 0 && ::setuid(65534) != 0) return 2;
                  const AtomicFile file(path("new.txt"));
                  return file.failure().ends_with("new.txt' cannot be written: Permission denied") &&
                                 !file.hint().empty()
                             ? 7
                             : 1;
              }),
              7);
    ASSERT_EQ(::chmod(folder_.path().c_str(), 0755), 0);
}

// The old file and the new ones each hold one letter, so that a mixture would show.
TEST_F(AtomicFileTest, IsOldOrNewAfterAKill) {
    constexpr std::size_t kBytes = std::size_t{4} << 20U;
    std::mt19937 random(3);
    char last = 'a';
    folder_.write("big", std::string(kBytes, last));
    int replaced = 0;
    int kept = 0;
#ifdef GRAINSIDE_UNDER_SANITIZER
    constexpr int kRounds = 8;  // comparing megabytes takes half a second there
#else
    constexpr int kRounds = 150;
#endif
    for (int round = 0; round < kRounds; ++round) {
        const char next = last == 'z' ? 'a' : static_cast<char>(last + 1);
        const pid_t child = ::fork();
        if (child == 0) {
            const std::string piece(std::size_t{64} << 10U, next);
            AtomicFile file(path("big"));
            for (std::size_t n = 0; n < kBytes; n += piece.size()) file.write(piece);
            ::_exit(file.commit() ? 0 : 1);
        }
        ::usleep(static_cast<useconds_t>(random() % 8000));
        ::kill(child, SIGKILL);
        ::waitpid(child, nullptr, 0);
        const std::string found = text("big");
        ASSERT_EQ(found.size(), kBytes);
        ASSERT_TRUE(found.front() == last || found.front() == next);
        ASSERT_EQ(found, std::string(kBytes, found.front()));
        (found.front() == next ? replaced : kept)++;
        last = found.front();
    }
    RecordProperty("replaced", replaced);
    EXPECT_GT(kept, 0);
    // What the killed left is in nobody's way.
    EXPECT_TRUE(write_whole(path("big"), "end"));
}

TEST_F(AtomicFileTest, SameFileSeesLinksAndSpellings) {
    folder_.write("a", "");
    folder_.write("b", "");
    fs::create_symlink("a", path("link"));
    fs::create_hard_link(path("a"), path("hard"));
    EXPECT_TRUE(is_same_file(path("a"), path("./a")));
    EXPECT_TRUE(is_same_file(path("a"), path("link")));
    EXPECT_TRUE(is_same_file(path("hard"), path("a")));
    EXPECT_FALSE(is_same_file(path("a"), path("b")));
    EXPECT_FALSE(is_same_file(path("a"), path("none")));
    EXPECT_FALSE(is_same_file(path("none"), path("none")));
}

}  // namespace
}  // namespace grainside::tools
