#include "edit/file_uri.h"

#include <optional>

namespace grainside::tools::edit {
namespace {

std::optional<unsigned> hex_value(char c) {
    if (c >= '0' && c <= '9') return static_cast<unsigned>(c - '0');
    if (c >= 'a' && c <= 'f') return static_cast<unsigned>(c - 'a' + 10);
    if (c >= 'A' && c <= 'F') return static_cast<unsigned>(c - 'A' + 10);
    return std::nullopt;
}

std::optional<std::string> decoded(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] != '%') {
            out += text[i];
            continue;
        }
        if (text.size() - i < 3) return std::nullopt;
        const auto high = hex_value(text[i + 1]);
        const auto low = hex_value(text[i + 2]);
        if (!high || !low || (*high == 0 && *low == 0)) return std::nullopt;
        out += static_cast<char>(*high * 16 + *low);
        i += 2;
    }
    return out;
}

// RFC 3986: unreserved characters, those that may stand in a path as they are, and the slash.
bool stands_for_itself(char c) {
    constexpr std::string_view kOthers = "-._~!$&'()*+,;=:@/";
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           kOthers.find(c) != std::string_view::npos;
}

std::string_view without_query(std::string_view uri) {
    return uri.substr(0, uri.find_first_of("?#"));
}

}  // namespace

std::string path_of_uri(std::string_view uri) {
    constexpr std::string_view kScheme = "file://";
    constexpr std::string_view kHere = "localhost";
    if (!uri.starts_with(kScheme)) return {};
    uri = without_query(uri.substr(kScheme.size()));
    if (uri.starts_with(kHere)) uri.remove_prefix(kHere.size());
    if (!uri.starts_with('/')) return {};
    return decoded(uri).value_or(std::string());
}

std::string uri_of_path(std::string_view path) {
    constexpr std::string_view kDigits = "0123456789ABCDEF";
    std::string uri = "file://";
    for (const char c : path) {
        if (stands_for_itself(c)) {
            uri += c;
            continue;
        }
        const auto byte = static_cast<unsigned char>(c);
        uri += '%';
        uri += kDigits[byte >> 4U];
        uri += kDigits[byte & 0x0FU];
    }
    return uri;
}

std::string name_in_uri(std::string_view uri) {
    uri = without_query(uri);
    const std::size_t slash = uri.find_last_of("/\\:");
    if (slash != std::string_view::npos) uri.remove_prefix(slash + 1);
    return decoded(uri).value_or(std::string(uri));
}

}  // namespace grainside::tools::edit
