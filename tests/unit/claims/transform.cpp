#include "transform.h"

#include "text/utf8.h"

namespace grainside::claims {

namespace {

// Letters with accents that the rows use, and their decomposed forms (Unicode Character Database, canonical mappings).
constexpr std::pair<std::string_view, std::string_view> kAccents[] = {
    {"\u00E9", "e\u0301"}, {"\u00E8", "e\u0300"}, {"\u00FC", "u\u0308"},
    {"\u00F1", "n\u0303"}, {"\u00E1", "a\u0301"}, {"\u00ED", "i\u0301"},
};

bool is_letter(std::string_view text, std::size_t at) {
    return at < text.size() && ((text[at] >= 'a' && text[at] <= 'z') || (text[at] >= 'A' && text[at] <= 'Z'));
}

std::string changed(Transform transform, std::string_view character, std::uint32_t code, bool letter_follows) {
    switch (transform) {
        case Transform::none:
            break;
        case Transform::capitals:
            if (code >= 'a' && code <= 'z') return std::string(1, static_cast<char>(code - 'a' + 'A'));
            break;
        case Transform::crlf:
            if (code == '\n') return "\r\n";
            break;
        case Transform::nbsp:
            if (code == ' ') return "\u00A0";
            break;
        case Transform::curly:
            if (code == '\'') return "\u2019";
            if (code == '"') return "\u201D";
            break;
        case Transform::hyphens:
            if (code == '-') return "\u2010";
            break;
        case Transform::soft:
            if (code == 'e' && letter_follows) return "e\u00AD";
            break;
        case Transform::decomposed:
            for (const auto& [composed, decomposed] : kAccents) {
                if (character == composed) return std::string(decomposed);
            }
            break;
        case Transform::entities:
            if (code == ' ' || code == 'e' || code > 0x7F) return "&#" + std::to_string(code) + ";";
            break;
    }
    return std::string(character);
}

}  // namespace

std::string_view name_of(Transform transform) {
    constexpr std::string_view kNames[] = {"none",    "capitals", "crlf",       "nbsp",    "curly",
                                           "hyphens", "soft",     "decomposed", "entities"};
    return kNames[static_cast<std::size_t>(transform)];
}

std::string apply(Transform transform, std::string_view text) {
    std::string result;
    for (std::size_t at = 0; at < text.size();) {
        const text::Decoded decoded = text::decode_utf8(text, at);
        result +=
            changed(transform, text.substr(at, decoded.length), decoded.code, is_letter(text, at + decoded.length));
        at += decoded.length;
    }
    return result;
}

std::string apply_to_dump(Transform transform, std::string_view dump) {
    std::string result;
    while (!dump.empty()) {
        const std::size_t end = dump.find('\n');
        const std::string_view line = dump.substr(0, end);
        const std::size_t open = line.find('\'') + 1;
        const std::size_t close = line.rfind('\'');
        result += std::string(line.substr(0, open)) + apply(transform, line.substr(open, close - open)) + "'";
        if (end == std::string_view::npos) break;
        result += '\n';
        dump.remove_prefix(end + 1);
    }
    return result;
}

}  // namespace grainside::claims
