#include "desk/desk_page.h"

#include <string>
#include <utility>

namespace grainside::desk {
namespace {

struct PageFile {
    std::string_view name;
    std::string_view bytes;
};

constexpr PageFile kPageFiles[] = {
#include "desk_page.inc"
};

constexpr std::pair<std::string_view, std::string_view> kMediaTypes[] = {
    {".html", "text/html; charset=utf-8"},
    {".css", "text/css; charset=utf-8"},
    {".js", "text/javascript; charset=utf-8"},
    {".svg", "image/svg+xml"},
};

std::string media_type_of(std::string_view name) {
    for (const auto& [ending, type] : kMediaTypes) {
        if (name.ends_with(ending)) return std::string(type);
    }
    return "application/octet-stream";
}

}  // namespace

std::optional<HttpAnswer> page_file(std::string_view path) {
    if (!path.starts_with('/')) return std::nullopt;
    const std::string_view name = path == "/" ? std::string_view("index.html") : path.substr(1);
    for (const PageFile& file : kPageFiles) {
        if (file.name == name) return HttpAnswer{200, media_type_of(name), std::string(file.bytes)};
    }
    return std::nullopt;
}

}  // namespace grainside::desk
