#include "desk/request_head.h"

#include <algorithm>
#include <array>

namespace grainside::desk {
namespace {

constexpr std::string_view kLineEnd = "\r\n";
constexpr std::string_view kAskedFor[] = {
    "host",          "origin", "cookie", "content-type", "content-length", "content-encoding", "transfer-encoding",
    "sec-fetch-site"};

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool has_controls(std::string_view line) {
    return std::any_of(line.begin(), line.end(), [](char c) {
        const auto byte = static_cast<unsigned char>(c);
        return (byte < 0x20 && byte != '\t') || byte == 0x7F;
    });
}

// "POST /words HTTP/1.1"
HeadFault check_request_line(std::string_view line, std::size_t most_target) {
    const std::size_t first = line.find(' ');
    const std::size_t last = line.rfind(' ');
    if (first == std::string_view::npos || first == last || has_controls(line)) return HeadFault::malformed;
    const std::string_view target = line.substr(first + 1, last - first - 1);
    if (target.size() > most_target) return HeadFault::target_too_long;
    const bool well_formed = target.starts_with('/') && target.find(' ') == std::string_view::npos &&
                             (line.substr(last + 1) == "HTTP/1.1" || line.substr(last + 1) == "HTTP/1.0");
    return well_formed ? HeadFault::none : HeadFault::malformed;
}

}  // namespace

HeadFault trim_head(std::string& head, std::size_t most_target) {
    std::string kept;
    std::array<int, std::size(kAskedFor)> seen{};
    for (std::size_t begin = 0, end = 0; (end = head.find(kLineEnd, begin)) != begin; begin = end + kLineEnd.size()) {
        if (end == std::string::npos) return HeadFault::malformed;
        const std::string_view line = std::string_view(head).substr(begin, end - begin);
        if (begin == 0) {
            if (const HeadFault fault = check_request_line(line, most_target); fault != HeadFault::none) return fault;
            kept.append(line).append(kLineEnd);
            continue;
        }
        const std::size_t colon = line.find(':');
        if (colon == std::string_view::npos || colon == 0 || has_controls(line)) return HeadFault::malformed;
        std::string name(line.substr(0, colon));
        std::transform(name.begin(), name.end(), name.begin(), lower);
        if (name.find_first_of(" \t") != std::string::npos) return HeadFault::malformed;
        const auto asked = std::find(std::begin(kAskedFor), std::end(kAskedFor), name);
        if (asked == std::end(kAskedFor)) continue;
        const bool again = ++seen[static_cast<std::size_t>(asked - std::begin(kAskedFor))] > 1;
        if (again && name != "cookie") return HeadFault::malformed;
        kept.append(line).append(kLineEnd);
    }
    if (kept.empty()) return HeadFault::malformed;
    head = kept.append(kLineEnd);
    return HeadFault::none;
}

}  // namespace grainside::desk
