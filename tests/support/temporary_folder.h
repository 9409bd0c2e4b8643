// A new folder of its own below the system's folder for temporary files, gone with the object.
#ifndef GRAINSIDE_TESTS_SUPPORT_TEMPORARY_FOLDER_H
#define GRAINSIDE_TESTS_SUPPORT_TEMPORARY_FOLDER_H

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <system_error>

namespace grainside::support {

class TemporaryFolder {
public:
    TemporaryFolder() {
        // mkdtemp(3) puts six characters of its own in place of the last six.
        std::string name = (std::filesystem::temp_directory_path() / ("grainside." + std::string(6, 'X'))).string();
        if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
        path_ = name;
    }
    ~TemporaryFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    const std::filesystem::path& path() const noexcept { return path_; }

    // Writes a file, and the folders above it that are missing.
    void write(std::string_view name, std::string_view text) const {
        std::filesystem::create_directories((path_ / name).parent_path());
        std::ofstream(path_ / name, std::ios::binary) << text;
    }

private:
    std::filesystem::path path_;
};

}  // namespace grainside::support

#endif  // GRAINSIDE_TESTS_SUPPORT_TEMPORARY_FOLDER_H
