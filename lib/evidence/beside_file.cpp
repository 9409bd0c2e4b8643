#include "evidence/beside_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <system_error>

namespace grainside::evidence {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kNoNames[] = {"", ".", "..", "-"};

bool is_name(std::string_view name, Where where) {
    constexpr std::string_view kForbidden("\\\0", 2);
    if (std::find(std::begin(kNoNames), std::end(kNoNames), name) != std::end(kNoNames)) return false;
    if (name.find_first_of(kForbidden) != std::string_view::npos || name.front() == '/') return false;
    return where == Where::below || name.find('/') == std::string_view::npos;
}

bool lies_in(const fs::path& home, const fs::path& path, Where where) {
    if (where == Where::beside) return path.parent_path() == home;
    return std::mismatch(home.begin(), home.end(), path.begin(), path.end()).first == home.end();
}

BesideFile no_file(std::string_view code, std::string message, std::string hint = {}) {
    return {{}, code, std::move(message), std::move(hint)};
}

}  // namespace

BesideFile find_beside(const fs::path& folder, std::string_view name, Where where, std::uintmax_t most_bytes,
                       std::string_view owner) {
    if (!is_name(name, where)) {
        return where == Where::beside
                   ? no_file("outside-folder", fmt::format("'{}' is no plain file name", name),
                             fmt::format("put the file beside the {} and name it without folders", owner))
                   : no_file("outside-folder", fmt::format("'{}' is no path from the {}'s folder down", name, owner),
                             fmt::format("put the file beside the {} or in a folder there", owner));
    }
    std::error_code failed;
    const fs::path home = fs::canonical(folder.empty() ? fs::path(".") : folder, failed);
    const fs::path path = failed ? fs::path() : fs::canonical(home / fs::path(std::string(name)), failed);
    if (failed) return no_file("unreadable", fmt::format("there is no file '{}' beside the {}", name, owner));
    if (!lies_in(home, path, where)) {
        return no_file("outside-folder", fmt::format("'{}' leads out of the {}'s folder", name, owner),
                       fmt::format("put a copy beside the {}", owner));
    }
    const bool regular = fs::is_regular_file(path, failed);
    const std::uintmax_t size = failed || !regular ? 0 : fs::file_size(path, failed);
    if (failed || !regular) return no_file("unreadable", fmt::format("'{}' is no readable file", name));
    if (size > most_bytes) {
        return no_file("too-large", fmt::format("'{}' is larger than {} MiB", name, most_bytes >> 20U));
    }
    return {path, {}, {}, {}};
}

}  // namespace grainside::evidence
