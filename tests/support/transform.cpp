#include "support/transform.h"

#include <cstdio>
#include <utility>

#include "text/utf8.h"

namespace grainside::support {

namespace {

// Letters with accents that the rows and the corpus use, and their decomposed forms (Unicode Character Database,
// canonical mappings).
constexpr std::pair<std::string_view, std::string_view> kAccents[] = {
    {"\u00E9", "e\u0301"}, {"\u00E8", "e\u0300"}, {"\u00FC", "u\u0308"}, {"\u00F1", "n\u0303"},
    {"\u00E1", "a\u0301"}, {"\u00ED", "i\u0301"}, {"\u00F3", "o\u0301"}, {"\u00E3", "a\u0303"},
};

// HTML standard, "Named character references". The ampersand is not among them: one that begins a reference in the
// original must go on doing so.
constexpr std::pair<std::string_view, std::string_view> kNames[] = {
    {" ", "&nbsp;"},        {"'", "&apos;"},        {"\"", "&quot;"},       {",", "&comma;"},
    {".", "&period;"},      {"%", "&percnt;"},      {"/", "&sol;"},         {":", "&colon;"},
    {"(", "&lpar;"},        {")", "&rpar;"},        {"+", "&plus;"},        {"*", "&ast;"},
    {"\u00E9", "&eacute;"}, {"\u00E8", "&egrave;"}, {"\u00FC", "&uuml;"},   {"\u00F1", "&ntilde;"},
    {"\u00E1", "&aacute;"}, {"\u00ED", "&iacute;"}, {"\u00F3", "&oacute;"}, {"\u00E3", "&atilde;"},
    {"\u00B2", "&sup2;"},   {"\u00B3", "&sup3;"},   {"\u00B5", "&micro;"},  {"\u00BD", "&frac12;"},
    {"\u00BE", "&frac34;"}, {"\u00B1", "&plusmn;"}, {"\u2013", "&ndash;"},  {"\u2014", "&mdash;"},
    {"\u2019", "&rsquo;"},  {"\u2022", "&bull;"},
};

// The blocks of arrows, signs and pictures begin here.
constexpr char32_t kFirstArrow = 0x2190;

// Small letters of Latin-1 stand 32 above their capitals (Unicode Character Database); U+00F7 is a sign and U+00FF has
// its capital elsewhere.
bool is_small(char32_t code) {
    return (code >= 'a' && code <= 'z') || (code >= 0xE0 && code <= 0xFE && code != 0xF7);
}

bool is_capital(char32_t code) {
    return (code >= 'A' && code <= 'Z') || (code >= 0xC0 && code <= 0xDE && code != 0xD7);
}

bool is_ascii_letter(char32_t code) {
    return (code >= 'a' && code <= 'z') || (code >= 'A' && code <= 'Z');
}

bool begins_tag(std::string_view text, std::size_t at) {
    if (text[at] != '<' || at + 1 == text.size()) return false;
    const char next = text[at + 1];
    return next == '/' || next == '!' || is_ascii_letter(static_cast<unsigned char>(next));
}

std::string encoded(char32_t code) {
    char bytes[4];
    const std::uint32_t length = text::encode_utf8(code, bytes);
    return {bytes, length};
}

std::string reference(const char* format, char32_t code) {
    char written[16];
    const int length = std::snprintf(written, sizeof written, format, static_cast<unsigned>(code));
    return {written, static_cast<std::size_t>(length)};
}

std::string found_in(const auto& table, std::string_view character) {
    for (const auto& [from, to] : table) {
        if (character == from) return std::string(to);
    }
    return std::string(character);
}

std::string changed(Transform transform, std::string_view character, char32_t code, bool letter_follows) {
    const bool is_spelt_out = code == ' ' || code == 'e' || code > 0x7F;
    switch (transform) {
        case Transform::none:
            break;
        case Transform::capitals:
            if (is_small(code)) return encoded(code - 0x20);
            break;
        case Transform::small:
            if (is_capital(code)) return encoded(code + 0x20);
            break;
        case Transform::crlf:
            if (code == '\n') return "\r\n";
            break;
        case Transform::trailing:
            if (code == '\n') return "  \n";
            break;
        case Transform::emoji:
            if (code >= kFirstArrow) return std::string(character) + "\uFE0F";
            break;
        case Transform::nbsp:
            if (code == ' ') return "\u00A0";
            break;
        case Transform::narrow_nbsp:
            if (code == ' ') return "\u202F";
            break;
        case Transform::thin:
            if (code == ' ') return "\u2009";
            break;
        case Transform::doubled:
            if (code == ' ') return "  ";
            break;
        case Transform::curly:
            if (code == '\'') return "\u2019";
            if (code == '"') return "\u201D";
            break;
        case Transform::hyphens:
            if (code == '-') return "\u2010";
            break;
        case Transform::bound:
            if (code == '-') return "\u2011";
            break;
        case Transform::soft:
            if (code == 'e' && letter_follows) return "e\u00AD";
            break;
        case Transform::zero_width:
            if (code == 'e' && letter_follows) return "e\u200C";
            break;
        case Transform::decomposed:
            return found_in(kAccents, character);
        case Transform::wide:
            // The full-width forms of ASCII begin at U+FF01, which is '!'.
            if (is_ascii_letter(code)) return encoded(code - '!' + 0xFF01);
            break;
        case Transform::tagged:
            if (code == ' ') return " <i></i>";
            break;
        case Transform::entities:
            if (is_spelt_out) return reference("&#%u;", code);
            break;
        case Transform::hex_entities:
            if (is_spelt_out) return reference("&#x%X;", code);
            break;
        case Transform::named:
            return found_in(kNames, character);
    }
    return std::string(character);
}

}  // namespace

std::string_view name_of(Transform transform) {
    constexpr std::string_view kTransformNames[] = {
        "none",        "capitals",   "small",   "crlf",   "trailing", "emoji",        "nbsp",
        "narrow_nbsp", "thin",       "doubled", "curly",  "hyphens",  "bound",        "soft",
        "zero_width",  "decomposed", "wide",    "tagged", "entities", "hex_entities", "named"};
    return kTransformNames[static_cast<std::size_t>(transform)];
}

ChangedText change(Transform transform, std::string_view text) {
    ChangedText result;
    bool is_markup = false;
    for (std::size_t at = 0; at < text.size();) {
        const text::Decoded decoded = text::decode_utf8(text, at);
        const std::size_t next = at + decoded.length;
        is_markup = is_markup || begins_tag(text, at);
        const bool letter_follows = next < text.size() && is_ascii_letter(static_cast<unsigned char>(text[next]));
        const std::string_view character = text.substr(at, decoded.length);
        result.text += is_markup ? std::string(character) : changed(transform, character, decoded.code, letter_follows);
        is_markup = is_markup && decoded.code != '>';
        result.origin.resize(result.text.size(), static_cast<std::uint32_t>(at));
        at = next;
    }
    result.origin.push_back(static_cast<std::uint32_t>(text.size()));
    return result;
}

std::string apply(Transform transform, std::string_view text) {
    return change(transform, text).text;
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

}  // namespace grainside::support
