// check, claims and survey over catalogs: any number of threads, the same bytes; stopped and gone on with; full disks;
// bounded memory.
#include <csignal>
#include <cstdlib>
#include <random>
#include <string>
#include <vector>

#include "cli_test.h"

namespace grainside::tests {
namespace {

std::string record(int number, std::string_view words) {
    return "{\"sku\":\"s" + std::to_string(number) + "\",\"name\":\"" + std::string(words) +
           " tote\",\"description\":\"The lining is cotton. " + std::string(200, 'x') + "\"}\n";
}

// Some of everything: records with findings and without, made ids, graphs, empty lines, one broken record in the
// middle. 2,000 lines, more than two batches.
std::string mixed_catalog() {
    constexpr std::string_view kWords[] = {"Genuine PU leather", "Vegan leather", "Full grain leather", "Waterproof"};
    std::string feed;
    for (int i = 1; i <= 2000; ++i) {
        if (i == 1000) {
            feed += "{\"name\": }\n";
        } else if (i % 97 == 0) {
            feed += "{\"@graph\":[{\"name\":\"PU leather bag\"},{\"@type\":\"Thing\"},{\"name\":\"Cork bag\"}]}\n";
        } else if (i % 31 == 0) {
            feed += "\n{\"name\":\"Genuine PU leather without a number\"}\n";
        } else {
            feed += record(i, kWords[i / 7 % 4]);
        }
    }
    return feed;
}

// A signal while the input waits. The thread sanitizer keeps a signal back from a thread that waits for a lock, as all
// but the one that reads do here, until that has the lock; there, one thread.
#ifdef __SANITIZE_THREAD__
const char* const kThreadsThatWait[] = {"1"};
#else
const char* const kThreadsThatWait[] = {"1", "3"};
#endif

class CatalogRun : public CliTest {
protected:
    // The same call with other threads must give the same.
    void expect_same(std::vector<std::string> call, const std::string& input = {}) const {
        call.insert(call.end(), {"--threads", "1"});
        const ProcessResult want = run_with_input(call, input);
        EXPECT_FALSE(want.out.empty() && want.err.empty());
#if defined(GRAINSIDE_UNDER_SANITIZER) && !defined(__SANITIZE_THREAD__)
        const std::vector<std::string> others = {"3"};
#else
        const std::vector<std::string> others = {"2", "3", "8"};
#endif
        for (const std::string& threads : others) {
            call.back() = threads;
            const ProcessResult got = run_with_input(call, input);
            EXPECT_TRUE(got.out == want.out) << threads << " threads, " << testing::PrintToString(call);
            EXPECT_EQ(got.err, want.err) << threads << " threads, " << testing::PrintToString(call);
            EXPECT_EQ(got.status, want.status);
        }
    }

