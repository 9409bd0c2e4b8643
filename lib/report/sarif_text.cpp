#include "report/sarif_text.h"

#include "document/inert_text.h"

namespace grainside::report {
namespace {

bool is_unreserved(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '.' ||
           c == '_' || c == '~';
}

}  // namespace

std::string_view sarif_level(Grade grade) noexcept {
    switch (grade) {
        case Grade::contradicted:
        case Grade::misleading:
            return "error";
        case Grade::unsupported:
        case Grade::inconclusive:
            return "warning";
        case Grade::vague:
            return "note";
        case Grade::consistent:
            break;
    }
    return "none";
}

std::string sarif_message_text(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    for (const char c : document::inert_text(text)) {
        if (c == '{' || c == '}') out += c;
        if (c == '[' || c == ']' || c == '\\') out += '\\';
        out += c;
    }
    return out;
}

std::string sarif_uri(std::string_view path) {
    while (path.size() > 2 && path.starts_with("./")) path.remove_prefix(2);
    std::string out = path.starts_with('/') ? "file://" : "";
    for (const char c : path) {
        if (is_unreserved(c) || c == '/') {
            out += c;
            continue;
        }
        constexpr char kHexDigits[] = "0123456789ABCDEF";
        const auto byte = static_cast<unsigned char>(c);
        out += {'%', kHexDigits[byte >> 4U], kHexDigits[byte & 0xFU]};
    }
    return out;
}

bool is_standard_input(std::string_view input) noexcept {
    return input == "-" || input == "<stdin>";
}

}  // namespace grainside::report
