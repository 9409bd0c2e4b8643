// Reading YAML into documents. The only part of the library that knows of yaml-cpp.
#ifndef GRAINSIDE_DOCUMENT_YAML_DOCUMENT_H
#define GRAINSIDE_DOCUMENT_YAML_DOCUMENT_H

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document/document.h"
#include "document/faults.h"

namespace grainside::document {

// Limits that keep a hostile file cheap; beyond them the file is refused with code "too-large" or "too-deep".
inline constexpr std::size_t kMaxYamlBytes = std::size_t{4} << 20;
inline constexpr int kMaxYamlDepth = 32;

// Parses one file's text. Faults: "yaml-syntax", "not-utf8", "duplicate-key", "alias" (anchors and aliases are refused:
// they make sizes explode and files hard to read), "tag", "too-large", "too-deep", "many-documents". Gives nothing
// exactly where an error was reported. Never throws.
std::optional<Document> parse_yaml(std::string file, std::string text, Faults& faults);

// Reads every *.yaml below `folder`, in byte order of their relative paths, so that two machines agree. Symbolic links
// are not followed. Faults also: "unreadable". Files that cannot be read are left out; all faults are reported.
std::vector<Document> read_yaml_folder(const std::filesystem::path& folder, Faults& faults);

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_YAML_DOCUMENT_H
