// What judge, identify, plan and learn write where text is hostile or standard output is no plain file.
#include <re2/re2.h>

#include <string>
#include <vector>

#include "cli_test.h"
#include "small_dossiers.h"

namespace grainside::tests {
namespace {

const std::vector<std::string> kWritingCommands = {"judge", "identify", "plan", "learn"};

class DossierOutput : public CliTest {
protected:
    void SetUp() override {
        CliTest::SetUp();
        write_small_evidence("book");
    }
    ProcessCall small_call(std::vector<std::string> arguments) const {
        arguments.insert(arguments.end(), {"--rules", "book"});
        return call_of(std::move(arguments));
    }
};

// Controls, C1 controls as UTF-8, and what turns the direction of a text.
void expect_inert(const std::string& text, const std::string& where) {
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        EXPECT_TRUE(byte >= 0x20 || c == '\n') << where << '\n' << text;
        EXPECT_NE(byte, 0x7F) << where;
    }
    for (const char* obeyed : {"\xC2\x9B", "\xE2\x80\xA8", "\xE2\x80\xAE", "\xE2\x81\xA6"})
        EXPECT_EQ(text.find(obeyed), std::string::npos) << where << '\n' << text;
}

TEST_F(DossierOutput, IsInert) {
    write_file("hostile.yaml", kHostileDossier);
    for (const std::string& command : kWritingCommands) {
        for (const std::string format : {"human", "jsonl"}) {
            const ProcessResult result = run_process(small_call({command, "--format", format, "hostile.yaml"}));
            EXPECT_EQ(result.status, command == "judge" ? 1 : 0) << command << result.err;
            // A picture that is not there is a remark, and no fault.
            const std::string warning =
                "grainside: hostile.yaml:8:72: warning: there is no file 'a?[2J.jpg' beside the dossier [no-picture]\n";
            EXPECT_EQ(result.err.rfind(warning, 0), 0U) << result.err;
            expect_inert(result.err, command);
            expect_inert(result.out, command);
        }
    }
    const ProcessResult human = run_process(small_call({"judge", "hostile.yaml"}));
    EXPECT_EQ(human.out.rfind("hostile\nTote ?[2J??\?<script>alert(1)</script>???\n", 0), 0U) << human.out;
    EXPECT_NE(human.out.find("'silk' (additionalProperty.Lin?[1ming??\?)"), std::string::npos) << human.out;
    const ProcessResult records = run_process(small_call({"judge", "--format", "jsonl", "hostile.yaml"}));
    EXPECT_NE(records.out.find(R"("field":"additionalProperty.Lin\u001b[1ming\u202e")"), std::string::npos)
        << records.out;
}

TEST_F(DossierOutput, IsInertInFaults) {
    write_file("hostile.yaml",
               "sample: {what: Tote}\n"
               "parts:\n"
               "  body:\n"
               "    readings:\n"
               "      - {method: \"x\\e[2J\\u202E<script>\", outcome: film}\n"
               "      - {method: look, outcome: \"o\\e[2J\\u202E<b>\"}\n"
               "      - {method: look, outcome: film, date: \"\\e[2J\"}\n");
    for (const std::string& command : kWritingCommands) {
        const ProcessResult result = run_process(small_call({command, "hostile.yaml", "--format", "jsonl"}));
        EXPECT_EQ(result.status, 2);
        EXPECT_EQ(count_of(result.err, "grainside: "), 3U) << result.err;
        EXPECT_NE(result.err.find("there is no method 'x?[2J??\?<script>' [unknown-method]"), std::string::npos)
            << result.err;
        EXPECT_NE(result.err.find("method 'look' has no outcome 'o?[2J??\?<b>' [unknown-outcome]"), std::string::npos)
            << result.err;
        expect_inert(result.err, command);
        expect_inert(result.out, command);
    }
    const ProcessResult named = run_process(small_call({"judge", "\x1B[2J\xE2\x80\xAE.yaml"}));
    EXPECT_EQ(named.status, 2);
    EXPECT_EQ(named.err.rfind("grainside: ?[2J???.yaml: error: ", 0), 0U) << named.err;
}

TEST_F(DossierOutput, NamesADossierInertly) {
    const std::string file = "\x1B[2J\xE2\x80\xAE.yaml";
    write_file(file, kThinDossier);
    for (const std::string& command : kWritingCommands) {
        for (const std::string format : {"human", "jsonl"})
            expect_inert(run_process(small_call({command, file, "--format", format})).out, command);
    }
}

TEST_F(DossierOutput, HasNoEscapesButItsOwnColours) {
    write_file("hostile.yaml", kHostileDossier);
    write_file("confirmed.yaml", kConfirmedDossier);
    for (const std::string& command : kWritingCommands) {
        std::string coloured =
            run_process(small_call({command, "hostile.yaml", "confirmed.yaml", "--colour", "always"})).out;
        const std::string plain =
            run_process(small_call({command, "hostile.yaml", "confirmed.yaml", "--colour", "never"})).out;
        EXPECT_NE(coloured, plain) << command;
        RE2::GlobalReplace(&coloured, "\x1B\\[[0-9;]*m", "");
        EXPECT_EQ(coloured, plain) << command;
        expect_inert(plain, command);
        ProcessCall records = small_call({command, "confirmed.yaml", "--colour", "always", "--format", "jsonl"});
        EXPECT_EQ(run_process(records).out.find('\x1B'), std::string::npos) << command;
    }
}

TEST_F(DossierOutput, IsColouredOnATerminal) {
    write_file("tote.yaml", kClearDossier);
    ProcessCall call = small_call({"judge", "tote.yaml"});
    call.out = Stream::terminal;
    call.environment = {{"TERM", "xterm"}};
    EXPECT_NE(run_process(call).out.find("\x1B[1;31mcontradicted\x1B[0m"), std::string::npos);
    call.environment = {{"TERM", "xterm"}, {"NO_COLOR", "1"}};
    EXPECT_EQ(run_process(call).out.find('\x1B'), std::string::npos);
}

TEST_F(DossierOutput, MayHaveAGoneReader) {
    write_file("tote.yaml", kClearDossier);
    for (const std::string& command : kWritingCommands) {
        for (const std::string format : {"human", "jsonl"}) {
            ProcessCall call = small_call({command, "tote.yaml", "--format", format});
            call.out = Stream::gone_reader;
            const ProcessResult result = run_process(call);
            EXPECT_EQ(result.signal, 0) << command;
            EXPECT_EQ(result.status, 0) << command;
            EXPECT_EQ(result.err, "") << command;
        }
    }
}

TEST_F(DossierOutput, EndsWithItsReader) {
    write_file("tote.yaml", kClearDossier);
    std::vector<std::string> arguments = {"judge", "--format", "jsonl"};
    arguments.insert(arguments.end(), 2000, "tote.yaml");
    ProcessCall call = small_call(std::move(arguments));
    call.out = Stream::first_line;
    const ProcessResult result = run_process(call);
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(result.err, "");
    EXPECT_NE(result.out.find('\n'), std::string::npos);
}

TEST_F(DossierOutput, OnAFullDiskIsAnError) {
    write_file("tote.yaml", kConfirmedDossier);
    for (const std::string& command : kWritingCommands) {
        for (const std::string format : {"human", "jsonl"}) {
            ProcessCall call = small_call({command, "tote.yaml", "--format", format});
            call.out = Stream::full_disk;
            const ProcessResult result = run_process(call);
            EXPECT_EQ(result.status, 2) << command;
            EXPECT_EQ(result.err, "grainside: error: standard output cannot be written: No space left on device\n");
        }
    }
}

}  // namespace
}  // namespace grainside::tests
