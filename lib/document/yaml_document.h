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
inline constexpr std::size_t kMaxYamlNodes = 500'000;
inline constexpr int kMaxYamlDepth = kMaxDepth;
// The longest stretch that the parser has to keep before it can hand on a value, in bytes, give or take 8 KiB (it reads
// in blocks): a text, a run of comments, a list in brackets that may still turn out to be a key.
inline constexpr std::size_t kMaxYamlStretch = std::size_t{256} << 10;
// All files of a folder together.
inline constexpr std::size_t kMaxYamlFolderBytes = std::size_t{64} << 20;

// Parses one file's text. Faults: "yaml-syntax", "not-utf8", "duplicate-key", "alias" (anchors and aliases are refused:
// they make sizes explode and files hard to read), "tag", "wrong-type" (a key that is no text), "too-large",
// "too-deep", "many-documents". All faults are reported up to the first one after which YAML cannot be followed. Gives
// nothing exactly where an error was reported. Never throws.
//
// A byte order mark at the start is dropped and not counted. Control characters other than tab and line ends, and
// carriage returns without a line feed, are "yaml-syntax". The place of a value is that of its first character, of a
// block scalar its `|` or `>`; an empty value stands where its key or its dash stands.
std::optional<Document> parse_yaml(std::string file, std::string text, Faults& faults);

// The bytes of a file for parse_yaml: one more than a file may have where it is larger, so that the parser sees that
// and nothing reads on. Nothing where it cannot be read.
std::optional<std::string> read_yaml_file(const std::filesystem::path& file);

// Reads every *.yaml below `folder`, in byte order of their relative paths, so that two machines agree. Symbolic links
// are not followed. Faults also: "unreadable". Files that cannot be read are left out; all faults are reported. Never
// throws.
std::vector<Document> read_yaml_folder(const std::filesystem::path& folder, Faults& faults);

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_YAML_DOCUMENT_H
