// The files of the page, built into the program (tools/desk/page). Thread-safe.
#ifndef GRAINSIDE_TOOLS_DESK_DESK_PAGE_H
#define GRAINSIDE_TOOLS_DESK_DESK_PAGE_H

#include <optional>
#include <string_view>

#include "desk/http_exchange.h"

namespace grainside::desk {

// "/" is index.html, "/NAME" the file of that name; nothing for any other path.
std::optional<HttpAnswer> page_file(std::string_view path);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_DESK_PAGE_H
