#include "same_file.h"

#include <sys/stat.h>
#include <unistd.h>

namespace grainside::tools {
namespace {

bool file_status(const std::string& name, struct stat& status) {
    return (name == "-" ? ::fstat(STDIN_FILENO, &status) : ::stat(name.c_str(), &status)) == 0;
}

}  // namespace

bool is_same_file(const std::string& one, const std::string& other) {
    struct stat a {};
    struct stat b {};
    return file_status(one, a) && file_status(other, b) && a.st_dev == b.st_dev && a.st_ino == b.st_ino;
}

}  // namespace grainside::tools
