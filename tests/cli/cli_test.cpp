#include "cli_test.h"

#include <unistd.h>

#include <fstream>
#include <iterator>
#include <utility>

namespace grainside::tests {

namespace fs = std::filesystem;

void CliTest::SetUp() {
    const testing::TestInfo& test = *testing::UnitTest::GetInstance()->current_test_info();
    std::string name = std::string("grainside_cli.") + test.test_suite_name() + '.' + test.name();
    for (char& c : name) c = c == '/' ? '-' : c;
    folder_ = fs::temp_directory_path() / (name + '.' + std::to_string(::getpid()));
    fs::remove_all(folder_);
    fs::create_directories(folder_);
}

void CliTest::TearDown() {
    fs::remove_all(folder_);
}

void CliTest::write_file(const std::string& name, std::string_view text) const {
    fs::create_directories((folder_ / name).parent_path());
    std::ofstream file(folder_ / name, std::ios::binary);
    file.write(text.data(), static_cast<std::streamsize>(text.size()));
    ASSERT_TRUE(file.good()) << name;
}

void CliTest::write_small_book(const std::string& name) const {
    fs::copy(GRAINSIDE_SMALL_BOOK, folder_ / name, fs::copy_options::recursive);
    for (const char* file : {"concepts.yaml", "parts.yaml"})
        fs::copy(fs::path(GRAINSIDE_RULES_FOLDER) / file, folder_ / name);
}

void CliTest::write_small_evidence(const std::string& name) const {
    write_small_book(name);
    fs::copy(GRAINSIDE_SMALL_EVIDENCE, folder_ / name, fs::copy_options::recursive);
}

ProcessCall CliTest::call_of(std::vector<std::string> arguments) const {
    ProcessCall call;
    call.program = GRAINSIDE_TOOL;
    call.arguments = std::move(arguments);
    call.folder = folder_;
    return call;
}

ProcessResult CliTest::run_with_input(std::vector<std::string> arguments, std::string input) const {
    ProcessCall call = call_of(std::move(arguments));
    call.input = {std::move(input)};
    return run_process(call);
}

std::string CliTest::faults_in(const std::string& form, const std::string& name, const std::string& needles) const {
    ProcessCall call;
    call.program = GRAINSIDE_PYTHON;
    call.arguments = {GRAINSIDE_INERT_CHECK, form, name};
    call.folder = folder();
    call.input = {needles};
    const ProcessResult result = run_process(call);
    return result.status == 0 ? std::string() : result.out + result.err;
}

std::string read_file(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    EXPECT_TRUE(file.good()) << path;
    return {std::istreambuf_iterator<char>(file), {}};
}

std::vector<std::string> lines_of(std::string_view text) {
    std::vector<std::string> lines;
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        lines.emplace_back(text.substr(0, end));
        if (end == std::string_view::npos) break;
        text.remove_prefix(end + 1);
    }
    return lines;
}

std::size_t count_of(std::string_view text, std::string_view what) {
    std::size_t count = 0;
    for (std::size_t at = text.find(what); at != std::string_view::npos; at = text.find(what, at + what.size()))
        ++count;
    return count;
}

}  // namespace grainside::tests
