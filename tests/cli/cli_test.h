// The fixture of the tests that run the built tool: a fresh folder a test, and the tool run in it.
#ifndef GRAINSIDE_TESTS_CLI_CLI_TEST_H
#define GRAINSIDE_TESTS_CLI_CLI_TEST_H

#include <gtest/gtest.h>

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "support/process_runner.h"

namespace grainside::tests {

class CliTest : public testing::Test {
protected:
    void SetUp() override;
    void TearDown() override;

    const std::filesystem::path& folder() const noexcept { return folder_; }
    // `name` may hold folders.
    void write_file(const std::string& name, std::string_view text) const;
    // A copy of the small rule book of tests/unit/report, as the folder `name`.
    void write_small_book(const std::string& name) const;
    // The same with the evidence half of tests/cli/evidence_book.
    void write_small_evidence(const std::string& name) const;

    ProcessCall call_of(std::vector<std::string> arguments) const;
    ProcessResult run(std::vector<std::string> arguments) const { return run_process(call_of(std::move(arguments))); }
    ProcessResult run_with_input(std::vector<std::string> arguments, std::string input) const;

    // What check_inert.py finds wrong with the report `name` of that form; `needles` is a JSON list of texts that must
    // be there to be read. "" for nothing.
    std::string faults_in(const std::string& form, const std::string& name, const std::string& needles) const;

private:
    std::filesystem::path folder_;
};

std::string read_file(const std::filesystem::path& path);
std::vector<std::string> lines_of(std::string_view text);
std::size_t count_of(std::string_view text, std::string_view what);

}  // namespace grainside::tests

#endif  // GRAINSIDE_TESTS_CLI_CLI_TEST_H
