// URIs of files (RFC 8089) and paths. Thread-safe.
#ifndef GRAINSIDE_TOOLS_EDIT_FILE_URI_H
#define GRAINSIDE_TOOLS_EDIT_FILE_URI_H

#include <string>
#include <string_view>

namespace grainside::tools::edit {

// The path that "file:///a%20b.txt" names: "/a b.txt". Empty for another scheme, another host, a path that is not
// absolute, a wrong escape and a NUL.
std::string path_of_uri(std::string_view uri);
// REQUIRES: `path` is absolute.
std::string uri_of_path(std::string_view path);

// "tote.md" of "untitled:bags/tote.md" and of "file:///bags/tote.md?x".
std::string name_in_uri(std::string_view uri);

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_FILE_URI_H
