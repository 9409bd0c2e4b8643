#include "evidence/list_file.h"

#include <fmt/format.h>

#include <system_error>
#include <utility>

#include "document/yaml_document.h"

namespace grainside::evidence {

std::optional<std::string> read_list_file(const std::filesystem::path& file, std::string_view what,
                                          document::Faults& faults) {
    std::error_code failed;
    if (std::filesystem::is_regular_file(file, failed)) {
        if (auto text = document::read_yaml_file(file)) return text;
    }
    Issue issue;
    issue.code = "unreadable";
    issue.file = file.string();
    const bool folder = std::filesystem::is_directory(file, failed);
    issue.message = folder ? fmt::format("this is a folder, not a file of {}", what)
                           : fmt::format("the file of {} cannot be read", what);
    issue.hint = folder ? "name the file in it" : "is the name right?";
    faults.add(std::move(issue));
    return std::nullopt;
}

}  // namespace grainside::evidence
