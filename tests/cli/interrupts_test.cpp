// Ended at any moment, by a kill or by an interrupt, each command that writes a file leaves the old one or the whole
// new one; and what it writes to standard output, of which nobody can say when it is whole, is a beginning of it.
#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <filesystem>
#include <random>
#include <string>
#include <thread>
#include <vector>

#include "cli_test.h"
#include "small_dossiers.h"

namespace grainside::tests {
namespace {

using Clock = std::chrono::steady_clock;

struct InterruptedRow {
    std::string_view name;
    std::vector<std::string> arguments;
    bool to_output = false;  // "out" is where its standard output leads
};
std::ostream& operator<<(std::ostream& out, const InterruptedRow& row) {
    return out << row.name;
}

const InterruptedRow kInterrupted[] = {
    {"report", {"report", "--rules", "book", "--out", "out", "clear.yaml", "bare.yaml"}},
    {"report_into", {"report", "--rules", "book", "--into", ".", "--format", "json", "out.yaml"}},
    {"reword", {"reword", "--out", "out", "feed.jsonl"}},
    {"reword_page", {"reword", "--out", "out", "page.md"}},
    {"survey", {"survey", "--format", "json", "--on", "2026-11-26", "--threads", "2", "--out", "out", "feed.jsonl"}},
    {"survey_page",
     {"survey", "--format", "html", "--on", "2026-11-26", "--threads", "1", "--out", "out", "feed.jsonl"}},
    {"reference", {"rules", "reference", "--out", "out"}},
    {"learn", {"learn", "--rules", "book", "--format", "jsonl", "clear.yaml", "bare.yaml"}, true},
};

class Interrupted : public CliTest, public testing::WithParamInterface<InterruptedRow> {
protected:
    void SetUp() override {
        CliTest::SetUp();
        write_small_evidence("book");
        write_file("clear.yaml", kClearDossier);
        write_file("out.yaml", kClearDossier);
        write_file("bare.yaml", kBareDossier);
        std::string feed;
        std::string page = "# Vegan leather tote\n";
        for (int i = 0; i < 300; ++i) {
            feed += "{\"sku\":\"s" + std::to_string(i) + "\",\"name\":\"Vegan leather tote\",\"description\":\"" +
                    std::string(1000, 'x') + "\"}\n";
            page += "\n- Vegan leather strap\n";
        }
        write_file("feed.jsonl", feed);
        write_file("page.md", page);
    }

    pid_t start() const {
        std::vector<std::string> words = GetParam().arguments;
        words.insert(words.begin(), "grainside");
        std::vector<char*> arguments;
        arguments.reserve(words.size() + 1);
        for (std::string& word : words) arguments.push_back(word.data());
        arguments.push_back(nullptr);
        const std::string place = folder().string();
        const std::string out = GetParam().to_output ? written() : "/dev/null";
        const pid_t child = ::fork();
        if (child != 0) return child;
        const int output = ::open(out.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0644);
        const int nothing = ::open("/dev/null", O_WRONLY);
        if (::chdir(place.c_str()) != 0 || ::dup2(output, 1) < 0 || ::dup2(nothing, 2) < 0) ::_exit(3);
        ::execv(GRAINSIDE_TOOL, arguments.data());
        ::_exit(4);
    }
    std::string written() const {
        return (folder() / (GetParam().name == "report_into" ? "out.json" : "out")).string();
    }
};

TEST_P(Interrupted, LeavesTheOldFileOrTheNewOne) {
    const auto begun = Clock::now();
    int status = 0;
    ::waitpid(start(), &status, 0);
    const auto took = Clock::now() - begun;
    ASSERT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) < 2) << status;
    const std::string whole = read_file(written());
    ASSERT_FALSE(whole.empty());
    const std::string old = GetParam().to_output ? "" : "the old file\n";
#ifdef GRAINSIDE_UNDER_SANITIZER
    constexpr int kRounds = 6;
#else
    constexpr int kRounds = 30;
#endif
    std::mt19937 random(20261126);
    int kept = 0;
    int replaced = 0;
    for (const int signal : {SIGKILL, SIGINT}) {
        for (int round = 0; round < kRounds; ++round) {
            std::filesystem::remove(written());
            if (!GetParam().to_output) write_file(std::filesystem::path(written()).filename().string(), old);
            const pid_t child = start();
            ASSERT_GT(child, 0);
            // A little more than it takes, so that some are done.
            std::this_thread::sleep_for(took * (random() % 1200) / 1000);
            ::kill(child, signal);
            ASSERT_EQ(::waitpid(child, &status, 0), child);
            EXPECT_TRUE(WIFEXITED(status) ? WEXITSTATUS(status) < 2 : WTERMSIG(status) == signal) << status;
            const std::string found = std::filesystem::exists(written()) ? read_file(written()) : std::string();
            const bool is_whole = found == whole;
            const bool is_begun = GetParam().to_output && whole.starts_with(found);
            ASSERT_TRUE(found == old || is_whole || is_begun)
                << found.size() << " bytes of " << whole.size() << " in round " << round << ", signal " << signal;
            ++(is_whole ? replaced : kept);
        }
    }
    EXPECT_GT(kept, 0);
    RecordProperty("replaced", replaced);
}

INSTANTIATE_TEST_SUITE_P(Rows, Interrupted, testing::ValuesIn(kInterrupted),
                         [](const auto& one) { return std::string(one.param.name); });

}  // namespace
}  // namespace grainside::tests
