#include "book_faults.h"

#include <filesystem>

namespace grainside::tools {

std::vector<Issue> with_folder(std::vector<Issue> issues, const std::string& folder) {
    namespace fs = std::filesystem;
    if (folder.empty()) return issues;
    for (Issue& issue : issues) {
        if (issue.file != fs::path(folder).generic_string()) {
            issue.file = (fs::path(folder) / issue.file).generic_string();
        }
    }
    return issues;
}

}  // namespace grainside::tools
