// Standard output and standard error that are no plain files: gone readers, full disks, terminals.
#include <chrono>
#include <string>

#include "cli_test.h"

namespace grainside::tests {
namespace {

class OutputTo : public CliTest {
protected:
    ProcessCall check(std::string format = "human") const {
        ProcessCall call = call_of({"check", "--format", std::move(format)});
        call.input = {"Genuine PU leather tote"};
        return call;
    }
};

std::string many_listings() {
    std::string feed;
    for (int i = 0; i < 20000; ++i) feed += "{\"name\": \"Genuine PU leather tote\"}\n";
    return feed;
}

TEST_F(OutputTo, AGoneReaderIsNoError) {
    for (const std::string format : {"human", "jsonl"}) {
        ProcessCall call = check(format);
        call.out = Stream::gone_reader;
        const ProcessResult result = run_process(call);
        EXPECT_EQ(result.signal, 0);
        EXPECT_EQ(result.status, 0);
        EXPECT_EQ(result.err, "");
    }
}

TEST_F(OutputTo, AReaderThatGoesEndsTheRun) {
    ProcessCall call = check("jsonl");
    call.input = {many_listings()};
    call.out = Stream::first_line;
    const ProcessResult result = run_process(call);
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(result.err, "");
    EXPECT_NE(result.out.find('\n'), std::string::npos);
}

TEST_F(OutputTo, AFullDiskIsAnError) {
    for (const std::vector<std::string>& arguments :
         {std::vector<std::string>{"check"}, {"claims"}, {"rules", "list"}, {"--version"}, {"--help"}}) {
        ProcessCall call = call_of(arguments);
        call.input = {"Genuine PU leather tote"};
        call.out = Stream::full_disk;
        const ProcessResult result = run_process(call);
        EXPECT_EQ(result.status, 2) << arguments.front();
        EXPECT_EQ(result.err, "grainside: error: standard output cannot be written: No space left on device\n");
    }
}

TEST_F(OutputTo, NothingIsAnError) {
    ProcessCall call = check();
    call.out = Stream::not_open;
    const ProcessResult result = run_process(call);
    EXPECT_EQ(result.status, 2);
    EXPECT_EQ(result.err, "grainside: error: standard output cannot be written: Bad file descriptor\n");
}

TEST_F(OutputTo, StandardErrorMayBeGone) {
    ProcessCall call = call_of({"check", "missing.txt"});
    call.err = Stream::gone_reader;
    const ProcessResult result = run_process(call);
    EXPECT_EQ(result.signal, 0);
    EXPECT_EQ(result.status, 2);
}

struct ColourRow {
    std::string name;
    std::string when;
    Stream out;
    std::map<std::string, std::string> environment;
    bool coloured;
};

TEST_F(OutputTo, ATerminalIsColoured) {
    const ColourRow rows[] = {
        {"terminal", "auto", Stream::terminal, {{"TERM", "xterm"}}, true},
        {"no_colour", "auto", Stream::terminal, {{"TERM", "xterm"}, {"NO_COLOR", "1"}}, false},
        {"no_colour_empty", "auto", Stream::terminal, {{"TERM", "xterm"}, {"NO_COLOR", ""}}, true},
        {"dumb", "auto", Stream::terminal, {{"TERM", "dumb"}}, false},
        {"pipe", "auto", Stream::pipe, {{"TERM", "xterm"}}, false},
        {"never", "never", Stream::terminal, {{"TERM", "xterm"}}, false},
        {"always", "always", Stream::pipe, {{"NO_COLOR", "1"}}, true},
    };
    for (const ColourRow& row : rows) {
        ProcessCall call = check();
        call.arguments.insert(call.arguments.end(), {"--colour", row.when});
        call.environment = row.environment;
        call.out = row.out;
        const ProcessResult result = run_process(call);
        EXPECT_EQ(result.status, 1) << row.name;
        EXPECT_EQ(result.out.find("\x1B[4;31mGenuine PU leather\x1B[0m tote") != std::string::npos, row.coloured)
            << row.name << '\n'
            << result.out;
        EXPECT_EQ(result.out.find('^') == std::string::npos, row.coloured) << row.name;
    }
}

TEST_F(OutputTo, ATerminalHasRecordsWithoutColours) {
    ProcessCall call = check("jsonl");
    call.out = Stream::terminal;
    call.environment = {{"TERM", "xterm"}};
    EXPECT_EQ(run_process(call).out.find('\x1B'), std::string::npos);
}

TEST_F(OutputTo, ATerminalSeesFindingsAtOnce) {
    ProcessCall call = call_of({"check", "--colour", "never"});
    call.input = {"{\"name\": \"Genuine PU leather tote\"}\n", "{\"name\": }\n"};
    call.pause = std::chrono::milliseconds(300);
    call.out = Stream::terminal;
    call.err = Stream::terminal;
    const ProcessResult result = run_process(call);
    EXPECT_EQ(result.status, 2);
    EXPECT_NE(result.out.find("1 misleading"), std::string::npos);
    EXPECT_EQ(result.err.rfind("grainside: <stdin>:2:10: error: ", 0), 0U)
        << "no progress beside findings on a terminal";
}

TEST_F(OutputTo, ALongRunShowsItsProgress) {
    ProcessCall call = check("jsonl");
    const std::string listing = "{\"name\": \"Genuine PU leather tote\"}\n";
    call.input = {listing, listing, listing + "{\n"};
    call.pause = std::chrono::milliseconds(700);
    call.err = Stream::terminal;
    const ProcessResult result = run_process(call);
    EXPECT_NE(result.err.find("\r3 listings, 0.0 MB"), std::string::npos) << result.err;
    EXPECT_NE(result.err.find(" \rgrainside: <stdin>:4:"), std::string::npos)
        << "the line is taken away first: " << result.err;
    call.err = Stream::pipe;
    call.input = {listing, listing, listing};
    EXPECT_EQ(run_process(call).err, "");
}

}  // namespace
}  // namespace grainside::tests