    // Runs the tool by a shell, which can set limits; $0 is the tool.
    ProcessResult run_by_shell(const std::string& script, std::vector<std::string> arguments = {}) const {
        ProcessCall call;
        call.program = "/bin/sh";
        call.arguments = {"-c", script, GRAINSIDE_TOOL};
        call.arguments.insert(call.arguments.end(), arguments.begin(), arguments.end());
        call.folder = folder();
        return run_process(call);
    }
};

TEST_F(CatalogRun, BytesDoNotDependOnThreads) {
    const std::string feed = mixed_catalog();
    write_file("feed.jsonl", feed);
    std::string array = "[";
    for (int i = 1; i < 1500; ++i) array += record(i, "Genuine PU leather") + ",";
    write_file("array.json", array + record(1500, "Vegan leather") + "]");
    std::vector<std::string> pages;
    for (int i = 0; i < 150; ++i) {
        write_file(pages.emplace_back(std::to_string(i) + ".txt"), i % 3 == 0 ? "Genuine PU leather" : "Leather bag");
    }
    write_file("agreed.yaml",
               "- {rule: vegan-called-leather, words: vegan leather, reason: r, owner: o, until: 2026-12-31}\n"
               "- {rule: vegan-called-leather, listing: nowhere, reason: r, owner: o, until: 2026-12-31}\n");
    write_file("filed.yaml",
               "- {document: D, laboratory: L, date: 2026-03-02, scope: {says: watertight}, standard: ISO 811, result: "
               "'water column 2,000 mm'}\n- {document: E, laboratory: L, date: 2026-03-02, scope: {listing: nowhere, "
               "says: watertight}, standard: ISO 811, result: r}\n");
    for (const std::string format : {"jsonl", "human", "sarif"}) {
        std::vector<std::string> call = {"check", "--on", "2026-11-26", "--format", format};
        expect_same(call, feed);
        call.insert(call.end(), {"feed.jsonl", "missing.txt", "array.json"});
        call.insert(call.end(), pages.begin(), pages.end());
        expect_same(call);
        call.insert(call.end(), {"--concessions", "agreed.yaml", "--concessions-on", "2026-11-26", "--proofs",
                                 "filed.yaml", "--no-stale-concessions"});
        expect_same(call);
    }
    expect_same({"check", "--quiet", "feed.jsonl"});
    expect_same({"claims", "--format", "jsonl", "feed.jsonl", "array.json"});
    expect_same({"claims", "feed.jsonl"});
    for (const std::string format : {"json", "human"}) {
        expect_same({"survey", "--on", "2026-11-26", "--format", format, "feed.jsonl", "missing.txt", "array.json"});
    }
}

TEST_F(CatalogRun, ABrokenRecordInTheMiddleIsToldOnceWithItsLine) {
    write_file("feed.jsonl", mixed_catalog());
    const ProcessResult result = run({"check", "--format", "jsonl", "--threads", "3", "feed.jsonl"});
    EXPECT_EQ(result.status, 2);
    // 999 lines are before it, and an empty one for each of the 32 of them whose number 31 divides and 97 does not.
    EXPECT_EQ(result.err.rfind("grainside: feed.jsonl:1032:10: error: ", 0), 0U) << result.err;
    EXPECT_EQ(count_of(result.err, "grainside: "), 1U);
}

// The program has all that there is so far, and waits for more, when the signal comes.
TEST_F(CatalogRun, StoppedAndGoneOnWithItWritesWhatOneRunWrites) {
    std::string first;
    for (int i = 1; i <= 40; ++i) first += record(i, "Vegan leather");
    std::string second = "{\"name\":\"Vegan leather without a number\"}\n";
    for (int i = 42; i <= 60; ++i) second += record(i, "Vegan leather");
    for (const std::string threads : kThreadsThatWait) {
        for (const int signal : {SIGINT, SIGTERM}) {
            ProcessCall call = call_of({"check", "--format", "jsonl", "--threads", threads});
            // What has begun of the next record is not written.
            call.input = {first + second.substr(0, 10)};
            call.signal = signal;
            call.signal_at = "{\"listing\":\"s40\",\"claims\"";
            const ProcessResult stopped = run_process(call);
            EXPECT_EQ(stopped.signal, signal) << "the shell sees what ended it";
            EXPECT_EQ(stopped.err,
                      "grainside: note: stopped after record 40 of standard input; go on with --from-record 41\n");
            const std::vector<std::string> whole = {"check", "--format", "jsonl", "--threads", threads};
            std::vector<std::string> rest = whole;
            rest.insert(rest.end(), {"--from-record", "41"});
            EXPECT_EQ(stopped.out + run_with_input(rest, first + second).out,
                      run_with_input(whole, first + second).out);
        }
    }
}

// Wherever the signal comes: while it reads, checks or writes.
TEST_F(CatalogRun, StoppedAnywhereItSaysWhereToGoOn) {
    std::string feed;
    for (int times = 0; times < 4; ++times) feed += mixed_catalog();
    write_file("feed.jsonl", feed);
    const std::vector<std::string> check = {"check", "--format", "jsonl", "--on", "2026-11-26", "feed.jsonl"};
    const std::string whole = run(check).out;
    std::mt19937 random(20261126);
#ifdef GRAINSIDE_UNDER_SANITIZER
    constexpr int kRounds = 3;
#else
    constexpr int kRounds = 9;
#endif
    int stops = 0;
    for (int round = 0; round < kRounds; ++round) {
        ProcessCall call = call_of(check);
        call.arguments.insert(call.arguments.end(), {"--threads", std::to_string(1 + round % 3)});
        call.signal = round % 2 == 0 ? SIGINT : SIGTERM;
        // In the first of the four.
        call.signal_at = "{\"listing\":\"s" + std::to_string(2 + random() % 900);
        const ProcessResult stopped = run_process(call);
        const std::size_t at = stopped.err.find("--from-record ");
        if (at == std::string::npos) {
            // The last batch was being written already, or no record has the number.
            EXPECT_TRUE(stopped.out == whole) << stopped.err;
            continue;
        }
        ++stops;
        EXPECT_EQ(stopped.signal, call.signal);
        std::vector<std::string> rest = check;
        rest.insert(rest.end(), {"--from-record", std::to_string(std::stoul(stopped.err.substr(at + 14)))});
        EXPECT_TRUE(stopped.out + run(rest).out == whole) << stopped.err << call.signal_at;
    }
    EXPECT_GT(stops, 0);
}

TEST_F(CatalogRun, StoppedItEndsItsLogAndItsTotals) {
    for (const std::string format : {"sarif", "human"}) {
        ProcessCall call =
            call_of({"check", "--format", format, "--input", "jsonl", "--threads", std::end(kThreadsThatWait)[-1]});
        call.input = {record(1, "Vegan leather") + record(2, "Vegan leather")};
        call.signal = SIGINT;
        call.signal_at = format == "sarif" ? "\"s2\"" : "s2";
        const ProcessResult stopped = run_process(call);
        EXPECT_EQ(stopped.signal, SIGINT);
        EXPECT_EQ(count_of(stopped.err, "stopped after record 2 of"), 1U) << stopped.err;
        EXPECT_EQ(count_of(stopped.out, format == "sarif" ? "\"executionSuccessful\":false" : "2 listings, "), 1U)
            << stopped.out;
    }
}

TEST_F(CatalogRun, FromARecordOnItSaysWhatTheWholeRunSays) {
    write_file("feed.jsonl", mixed_catalog());
    write_file("next.jsonl", record(1, "Vegan leather") + record(2, "Vegan leather"));
    const std::string whole = run({"check", "--format", "jsonl", "feed.jsonl", "next.jsonl"}).out;
    // In the first and in a later batch, inside a graph, behind the broken record, and behind the end.
    for (const std::string from : {"1", "2", "96", "97", "98", "99", "1500", "2020", "3000"}) {
        const std::string rest =
            run({"check", "--format", "jsonl", "--threads", "2", "--from-record", from, "feed.jsonl", "next.jsonl"})
                .out;
        EXPECT_TRUE(whole.ends_with(rest)) << from;
        EXPECT_TRUE(from != "1" || rest == whole);
        EXPECT_EQ(count_of(rest, "{\"listing\":\"s2\",\"claims\""), from == "1" || from == "2" ? 2U : 1U)
            << "the inputs behind the first are read in full, from " << from;
    }
}

TEST_F(CatalogRun, NumbersOutOfRangeAreRefused) {
    for (const std::vector<std::string>& wrong : {std::vector<std::string>{"--threads", "0"},
                                                  {"--threads", "257"},
                                                  {"--from-record", "0"},
                                                  {"--progress", "--no-progress"}}) {
        std::vector<std::string> call = {"claims"};
        call.insert(call.end(), wrong.begin(), wrong.end());
        EXPECT_EQ(run(call).status, 2) << wrong.front();
    }
}

TEST_F(CatalogRun, AFileThatMayNotGrowEndsWithAWholeLine) {
    write_file("feed.jsonl", mixed_catalog());
    const std::string whole = run({"check", "--format", "jsonl", "--on", "2026-11-26", "feed.jsonl"}).out;
    // 200 blocks of 512 bytes.
    const ProcessResult result =
        run_by_shell("ulimit -f 200; exec \"$0\" check --format jsonl --on 2026-11-26 feed.jsonl > out.jsonl");
    EXPECT_EQ(result.status, 2);
    EXPECT_EQ(result.signal, 0);
    EXPECT_NE(result.err.find("grainside: error: standard output cannot be written: File too large\n"),
              std::string::npos)
        << result.err;
    const std::string out = read_file(folder() / "out.jsonl");
    EXPECT_GT(out.size(), 200U * 512 / 2);
    EXPECT_TRUE(whole.starts_with(out));
    EXPECT_TRUE(out.ends_with('\n'));
}

TEST_F(CatalogRun, AFullDiskEndsARunOfManyThreads) {
    write_file("feed.jsonl", mixed_catalog());
    ProcessCall call = call_of({"check", "--format", "jsonl", "--threads", "3", "feed.jsonl"});
    call.out = Stream::full_disk;
    const ProcessResult result = run_process(call);
    EXPECT_EQ(result.status, 2);
    EXPECT_NE(result.err.find("grainside: error: standard output cannot be written: No space left on device\n"),
              std::string::npos)
        << result.err;
}

// A reader that goes away ends the program although its input neither ends nor goes on.
TEST_F(CatalogRun, AGoneReaderIsNoticedWhileTheInputWaits) {
    ProcessCall call = call_of({"check", "--format", "jsonl", "--threads", "3"});
    call.input = {record(1, "Vegan leather"), record(2, "Vegan leather") + record(3, "Vegan leather")};
    call.out = Stream::gone_reader;
    call.signal = SIGKILL;
    call.signal_at = "never";
    EXPECT_EQ(run_process(call).status, 0);
}

#ifndef GRAINSIDE_UNDER_SANITIZER  // whose own memory is larger than any limit
// Wherever it runs out: before the first listing, in a thread that begins, in the middle.
TEST_F(CatalogRun, WithoutMemoryItSaysSoBehindAWholeLine) {
    write_file("feed.jsonl", mixed_catalog());
    const std::string whole = run({"check", "--format", "jsonl", "--on", "2026-11-26", "feed.jsonl"}).out;
    int ran_out = 0;
    int complete = 0;
    for (int mebibytes = 40; mebibytes <= 800; mebibytes += mebibytes < 200 ? 16 : 300) {
        const ProcessResult result =
            run_by_shell("ulimit -v " + std::to_string(mebibytes * 1024) +
                         "; \"$0\" check --format jsonl --on 2026-11-26 --threads 4 feed.jsonl; "
                         "status=$?; [ $status -lt 126 ] || exit 99; exit $status");
        // The system could not even load it, or a signal ended it, of which the shell would tell.
        if (result.status == 99) {
            EXPECT_NE(result.err.find("error while loading shared libraries"), std::string::npos) << result.err;
            continue;
        }
        if (result.err.find("memory has run out") == std::string::npos) {
            EXPECT_TRUE(result.out == whole) << mebibytes << ' ' << result.err;
            ++complete;
            continue;
        }
        ++ran_out;
        EXPECT_EQ(result.status, 2);
        EXPECT_TRUE(whole.starts_with(result.out)) << mebibytes;
        EXPECT_TRUE(result.out.empty() || result.out.back() == '\n') << mebibytes;
    }
    EXPECT_GT(ran_out, 0);
    EXPECT_GT(complete, 0);
}
#endif

TEST_F(CatalogRun, MemoryDoesNotGrowWithTheCatalog) {
#ifdef GRAINSIDE_UNDER_SANITIZER
    constexpr int kLines = 500;  // whose own memory is no measure
#else
    constexpr int kLines = 20000;
#endif
    const std::string line = "{\"name\":\"Vegan leather tote\",\"x\":\"" + std::string(10000, 'x') + "\"}";
    const auto peak = [&](int lines) {
        const ProcessResult result = run_by_shell(
            "yes \"$1\" | head -n " + std::to_string(lines) + " | \"$0\" check --format jsonl --threads 2 | tail -n 1",
            {line});
        EXPECT_EQ(count_of(result.out, "<stdin>:" + std::to_string(lines) + "\""), 1U) << result.out;
        return result.peak_kibibytes;
    };
    // 2 MB and 200 MB. Every slot has its buffers after the small one already, or nearly so.
    const long small = peak(200);
    const long large = peak(kLines);
#ifndef GRAINSIDE_UNDER_SANITIZER
    EXPECT_LT(large, small + 8 * 1024) << "KiB";
#else
    EXPECT_GT(large, 0);
    EXPECT_GT(small, 0);
#endif
}

TEST_F(CatalogRun, ProgressIsShownOnRequestAndNotAgainstIt) {
    const std::string listing = record(1, "Leather");
    ProcessCall call = call_of({"claims", "--format", "jsonl", "--no-progress"});
    call.input = {listing, listing, listing};
    call.pause = std::chrono::milliseconds(700);
    call.err = Stream::terminal;
    EXPECT_EQ(run_process(call).err, "");
}

}  // namespace
}  // namespace grainside::tests
