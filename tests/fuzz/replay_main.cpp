// The main() of a fuzz target that is built without libFuzzer: runs every file of the folders and files that are named,
// so that inputs which once found a fault are tried in every configuration.
//
// Exit status: 0 all were run (a failing one aborts); 1 a name does not exist, a file cannot be read, or a folder holds
// no file, so that a test with a wrong path cannot pass.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <system_error>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

namespace fs = std::filesystem;

bool complain(const fs::path& path, const char* what) {
    std::fprintf(stderr, "replay: %s: %s\n", path.string().c_str(), what);
    return false;
}

bool collect(const fs::path& path, std::vector<fs::path>& inputs) {
    std::error_code error;
    if (fs::is_regular_file(path, error)) {
        inputs.push_back(path);
        return true;
    }
    if (!fs::is_directory(path, error)) return complain(path, "there is no such file or folder");
    std::vector<fs::path> found;
    for (fs::recursive_directory_iterator at(path, error), end; !error && at != end; at.increment(error)) {
        if (at->is_regular_file()) found.push_back(at->path());
    }
    if (error) return complain(path, "the folder cannot be read");
    if (found.empty()) return complain(path, "the folder holds no file");
    std::sort(found.begin(), found.end());
    inputs.insert(inputs.end(), found.begin(), found.end());
    return true;
}

bool replay(const fs::path& path) {
    std::ifstream stream(path, std::ios::binary);
    if (!stream) return complain(path, "the file cannot be read");
    const std::vector<char> bytes{std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
    // Told beforehand: should the target abort, this is the input that did it.
    std::fprintf(stderr, "replay: %s\n", path.string().c_str());
    LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
    return true;
}

}  // namespace

int main(int argc, char** argv) {
    std::vector<fs::path> inputs;
    bool good = argc > 1;
    if (!good) std::fprintf(stderr, "usage: %s FOLDER_OR_FILE...\n", argv[0]);
    for (int i = 1; i < argc; ++i) good = collect(argv[i], inputs) && good;
    for (const fs::path& input : inputs) good = replay(input) && good;
    std::printf("%zu inputs replayed\n", inputs.size());
    return good ? 0 : 1;
}
